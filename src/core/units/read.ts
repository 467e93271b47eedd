import { fail } from '../problem.ts';
import { numberPattern, plainText, readNumber } from './number.ts';

/** A kind of quantity: the words people write for each unit, and what one of it is in the unit kept inside core. */
export interface UnitFamily {
  readonly kind: string;
  /** For the advice: `12 mm, 1/2 in`. */
  readonly examples: string;
  readonly units: readonly { readonly words: readonly string[]; readonly inBase: number }[];
}

const longestText = 80;
const largest = 1e9;

export type Reading = { readonly ok: true; readonly value: number } | { readonly ok: false; readonly message: string };

/** Reads `12.5 mm`, `1 1/2"`, or a sum of falling parts (`1 ft 6 in`); a bare number is in `defaultUnit`. */
export function tryRead(family: UnitFamily, text: string, defaultUnit: string): Reading {
  if (text.length > longestText) return { ok: false, message: `This is too long to be a ${family.kind}.` };
  const plain = plainText(text);
  if (plain === '') return { ok: false, message: `No ${family.kind} is written here.` };
  const parts = new RegExp(`(${numberPattern})\\s*([^\\d\\s.,+\\-/][^\\d.,+\\-/]*)?\\s*`, 'uy');
  let sum = 0;
  let sign = 1;
  let smallest = Infinity;
  let count = 0;
  while (parts.lastIndex < plain.length) {
    const match = parts.exec(plain);
    if (!match) return { ok: false, message: `“${text}” is not a ${family.kind}.` };
    const number = readNumber(match[1]);
    if (!Number.isFinite(number)) return { ok: false, message: `“${match[1]}” is not a number.` };
    const word = match[2]?.trim();
    if (word === undefined && (count > 0 || parts.lastIndex < plain.length)) {
      return { ok: false, message: `“${text}” has a number without a unit.` };
    }
    const unit = findUnit(family, word ?? defaultUnit);
    if (unit === undefined) return { ok: false, message: `“${word ?? defaultUnit}” is not a unit of ${family.kind} known here.` };
    if (count > 0 && (unit >= smallest || /^[+-]/.test(match[1]))) return { ok: false, message: `“${text}” is not one ${family.kind}.` };
    if (count === 0 && match[1].startsWith('-')) sign = -1;
    sum += Math.abs(number) * unit;
    smallest = unit;
    count++;
  }
  if (!(sum <= largest)) return { ok: false, message: `“${text}” is larger than any ${family.kind} used here.` };
  return { ok: true, value: sign * sum };
}

/** Same, throwing a ProblemError that names the place. */
export function read(family: UnitFamily, text: string, defaultUnit: string, place: string): number {
  const result = tryRead(family, text, defaultUnit);
  return result.ok ? result.value : fail(`${family.kind}-unreadable`, place, result.message, `Write it like ${family.examples}.`);
}

function findUnit(family: UnitFamily, word: string): number | undefined {
  const small = word.toLowerCase().replace(/\.$/, '').replace(/\s+/g, ' ');
  return family.units.find((unit) => unit.words.includes(small))?.inBase;
}
