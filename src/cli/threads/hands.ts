import { availableParallelism } from 'node:os';
import type { Worker } from 'node:worker_threads';
import { doErrand, type Errand, type ErrandDone, type Hands } from '../../core/separate/index.ts';
import type { Task } from '../../core/task.ts';
import { startThread } from './thread.ts';

interface Waiting {
  readonly errand: Errand;
  /** Nothing: the thread was lost, and the one who asked does it. */
  readonly over: (done?: ErrandDone) => void;
}

/** Threads that take part in a separation, so many as the machine has to spare; none if it has none. `dismiss` when the work is done. */
export function hireHands(count = Math.min(4, availableParallelism())): (Hands & { dismiss(): void }) | undefined {
  if (count < 2) return undefined;
  const waiting: Waiting[] = [],
    free: Worker[] = [],
    all = new Set<Worker>();
  const next = (): void => {
    while (waiting.length > 0 && (free.length > 0 || all.size === 0)) {
      const { errand, over } = waiting.shift()!,
        worker = free.pop();
      if (!worker) over();
      else {
        const done = (answer?: ErrandDone): void => {
          worker.off('message', done).off('exit', lost);
          if (answer) free.push(worker);
          over(answer);
          next();
        };
        const lost = (): void => done();
        worker.once('message', done).once('exit', lost).postMessage(errand);
      }
    }
  };
  for (let i = 0; i < count; i++) {
    const worker = startThread('hand');
    all.add(worker);
    free.push(worker);
    const gone = (): void => {
      all.delete(worker);
      if (free.includes(worker)) free.splice(free.indexOf(worker), 1);
      next();
    };
    worker.on('error', gone).on('exit', gone);
  }
  return {
    async ask<E extends Errand>(errand: E, task: Task): Promise<ErrandDone<E>> {
      let answer: ErrandDone | undefined,
        over = false;
      const working = new Promise<void>((go) => {
        waiting.push({
          errand,
          over(done) {
            answer = done;
            over = true;
            go();
          },
        });
      });
      next();
      // Whoever stops the work is heard while the others are busy.
      while (!over) {
        let timer: NodeJS.Timeout | undefined;
        await Promise.race([
          working,
          new Promise<void>((go) => {
            timer = setTimeout(go, 60);
          }),
        ]);
        clearTimeout(timer);
        await task.pause();
      }
      return answer ? (answer as ErrandDone<E>) : doErrand(errand, task);
    },
    dismiss() {
      for (const worker of all) void worker.terminate();
    },
  };
}
