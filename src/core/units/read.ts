import { name, say, type Saying } from '../../words/say.ts';
import { fail } from '../problem.ts';
import { numberPattern, plainText, readNumber } from './number.ts';

/** A kind of quantity: the words people write for each unit, and what one of it is in the unit kept inside core. */
export interface UnitFamily {
  readonly kind: 'length' | 'mass' | 'volume';
  /** The kind as printmakers call it. */
  readonly noun: Saying;
  /** How to write one, with examples. */
  readonly advice: Saying;
  readonly units: readonly { readonly words: readonly string[]; readonly inBase: number }[];
}

const longestText = 80;
const largest = 1e9;

export type Reading = { readonly ok: true; readonly value: number } | { readonly ok: false; readonly message: Saying };

/** Reads `12.5 mm`, `1 1/2"`, or a sum of falling parts (`1 ft 6 in`); a bare number is in `defaultUnit`. */
export function tryRead(family: UnitFamily, text: string, defaultUnit: string): Reading {
  const refused = (message: Saying): Reading => ({ ok: false, message });
  const { noun } = family;
  if (text.length > longestText) return refused(say('units.tooLong'));
  const plain = plainText(text);
  if (plain === '') return refused(say('units.nothingWritten', { noun }));
  const written = name(text);
  const parts = new RegExp(`(${numberPattern})\\s*([^\\d\\s.,+\\-/][^\\d.,+\\-/]*)?\\s*`, 'uy');
  let sum = 0;
  let sign = 1;
  let smallest = Infinity;
  let count = 0;
  while (parts.lastIndex < plain.length) {
    const match = parts.exec(plain);
    if (!match) return refused(say('units.notRead', { text: written, noun }));
    const number = readNumber(match[1]);
    if (!Number.isFinite(number)) return refused(say('units.notNumber', { text: name(match[1]) }));
    const word = match[2]?.trim();
    if (word === undefined && (count > 0 || parts.lastIndex < plain.length)) {
      return refused(say('units.unitMissing', { text: written }));
    }
    const unit = findUnit(family, word ?? defaultUnit);
    if (unit === undefined) return refused(say('units.unknownUnit', { unit: name(word ?? defaultUnit), noun }));
    if (count > 0 && (unit >= smallest || /^[+-]/.test(match[1]))) return refused(say('units.moreThanOne', { text: written, noun }));
    if (count === 0 && match[1].startsWith('-')) sign = -1;
    sum += Math.abs(number) * unit;
    smallest = unit;
    count++;
  }
  if (!(sum <= largest)) return refused(say('units.tooLarge', { text: written }));
  return { ok: true, value: sign * sum };
}

/** Same, throwing a ProblemError that names the place: a path in the Job, or where else it is. */
export function read(family: UnitFamily, text: string, defaultUnit: string, place: string | Saying): number {
  const result = tryRead(family, text, defaultUnit);
  return result.ok ? result.value : fail(`${family.kind}-unreadable`, place, result.message, family.advice);
}

function findUnit(family: UnitFamily, word: string): number | undefined {
  const small = word.toLowerCase().replace(/\.$/, '').replace(/\s+/g, ' ');
  return family.units.find((unit) => unit.words.includes(small))?.inBase;
}
