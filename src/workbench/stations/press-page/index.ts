import { words } from '../../words/index.ts';
import type { Station } from '../station.ts';
import { countOf } from './count.ts';
import { PullingView } from './PullingView.tsx';

export const pressPageStation: Station = {
  id: 'pulling',
  title: () => words().pulling.title,
  state(bench) {
    const w = words().pulling;
    const edition = bench.plan.value?.edition;
    const setUp = edition?.sheets?.setUp.perRun ?? 0;
    const of = edition?.pullsOfRun.reduce((sum, pulls) => sum + Math.max(0, pulls - setUp), 0) ?? 0;
    const pulled = countOf(bench).state.value.runs.reduce((sum, run) => sum + run.sheets.length, 0);
    return { knows: w.knows(pulled, of), needs: edition && !edition.sheets ? w.needsRuns : null };
  },
  View: PullingView,
};
