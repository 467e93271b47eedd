import { words } from '../../../store/words.ts';
import { later } from '../../../ui/later.tsx';
import { unplanned, type Station } from '../../station.ts';
import { countOf } from './count.ts';
import { allPulled } from './queue.ts';

/** The page that stands at the press: set up at the bench, then counted here. */
export const pullingPlace: Station = {
  id: 'pulling',
  within: 'press',
  title: () => words().pulling.title,
  state(bench) {
    const w = words().pulling;
    const plan = bench.plan.value;
    if (!plan) return unplanned(bench);
    const { edition } = plan,
      count = countOf(bench).state.value;
    const of = edition.pullsOfRun.reduce((sum, pulls, run) => sum + pulls - edition.setUpOfRun[run], 0);
    const pulled = count.runs.reduce((sum, run) => sum + run.sheets.length, 0);
    return {
      knows: allPulled(plan, count) ? w.knowsAll(pulled) : w.knows(pulled, of),
      needs: !edition.sheets ? w.needsRuns : null,
    };
  },
  view: later(() => import('./PullingView.tsx').then((m) => m.PullingView)),
};
