import { effect } from '@preact/signals';
import type { Bench } from '../bench.ts';
import type { Keeping } from './keeping.ts';
import { lastSight, sightKey } from './sight.ts';

/** A pause of the hand after which the Plan in sight is kept. */
const restMs = 1500;

/** Keeps the Plan in sight whenever the hand has rested. Pots that are only tried are not part of it. */
export function keepInSight(bench: Bench, keeping: Keeping, edition: string): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  effect(() => {
    clearTimeout(timer);
    const job = bench.job.value;
    const attachments = bench.attachments.value;
    if (!job || bench.working.value || !bench.plan.value || bench.trials.value.size > 0 || keeping.state.value !== 'kept') return;
    timer = setTimeout(() => {
      void sightKey(job, attachments, edition)
        .then((key) => bench.ask('keepSight', { key, job }))
        .catch(() => undefined);
    }, restMs);
  });
}

/** Begun when the page opens, beside all else: the last Plan, if it belongs to what is put on the bench. */
export function recallSight(edition: string): (bench: Bench) => Promise<void> {
  const looking = lastSight();
  return async (bench) => {
    const sight = await looking;
    const job = bench.job.peek();
    if (!sight || !job || sight.key !== (await sightKey(job, bench.attachments.peek(), edition))) return;
    if (bench.job.peek() === job) bench.show(sight.plan);
  };
}
