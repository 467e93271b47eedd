import { labFromXyz } from '../colour/index.ts';
import type { ToneCut } from '../halftone/index.ts';
import { cropOf, scaledCodes, type Crop, type Picture } from '../image/index.ts';
import { parseJob, type Job } from '../job/index.ts';
import { materialOf, materialsOf } from '../plan/index.ts';
import { fail } from '../problem.ts';
import { say } from '../../words/say.ts';
import { cutLines, type CutLinesAsk } from './tone/cut-lines.ts';
import { cutRuns } from './tone/cut-runs.ts';

export { usualPitch } from './tone/cut-lines.ts';

export interface LinesQuestion extends CutLinesAsk {
  readonly crop?: Crop;
  /** Put as one more run on top of the job's own; left out: in their place. */
  readonly after?: boolean;
}

export interface LinesAnswer {
  readonly job: Job;
  readonly layerId: string;
  readonly pitchMm: number;
  readonly cut: ToneCut;
  /** L* of the bare paper, and of the darkest that these openings print. */
  readonly bareL: number;
  readonly darkestL: number;
}

/** A picture's tone as openings that a knife can cut: a form, its cut and a run through it. */
export function askLines(job: Job, picture: Picture, question: LinesQuestion): LinesAnswer {
  const crop = cropOf(question.crop, picture, job.image);
  const grid = (width: number, height: number): Float32Array => lightness(scaledCodes(picture, crop, width, height));
  const { cut, pitchMm, tones } = cutLines(job, question, { grid, drawnIn: true });
  if (cut.region.rings.length === 0) fail('no-lines', 'picture', say('halftone.noLines'), say('halftone.darkerPicture'));
  const kept = question.after
    ? job
    : { ...job, forms: [], cuts: [], layers: [], wanted: [], proofReadings: [], potLogs: [], done: undefined, picture: undefined };
  const base = job.inks.find((k) => k.role === 'transparent-base')?.id;
  const run = { id: 'tone-lines', name: job.title, region: cut.region, ink: question.ink ?? null, base };
  const made = cutRuns(kept, [run], materialOf(materialsOf(job), question.materialId).id);
  return {
    job: parseJob({
      ...kept,
      forms: [...kept.forms, ...made.forms],
      cuts: [...kept.cuts, ...made.cuts],
      layers: [...kept.layers, ...made.layers],
    }),
    layerId: made.layers[0].id!,
    pitchMm,
    cut,
    bareL: tones.lightness(0),
    darkestL: tones.lightness(cut.darkest),
  };
}

/** L* at each place of a picture, as its own profile has it, against its white. */
function lightness({ rgb, space }: ReturnType<typeof scaledCodes>): Float32Array {
  const top = rgb instanceof Uint8Array ? 255 : 65535;
  const white = space.toXyz([1, 1, 1])[1];
  return Float32Array.from({ length: rgb.length / 3 }, (_, i) => {
    const y = space.toXyz([rgb[i * 3] / top, rgb[i * 3 + 1] / top, rgb[i * 3 + 2] / top])[1] / white;
    return labFromXyz([0, y, 0])[0];
  });
}
