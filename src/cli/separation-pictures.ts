import { srgbFromXyz, xyzFromLab } from '../core/colour/index.ts';
import type { Separation } from '../core/separate/index.ts';
import { rgbPng } from '../packet/index.ts';

/** The picture, the print and the flat-ink comparison, side by side at the same size. */
export function writeSeparationPictures(s: Separation): { path: string; bytes: Uint8Array }[] {
  const picture = new Uint8Array(s.width * s.height * 3);
  for (let i = 0; i < s.width * s.height; i++) picture.set(srgbFromXyz(xyzFromLab([s.target[i * 3], s.target[i * 3 + 1], s.target[i * 3 + 2]])).rgb, i * 3);
  const coded = (codes: Uint8Array, rgb: Uint8Array): Uint8Array => {
    const out = new Uint8Array(codes.length * 3);
    for (let i = 0; i < codes.length; i++) for (let c = 0; c < 3; c++) out[i * 3 + c] = rgb[codes[i] * 3 + c];
    return out;
  };
  const png = (path: string, width: number, height: number, rgb: Uint8Array): { path: string; bytes: Uint8Array } => ({ path, bytes: rgbPng(width, height, rgb, s.mmPerPx) });
  return [
    png('compare/picture.png', s.width, s.height, picture),
    png('compare/print.png', s.width, s.height, coded(s.codes, s.rgb)),
    png('compare/flat-inks.png', s.baseline.width, s.baseline.height, coded(s.baseline.codes, s.baseline.rgb)),
  ];
}
