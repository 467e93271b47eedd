import { words } from '../../store/words.ts';
import { later } from '../../ui/later.tsx';
import type { Station } from '../station.ts';
import { at } from './state.ts';

export const inkStation: Station = {
  id: 'inks',
  title: () => words().inks.title,
  state(bench) {
    const w = words().inks;
    const inks = (bench.job.value?.inks ?? []).filter((ink) => ink.role === 'ink');
    const wrong = bench.plan.value?.problems.find((p) => p.severity === 'error' && p.lead?.station === 'inks' && p.lead.part === 'shelf');
    const name = wrong && bench.job.value?.inks.find((ink) => ink.id === wrong.lead?.id)?.name;
    return { knows: w.knows(inks.length), needs: inks.length === 0 ? w.needsInks : name ? w.needsReading(name) : null };
  },
  lookAt: ({ part, id }) => {
    if (part !== undefined) at.part.value = part;
    if (part === 'shelf' && id !== undefined) at.ink.value = id;
  },
  view: later(() => import('./InksView.tsx').then((m) => m.InksView)),
};
