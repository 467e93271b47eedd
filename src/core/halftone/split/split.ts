import { deltaE00, srgbCodes, xyzFromSpectrum, type Lab, type RgbSpace } from '../../colour/index.ts';
import { seeded } from '../../random.ts';
import { quietTask, type Task } from '../../task.ts';
import { toneForesight, type ToneModel } from '../model/tone-model.ts';
import { aimOf, type Aim } from './aim.ts';
import { applySplit, topOf } from './apply.ts';
import { inverter, type ToneReach } from './invert.ts';
import { splitTable, usedCells } from './table.ts';

export interface SplitAsk {
  /** Of the inks on the paper, in laydown order, all of them tones. */
  readonly model: ToneModel;
  /** 3 a pixel: bytes, or 0..65535. */
  readonly rgb: Uint8Array | Uint16Array;
  /** What they mean; left out: sRGB. */
  readonly space?: RgbSpace;
  readonly width: number;
  readonly height: number;
  readonly limit?: number;
  /** How much of the grey the greyest dark ink takes, 0..1; 0: left to the others. */
  readonly greyShare?: number;
  readonly reach?: ToneReach;
}

export interface Split {
  /** One an ink: what its film covers, 0..255. */
  readonly planes: readonly Uint8Array[];
  /** The ink that takes the grey, by its place. */
  readonly grey: number | null;
  /** ΔE00 between what was aimed at and what the planes come to, over colours in reach. */
  readonly mean: number;
  readonly p95: number;
  /** Share of the picture that lies out of the inks' reach, and how far it is off on average. */
  readonly outOfReach: number;
  readonly outMean: number;
  /** Most that is covered anywhere, in whole layers. */
  readonly most: number;
}

/** An ink whose solid has less chroma than this counts as a grey or a black. */
const greyChroma = 16;
/** What an exact solution misses by no more lies in reach. */
const inReach = 1;
const samples = 1200;

/** A picture into inks: table, Newton, planes; and how well it comes back. */
export async function splitPicture(ask: SplitAsk, task: Task = quietTask): Promise<Split> {
  const { model, rgb, space = srgbCodes, width, height, limit = usualInkLimit(model.k), greyShare = 0.5, reach = 'nearest' } = ask;
  const { k } = model;
  const foresight = toneForesight(model);
  const grey = greyInk(k, foresight.lab);
  const paper = xyzFromSpectrum(foresight.spectrum(new Float64Array(k)));
  const darkest = darkestOf(k, limit, foresight.lab);
  const aim: Aim = { space, white: space.toXyz([1, 1, 1]), paper, darkest, reach };
  const invert = inverter({ model, foresight, limit, grey, greyShare: grey === null ? 0 : greyShare, reach });
  const table = await splitTable(k, (r, g, b) => aimOf(r, g, b, aim), invert, task, usedCells(rgb, topOf(rgb)));
  const planes = await applySplit(table, rgb, width, height, task);

  const random = seeded(7);
  const off: number[] = [],
    out: number[] = [];
  let most = 0;
  const top = topOf(rgb);
  const c = new Float64Array(k);
  for (let s = 0; s < samples; s++) {
    const p = random.below(width * height);
    for (let i = 0; i < k; i++) c[i] = planes[i][p] / 255;
    most = Math.max(
      most,
      c.reduce((sum, v) => sum + v, 0),
    );
    const target = aimOf(rgb[p * 3] / top, rgb[p * 3 + 1] / top, rgb[p * 3 + 2] / top, aim);
    const now = deltaE00(foresight.lab(c), target);
    const best = deltaE00(foresight.lab(invert(target, c, 6, 0.5).covers), target);
    (best <= inReach ? off : out).push(now);
  }
  off.sort((a, b) => a - b);
  const mean = (of: readonly number[]): number => (of.length > 0 ? of.reduce((a, b) => a + b, 0) / of.length : 0);
  return {
    planes,
    grey,
    mean: mean(off),
    p95: off[Math.floor(off.length * 0.95)] ?? 0,
    outOfReach: out.length / samples,
    outMean: mean(out),
    most,
  };
}

function greyInk(k: number, lab: (c: ArrayLike<number>) => Lab): number | null {
  let best: number | null = null,
    least = Infinity;
  for (let i = 0; i < k; i++) {
    const [l, a, b] = lab(Float64Array.from({ length: k }, (_, j) => (j === i ? 1 : 0)));
    if (Math.hypot(a, b) < greyChroma && l < least) {
      least = l;
      best = i;
    }
  }
  return best;
}

/** Most that all films cover together where nobody says, in whole layers: paper takes no more before it goes wavy (common practice). */
export const usualInkLimit = (inks: number): number => Math.min(inks, 3);

/** L* of the darkest that the limit allows: the best whole inks and the rest of one more. */
function darkestOf(k: number, limit: number, lab: (c: ArrayLike<number>) => Lab): number {
  let darkest = 100;
  for (let row = 0; row < 1 << k; row++) {
    const on = Array.from({ length: k }, (_, i) => (row >> i) & 1);
    const n = on.reduce((a, b) => a + b, 0);
    if (n - limit >= 1) continue;
    const scale = n > limit ? limit / n : 1;
    darkest = Math.min(darkest, lab(on.map((v) => v * scale))[0]);
  }
  return darkest;
}
