import { log, pow } from '../../numeric/index.ts';
import { srgbFromXyz, xyzFromLab, type Lab } from '../../colour/index.ts';
import type { Task } from '../../task.ts';
import { curveOf, priceFor, type CurvePoint } from '../prepare/budget.ts';
import { makeCuttable, rulesOn, type CutRules } from '../finish/cuttable.ts';
import { figuresOf, metresOf } from '../finish/figures.ts';
import { flatInks, opaqueLab, stackedCodes } from './flat-inks.ts';
import type { Targets } from './fit-score.ts';
import { fieldOf, solveLevel, solveMasks, type Level, type MaskRules } from '../prepare/masks.ts';
import type { Baseline } from '../types.ts';

export interface BaselineAsk {
  /** What is aimed at, finest first. */
  readonly levels: readonly Level[];
  /** The level that it is made on. */
  readonly finest: number;
  /** What it is told against: that level with the picture's own colours, not fitted into any reach. */
  readonly picture: Level;
  readonly flat: FlatPlan;
  readonly inks: number;
  readonly metres: number;
  readonly sigmaMm: number;
  /** On the finest raster. */
  readonly cut: CutRules;
}

export interface FlatAsk {
  /** Finest first; a coarse one will do. */
  readonly levels: readonly Level[];
  /** The picture's colours boiled down, and the paper's. */
  readonly targets: Targets;
  readonly paperLab: readonly number[];
  readonly inks: number;
  readonly seed: number;
}

/** Flat inks before anybody knows how much knife they have: Lab of paper and inks, and what they take at each price. */
export interface FlatPlan {
  readonly palette: Float64Array;
  readonly curve: readonly CurvePoint[];
}

export function flatPlan({ levels, targets, paperLab, inks, seed }: FlatAsk): FlatPlan {
  const palette = flatInks(targets, paperLab, inks, seed),
    rules: MaskRules = { layers: inks, overlapLab: opaqueLab(palette), allowed: stackedCodes(inks), priceMm: 1 };
  return { palette, curve: curveOf(levels, rules, 0).map(({ priceMm, metres }) => ({ priceMm, metres })) };
}

/**
 * What the same picture would be as paper and as many flat opaque inks of any colour, stacked light to dark, with as many metres of knife
 * and the same least widths: a dark ink may lie over a light one, so an edge is cut in one of them only. Its inks are chosen as freely as k-medians can; ours have to come out of the pots.
 */
export async function baselineFor(
  { levels, finest, picture, flat: { palette, curve }, inks, metres, sigmaMm, cut }: BaselineAsk,
  task: Task,
): Promise<Baseline> {
  const overlapLab = opaqueLab(palette),
    allowed = stackedCodes(inks),
    middle = Math.min(finest + 1, levels.length - 1);
  const rules = (priceMm: number): MaskRules => ({ layers: inks, overlapLab, allowed, priceMm });
  // On the finest raster masks go on from the coarser one's: those of the prices tried there are known.
  const solved = new Map<number, Uint8Array>();
  const cutAt = (at: number, priceMm: number): { codes: Uint8Array; metres: number } => {
    const { width, height, mmPerPx } = levels[at],
      field = fieldOf(levels[at], rules(priceMm)),
      coarser = at + 1 === middle ? solved.get(priceMm) : undefined;
    const codes = coarser ? solveLevel(levels, rules(priceMm), at, coarser) : solveMasks(levels, rules(priceMm), at);
    if (at === middle) solved.set(priceMm, codes.slice());
    makeCuttable(field, codes, rulesOn(cut, levels[0].mmPerPx / mmPerPx), false);
    return { codes, metres: metresOf(codes, width, height, inks, mmPerPx) };
  };
  // Cutting away what is too thin shortens the outlines; further prices, tried on the coarser raster, make up for it.
  let price = priceFor(metres, curve);
  let nearest = price,
    least = Infinity;
  for (let turn = 0; turn < 4; turn++) {
    await task.pause();
    const got = cutAt(middle, price).metres,
      off = Math.abs(log(Math.max(1e-6, got / metres)));
    if (off < least) {
      least = off;
      nearest = price;
    }
    const next = Math.max(0.05, price * pow(got / metres, 1.6));
    // Flat areas have only so much outline that can be cut: below this price it grows no more.
    if (off < 0.05 || (next < 0.1 && price < 0.2)) break;
    price = next;
  }
  await task.pause();
  let best = cutAt(finest, nearest);
  if (middle > finest && Math.abs(best.metres / metres - 1) > 0.05 && nearest > 0.1) {
    await task.pause();
    const next = cutAt(finest, Math.max(0.05, nearest * pow(best.metres / metres, 1.6)));
    if (Math.abs(next.metres - metres) < Math.abs(best.metres - metres)) best = next;
  }
  return {
    ...figuresOf(fieldOf(picture, rules(nearest)), picture.lab, best.codes, overlapLab, picture.mmPerPx, sigmaMm),
    width: picture.width,
    height: picture.height,
    codes: best.codes,
    rgb: rgbOf(overlapLab),
    inksLab: palette.slice(3),
  };
}

/** sRGB bytes of Lab colours, 3 each. */
export function rgbOf(lab: Float64Array): Uint8Array {
  const out = new Uint8Array(lab.length);
  for (let i = 0; i < lab.length; i += 3) out.set(srgbFromXyz(xyzFromLab([lab[i], lab[i + 1], lab[i + 2]] as Lab)).rgb, i);
  return out;
}
