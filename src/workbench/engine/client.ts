import { Cancelled } from '../../core/task.ts';
import { say, type Saying } from '../../words/one-language.ts';
import { openLine } from './line.ts';
import type { Answer, Ask, FromWorker, Question } from './protocol.ts';

export interface AskOptions {
  readonly signal?: AbortSignal;
  readonly onProgress?: (share: number, note: Saying | undefined) => void;
}

/** Files of others are read within bounds of time. */
const mostMs: { readonly [Q in Question]?: number } = { openJob: 60_000, drawing: 60_000, trace: 120_000 };

/** The page's end of the line to the worker. */
export interface WorkerClient {
  /** Throws `ProblemError` with what went wrong, `Cancelled` when stopped. */
  ask<Q extends Question>(question: Q, ask: Ask<Q>, options?: AskOptions): Promise<Answer<Q>>;
  /** Ends what the worker is doing, in the middle of it, and starts it anew: whoever waits gets `Cancelled`. */
  end(): void;
  /** Called when the worker had to be started anew: it has forgotten everything. */
  onRestart(listener: () => void): void;
}

export function createClient(start: () => Worker): WorkerClient {
  const restarted = new Set<() => void>();
  const line = openLine<FromWorker & { readonly kind: 'progress' }>(start, say('engine.workerLost'), () =>
    restarted.forEach((listener) => listener()),
  );
  return {
    async ask(question, ask, options = {}) {
      if (options.signal?.aborted) throw new Cancelled();
      const { answer, stop } = line.ask(question, ask, ({ share, note }) => options.onProgress?.(share, note), mostMs[question]);
      options.signal?.addEventListener('abort', stop, { once: true });
      return answer;
    },
    end: () => line.end(),
    onRestart: (listener) => {
      restarted.add(listener);
    },
  };
}
