import { mmPerInch } from './length.ts';
import { readNumber, sayNumber } from './number.ts';

const number = String.raw`\d+(?:[.,]\d+)?`;
/** One number or several with one unit: `3.7 to 2.3 mm`, `307 × 443 mm`, `at 40, 73 mm`. Not what is said in inches too: `100 mm = 3.94 in`. */
const joined = ' (?:to|and|or|bis|und|oder) | × |–';
const measured = new RegExp(
  `(?<![\\d.,])((?<=(?:at|bei|:) |; |\\()${number}, ${number}|${number}(?:(?:${joined})${number})*)[ \\u00a0](mm|cm|m)(²?)(?![\\p{L}\\d]| = )`,
  'gu',
);

interface Ways {
  /** What stands between a whole number and its fraction. */
  readonly decimal?: string;
  /** Pieces of text that a printmaker wrote: they stay as they are. */
  readonly written?: readonly string[];
}

/** A text that says lengths and areas in mm, cm or m, with inches instead: `3.7 to 2.3 mm` → `0.146 to 0.091 in`. Films in µm stay. */
export function textInInches(text: string, { decimal = '.', written = [] }: Ways = {}): string {
  const own = written.find((w) => text.includes(w));
  if (own !== undefined)
    return text
      .split(own)
      .map((part) => textInInches(part, { decimal, written: written.filter((w) => w !== own) }))
      .join(own);
  return text.replace(measured, (_all, numbers: string, unit: string, squared: string) => {
    const perUnit = unit === 'm' ? 1000 : unit === 'cm' ? 10 : 1;
    const inches = numbers.replace(new RegExp(number, 'g'), (n) => {
      const value = readNumber(n) * (squared ? (perUnit / mmPerInch) ** 2 : perUnit / mmPerInch);
      return sayNumber(value, value >= 100 ? 0 : value >= 10 ? 1 : 3, squared === '' && value > 0).replace('.', decimal);
    });
    return `${inches}\u00a0in${squared}`;
  });
}

/** Of all texts in a document those that name such a length. */
export function textsWithLengths(document: unknown): string[] {
  const found = new Set<string>();
  const look = (value: unknown): void => {
    if (typeof value === 'string') {
      if (/\d[ \u00a0]?(?:mm|cm|m)/.test(value)) found.add(value);
    } else if (value !== null && typeof value === 'object') {
      for (const inner of Object.values(value)) look(inner);
    }
  };
  look(document);
  return [...found].sort((a, b) => b.length - a.length);
}
