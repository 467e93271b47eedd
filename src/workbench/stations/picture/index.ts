import { potsOf } from '../../../core/asks/index.ts';
import { sayDelta } from '../../ui/fields/format.ts';
import { words } from '../../store/words.ts';
import type { Station } from '../station.ts';
import { PictureView } from './PictureView.tsx';
import { making, openPart, pictureClient } from './state.ts';

/** The worker and what it reads pictures with come with the page: nothing is asked for after it has loaded. */
if (typeof Worker !== 'undefined') setTimeout(pictureClient, 0);

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
  View: PictureView,
};
