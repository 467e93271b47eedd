import { words } from '../../store/words.ts';
import { later } from '../../ui/later.tsx';
import type { Station } from '../station.ts';

export const laydownStation: Station = {
  id: 'laydown',
  title: () => words().laydown.title,
  state(bench) {
    const w = words().laydown;
    const layers = (bench.job.value?.layers ?? []).filter((l) => !l.off);
    const open = layers.filter((l) => l.ink === null);
    return {
      knows: w.knows(layers.length),
      needs: layers.length === 0 ? w.needsRuns : open.length > 0 ? w.needsInk(open.map((l) => l.name)) : null,
    };
  },
  view: later(() => import('./LaydownView.tsx').then((m) => m.LaydownView)),
};
