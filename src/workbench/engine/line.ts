import { problem, ProblemError, type Problem } from '../../core/problem.ts';
import { Cancelled } from '../../core/task.ts';
import { say, type Saying } from '../../words/index.ts';

/** What ends a question, whatever the worker. */
type End =
  | { readonly id: number; readonly kind: 'answer'; readonly answer: unknown }
  | { readonly id: number; readonly kind: 'stopped' }
  | { readonly id: number; readonly kind: 'failed'; readonly problems: readonly Problem[] };

interface Waiting<News> {
  readonly onNews: (news: News) => void;
  readonly resolve: (answer: never) => void;
  readonly reject: (error: unknown) => void;
}

/** The page's end of the line to a worker: numbers the questions and brings each answer to the one who asked. */
export interface Line<News> {
  /** Answered with what the protocol promises. Throws `ProblemError` with what went wrong, `Cancelled` when stopped. `stop` reaches the worker; what comes of it is the worker's. */
  ask(question: string, ask: unknown, onNews: (news: News) => void): { readonly answer: Promise<never>; stop(): void };
}

/** A worker that falls over is started again and has forgotten everything: all who wait get `lost` as a `ProblemError`, then `onLost` is called. */
export function openLine<News extends { readonly id: number; readonly kind: string }>(
  start: () => Worker,
  lost: Saying,
  onLost: () => void,
): Line<News> {
  const waiting = new Map<number, Waiting<News>>();
  let next = 1;
  let worker = open();

  function open(): Worker {
    const fresh = start();
    fresh.onmessage = (event: MessageEvent<End | News>) => receive(event.data);
    fresh.onerror = (event) => {
      event.preventDefault();
      fresh.terminate();
      const left = [...waiting.values()];
      waiting.clear();
      worker = open();
      const fault = problem('error', 'worker-lost', say('where.workbench'), lost, say('engine.tryAgain'));
      for (const { reject } of left) reject(new ProblemError([fault]));
      onLost();
    };
    return fresh;
  }

  function receive(message: End | News): void {
    const asked = waiting.get(message.id);
    if (!asked) return;
    if (!isEnd(message)) return asked.onNews(message);
    waiting.delete(message.id);
    if (message.kind === 'answer') asked.resolve(message.answer as never);
    else if (message.kind === 'stopped') asked.reject(new Cancelled());
    else asked.reject(new ProblemError(message.problems));
  }

  return {
    ask(question, ask, onNews) {
      const id = next++;
      const answer = new Promise<never>((resolve, reject) => {
        waiting.set(id, { onNews, resolve, reject });
        worker.postMessage({ id, question, ask });
      });
      return { answer, stop: () => worker.postMessage({ id, question: 'stop' }) };
    },
  };
}

function isEnd(message: End | { readonly kind: string }): message is End {
  return message.kind === 'answer' || message.kind === 'stopped' || message.kind === 'failed';
}
