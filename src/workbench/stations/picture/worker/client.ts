import { say } from '../../../../words/one-language.ts';
import { openLine } from '../../../engine/line.ts';
import type { FromPictureWorker, PictureQuestion, PictureQuestions, ShownDraft, ShownWay } from './protocol.ts';

/** A hundred megapixels take some seconds on a telephone; a file that takes longer was made to. */
const mostReadMs = 60_000;

export interface Watching {
  readonly onProgress?: (share: number) => void;
  readonly onDraft?: (draft: ShownDraft) => void;
  readonly onWay?: (way: ShownWay) => void;
}

/** The page's end of the line to the pictures' worker. */
export interface PictureClient {
  /** Throws `ProblemError` with what the printmaker can mend. `stop` asks for the best so far. */
  ask<Q extends PictureQuestion>(
    question: Q,
    ask: PictureQuestions[Q]['ask'],
    watching?: Watching,
  ): { readonly answer: Promise<PictureQuestions[Q]['answer']>; stop(): void };
}

/** `onLost`: the worker fell over (a picture too large for this machine, for one) and was started again; it has forgotten everything. */
export function createPictureClient(start: () => Worker, onLost: () => void): PictureClient {
  const line = openLine<FromPictureWorker & { readonly kind: 'progress' | 'draft' | 'way' }>(
    start,
    say('engine.pictureWorkerLost'),
    onLost,
  );
  return {
    ask: (question, ask, watching = {}) =>
      line.ask(
        question,
        ask,
        (news) => {
          if (news.kind === 'progress') watching.onProgress?.(news.share);
          else if (news.kind === 'way') watching.onWay?.(news.way);
          else watching.onDraft?.(news.draft);
        },
        question === 'read' ? mostReadMs : undefined,
      ),
  };
}
