import { sayLength } from '../../../ui/units.ts';
import { inLanguage, words } from '../../../store/words.ts';
import type { Station } from '../../station.ts';
import { PressView } from './PressView.tsx';

export const pressStation: Station = {
  id: 'press',
  title: () => words().press.title,
  state(bench) {
    const w = words().press;
    const plan = bench.plan.value;
    const units = bench.job.value?.units ?? 'mm';
    if (!plan) return { knows: '', needs: bench.job.value && !bench.job.value.screen ? w.needsScreen : null };
    const { press } = plan;
    const { mesh } = press.deposit;
    return {
      knows: w.knows(
        units === 'mm' ? w.perCm(inLanguage(String(mesh.perCm))) : w.perInch(mesh.perInch.toFixed(0)),
        sayLength(press.gapMm, units),
      ),
      needs: !press.screenKnown ? w.needsScreen : press.fit?.verdict === 'no' ? w.needsFit : null,
    };
  },
  View: PressView,
};
