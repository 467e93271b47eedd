import { readFileSync } from 'node:fs';
import { readReadings, readTyped, type Reading } from '../core/ink/index.ts';
import { fail } from '../core/problem.ts';
import { sayDiskError } from './folder.ts';

/** `L 62 a -38.5 b 12` or `62 -38.5 12`. Decimal commas are understood. */
export function labOf(text: string, place: string): readonly [number, number, number] {
  const numbers = text
    .replaceAll('−', '-')
    .split(/[^0-9.,+-]+/)
    .filter((w) => /\d/.test(w))
    .map((w) => Number(w.replace(/,$/, '').replace(',', '.')));
  if (numbers.length !== 3 || numbers.some((n) => !Number.isFinite(n)))
    fail('not-lab', place, `“${text}” is no Lab colour.`, 'Give three numbers: L, a and b, such as "62 -38.5 12".');
  return [numbers[0], numbers[1], numbers[2]];
}

/** A number for an option, within limits. */
export function numberOf(value: unknown, option: string, usual: number, low: number, high: number): number {
  if (value === undefined) return usual;
  const number = Number(String(value).replace(',', '.'));
  if (!Number.isFinite(number) || number < low || number > high)
    fail('bad-number', option, `“${String(value)}” can't be used here.`, `Give a number from ${low} to ${high}.`);
  return number;
}

/** A whole number for an option, within limits; undefined where it is not given. */
export function wholeOf(value: unknown, option: string, low: number, high: number): number | undefined {
  if (value === undefined) return undefined;
  const number = Number(value);
  if (!Number.isInteger(number) || number < low || number > high)
    fail('bad-number', option, `“${String(value)}” can't be used here.`, `Give a whole number from ${low} to ${high}.`);
  return number;
}

export function textOf(value: unknown): string | undefined {
  return typeof value === 'string' ? value : undefined;
}

/** `rockpool=70,clear-base=30` → ids and grams. */
export function amountsOf(text: string, place: string): { id: string; grams: number }[] {
  return text
    .split(/[;,\s]+/)
    .filter((w) => w !== '')
    .map((word) => {
      const [id, grams] = word.split('=');
      const number = Number(grams);
      if (!id || !Number.isFinite(number) || number < 0)
        fail('bad-amount', place, `“${word}” says no amount.`, 'Write ink=grams, several with commas: rockpool=70,clear-base=30.');
      return { id, grams: number };
    });
}

/** A reading typed in, or the first patch of a file of readings. */
export function readingOf(text: string, place: string): Reading {
  if (/\d/.test(text) && !/\.(txt|cgats|cxf|xml|csv|ti3|it8)$/i.test(text)) return readTyped(text, place);
  const patches = readReadings(readFileBytes(text), text).patches;
  if (patches.length === 0) fail('no-patch', text, 'There is no reading in this file.', 'Choose another, or type the Lab in.');
  return patches[0].reading;
}

export function readFileBytes(path: string): Uint8Array {
  try {
    return new Uint8Array(readFileSync(path));
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    return fail(
      'cannot-read',
      path,
      code === 'ENOENT' ? 'There is no such file.' : `It cannot be read: ${sayDiskError(error)}`,
      'Check the name and try again.',
    );
  }
}

export const plural = (n: number, one: string): string => `${n} ${n === 1 ? one : `${one}s`}`;
