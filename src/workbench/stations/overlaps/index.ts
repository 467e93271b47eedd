import { words } from '../../store/words.ts';
import { later } from '../../ui/later.tsx';
import { unplanned, type Station } from '../station.ts';

export const overlapStation: Station = {
  id: 'overlaps',
  title: () => words().overlaps.title,
  state(bench) {
    const w = words().overlaps;
    if (!bench.plan.value) return unplanned(bench);
    const n = bench.paper.value?.overlaps.filter((o) => o.areaMm2 > 0).length ?? 0;
    return { knows: w.knows(n), needs: n > 1 ? null : w.needsPrint };
  },
  view: later(() => import('./OverlapsView.tsx').then((m) => m.OverlapsView)),
};
