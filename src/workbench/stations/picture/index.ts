import { potsOf } from '../../../core/asks/index.ts';
import { sayDelta } from '../../ui/fields/format.ts';
import { words } from '../../store/words.ts';
import { later } from '../../ui/later.tsx';
import type { Station } from '../station.ts';
import { making, openPart } from './state.ts';

export const pictureStation: Station = {
  id: 'picture',
  title: () => words().picture.title,
  state(bench) {
    const w = words().picture;
    const job = bench.job.value;
    const now = making.value;
    if (!job?.picture) return { needs: null, knows: w.knowsNone };
    if (now?.state === 'working' || now?.state === 'stopping') return { needs: null, knows: w.knowsWorking(Math.round(now.share * 100)) };
    return {
      needs: potsOf(job).length > 0 ? null : w.needsInk,
      knows: now?.result
        ? w.knowsMade(now.result.runs.length, sayDelta(now.result.figures.inRegister.mean))
        : w.knowsPicture(job.picture.name),
    };
  },
  lookAt: ({ part }) => {
    if (part !== undefined) openPart.value = part;
  },
  view: later(() => import('./PictureView.tsx').then((m) => m.PictureView)),
};
