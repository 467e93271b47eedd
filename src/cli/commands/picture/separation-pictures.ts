import { isBlackStripe, pictureRgb, type Separation } from '../../../core/separate/index.ts';
import { rgbPng } from '../../../packet/index.ts';

interface Made {
  readonly path: string;
  readonly bytes: Uint8Array;
}

const coded = (codes: Uint8Array, rgb: Uint8Array): Uint8Array => {
  const out = new Uint8Array(codes.length * 3);
  for (let i = 0; i < codes.length; i++) for (let c = 0; c < 3; c++) out[i * 3 + c] = rgb[codes[i] * 3 + c];
  return out;
};

/** The picture and the print at the same size; the print again, struck through where colours are out of reach and where cutting lost detail. */
export function printPictures(s: Omit<Separation, 'baseline' | 'curve'>): Made[] {
  const print = coded(s.codes, s.rgb);
  const png = (path: string, rgb: Uint8Array): Made => ({ path, bytes: rgbPng(s.width, s.height, rgb, s.mmPerPx) });
  return [
    png('compare/picture.png', pictureRgb(s.target)),
    png('compare/print.png', print),
    png('compare/out-of-reach.png', struckThrough(print, s.outOfReach, s.width)),
    png('compare/detail-lost.png', struckThrough(print, s.detailLost, s.width)),
  ];
}

/** The same in flat inks. */
export function flatPicture({ baseline: { width, height, codes, rgb }, mmPerPx }: Separation): Made {
  return { path: 'compare/flat-inks.png', bytes: rgbPng(width, height, coded(codes, rgb), mmPerPx) };
}

/** @param mask struck through where not 0 */
function struckThrough(rgb: Uint8Array, mask: Uint8Array, width: number): Uint8Array {
  const out = rgb.slice();
  for (let i = 0; i < mask.length; i++)
    if (mask[i] !== 0) out.fill(isBlackStripe(i % width, Math.floor(i / width), width) ? 0 : 255, i * 3, i * 3 + 3);
  return out;
}
