import { mmPerInch } from './length.ts';

export interface PaperSize {
  readonly id: string;
  readonly name: string;
  readonly family: 'A' | 'B' | 'C' | 'inch';
  /** The short side. */
  readonly widthMm: number;
  readonly heightMm: number;
}

/**
 * ISO 216 (A and B) and ISO 269 (C): A0 covers one square metre with sides as 1 : √2, B0 has a short side of 1 m, C0 lies
 * between; each next size is half the one before, rounded down to whole millimetres.
 */
const firstOf: Readonly<Record<'A' | 'B' | 'C', readonly [number, number]>> = { A: [841, 1189], B: [1000, 1414], C: [917, 1297] };

function isoSizes(family: 'A' | 'B' | 'C'): PaperSize[] {
  const sizes: PaperSize[] = [];
  let [widthMm, heightMm] = firstOf[family];
  for (let step = 0; step <= 10; step++) {
    sizes.push({ id: `${family.toLowerCase()}${step}`, name: `${family}${step}`, family, widthMm, heightMm });
    [widthMm, heightMm] = [Math.floor(heightMm / 2), widthMm];
  }
  return sizes;
}

/** Letter, Tabloid and C to E as in ANSI/ASME Y14.1 (A to E there); the rest are sheets sold to printmakers in inch countries (common practice): 22 × 30 in is the full sheet there. */
const inches: readonly (readonly [string, string, number, number])[] = [
  ['letter', 'Letter', 8.5, 11],
  ['legal', 'Legal', 8.5, 14],
  ['tabloid', 'Tabloid', 11, 17],
  ['ansi-c', 'ANSI C', 17, 22],
  ['ansi-d', 'ANSI D', 22, 34],
  ['ansi-e', 'ANSI E', 34, 44],
  ['in-5x7', '5 × 7 in', 5, 7],
  ['in-8x10', '8 × 10 in', 8, 10],
  ['in-9x12', '9 × 12 in', 9, 12],
  ['in-11x14', '11 × 14 in', 11, 14],
  ['in-11x15', '11 × 15 in', 11, 15],
  ['in-12x18', '12 × 18 in', 12, 18],
  ['in-15x22', '15 × 22 in', 15, 22],
  ['in-16x20', '16 × 20 in', 16, 20],
  ['in-18x24', '18 × 24 in', 18, 24],
  ['in-19x25', '19 × 25 in', 19, 25],
  ['in-22x30', '22 × 30 in', 22, 30],
];

/** ISO 216 A and B, ISO 269 C, and inch sizes; all upright. */
export const paperSizes: readonly PaperSize[] = [
  ...isoSizes('A'),
  ...isoSizes('B'),
  ...isoSizes('C'),
  ...inches.map(
    ([id, name, width, height]): PaperSize => ({ id, name, family: 'inch', widthMm: width * mmPerInch, heightMm: height * mmPerInch }),
  ),
];

/** The size whose sides these are, either way up, within `withinMm`; undefined when none is. */
export function nameSize(widthMm: number, heightMm: number, withinMm = 2): PaperSize | undefined {
  const short = Math.min(widthMm, heightMm);
  const long = Math.max(widthMm, heightMm);
  const off = (size: PaperSize): number => Math.max(Math.abs(size.widthMm - short), Math.abs(size.heightMm - long));
  return paperSizes.filter((size) => off(size) <= withinMm).sort((one, other) => off(one) - off(other))[0];
}

/** The smallest listed size on which width × height goes, either way up. */
export function smallestHolding(
  widthMm: number,
  heightMm: number,
  families: readonly PaperSize['family'][] = ['A'],
): PaperSize | undefined {
  const short = Math.min(widthMm, heightMm);
  const long = Math.max(widthMm, heightMm);
  return paperSizes
    .filter((size) => families.includes(size.family) && size.widthMm >= short && size.heightMm >= long)
    .sort((one, other) => one.widthMm * one.heightMm - other.widthMm * other.heightMm)[0];
}
