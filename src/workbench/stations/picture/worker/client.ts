import { ProblemError } from '../../../../core/problem.ts';
import type { FromPictureWorker, PictureQuestion, PictureQuestions, ShownDraft, ToPictureWorker } from './protocol.ts';

export interface Watching {
  readonly onProgress?: (share: number) => void;
  readonly onDraft?: (draft: ShownDraft) => void;
}

/** The page's end of the line to the pictures' worker. */
export interface PictureClient {
  /** Throws `ProblemError` with what the printmaker can mend. `stop` asks for the best so far. */
  ask<Q extends PictureQuestion>(question: Q, ask: PictureQuestions[Q]['ask'], watching?: Watching): { readonly answer: Promise<PictureQuestions[Q]['answer']>; stop(): void };
}

interface Waiting extends Watching {
  readonly resolve: (answer: never) => void;
  readonly reject: (error: unknown) => void;
}

/** `onLost`: the worker fell over (a picture too large for this machine, for one) and was started again; it has forgotten everything. */
export function createPictureClient(start: () => Worker, onLost: () => void): PictureClient {
  const waiting = new Map<number, Waiting>();
  let next = 1;
  let worker = open();

  function open(): Worker {
    const fresh = start();
    fresh.onmessage = (event: MessageEvent<FromPictureWorker>) => receive(event.data);
    fresh.onerror = (event) => {
      event.preventDefault();
      fresh.terminate();
      const lost = [...waiting.values()];
      waiting.clear();
      worker = open();
      onLost();
      for (const { reject } of lost) reject(new Error('The part of Laydown that works on pictures stopped and was started again.'));
    };
    return fresh;
  }

  function receive(message: FromPictureWorker): void {
    const asked = waiting.get(message.id);
    if (!asked) return;
    if (message.kind === 'progress') return asked.onProgress?.(message.share);
    if (message.kind === 'draft') return asked.onDraft?.(message.draft);
    waiting.delete(message.id);
    if (message.kind === 'answer') asked.resolve(message.answer as never);
    else asked.reject(message.problems.length > 0 ? new ProblemError(message.problems) : new Error(message.message));
  }

  return {
    ask(question, ask, watching = {}) {
      const id = next++;
      const answer = new Promise<PictureQuestions[typeof question]['answer']>((resolve, reject) => {
        waiting.set(id, { ...watching, resolve, reject });
        worker.postMessage({ id, question, ask } as ToPictureWorker);
      });
      return { answer, stop: () => worker.postMessage({ id, question: 'stop' } satisfies ToPictureWorker) };
    },
  };
}
