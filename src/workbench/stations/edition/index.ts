import { words } from '../../store/words.ts';
import { later } from '../../ui/later.tsx';
import { unplanned, type Station } from '../station.ts';
import { openPart } from './at.ts';

export const editionStation: Station = {
  id: 'edition',
  title: () => words().edition.title,
  state(bench) {
    const w = words().edition;
    const edition = bench.plan.value?.edition;
    const target = bench.job.value?.edition.target ?? 0;
    if (!edition) return unplanned(bench);
    const signed = edition.numbered?.sheets.filter((s) => s.text !== null).length ?? 0;
    const start = edition.sheets?.papers.reduce((sum, p) => sum + p.start, 0) ?? 0;
    return {
      knows: signed > 0 ? w.knowsSigned(signed) : w.knows(start, target),
      needs:
        (bench.job.value?.papers.length ?? 0) === 0
          ? w.needsPaper
          : edition.sheets === null || edition.sheets.papers.some((p) => p.start < p.toStart)
            ? w.needsSheets
            : null,
    };
  },
  lookAt: ({ part }) => {
    if (part !== undefined) openPart.value = part;
  },
  view: later(() => import('./EditionView.tsx').then((m) => m.EditionView)),
};
