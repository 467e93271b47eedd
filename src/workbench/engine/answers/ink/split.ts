import { askSplit } from '../../../../core/asks/index.ts';
import { readPicture } from '../../../../core/image/index.ts';
import { greyPng } from '../../../../packet/index.ts';
import { picturesReady } from '../../pictures.ts';
import type { SplitFilm } from '../../protocol.ts';
import type { Work } from '../room.ts';

/** A film is looked at no larger than this, px. */
const shownPx = 360;

/** A picture into runs of tone: the job with them, their films as files and as small pictures. */
export const splitAnswer: Work<'split'> = async ({ job, bytes, name, question }, room, task) => {
  await Promise.all([room.ready, picturesReady()]);
  const made = await askSplit(job, await readPicture(bytes, name), question, task);
  const { width, height, mmPerPx, split } = made;
  return {
    answer: {
      job: made.job,
      films: made.films.map(({ layer, path, plane, mean }) => ({
        layer,
        path,
        bytes: greyPng(width, height, plane, mmPerPx),
        mean,
        shown: smaller(plane, width, height),
      })),
      mean: split.mean,
      p95: split.p95,
      outOfReach: split.outOfReach,
      outMean: split.outMean,
      most: split.most,
      beyondSrgb: made.beyondSrgb,
    },
    transfer: [],
  };
};

/** Black where ink prints, as the film shows it. */
function smaller(plane: Uint8Array, width: number, height: number): SplitFilm['shown'] {
  const by = Math.max(1, Math.ceil(Math.max(width, height) / shownPx));
  const [w, h] = [Math.max(1, Math.floor(width / by)), Math.max(1, Math.floor(height / by))];
  const words = new Uint32Array(w * h);
  for (let y = 0; y < h; y++)
    for (let x = 0; x < w; x++) {
      let sum = 0;
      for (let dy = 0; dy < by; dy++) for (let dx = 0; dx < by; dx++) sum += plane[(y * by + dy) * width + x * by + dx];
      const v = 255 - Math.round(sum / (by * by));
      words[y * w + x] = ((255 << 24) | (v << 16) | (v << 8) | v) >>> 0;
    }
  return { width: w, height: h, words };
}
