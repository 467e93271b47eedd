import { signal } from '@preact/signals';
import type { Job, PictureMark } from '../../../core/job/index.ts';
import type { WeightName } from '../../../core/separate/index.ts';
import type { Problem } from '../../../core/problem.ts';
import { say } from '../../../words/one-language.ts';
import type { Bench } from '../../store/bench.ts';
import { sayDelta } from '../../ui/fields/format.ts';
import { faultsOf } from '../../engine/faults.ts';
import { words } from '../../store/words.ts';
import { createPictureClient, type PictureClient } from './worker/client.ts';
import type { Raster, ReadPicture, ShownDraft, ShownSeparation, ShownWay } from './worker/protocol.ts';

/** The picture in the worker's hands, by the very bytes of its attachment. */
export interface InHand {
  readonly bytes: Uint8Array;
  readonly read: ReadPicture;
}
export const inHand = signal<InHand | null>(null);
/** What lies over a picture where it matters less by itself, and whose it is. */
export const veil = signal<{ readonly of: ReadPicture; readonly raster: Raster | null } | null>(null);
export const reading = signal(false);
/** A picture of the job that can't be read; not tried again. */
export const unreadable = signal<Uint8Array | null>(null);

/** All that the stencils follow from, each the job's own object. */
export type AskedWith = readonly unknown[];

/** A separation under way or done. */
export interface Making {
  readonly state: 'working' | 'stopping' | 'done';
  readonly share: number;
  readonly draft: ShownDraft | null;
  readonly result: ShownSeparation | null;
  /** What it was asked with: what is shown is old when these have changed. */
  readonly from: AskedWith;
  /** The topmost layer the job got from it. */
  readonly takenLayer?: string;
}
export const making = signal<Making | null>(null);

/** The ways that the picture can be taken, as far as they are drawn. */
export interface WaysDrawn {
  readonly key: string;
  readonly ways: readonly ShownWay[];
}
export const waysDrawn = signal<WaysDrawn | null>(null);

export const openPart = signal('picture');
export const onPicture = signal<'crop' | 'mark'>('crop');
export const brush = signal<{ readonly weight: WeightName; readonly radius: number }>({ weight: 'more', radius: 0.03 });
/** A stroke being drawn. */
export const stroke = signal<(PictureMark & { kind: 'stroke' }) | null>(null);
export const comparing = signal<'side' | 'wipe'>('side');
export const wipe = signal<{ readonly against: 'picture' | 'flat'; readonly share: number }>({ against: 'picture', share: 0.5 });
export const struck = signal<'nothing' | 'reach' | 'lost'>('nothing');

/** What is struck through on the print: 1 (255) where so. */
export function strikeOf(result: ShownSeparation): Uint8Array | null {
  return struck.value === 'nothing' ? null : struck.value === 'reach' ? result.outOfReach : result.detailLost;
}

let client: PictureClient | null = null;
let stopper: (() => void) | null = null;
let stopWays: (() => void) | null = null;

/** The pictures' worker. Started soon after the page, so that nothing is asked for later. */
export function pictureClient(): PictureClient {
  return (client ??= createPictureClient(
    () => new Worker(new URL('./worker/picture-worker.ts', import.meta.url), { type: 'module' }),
    () => {
      inHand.value = null;
    },
  ));
}

/** What went wrong, in the printmaker's words. */
export function problemsOf(error: unknown): readonly Problem[] {
  return faultsOf(error, say('where.picture'));
}

/** Reads the job's picture anew when it is another one than the worker holds (a job opened, an undo). */
export async function followPicture(bench: Bench): Promise<void> {
  const picture = bench.job.peek()?.picture;
  const bytes = picture && bench.attachments.peek().get(picture.file);
  if (!picture || !bytes || inHand.peek()?.bytes === bytes || unreadable.peek() === bytes || reading.peek()) return;
  try {
    await readInto(bytes, picture.name);
  } catch (error) {
    unreadable.value = bytes;
    bench.refuse(problemsOf(error));
  }
}

/** Reads a picture and takes it in hand. Throws `ProblemError`; then the one before stays in hand. */
export async function readInto(bytes: Uint8Array, name: string): Promise<ReadPicture> {
  stop();
  stopWays?.();
  waysDrawn.value = null;
  reading.value = true;
  try {
    const read = await pictureClient().ask('read', { bytes, name }).answer;
    inHand.value = { bytes, read };
    making.value = null;
    return read;
  } finally {
    reading.value = false;
  }
}

/** Has the veil drawn of the picture in hand, unless it is there or under way. Without it the picture is shown as it is. */
export async function drawVeil(read: ReadPicture): Promise<void> {
  if (veil.peek()?.of === read) return;
  veil.value = { of: read, raster: null };
  const raster = await pictureClient()
    .ask('veil', null)
    .answer.catch(() => null);
  if (veil.peek()?.of === read) veil.value = raster && { of: read, raster };
}

/** The paper in sight; before there is a Plan the first one, which the Plan will show. */
const paperIdOf = (bench: Bench): string | null => bench.paper.value?.id ?? bench.job.value?.papers[0]?.id ?? null;

const isBusy = (): boolean => making.peek()?.state === 'working' || making.peek()?.state === 'stopping';

/** Has what would be made now sketched ahead, so that the first draft is there at once. What is wrong is said when it is asked for. */
export function prepare(bench: Bench): void {
  const job = bench.job.peek(),
    now = making.peek();
  if (!job?.picture || job.picture.over || !inHand.peek() || isBusy() || (now?.result && !now.result.stoppedEarly && !isStale(bench, now)))
    return;
  void pictureClient()
    .ask('prepare', { job, paperId: paperIdOf(bench), over: null })
    .answer.catch(() => undefined);
}

/** All that the small drawings follow from: not which of them is taken, nor how long is searched. */
export function waysKey(bench: Bench): string {
  const job = bench.job.value;
  if (!job?.picture) return '';
  return JSON.stringify([
    { ...job.picture, way: undefined, effort: undefined },
    job.image,
    job.papers,
    job.register,
    job.materials,
    paperIdOf(bench),
    job.inks.filter((ink) => ink.from !== 'mix'),
  ]);
}

/** Has the ways drawn small, one after the other, while nothing else is made. */
export async function drawWays(bench: Bench): Promise<void> {
  const job = bench.job.peek(),
    key = waysKey(bench);
  if (!job?.picture || job.picture.over || !inHand.peek() || isBusy() || stopWays || waysDrawn.peek()?.key === key) return;
  waysDrawn.value = { key, ways: [] };
  const asked = pictureClient().ask(
    'ways',
    { job, paperId: paperIdOf(bench), over: null },
    {
      onWay: (way) => {
        const now = waysDrawn.peek();
        if (now?.key === key) waysDrawn.value = { key, ways: [...now.ways, way] };
      },
    },
  );
  stopWays = asked.stop;
  try {
    await asked.answer;
  } catch {
    // Stopped for something else, or what is wrong is said when the stencils are asked for.
    if (waysDrawn.peek()?.key === key) waysDrawn.value = null;
  } finally {
    stopWays = null;
  }
}

/** Makes the stencils as the job's `picture` asks; drafts are shown as they come. */
export async function make(bench: Bench): Promise<void> {
  const job = bench.job.peek();
  const picture = job?.picture;
  if (!job || !picture || !inHand.peek() || isBusy()) return;
  const before = making.peek();
  stopWays?.();
  bench.refuse(null);
  openPart.value = 'result';
  making.value = { state: 'working', share: 0, draft: null, result: null, from: askedWith(bench) };
  const put = (change: Partial<Making>): void => {
    if (making.peek()) making.value = { ...making.peek()!, ...change };
  };
  try {
    if (picture.over) await bench.upToDate();
    const over = picture.over ? (bench.plan.peek()?.layers ?? null) : null;
    const asked = pictureClient().ask(
      'separate',
      { job, paperId: paperIdOf(bench), over },
      {
        onProgress: (share) => put({ share }),
        onDraft: (draft) => put({ draft, share: draft.share }),
      },
    );
    stopper = asked.stop;
    const result = await asked.answer;
    // A picture taken in hand meanwhile has let go of this one.
    if (!making.peek()) return;
    put({ state: 'done', share: 1, result });
    const w = words().picture;
    bench.announce(
      `${result.stoppedEarly ? `${w.stoppedEarly} ` : ''}${w.made(result.runs.length, sayDelta(result.figures.inRegister.mean))}`,
    );
  } catch (error) {
    if (!making.peek()) return;
    // What was made before is still in the worker's hands.
    making.value = before?.result ? before : null;
    bench.refuse(problemsOf(error));
  } finally {
    stopper = null;
  }
}

export function stop(): void {
  const now = making.peek();
  if (!stopper || now?.state !== 'working') return;
  stopper();
  making.value = { ...now, state: 'stopping' };
}

/** Pots mixed from others are made by the stencils, and no reason to make them again. */
function askedWith(bench: Bench): AskedWith {
  const job = bench.job.value;
  if (!job) return [];
  const runs = job.picture?.over ? [job.layers, job.cuts, job.forms] : [];
  return [
    job.picture,
    job.image,
    job.papers,
    job.register,
    job.materials,
    paperIdOf(bench),
    ...runs,
    ...job.inks.filter((ink) => ink.from !== 'mix'),
  ];
}

export function isTaken(job: Job, { takenLayer }: Making): boolean {
  return takenLayer !== undefined && job.layers.some((layer) => layer.id === takenLayer);
}

/** Whether what is shown was asked for otherwise than the job says now. Printed after the job's runs, it is one with those that it was made for. */
export function isStale(bench: Bench, made: Making): boolean {
  const job = bench.job.value,
    now = askedWith(bench);
  if (job?.picture?.over && isTaken(job, made)) return false;
  return now.length !== made.from.length || now.some((part, i) => part !== made.from[i]);
}
