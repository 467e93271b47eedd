import { effect } from '@preact/signals';
import type { Bench } from './bench.ts';

/** What is on the bench has been planned, and the browser has a moment to spare. */
export function whenRested(bench: Bench): Promise<void> {
  return new Promise((resolve) => {
    const stop = effect(() => {
      if (bench.working.value) return;
      queueMicrotask(() => stop());
      idle(resolve);
    });
  });
}

/** One engine has no such call. */
function idle(then: () => void): void {
  if ('requestIdleCallback' in globalThis) requestIdleCallback(then, { timeout: 1000 });
  else setTimeout(then, 200);
}
