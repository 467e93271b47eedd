import { words } from '../../store/words.ts';
import type { Station } from '../station.ts';
import { InksView } from './InksView.tsx';

export const inkStation: Station = {
  id: 'inks',
  title: () => words().inks.title,
  state(bench) {
    const w = words().inks;
    const inks = (bench.job.value?.inks ?? []).filter((ink) => ink.role === 'ink');
    const wrong = bench.plan.value?.problems.find((p) => p.severity === 'error' && p.path.startsWith('inks['));
    const name = wrong && bench.job.value?.inks[Number(/\d+/.exec(wrong.path)?.[0])]?.name;
    return { knows: w.knows(inks.length), needs: inks.length === 0 ? w.needsInks : name ? w.needsReading(name) : null };
  },
  View: InksView,
};
