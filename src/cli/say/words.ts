import { readReadings, readTyped, type Reading } from '../../core/ink/index.ts';
import type { Job } from '../../core/job/index.ts';
import { fail } from '../../core/problem.ts';
import { figure, list, name as asName, say, type List, type Saying } from '../../words/index.ts';
import type { Call } from '../command.ts';
import { fileAt, readFileBytes } from '../disk/disk.ts';
import { placeOf } from '../options.ts';
import { showHere } from '../reader.ts';

/** `L 62 a -38.5 b 12` or `62 -38.5 12`. Decimal commas are understood. */
export function labOf(text: string, place: Saying): readonly [number, number, number] {
  const numbers = text
    .replaceAll('−', '-')
    .split(/[^0-9.,+-]+/)
    .filter((w) => /\d/.test(w))
    .map((w) => Number(w.replace(/,$/, '').replace(',', '.')));
  if (numbers.length !== 3 || numbers.some((n) => !Number.isFinite(n)))
    fail('not-lab', place, say('cli.notLab', { text: asName(text) }), say('cli.giveLab'));
  return [numbers[0], numbers[1], numbers[2]];
}

/** A number for an option, within limits. */
export function numberOf(value: unknown, option: string, usual: number, low: number, high: number): number {
  if (value === undefined) return usual;
  const number = Number(String(value).replace(',', '.'));
  if (!Number.isFinite(number) || number < low || number > high)
    fail('bad-number', placeOf(option), say('cli.cannotUse', { text: asName(String(value)) }), say('cli.numberFromTo', limits(low, high)));
  return number;
}

/** A whole number for an option, within limits; undefined where it is not given. */
export function wholeOf(value: unknown, option: string, low: number, high: number): number | undefined {
  if (value === undefined) return undefined;
  const number = Number(value);
  if (!Number.isInteger(number) || number < low || number > high)
    fail('bad-number', placeOf(option), say('cli.cannotUse', { text: asName(String(value)) }), say('cli.wholeFromTo', limits(low, high)));
  return number;
}

function limits(low: number, high: number): { readonly low: ReturnType<typeof figure>; readonly high: ReturnType<typeof figure> } {
  return { low: figure(low, 3, false), high: figure(high, 3, false) };
}

export function textOf(value: unknown): string | undefined {
  return typeof value === 'string' ? value : undefined;
}

/** What an option that may be said several times was given. */
export function textsOf(value: unknown): string[] {
  return Array.isArray(value) ? value.map(String) : [];
}

/** Ids to choose from, as they are typed. */
export function idsOf(things: readonly { readonly id: string }[], by: List['by'] = 'comma'): List {
  return list(
    things.map(({ id }) => asName(id)),
    by,
  );
}

/** The layer named behind the job, as it was typed. */
export function layerNamed(call: Call, job: Job): string {
  const all = idsOf(job.layers.filter((layer) => !layer.off));
  return call.words[1] ?? fail('no-layer-named', say('where.commandLine'), say('cli.whichLayer'), say('cli.nameOneOf', { all }));
}

/** `rockpool=70,clear-base=30` → ids and grams. */
export function amountsOf(text: string, place: Saying): { id: string; grams: number }[] {
  return text
    .split(/[;,\s]+/)
    .filter((w) => w !== '')
    .map((word) => {
      const [id, grams] = word.split('=');
      const number = Number(grams);
      if (!id || !Number.isFinite(number) || number < 0)
        fail('bad-amount', place, say('cli.notAmount', { text: asName(word) }), say('cli.writeAmounts'));
      return { id, grams: number };
    });
}

/** A reading typed in, or the first patch of a file of readings. */
export function readingOf(text: string, place: Saying): Reading {
  if (/\d/.test(text) && !/\.(txt|cgats|cxf|xml|csv|ti3|it8)$/i.test(text)) return readTyped(text, place);
  const patches = readReadings(readFileBytes(text), text).patches;
  if (patches.length === 0) fail('no-patch', fileAt(text), say('cli.noPatch'), say('cli.otherFileOrLab'));
  return patches[0].reading;
}

/** L, a and b as cells of a table, each after its letter. */
export function labCells(lab: readonly number[], digits = 1): string[] {
  return ['L', 'a', 'b'].flatMap((axis, i) => [axis, showHere(figure(lab[i], digits))]);
}

/** Which columns hold the figures of `labCells`, where these begin at `from`. */
export function labColumns(from: number): number[] {
  return [from + 1, from + 3, from + 5];
}
