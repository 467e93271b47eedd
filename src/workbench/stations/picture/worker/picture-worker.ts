import { jobOfSeparation, pictureRequest } from '../../../../core/asks/index.ts';
import { materialOf, materialsOf } from '../../../../core/plan/index.ts';
import { fail } from '../../../../core/problem.ts';
import {
  lookAtWays,
  readPicture,
  separate,
  type Draft,
  type Picture,
  type SeparateRequest,
  type Separation,
} from '../../../../core/separate/index.ts';
import { Cancelled, type Task } from '../../../../core/task.ts';
import { say } from '../../../../words/one-language.ts';
import { faultsOf } from '../../../engine/faults.ts';
import { picturesReady } from '../../../engine/pictures.ts';
import { breathe } from '../../../engine/breathe.ts';
import { hireHands } from './hands.ts';
import { codesRaster, showPicture, showSeparation, showVeil } from './look.ts';
import type { FromPictureWorker, PictureQuestion, PictureQuestions, SeparateAsk, ShownSeparation, ToPictureWorker } from './protocol.ts';

/** A worker of its own for pictures, so that a long search never keeps the planner waiting. One question after the other. */
const scope = self as unknown as DedicatedWorkerGlobalScope;
const stopped = new Set<number>();
const ready = picturesReady();
let line: Promise<void> = Promise.resolve();
let picture: Picture | null = null;
let made: { readonly separation: Separation; readonly materialId: string } | null = null;
let begun: Begun | null = null;
/** The newest question that a sketch could be for. */
let newest = 0;

/** A separation as far as its first sketch. */
interface Begun {
  readonly key: string;
  readonly drafts: AsyncGenerator<Draft, Separation>;
  readonly sketch: IteratorResult<Draft, Separation>;
  /** Whose it is: who is told how far it is, and who may stop it. */
  readonly asker: { id: number };
}

/** The search is shared out where the machine has threads to spare. Started with this worker, so that nothing is asked for later. */
const spare = Math.min(2, navigator.hardwareConcurrency || 1);
const hands =
  spare > 1 && typeof Worker === 'function'
    ? hireHands(() => new Worker(new URL('./hand.ts', import.meta.url), { type: 'module' }), spare)
    : undefined;

const send = (reply: FromPictureWorker, transfer: Transferable[] = []): void => scope.postMessage(reply, transfer);

type Answers = { readonly [Q in PictureQuestion]: (ask: PictureQuestions[Q]['ask'], id: number) => Promise<PictureQuestions[Q]['answer']> };

const answers: Answers = {
  async read({ bytes, name }) {
    await ready;
    picture = await readPicture(bytes, name);
    // What was made belongs to the picture before.
    made = begun = null;
    return showPicture(picture);
  },
  veil() {
    if (!picture) noPicture();
    return Promise.resolve(showVeil(picture));
  },
  async prepare(ask, id) {
    if (id === newest && begun?.key !== keyOf(ask)) begun = await begin(ask, id);
    return null;
  },
  separate: (ask, id) => separated(ask, id),
  ways: (ask, id) => drawnWays(ask, id),
  async asJob({ job, names, after }) {
    if (!made) fail('nothing-separated', 'picture', say('page.nothingSeparated'), say('page.makeFirst'));
    return jobOfSeparation(job, made.separation, names, { materialId: made.materialId, after });
  },
};

const keyOf = (ask: SeparateAsk): string => JSON.stringify(ask);

function noPicture(): never {
  fail('no-picture', 'picture', say('page.noPicture'), say('page.choosePicture'));
}

function requestOf({ job, paperId, over }: SeparateAsk): SeparateRequest {
  const ask = job.picture;
  if (!picture || !ask) noPicture();
  return pictureRequest(job, ask, picture, { paperId: paperId ?? undefined, over: over ?? undefined });
}

/** Whoever asks may stop it between two breaths. */
const taskFor = (asker: { readonly id: number }): Task => ({
  report: (share) => send({ id: asker.id, kind: 'progress', share }),
  async pause() {
    await breathe();
    if (stopped.has(asker.id)) throw new Cancelled();
  },
});

async function drawnWays(asked: SeparateAsk, id: number): Promise<null> {
  for await (const { way, minutes, metres, structure, codes, rgb, width, height } of lookAtWays(requestOf(asked), taskFor({ id }))) {
    const print = codesRaster(codes, rgb, width, height);
    send({ id, kind: 'way', way: { way, minutes, metres, structure, print } }, [print.words.buffer]);
    await breathe();
  }
  return null;
}

async function begin(asked: SeparateAsk, id: number): Promise<Begun> {
  const asker = { id };
  const drafts = separate(requestOf(asked), taskFor(asker), hands);
  return { key: keyOf(asked), drafts, sketch: await drafts.next(), asker };
}

async function separated(asked: SeparateAsk, id: number): Promise<ShownSeparation> {
  const { job } = asked;
  const { drafts, sketch, asker } = begun?.key === keyOf(asked) ? begun : await begin(asked, id);
  begun = null;
  asker.id = id;
  for (let next = sketch; ; next = await drafts.next()) {
    if (next.done) {
      made = { separation: next.value, materialId: materialOf(materialsOf(job), job.picture?.material).id };
      return showSeparation(next.value, (inkId) => job.inks.find((k) => k.id === inkId)?.name ?? inkId);
    }
    const { stage, share, meanDeltaE, metres, codes, rgb, width, height } = next.value;
    const print = codesRaster(codes, rgb, width, height);
    send({ id, kind: 'draft', draft: { stage, share, meanDeltaE, metres, print } }, [print.words.buffer]);
    // The draft is seen before the next long stretch of work.
    await breathe();
  }
}

scope.onmessage = (event: MessageEvent<ToPictureWorker>) => {
  const message = event.data;
  if (message.question === 'stop') return void stopped.add(message.id);
  newest = message.id;
  line = line.then(() => respond(message));
};

async function respond({ id, question, ask }: Exclude<ToPictureWorker, { question: 'stop' }>): Promise<void> {
  if (question === 'read') send({ id, kind: 'progress', share: 0 });
  try {
    const answer = await (answers[question] as (ask: unknown, id: number) => Promise<PictureQuestions[PictureQuestion]['answer']>)(ask, id);
    send({ id, kind: 'answer', answer });
  } catch (error) {
    send({ id, kind: 'failed', problems: faultsOf(error) });
  } finally {
    stopped.delete(id);
  }
}
