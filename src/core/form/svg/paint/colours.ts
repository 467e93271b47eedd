import { labFromXyz, xyzFromSrgb, type Lab } from '../../../colour/index.ts';

/** Stored sRGB values, 0..255. */
export type Rgb = readonly [number, number, number];

export const whiteHex = '#ffffff';

/** `#rrggbb`, as the normaliser writes every plain colour. */
export function readColour(text: string): Rgb | undefined {
  const found = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(text);
  return found ? [parseInt(found[1], 16), parseInt(found[2], 16), parseInt(found[3], 16)] : undefined;
}

export const hexOf = (rgb: Rgb): string => `#${rgb.map((v) => Math.round(v).toString(16).padStart(2, '0')).join('')}`;

export const labOf = ([r, g, b]: Rgb): Lab => labFromXyz(xyzFromSrgb([r / 255, g / 255, b / 255]));

/** CIE 1976: enough to tell which of a few colours another is nearest to. */
export const apart = (a: Lab, b: Lab): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

const whiteLab = labOf([255, 255, 255]);
/** So near to white that nobody would mix an ink for it. */
const nearWhite = 3.5;
/** How far a colour is from white paper. */
export const contrastOf = (rgb: Rgb): number => apart(labOf(rgb), whiteLab);
export const isWhite = (rgb: Rgb): boolean => contrastOf(rgb) < nearWhite;

/** The colour of a palette that another one belongs to; white (bare paper) counts as one of them. */
export function nearestColour(rgb: Rgb, palette: readonly string[]): string {
  const lab = labOf(rgb);
  let best = whiteHex,
    least = contrastOf(rgb);
  for (const one of palette) {
    const d = apart(lab, labOf(readColour(one) ?? [0, 0, 0]));
    if (d < least) {
      least = d;
      best = one;
    }
  }
  return best;
}
