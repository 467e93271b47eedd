import { labFromSpectrum, srgbFromXyz, xyzFromLab, type Lab } from '../colour/index.ts';
import type { Task } from '../task.ts';
import { binColours } from './bins.ts';
import { priceFor, curveOf } from './budget.ts';
import { makeCuttable, type CutRules } from './cuttable.ts';
import { figuresOf, metresOf } from './figures.ts';
import { flatInks, oneInkCodes, opaqueLab } from './flat-inks.ts';
import { fieldOf, solveMasks, type MaskRules } from './masks.ts';
import type { Work } from './prepare.ts';
import type { FewTargets } from './targets.ts';
import type { Baseline } from './types.ts';

/**
 * What the same picture would be as paper and as many flat opaque inks of any colour, one ink a place, with as many metres of knife
 * and the same least widths. Its inks are chosen as freely as k-medians can; ours have to come out of the pots.
 *
 * @param finest level of the raster it is made on
 */
export async function baselineFor(work: Work, few: FewTargets, metres: number, sigmaMm: number, cut: CutRules, seed: number, task: Task, finest = 0): Promise<Baseline> {
  const inks = work.layers;
  const palette = flatInks(few.targets, labFromSpectrum(work.setup.paper), inks, seed);
  const overlapLab = opaqueLab(palette);
  const level = work.levels[finest];
  const rules = (priceMm: number): MaskRules => ({ layers: inks, overlapLab, allowed: oneInkCodes(inks), priceMm });
  const curve = curveOf(work.levels, rules(1), Math.min(2, work.levels.length - 1));
  const cutAt = (at: number, priceMm: number): { codes: Uint8Array; metres: number } => {
    const { width, height, mmPerPx } = work.levels[at], field = fieldOf(work.levels[at], rules(priceMm));
    const codes = solveMasks(work.levels, rules(priceMm), at);
    makeCuttable(field, codes, rulesOn(cut, work.grid.mmPerPx / mmPerPx), false);
    return { codes, metres: metresOf(codes, width, height, inks, mmPerPx) };
  };
  // Cutting away what is too thin shortens the outlines; further prices, tried on the coarser raster, make up for it.
  let price = priceFor(metres, curve);
  const middle = Math.min(finest + 1, work.levels.length - 1);
  let nearest = price, least = Infinity;
  for (let turn = 0; turn < 4; turn++) {
    await task.pause();
    const got = cutAt(middle, price).metres, off = Math.abs(Math.log(Math.max(1e-6, got / metres)));
    if (off < least) {
      least = off;
      nearest = price;
    }
    const next = Math.max(0.05, price * (got / metres) ** 1.6);
    // Flat areas have only so much outline that can be cut: below this price it grows no more.
    if (off < 0.05 || (next < 0.1 && price < 0.2)) break;
    price = next;
  }
  await task.pause();
  let best = cutAt(finest, nearest);
  if (middle > finest && Math.abs(best.metres / metres - 1) > 0.05 && nearest > 0.1) {
    await task.pause();
    const next = cutAt(finest, Math.max(0.05, nearest * (best.metres / metres) ** 1.6));
    if (Math.abs(next.metres - metres) < Math.abs(best.metres - metres)) best = next;
  }
  // Told against the picture itself, not against what was fitted into the inks' reach.
  const seen = finest > 0 || level.lab === work.target ? level : { ...level, lab: work.target, bins: binColours(work.target) };
  return {
    ...figuresOf(fieldOf(seen, rules(nearest)), seen.lab, best.codes, overlapLab, level.mmPerPx, sigmaMm),
    width: level.width, height: level.height, codes: best.codes, rgb: rgbOf(overlapLab), inksLab: palette.slice(3),
  };
}

/** The knife's rules on a raster of other pixels. @param scale new pixels to an old one */
function rulesOn(cut: CutRules, scale: number): CutRules {
  return { openingPx: cut.openingPx * scale, paperPx: cut.paperPx * scale, leastInkPx: cut.leastInkPx * scale ** 2, leastIslandPx: cut.leastIslandPx * scale ** 2 };
}

/** sRGB bytes of Lab colours, 3 each. */
export function rgbOf(lab: Float64Array): Uint8Array {
  const out = new Uint8Array(lab.length);
  for (let i = 0; i < lab.length; i += 3) out.set(srgbFromXyz(xyzFromLab([lab[i], lab[i + 1], lab[i + 2]] as Lab)).rgb, i);
  return out;
}
