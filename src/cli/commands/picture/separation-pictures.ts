import { isBlackStripe, pictureRgb, type Separation } from '../../../core/separate/index.ts';
import { rgbPng } from '../../../packet/index.ts';

/** The picture, the print and the flat-ink comparison at the same size; the print again, struck through where colours are out of reach and where cutting lost detail. */
export function writeSeparationPictures(s: Separation): { path: string; bytes: Uint8Array }[] {
  const coded = (codes: Uint8Array, rgb: Uint8Array): Uint8Array => {
    const out = new Uint8Array(codes.length * 3);
    for (let i = 0; i < codes.length; i++) for (let c = 0; c < 3; c++) out[i * 3 + c] = rgb[codes[i] * 3 + c];
    return out;
  };
  const print = coded(s.codes, s.rgb);
  const png = (path: string, width: number, height: number, rgb: Uint8Array): { path: string; bytes: Uint8Array } => ({
    path,
    bytes: rgbPng(width, height, rgb, s.mmPerPx),
  });
  return [
    png('compare/picture.png', s.width, s.height, pictureRgb(s.target)),
    png('compare/print.png', s.width, s.height, print),
    png('compare/flat-inks.png', s.baseline.width, s.baseline.height, coded(s.baseline.codes, s.baseline.rgb)),
    png('compare/out-of-reach.png', s.width, s.height, struckThrough(print, s.outOfReach, s.width)),
    png('compare/detail-lost.png', s.width, s.height, struckThrough(print, s.detailLost, s.width)),
  ];
}

/** @param mask struck through where not 0 */
function struckThrough(rgb: Uint8Array, mask: Uint8Array, width: number): Uint8Array {
  const out = rgb.slice();
  for (let i = 0; i < mask.length; i++)
    if (mask[i] !== 0) out.fill(isBlackStripe(i % width, Math.floor(i / width), width) ? 0 : 255, i * 3, i * 3 + 3);
  return out;
}
