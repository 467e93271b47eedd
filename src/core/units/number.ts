/** Unicode's vulgar fractions, as people paste them. */
const vulgar: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
};

/** One number as written on a ruler or a tin: `12.5`, `12,5`, `3/16`, `1 1/2`, `1-1/2`, `1½`. Sign allowed. */
export const numberPattern = String.raw`[+-]?(?:\d+[ -]+\d+\/\d+|\d+\/\d+|\d*[.,]?\d+|\d+[.,])`;

/** Fractions, minus signs and spaces as a keyboard has them. */
export function plainText(text: string): string {
  let out = '';
  for (const sign of text) {
    const fraction = vulgar[sign];
    out += fraction === undefined ? sign : `${/\d$/.test(out) ? ' ' : ''}${fraction}`;
  }
  return out
    .replace(/[\u00a0\u2007\u2009\u202f\t]/g, ' ')
    .replace(/[−–]/g, '-')
    .replace(/[⁄∕]/g, '/')
    .replace(/ *\/ */g, '/')
    .trim();
}

/**
 * Reads one number written plainly. A single comma is a decimal comma (`1,234` is one and a bit): thousands are
 * never separated, so nothing is guessed. NaN when it isn't a number (more than one point or comma, over zero).
 */
export function readNumber(text: string): number {
  const plain = plainText(text);
  const match = /^([+-]?)(?:(\d+)[ -]+)?(\d+)\/(\d+)$/.exec(plain);
  if (match) {
    const over = Number(match[4]);
    if (over === 0) return NaN;
    const size = Number(match[2] ?? 0) + Number(match[3]) / over;
    return match[1] === '-' ? -size : size;
  }
  if (!/^[+-]?(?:\d+[.,]?\d*|[.,]\d+)$/.test(plain)) return NaN;
  return Number(plain.replace(',', '.'));
}

/** Fixed digits, or at most so many with no trailing noughts; never `-0`. */
export function sayNumber(value: number, digits: number, fixed: boolean): string {
  const text = value.toFixed(digits);
  const trimmed = fixed || !text.includes('.') ? text : text.replace(/\.?0+$/, '');
  return /^-0(\.0*)?$/.test(trimmed) ? trimmed.slice(1) : trimmed;
}

/** As many digits after the point as keep about three figures. */
export function threeFigures(value: number): number {
  const size = Math.abs(value);
  return size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3;
}
