import { type JobPicture, type PictureMark, mostMarks, newPicture } from '../../../core/job/index.ts';
import { problem, ProblemError } from '../../../core/problem.ts';
import { name as asName, say } from '../../../words/one-language.ts';
import type { Bench } from '../../store/bench.ts';
import { step, told, words } from '../../store/words.ts';
import type { PictureField } from '../../../words/en/bench/picture.ts';
import { making, openPart, pictureClient, problemsOf, readInto } from './state.ts';

const mostBytes = 600_000_000;

/** Takes a picture in hand: read first, so that a bad one changes nothing; then one step. What was asked of the one before still holds, but for its crop and marks. */
export async function bringPicture(bench: Bench, file: File): Promise<void> {
  bench.refuse(null);
  try {
    if (file.size > mostBytes)
      throw new ProblemError([
        problem(
          'error',
          'picture-too-large',
          say('where.file', { file: asName(file.name) }),
          say('page.largerThan', { megabytes: mostBytes / 1e6 }),
          say('page.smallerPicture'),
        ),
      ]);
    const bytes = new Uint8Array(await file.arrayBuffer());
    await readInto(bytes, file.name);
    const before = bench.job.peek()?.picture;
    const attachments = new Map(bench.attachments.peek());
    if (before) attachments.delete(before.file);
    const fresh = newPicture(file.name, attachments);
    attachments.set(fresh.file, bytes);
    const picture: JobPicture = { ...fresh, ...before, file: fresh.file, name: fresh.name, crop: undefined, important: [] };
    bench.edit(step('takePicture', picture.name), (job) => ({ ...job, picture }), { attachments });
    openPart.value = 'picture';
    bench.announce(picture.name);
  } catch (error) {
    bench.refuse(problemsOf(error));
  }
}

export function setPicture(bench: Bench, field: PictureField, change: Partial<JobPicture>, mark?: string): void {
  bench.edit(
    step('picture', field),
    (job) => (job.picture ? { ...job, picture: { ...job.picture, ...change } } : job),
    mark === undefined ? {} : { mark },
  );
}

export function takePictureAway(bench: Bench): void {
  const attachments = new Map(bench.attachments.peek());
  const file = bench.job.peek()?.picture?.file;
  if (file !== undefined) attachments.delete(file);
  bench.edit(step('picture', 'away'), (job) => ({ ...job, picture: undefined }), { attachments });
}

export function addMark(bench: Bench, mark: PictureMark): void {
  const now = bench.job.peek()?.picture;
  if (now) setPicture(bench, 'mark', { important: [...now.important, mark].slice(-mostMarks) });
}

export function setWish(bench: Bench, run: number, change: Partial<JobPicture['wishes'][number]>): void {
  const now = bench.job.peek()?.picture;
  if (!now) return;
  const wishes = Array.from({ length: Math.max(now.wishes.length, run + 1) }, (_, i) => now.wishes[i] ?? { placeFixed: false });
  wishes[run] = { ...wishes[run], ...change };
  setPicture(bench, 'wish', { wishes });
}

/** The separation becomes the job's forms, cuts, runs and pots: one step. */
export async function takeAsJob(bench: Bench, after: boolean): Promise<boolean> {
  const job = bench.job.peek();
  const names = (making.peek()?.result?.runs ?? []).map((run) => told(run.says)),
    runs = names.length;
  if (!job || runs === 0) return false;
  try {
    const made = await pictureClient().ask('asJob', { job, names, after }).answer;
    // What stays is the job's own object still: nothing of it has to be worked out anew.
    const kept = <T extends { readonly id: string; readonly name: string }>(all: readonly T[], had: readonly T[]): T[] =>
      all.map((one) => had.find((h) => h.id === one.id && h.name === one.name) ?? one);
    const { wanted, proofReadings } = after ? job : made;
    bench.edit(
      step('pictureToJob', runs),
      (now) => ({
        ...now,
        wanted,
        proofReadings,
        forms: kept(made.forms, job.forms),
        cuts: kept(made.cuts, job.cuts),
        layers: kept(made.layers, job.layers),
        inks: kept(made.inks, job.inks),
      }),
      { anew: true },
    );
    making.value = { ...making.peek()!, takenLayer: made.layers.at(-1)?.id };
    bench.announce(words().picture.taken(runs));
    return true;
  } catch (error) {
    bench.refuse(problemsOf(error));
    return false;
  }
}
