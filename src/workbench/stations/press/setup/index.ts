import { calledPerInch } from '../../../../core/press/index.ts';
import { sayLength, sayNumber } from '../../../ui/fields/units.ts';
import { words } from '../../../store/words.ts';
import { later } from '../../../ui/later.tsx';
import { unplanned, type Station } from '../../station.ts';
import { openPart } from './at.ts';

export const pressStation: Station = {
  id: 'press',
  title: () => words().press.title,
  state(bench) {
    const w = words().press;
    const plan = bench.plan.value;
    const units = bench.job.value?.units ?? 'mm';
    if (!plan) return bench.job.value && !bench.job.value.screen ? { knows: '', needs: w.needsScreen } : unplanned(bench);
    const { press } = plan;
    const { mesh } = press.deposit;
    return {
      knows: w.knows(
        units === 'mm' ? w.perCm(sayNumber(mesh.perCm, 1, false)) : w.perInch(sayNumber(calledPerInch(mesh), 0, true)),
        sayLength(press.gapMm, units),
      ),
      needs: !press.screenKnown ? w.needsScreen : press.fit?.verdict === 'no' ? w.needsFit : null,
    };
  },
  lookAt: ({ part }) => {
    if (part !== undefined) openPart.value = part;
  },
  view: later(() => import('./PressView.tsx').then((m) => m.PressView)),
};
