import { labFromXyz, type Lab } from '../../colour/index.ts';
import { readingByEye, rectQuad, sampleQuad, starterShelf, type GuessCompared, type Photograph, type Reading } from '../../ink/index.ts';
import type { Job, JobInk } from '../../job/index.ts';
import { comparedGuess, overOf } from '../../plan/index.ts';
import { fail } from '../../problem.ts';
import { list, name as asName, say, type Saying } from '../../../words/say.ts';
import { inkFromShelf, jobReading } from './shelf.ts';

/** Inks of the starter shelf as a job takes them, named by `tell`; left out `ids`: all. The clear base comes with them. */
export function starterInks(tell: (saying: Saying) => string, ids?: readonly string[]): JobInk[] {
  const { inks } = starterShelf(tell);
  for (const id of ids ?? [])
    if (!inks.some((ink) => ink.id === id))
      fail(
        'no-such-ink',
        say('where.inkShelf'),
        say('asks.noSuchStarter', { ink: asName(id) }),
        say('asks.useOneOf', {
          all: list(
            inks.map((ink) => asName(ink.id)),
            'comma',
          ),
        }),
      );
  const chosen = ids === undefined ? inks : [...new Set(ids)].flatMap((id) => inks.filter((ink) => ink.id === id && ink.role === 'ink'));
  const base = inks.filter((ink) => ink.role !== 'ink');
  return [...chosen.filter((ink) => ink.role === 'ink'), ...base].map((ink) => inkFromShelf(ink));
}

/** An ink whose drawdown was told by eye, over the paper it was drawn down on. */
export function inkByEye(head: { readonly id: string; readonly name: string }, paper: Reading, over: Reading): JobInk {
  return {
    ...head,
    role: 'ink',
    densityGPerMl: 1.1,
    known: 'by-eye',
    from: 'one-ground',
    ground: jobReading(paper),
    over: jobReading(over),
  } as JobInk;
}

/** An ink that was guessed and is read now keeps the guess, so that the two can be compared. */
export function withGuess(before: JobInk | null, now: JobInk): JobInk {
  if (now.known !== undefined) return now;
  const over = before && overOf(before);
  if (before?.known !== undefined && over) return { ...now, guess: { known: before.known, over: jobReading(over) } };
  return before?.guess ? { ...now, guess: before.guess } : now;
}

/** A place on a photograph as a colour: a small square around it, in shares of the picture. As doubtful as any light. */
export function colourInPicture(photo: Photograph, x: number, y: number, reach = 0.012): Extract<Reading, { kind: 'lab' }> {
  const half = Math.max(2, reach * Math.min(photo.width, photo.height));
  const { rgb } = sampleQuad(photo, rectQuad(x * photo.width - half, y * photo.height - half, 2 * half, 2 * half));
  const [X, Y, Z] = photo.space.toXyz.map((row) => row[0] * rgb[0] + row[1] * rgb[1] + row[2] * rgb[2]);
  const lab = labFromXyz([X, Y, Z]);
  return readingByEye(lab, 'picture');
}

export interface GuessOf {
  readonly id: string;
  readonly name: string;
  readonly known: 'published' | 'by-eye';
  readonly guessed: Lab | null;
  /** null: it has not been read yet. */
  readonly compared: GuessCompared | null;
}

/** Every ink of a job that is or was a guess, and how it compares with what was read later. */
export function guessesOf(job: Pick<Job, 'inks'>): GuessOf[] {
  return job.inks.flatMap((ink): GuessOf[] => {
    const known = ink.known ?? ink.guess?.known;
    if (known === undefined || ink.from === 'clear') return [];
    const reading = ink.known === undefined ? ink.guess?.over : overOf(ink);
    const guessed = reading?.kind === 'lab' || reading?.kind === 'photo' ? reading.lab : null;
    return [{ id: ink.id, name: ink.name, known, guessed, compared: comparedGuess(ink) }];
  });
}
