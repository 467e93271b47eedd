import { labFromXyz } from '../colour/index.ts';
import { directionField, toneCut, toneEnds, type LineWay, type OpenTones, type ToneCut } from '../halftone/index.ts';
import { cropOf, scaledCodes, type Crop, type Picture } from '../image/index.ts';
import { freshId, parseJob, type Job } from '../job/index.ts';
import { materialOf, materialsOf, ridgeOfPrints } from '../plan/index.ts';
import { fail } from '../problem.ts';
import { length, say } from '../../words/say.ts';
import { inkBench } from './bench.ts';
import { openTonesOf } from './tone/open-tones.ts';

export interface LinesQuestion {
  readonly way: LineWay;
  /** From one line to the next; left out: what leaves half of the tones in reach. */
  readonly pitchMm?: number;
  readonly angleDeg?: number;
  readonly centreMm?: readonly [number, number];
  /** Left out: open, drawn as a black on the paper would print it. */
  readonly ink?: string;
  readonly paperId?: string;
  readonly materialId?: string;
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

/** From line to line where nobody says: half of the tones lie in a material's reach. */
export function usualPitch(job: Job, materialId?: string): number {
  const { leastBridgeMm, leastOpeningMm } = materialOf(materialsOf(job), materialId);
  return Math.ceil(2.2 * (leastBridgeMm + leastOpeningMm) * 2) / 2;
}

/** A picture's tone as openings that a knife can cut: a form, its cut and a run through it. */
export function askLines(job: Job, picture: Picture, question: LinesQuestion): LinesAnswer {
  const material = materialOf(materialsOf(job), question.materialId);
  const { leastBridgeMm, leastOpeningMm } = material;
  const least = leastBridgeMm + leastOpeningMm;
  const pitchMm = question.pitchMm ?? usualPitch(job, question.materialId);
  if (pitchMm < least * 1.05)
    fail(
      'pitch-too-small',
      'pitch',
      say('halftone.pitchTooSmall', { pitch: length(pitchMm, 1), least: length(least, 1) }),
      say('halftone.widerPitch'),
    );
  const { widthMm, heightMm } = job.image;
  const crop = cropOf(question.crop, picture, job.image);
  const punchesMm = job.knife?.punchesMm;
  const ends = toneEnds({ way: question.way, pitchMm, leastBridgeMm, leastOpeningMm, punchesMm });
  // A tone is what lies under a line and half its pitch on both sides: no finer than a third of that.
  const width = Math.max(2, Math.round((widthMm / pitchMm) * 3)),
    height = Math.max(2, Math.round((heightMm / pitchMm) * 3));
  const codes = scaledCodes(picture, crop, width, height);
  const cutIn = (tones: OpenTones): ToneCut => {
    const open = openGrid(codes, tones.share);
    const angleDeg = question.angleDeg ?? (question.way === 'hatch' ? 45 : 0);
    const flows = question.way === 'flow';
    return toneCut({
      way: question.way,
      widthMm,
      heightMm,
      pitchMm,
      leastBridgeMm,
      leastOpeningMm,
      angleDeg,
      direction: flows ? directionField({ data: open, width, height }, width / widthMm, pitchMm, angleDeg) : undefined,
      centreMm: question.centreMm,
      punchesMm,
      cover: between(open, width, height, widthMm, heightMm),
    });
  };
  // Along the edges of fine openings ink lies thicker: how much shows once they are there, and then less needs to be open.
  const ask = { job, inkId: question.ink ?? null, paperId: question.paperId, most: ends.darkest };
  const first = cutIn(openTonesOf(ask));
  const { wetMicrons } = inkBench(job);
  const ridge = ridgeOfPrints(first.region, material.thicknessMm, wetMicrons);
  const tones = openTonesOf({ ...ask, filmTimes: ridge.colourTimes });
  const cut = cutIn(tones);
  if (cut.region.rings.length === 0) fail('no-lines', 'picture', say('halftone.noLines'), say('halftone.darkerPicture'));
  const kept = question.after
    ? job
    : { ...job, forms: [], cuts: [], layers: [], wanted: [], proofReadings: [], potLogs: [], done: undefined, picture: undefined };
  const formId = freshId(kept.forms, 'tone-lines'),
    cutId = freshId(kept.cuts, 'tone-lines'),
    layerId = freshId(kept.layers, 'tone-lines');
  const round = (v: number): number => Math.round(v * 1000) / 1000;
  const outline = cut.region.rings.map((ring) =>
    Array.from({ length: ring.length / 2 }, (_, i): [number, number] => [round(ring[2 * i]), round(ring[2 * i + 1])]),
  );
  const box = boxOf(outline);
  const name = job.title;
  const base = job.inks.find((k) => k.role === 'transparent-base')?.id;
  return {
    job: parseJob({
      ...kept,
      forms: [...kept.forms, { id: formId, name, outline }],
      cuts: [
        ...kept.cuts,
        { id: cutId, name, material: job.materials.length > 0 ? material.id : undefined, parts: [{ form: formId, ...box }] },
      ],
      layers: [...kept.layers, { id: layerId, name, cut: cutId, side: 'window', ink: question.ink ?? null, base }],
    }),
    layerId,
    pitchMm,
    cut,
    bareL: tones.lightness(0),
    darkestL: tones.lightness(ends.darkest),
  };
}

/** What must be open at each place of a picture, as its own profile has it. */
function openGrid({ rgb, space }: ReturnType<typeof scaledCodes>, shareAt: (light: number) => number): Float32Array {
  const top = rgb instanceof Uint8Array ? 255 : 65535;
  const white = space.toXyz([1, 1, 1])[1];
  return Float32Array.from({ length: rgb.length / 3 }, (_, i) => {
    const y = space.toXyz([rgb[i * 3] / top, rgb[i * 3 + 1] / top, rgb[i * 3 + 2] / top])[1] / white;
    return shareAt(labFromXyz([0, y, 0])[0] / 100);
  });
}

/** A grid over the image, and what lies between its places. */
function between(grid: Float32Array, width: number, height: number, widthMm: number, heightMm: number): (x: number, y: number) => number {
  return (x, y) => {
    const u = Math.min(width - 1, Math.max(0, (x / widthMm) * width - 0.5)),
      v = Math.min(height - 1, Math.max(0, (y / heightMm) * height - 0.5));
    const [i, k] = [Math.min(width - 2, Math.floor(u)), Math.min(height - 2, Math.floor(v))];
    const [f, g] = [u - i, v - k];
    const at = k * width + i;
    return (grid[at] * (1 - f) + grid[at + 1] * f) * (1 - g) + (grid[at + width] * (1 - f) + grid[at + width + 1] * f) * g;
  };
}

/** Where the middle of an outline's box lies: forms are placed by it. */
function boxOf(rings: readonly (readonly [number, number][])[]): { readonly xMm: number; readonly yMm: number } {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const ring of rings)
    for (const [x, y] of ring) {
      minX = Math.min(minX, x);
      maxX = Math.max(maxX, x);
      minY = Math.min(minY, y);
      maxY = Math.max(maxY, y);
    }
  return { xMm: (minX + maxX) / 2, yMm: (minY + maxY) / 2 };
}
