import { doErrand, type Errand, type ErrandDone, type Hands } from '../../../../core/separate/index.ts';
import type { Task } from '../../../../core/task.ts';

export type ToHand = Errand | 'stop';
export type FromHand = ErrandDone | null;

interface Order {
  readonly errand: Errand;
  readonly over: (answer: FromHand) => void;
}

/** A worker as far as errands need it. */
export interface HandWorker {
  onmessage: ((event: MessageEvent<FromHand>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  postMessage(message: ToHand): void;
  terminate(): void;
}

/** How long one who asked sleeps before looking whether it was stopped. */
const lookMs = 50;

/**
 * Threads for searching and cutting, kept from one separation to the next. What they find is the same as without them: errands depend on
 * nothing else, and a thread that is lost or could not be started leaves its errand to the one who asked.
 */
export function hireHands(start: () => HandWorker, count: number): Hands {
  const busy = new Map<HandWorker, Order | null>();
  const waiting: Order[] = [];
  const next = (): void => {
    for (const [hand, order] of busy) {
      if (order || waiting.length === 0) continue;
      busy.set(hand, waiting[0]);
      hand.postMessage(waiting.shift()!.errand);
    }
    if (busy.size === 0) for (const order of waiting.splice(0)) order.over(null);
  };
  for (let i = 0; i < count; i++) {
    const hand = start();
    busy.set(hand, null);
    const free = (answer: FromHand): void => {
      const order = busy.get(hand);
      if (busy.has(hand)) busy.set(hand, null);
      order?.over(answer);
      next();
    };
    hand.onmessage = ({ data }) => free(data);
    hand.onerror = (event) => {
      event.preventDefault();
      hand.terminate();
      const order = busy.get(hand);
      busy.delete(hand);
      order?.over(null);
      next();
    };
  }
  return {
    async ask<E extends Errand>(errand: E, task: Task): Promise<ErrandDone<E>> {
      let answer: FromHand = null,
        open = true,
        wake = (): void => undefined;
      const order: Order = {
        errand,
        over(done) {
          answer = done;
          open = false;
          wake();
        },
      };
      waiting.push(order);
      next();
      try {
        while (open) {
          await new Promise<void>((go) => {
            const timer = setTimeout(go, lookMs);
            wake = () => {
              clearTimeout(timer);
              go();
            };
          });
          await task.pause();
        }
      } catch (stop) {
        if (waiting.includes(order)) waiting.splice(waiting.indexOf(order), 1);
        // Whoever works on it is free for the next picture soon.
        for (const [hand, order_] of busy) if (order_ === order) hand.postMessage('stop');
        throw stop;
      }
      return answer ? (answer as ErrandDone<E>) : doErrand(errand, task);
    },
  };
}
