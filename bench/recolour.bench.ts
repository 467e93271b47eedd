import { prepare } from '../src/cli/assets.ts';
import { readJobAt } from '../src/cli/disk/folder.ts';
import { createPlanner, readyBundle } from '../src/core/plan/index.ts';
import type { BenchRow } from './row.ts';

export const title = 'A slider being dragged: colours at once, the whole Plan when the hand rests (tide-pool)';

const median = (times: number[]): number => times.sort((a, b) => a - b)[times.length >> 1];

export async function run(): Promise<BenchRow[]> {
  await prepare();
  const bundle = await readyBundle(readJobAt(new URL('../examples/tide-pool/', import.meta.url).pathname));
  const planner = createPlanner();
  planner.plan(bundle);
  const at = (i: number): typeof bundle.job => ({
    ...bundle.job,
    layers: bundle.job.layers.map((l) => (l.id === 'kelp' ? { ...l, strength: 0.2 + i * 0.0171 } : l)),
  });
  const time = (n: number, work: (i: number) => void): number =>
    median(
      Array.from({ length: n }, (_, i) => {
        const start = performance.now();
        work(i);
        return performance.now() - start;
      }),
    );
  const quick = time(41, (i) => planner.recolour(at(i), 'smooth-white'));
  const whole = time(9, (i) => planner.plan({ ...bundle, job: at(i) }));
  return [{ name: 'recolour one paper after a change of strength', medianMs: quick, rivalName: 'whole plan()', rivalMs: whole }];
}
