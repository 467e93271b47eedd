import { availableParallelism } from 'node:os';
import { setFlagsFromString } from 'node:v8';
import type { Worker } from 'node:worker_threads';
import { doErrand, type Errand, type ErrandDone, type Hands } from '../../core/separate/index.ts';
import type { Task } from '../../core/task.ts';
import { startThread } from './thread.ts';

interface Order {
  readonly errand: Errand;
  /** Nothing: the thread was lost, and the one who asked does it. */
  readonly over: (done?: Promise<ErrandDone> | ErrandDone) => void;
}

/** How long one who asked sleeps before looking whether it was stopped. */
const lookMs = 60;

/**
 * Threads that take part in a separation, so many as the machine has to spare beside the one who asks, which takes part itself while it waits;
 * none if it has none. `dismiss` when the work is done.
 */
export function hireHands(threads = Math.min(4, availableParallelism()) - 1): (Required<Hands> & { dismiss(): void }) | undefined {
  if (threads < 1) return undefined;
  compileLater();
  const waiting: Order[] = [],
    working = new Map<Worker, Order[]>();
  const made = new WeakMap<object, Set<string>>(),
    here = {};
  let asked = (): void => undefined,
    helping = false;
  /** A stencil made again is the sooner made where it was made before; else the next in turn. */
  const nextFor = (hand: object): Order => {
    const before = made.get(hand) ?? new Set<string>(),
      again = waiting.findIndex(({ errand }) => before.has(placeOf(errand)));
    const [order] = waiting.splice(Math.max(0, again), 1);
    if (order.errand.kind === 'stencil') made.set(hand, before.add(placeOf(order.errand)));
    return order;
  };
  /** @param ahead how much each may be given before it is done with the last: none waits for this thread while it is at work itself */
  const share = (ahead = 0): void => {
    for (let many = 0; many <= ahead; many++)
      for (const [worker, orders] of working)
        if (orders.length <= many && waiting.length > 0) {
          const order = nextFor(worker);
          orders.push(order);
          worker.postMessage(order.errand);
        }
    if (working.size === 0) for (const order of waiting.splice(0)) order.over();
  };
  for (let i = 0; i < threads; i++) {
    const worker = startThread('hand');
    working.set(worker, []);
    const lost = (): void => {
      const orders = working.get(worker) ?? [];
      working.delete(worker);
      for (const order of orders) order.over();
      share();
    };
    worker
      .on('message', (answer: ErrandDone) => {
        working.get(worker)?.shift()?.over(answer);
        share();
      })
      .on('error', lost)
      .on('exit', lost);
  }
  return {
    async ask<E extends Errand>(errand: E, task: Task): Promise<ErrandDone<E>> {
      let answer: Promise<ErrandDone> | ErrandDone | undefined,
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
      share();
      asked();
      try {
        // Whoever stops the work is heard while the others are busy.
        while (open) {
          await sleep(lookMs, (awake) => (wake = awake));
          await task.pause();
        }
      } finally {
        if (waiting.includes(order)) waiting.splice(waiting.indexOf(order), 1);
      }
      return (await answer) ? (answer as Promise<ErrandDone<E>>) : doErrand(errand, task);
    },
    async help(answer, task) {
      if (helping) return;
      let open = true;
      const over = (): void => {
        open = false;
        asked();
      };
      answer.then(over, over);
      helping = true;
      try {
        // All that is asked for at once is asked for before any of it is begun here.
        for (await task.pause(); open; await task.pause()) {
          if (waiting.length > 0) {
            const order = nextFor(here);
            share(1);
            const done = doErrand(order.errand, task);
            done.catch(() => undefined);
            order.over(done);
            await done.catch(() => undefined);
          } else await new Promise<void>((go) => (asked = go));
        }
      } finally {
        helping = false;
      }
    },
    dismiss() {
      for (const worker of working.keys()) void worker.terminate();
    },
  };
}

/** Which run's stencil; nothing of other errands. */
const placeOf = (errand: Errand): string => (errand.kind === 'stencil' ? JSON.stringify(errand.request.place) : '');

/** Until so long has gone by, or somebody wakes it. */
async function sleep(ms: number, waker: (wake: () => void) => void): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  await new Promise<void>((go) => {
    timer = setTimeout(go, ms);
    waker(go);
  });
  clearTimeout(timer);
}

/**
 * What runs a few hundred times in each thread is not worth compiling anew in each, and what is compiled later is compiled once: 7 % of all
 * the work of a separation, measured with this engine. Others count differently.
 */
function compileLater(): void {
  if (process.versions.v8.startsWith('11.')) setFlagsFromString('--interrupt-budget=400000');
}
