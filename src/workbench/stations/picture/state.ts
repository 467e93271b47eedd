import { signal } from '@preact/signals';
import type { Job, PictureMark } from '../../../core/job/index.ts';
import type { WeightName } from '../../../core/separate/index.ts';
import { problem, ProblemError, type Problem } from '../../../core/problem.ts';
import type { Bench } from '../../store/bench.ts';
import { sayDelta } from '../../ui/format.ts';
import { words } from '../../words/index.ts';
import { createPictureClient, type PictureClient } from './worker/client.ts';
import type { ReadPicture, ShownDraft, ShownSeparation } from './worker/protocol.ts';

/** The picture in the worker's hands, by the very bytes of its attachment. */
export interface InHand {
  readonly bytes: Uint8Array;
  readonly read: ReadPicture;
}
export const inHand = signal<InHand | null>(null);
export const reading = signal(false);

/** A separation under way or done. */
export interface Making {
  readonly state: 'working' | 'stopping' | 'done' | 'failed';
  readonly share: number;
  readonly draft: ShownDraft | null;
  readonly result: ShownSeparation | null;
  /** What it was asked with: what is shown is old when these have changed. */
  readonly from: Pick<Job, 'picture' | 'image' | 'inks'>;
}
export const making = signal<Making | null>(null);

export const openPart = signal('picture');
export const onPicture = signal<'crop' | 'mark'>('crop');
export const brush = signal<{ readonly weight: WeightName; readonly radius: number }>({ weight: 'more', radius: 0.03 });
/** A stroke being drawn. */
export const stroke = signal<(PictureMark & { kind: 'stroke' }) | null>(null);
export const comparing = signal<'side' | 'wipe'>('side');
export const wipe = signal<{ readonly against: 'picture' | 'flat'; readonly share: number }>({ against: 'picture', share: 0.5 });
export const struck = signal<'nothing' | 'reach' | 'lost'>('nothing');

let client: PictureClient | null = null;
let stopper: (() => void) | null = null;

/** The pictures' worker. Started soon after the page, so that nothing is asked for later. */
export function pictureClient(): PictureClient {
  return (client ??= createPictureClient(
    () => new Worker(new URL('./worker/picture-worker.ts', import.meta.url), { type: 'module' }),
    () => { inHand.value = null; },
  ));
}

/** What went wrong, in the printmaker's words. */
export function problemsOf(error: unknown): readonly Problem[] {
  return error instanceof ProblemError ? error.problems : [problem('error', 'went-wrong', words().picture.title, words().shell.wentWrong, error instanceof Error ? error.message : String(error))];
}

/** Reads the job's picture anew when it is another one than the worker holds (a job opened, an undo). */
export async function followPicture(bench: Bench): Promise<void> {
  const picture = bench.job.peek()?.picture;
  const bytes = picture && bench.attachments.peek().get(picture.file);
  if (!picture || !bytes || inHand.peek()?.bytes === bytes || reading.peek()) return;
  try {
    await readInto(bytes, picture.name);
  } catch (error) {
    bench.refuse(problemsOf(error));
  }
}

/** Reads a picture and takes it in hand. Throws `ProblemError`; then the worker holds none. */
export async function readInto(bytes: Uint8Array, name: string): Promise<ReadPicture> {
  stop();
  reading.value = true;
  try {
    const read = await pictureClient().ask('read', { bytes, name }).answer;
    inHand.value = { bytes, read };
    making.value = null;
    return read;
  } catch (error) {
    inHand.value = null;
    throw error;
  } finally {
    reading.value = false;
  }
}

/** Makes the stencils as the job's `picture` asks; drafts are shown as they come. */
export async function make(bench: Bench): Promise<void> {
  const job = bench.job.peek();
  const picture = job?.picture;
  const at = making.peek()?.state;
  if (!job || !picture || !inHand.peek() || at === 'working' || at === 'stopping') return;
  bench.refuse(null);
  openPart.value = 'result';
  making.value = { state: 'working', share: 0, draft: null, result: null, from: { picture, image: job.image, inks: job.inks } };
  const put = (change: Partial<Making>): void => { if (making.peek()) making.value = { ...making.peek()!, ...change }; };
  try {
    if (picture.over) await bench.upToDate();
    const over = picture.over ? (bench.plan.peek()?.layers ?? null) : null;
    const asked = pictureClient().ask('separate', { job, paperId: bench.paper.peek()?.id ?? null, over }, {
      onProgress: (share) => put({ share }),
      onDraft: (draft) => put({ draft, share: draft.share }),
    });
    stopper = asked.stop;
    const result = await asked.answer;
    // A picture taken in hand meanwhile has let go of this one.
    if (!making.peek()) return;
    put({ state: 'done', share: 1, result });
    const w = words().picture;
    bench.announce(`${result.stoppedEarly ? `${w.stoppedEarly} ` : ''}${w.made(result.runs.length, sayDelta(result.figures.inRegister.mean))}`);
  } catch (error) {
    if (!making.peek()) return;
    put({ state: 'failed' });
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

/** Whether what is shown was asked for otherwise than the job says now. */
export function isStale(job: Job, made: Making): boolean {
  return job.picture !== made.from.picture || job.image !== made.from.image || job.inks !== made.from.inks;
}
