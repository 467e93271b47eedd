import { labFromXyz, xyzFromSrgb } from '../colour/index.ts';
import { directionField, toneCut, type LineWay, type ToneCut } from '../halftone/index.ts';
import { cropOf, scaledSrgb, type Crop, type Picture } from '../image/index.ts';
import { freshId, parseJob, type Job } from '../job/index.ts';
import { materialOf, materialsOf } from '../plan/index.ts';
import { fail } from '../problem.ts';
import { length, say } from '../../words/say.ts';

export interface LinesQuestion {
  readonly way: LineWay;
  /** From one line to the next; left out: what leaves half of the tones in reach. */
  readonly pitchMm?: number;
  readonly angleDeg?: number;
  readonly centreMm?: readonly [number, number];
  readonly ink?: string;
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
  // A tone is what lies under a line and half its pitch on both sides: no finer than a third of that.
  const width = Math.max(2, Math.round((widthMm / pitchMm) * 3)),
    height = Math.max(2, Math.round((heightMm / pitchMm) * 3));
  const rgb = scaledSrgb(picture, crop, width, height);
  const dark = Float32Array.from({ length: width * height }, (_, i) => {
    const [l] = labFromXyz(xyzFromSrgb([rgb[i * 3] / 255, rgb[i * 3 + 1] / 255, rgb[i * 3 + 2] / 255]));
    return 1 - l / 100;
  });
  const cover = (x: number, y: number): number => {
    const u = Math.min(width - 1, Math.max(0, (x / widthMm) * width - 0.5)),
      v = Math.min(height - 1, Math.max(0, (y / heightMm) * height - 0.5));
    const [i, k] = [Math.min(width - 2, Math.floor(u)), Math.min(height - 2, Math.floor(v))];
    const [f, g] = [u - i, v - k];
    const at = k * width + i;
    return (dark[at] * (1 - f) + dark[at + 1] * f) * (1 - g) + (dark[at + width] * (1 - f) + dark[at + width + 1] * f) * g;
  };
  const cut = toneCut({
    way: question.way,
    widthMm,
    heightMm,
    pitchMm,
    leastBridgeMm,
    leastOpeningMm,
    angleDeg: question.angleDeg ?? (question.way === 'hatch' ? 45 : 0),
    direction:
      question.way === 'flow' ? directionField({ data: dark, width, height }, width / widthMm, pitchMm, question.angleDeg ?? 0) : undefined,
    centreMm: question.centreMm,
    punchesMm: job.knife?.punchesMm,
    cover,
  });
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
