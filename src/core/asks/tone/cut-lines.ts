import { directionField, toneCut, toneEnds, type LineWay, type OpenTones, type ToneCut } from '../../halftone/index.ts';
import type { Job } from '../../job/index.ts';
import { materialOf, materialsOf, ridgeOfPrints } from '../../plan/index.ts';
import { fail } from '../../problem.ts';
import { length, say } from '../../../words/say.ts';
import { inkBench } from '../bench.ts';
import { openTonesOf } from './open-tones.ts';

export interface CutLinesAsk {
  readonly way: LineWay;
  /** From one line to the next; left out: what leaves half of the tones in reach. */
  readonly pitchMm?: number;
  readonly angleDeg?: number;
  readonly centreMm?: readonly [number, number];
  /** Left out: open, drawn as a black on the paper would print it. */
  readonly ink?: string;
  readonly strength?: number;
  readonly paperId?: string;
  readonly materialId?: string;
}

/** What to print, as L* over the image on a grid of this size; `drawnIn`: against the picture's white, to be drawn into what ink and paper span. */
export interface LightAsked {
  readonly grid: (width: number, height: number) => ArrayLike<number>;
  readonly drawnIn: boolean;
}

export interface CutLinesMade {
  readonly cut: ToneCut;
  readonly pitchMm: number;
  readonly tones: OpenTones;
}

/** From line to line where nobody says: half of the tones lie in a material's reach. */
export function usualPitch(job: Job, materialId?: string): number {
  const { leastBridgeMm, leastOpeningMm } = materialOf(materialsOf(job), materialId);
  return Math.ceil(2.2 * (leastBridgeMm + leastOpeningMm) * 2) / 2;
}

/** Openings that print the tones asked for, in this ink on this paper. */
export function cutLines(job: Job, ask: CutLinesAsk, light: LightAsked): CutLinesMade {
  const { way, materialId } = ask;
  const { leastBridgeMm, leastOpeningMm, thicknessMm } = materialOf(materialsOf(job), materialId);
  const pitchMm = checkedPitch(ask.pitchMm ?? usualPitch(job, materialId), leastBridgeMm + leastOpeningMm);
  const { widthMm, heightMm } = job.image;
  const punchesMm = job.knife?.punchesMm;
  const sheet = { way, widthMm, heightMm, pitchMm, leastBridgeMm, leastOpeningMm, punchesMm, centreMm: ask.centreMm };
  // A tone is what lies under a line and half its pitch on both sides: no finer than a third of that.
  const width = Math.max(2, Math.round((widthMm / pitchMm) * 3)),
    height = Math.max(2, Math.round((heightMm / pitchMm) * 3));
  const grid = light.grid(width, height);
  const angleDeg = ask.angleDeg ?? (way === 'hatch' ? 45 : 0);
  const cutIn = (tones: OpenTones): ToneCut => {
    const open = Float32Array.from(grid, (l) => (light.drawnIn ? tones.share(l / 100) : tones.shareAt(l)));
    return toneCut({
      ...sheet,
      angleDeg,
      direction: way === 'flow' ? directionField({ data: open, width, height }, width / widthMm, pitchMm, angleDeg) : undefined,
      cover: between(open, width, height, widthMm, heightMm),
    });
  };
  const inked = { job, inkId: ask.ink ?? null, strength: ask.strength, paperId: ask.paperId, most: toneEnds(sheet).darkest };
  // Along the edges of fine openings ink lies thicker: how much shows once they are there, and then less needs to be open.
  const first = cutIn(openTonesOf(inked));
  const filmTimes = ridgeOfPrints(first.region, thicknessMm, inkBench(job).wetMicrons).colourTimes;
  const tones = openTonesOf({ ...inked, filmTimes });
  return { cut: cutIn(tones), pitchMm, tones };
}

function checkedPitch(pitchMm: number, leastMm: number): number {
  if (pitchMm < leastMm * 1.05)
    fail(
      'pitch-too-small',
      'pitch',
      say('halftone.pitchTooSmall', { pitch: length(pitchMm, 1), least: length(leastMm, 1) }),
      say('halftone.widerPitch'),
    );
  return pitchMm;
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
