import { words } from '../../store/words.ts';
import { later } from '../../ui/later.tsx';
import type { Station } from '../station.ts';
import { takeCut, takeForm } from './state.ts';

export const formStation: Station = {
  id: 'forms',
  title: () => words().forms.title,
  state(bench) {
    const w = words().forms;
    const job = bench.job.value;
    const cuts = job?.cuts ?? [];
    const idle = cuts.filter((cut) => !job?.layers.some((l) => l.cut === cut.id));
    return {
      knows: w.knows(job?.forms.length ?? 0, cuts.length),
      needs: cuts.length === 0 ? (job?.picture ? null : w.needsForm) : idle.length > 0 ? w.needsLayer(idle.map((c) => c.name)) : null,
    };
  },
  lookAt: ({ part, id }) => {
    if (part === 'cut' && id !== undefined) takeCut(id);
    if (part === 'form' && id !== undefined) takeForm(id);
  },
  view: later(() => import('./FormsView.tsx').then((m) => m.FormsView)),
};
