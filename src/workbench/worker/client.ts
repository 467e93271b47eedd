import { Cancelled } from '../../core/task.ts';
import { ProblemError } from '../../core/problem.ts';
import type { Answer, Ask, FromWorker, Question, ToWorker } from './protocol.ts';

export interface AskOptions {
  readonly signal?: AbortSignal;
  readonly onProgress?: (share: number, note: string | undefined) => void;
}

/** The page's end of the line to the worker. */
export interface WorkerClient {
  /** Throws `ProblemError` with what the printmaker can mend, `Cancelled` when stopped. */
  ask<Q extends Question>(question: Q, ask: Ask<Q>, options?: AskOptions): Promise<Answer<Q>>;
  /** Called when the worker had to be started anew: it has forgotten everything. */
  onRestart(listener: () => void): void;
}

interface Waiting {
  readonly resolve: (answer: never) => void;
  readonly reject: (error: unknown) => void;
  readonly onProgress?: AskOptions['onProgress'];
}

export function createClient(start: () => Worker): WorkerClient {
  const waiting = new Map<number, Waiting>();
  const restarted = new Set<() => void>();
  let next = 1;
  let worker = open();

  function open(): Worker {
    const fresh = start();
    fresh.onmessage = (event: MessageEvent<FromWorker>) => receive(event.data);
    fresh.onerror = (event) => {
      event.preventDefault();
      fresh.terminate();
      const lost = [...waiting.values()];
      waiting.clear();
      worker = open();
      for (const { reject } of lost) reject(new Error('The part of Laydown that works things out stopped and was started again.'));
      restarted.forEach((listener) => listener());
    };
    return fresh;
  }

  function receive(message: FromWorker): void {
    const asked = waiting.get(message.id);
    if (!asked) return;
    if (message.kind === 'progress') return asked.onProgress?.(message.share, message.note);
    waiting.delete(message.id);
    if (message.kind === 'answer') asked.resolve(message.answer as never);
    else if (message.kind === 'stopped') asked.reject(new Cancelled());
    else asked.reject(message.problems.length > 0 ? new ProblemError(message.problems) : new Error(message.message));
  }

  return {
    ask(question, ask, options = {}) {
      const id = next++;
      return new Promise((resolve, reject) => {
        if (options.signal?.aborted) return reject(new Cancelled());
        waiting.set(id, { resolve, reject, onProgress: options.onProgress });
        options.signal?.addEventListener('abort', () => worker.postMessage({ id, question: 'stop' } satisfies ToWorker), { once: true });
        worker.postMessage({ id, question, ask } as ToWorker);
      });
    },
    onRestart: (listener) => { restarted.add(listener); },
  };
}
