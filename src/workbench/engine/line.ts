import { problem, ProblemError, type Problem } from '../../core/problem.ts';
import { Cancelled } from '../../core/task.ts';
import { say, type Saying } from '../../words/one-language.ts';

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
  /**
   * `mostMs`: from the first news on, which tell that it was begun, no longer than this; then the worker is ended as one that fell over.
   * Answered with what the protocol promises. Throws `ProblemError` with what went wrong, `Cancelled` when stopped. `stop` reaches the worker; what comes of it is the worker's.
   */
  ask(question: string, ask: unknown, onNews: (news: News) => void, mostMs?: number): { readonly answer: Promise<never>; stop(): void };
  /** Ends the worker in the middle of its work and starts it anew: all who wait get `Cancelled`, then `onLost` is called. */
  end(): void;
}

/** So often a worker is started without a word from it. */
const mostFallen = 3;

/** A worker that falls over is started again and has forgotten everything: all who wait get `lost` as a `ProblemError`, then `onLost` is called. */
export function openLine<News extends { readonly id: number; readonly kind: string }>(
  start: () => Worker,
  lost: Saying,
  onLost: () => void,
): Line<News> {
  const waiting = new Map<number, Waiting<News>>();
  let next = 1;
  /** Workers in a row that fell over before they answered anything: a part of Laydown is missing, and starting on is no use. */
  let fallen = 0;
  let worker = open();

  function open(): Worker {
    const fresh = start();
    fresh.onmessage = (event: MessageEvent<End | News>) => receive(event.data);
    fresh.onerror = (event) => {
      event.preventDefault();
      fall(fresh, lost);
    };
    return fresh;
  }

  function fall(fresh: Worker, why: Saying): void {
    fresh.terminate();
    if (fresh !== worker) return;
    const fault = problem('error', 'worker-lost', say('where.workbench'), why, say('engine.tryAgain'));
    leave(++fallen < mostFallen, new ProblemError([fault]));
  }

  /** All who wait hear why; those who ask from now on ask a new worker. */
  function leave(anew: boolean, why: unknown): void {
    const left = [...waiting.values()];
    waiting.clear();
    if (anew) worker = open();
    for (const { reject } of left) reject(why);
    onLost();
  }

  function receive(message: End | News): void {
    fallen = 0;
    const asked = waiting.get(message.id);
    if (!asked) return;
    if (!isEnd(message)) return asked.onNews(message);
    waiting.delete(message.id);
    if (message.kind === 'answer') asked.resolve(message.answer as never);
    else if (message.kind === 'stopped') asked.reject(new Cancelled());
    else asked.reject(new ProblemError(message.problems));
  }

  return {
    ask(question, ask, onNews, mostMs) {
      const id = next++;
      // Asked by hand once more, it may be there again.
      if (fallen >= mostFallen) worker = open();
      const answer = new Promise<never>((resolve, reject) => {
        const asked = worker;
        let timer: ReturnType<typeof setTimeout> | undefined;
        const began = (): void => {
          if (mostMs !== undefined) timer ??= setTimeout(() => fall(asked, say('engine.tookTooLong')), mostMs);
        };
        const ended = (): void => clearTimeout(timer);
        waiting.set(id, {
          onNews(news) {
            began();
            onNews(news);
          },
          resolve(answer) {
            ended();
            resolve(answer);
          },
          reject(error) {
            ended();
            reject(error);
          },
        });
        worker.postMessage({ id, question, ask });
      });
      return { answer, stop: () => worker.postMessage({ id, question: 'stop' }) };
    },
    end() {
      worker.terminate();
      leave(true, new Cancelled());
    },
  };
}

function isEnd(message: End | { readonly kind: string }): message is End {
  return message.kind === 'answer' || message.kind === 'stopped' || message.kind === 'failed';
}
