import type { Task } from '../../task.ts';
import { doubled, energyOf, fieldOf, settle, solveLevel, withFixed, type Level, type MaskRules } from '../prepare/masks.ts';
import type { Work } from '../prepare/prepare.ts';
import { expectedUse, leave, registerObjective, registerRoom, settleForRegister } from '../kernels/register.ts';
import { refitInks, type Found } from './search.ts';
import { usePairs, type FewTargets } from '../prepare/targets.ts';

/** What masks for given inks follow from. The levels may begin with a coarser one than the raster of the knife. */
export type MaskWork = Pick<Work, 'levels' | 'setup' | 'layers' | 'frozen' | 'paired' | 'layerPrice'> & {
  readonly grid: { readonly mmPerPx: number };
};

/** Inks with the masks that go with them on one level. */
export interface Chosen {
  readonly found: Found;
  readonly codes: Uint8Array;
  /** ΔE00 a pixel: expected colour error and the price of the knife. */
  readonly objective: number;
}

export function rulesOf(work: MaskWork, overlapLab: Float64Array, priceMm: number): MaskRules {
  return {
    layers: work.layers,
    overlapLab,
    allowed: work.setup.codes,
    frozen: work.frozen,
    paired: work.paired,
    priceMm,
    blacksAlike: true,
    layerPrice: work.layerPrice,
  };
}

/** Masks for given inks from the coarsest level to level `finest`, and how good the whole is. Pauses between levels. */
export async function judged(work: MaskWork, found: Found, priceMm: number, sigmaMm: number, finest: number, task: Task): Promise<Chosen> {
  const rules = rulesOf(work, found.overlapLab, priceMm);
  const { levels } = work;
  let codes: Uint8Array | undefined,
    objective = 0;
  for (let at = levels.length - 1; at >= finest; at--) {
    await task.pause();
    const level = levels[at],
      coarsest = at === levels.length - 1;
    // Masks find their place on the coarsest level as if nothing moved; from then on every step reckons with layers that sit off.
    if (sigmaMm === 0 || coarsest) codes = solveLevel(levels, rules, at, codes);
    else codes = withFixed(doubled(codes!, levels[at + 1], level), level, work.frozen);
    const rounds = coarsest ? 8 : level.mmPerPx === work.grid.mmPerPx ? 2 : 4,
      field = fieldOf(level, rules);
    const room = sigmaMm > 0 && (await settleForRegister(field, codes, sigmaMm / level.mmPerPx, rounds, task));
    if (at === finest) objective = room ? registerObjective(field, codes, room) : energyOf(field, codes, 1) / codes.length;
    if (room) leave(room);
  }
  return { found, codes: codes!, objective };
}

/** Coarser than this, neither knife length nor register would be judged rightly. */
export function judgedOn(work: MaskWork): number {
  return Math.min(1, work.levels.length - 1);
}

/** Inks refitted to masks and masks to inks in turn, as long as the whole gets better. */
export async function refitted(
  work: MaskWork,
  few: FewTargets,
  from: Chosen,
  priceMm: number,
  sigmaMm: number,
  finest: number,
  task: Task,
  rounds = 2,
): Promise<Chosen> {
  const level = work.levels[finest];
  let best = from;
  for (let round = 0; round < rounds; round++) {
    const field = fieldOf(level, rulesOf(work, best.found.overlapLab, priceMm));
    const room = registerRoom(field, best.codes, Math.max(0.05, sigmaMm / level.mmPerPx));
    const ofBin = finest === work.levels.length - 1 && few.ofBin.length === level.bins.count ? few.ofBin : nearestTargets(few, level);
    const use = usePairs(expectedUse(field, room, ofBin, few.targets.count), 1 << work.layers);
    leave(room);
    const found = await refitInks(work.setup, few.targets, use, best.found.recipes, task);
    const again = fieldOf(level, rulesOf(work, found.overlapLab, priceMm));
    const codes = best.codes.slice();
    settle(again, codes, []);
    const settled = sigmaMm > 0 && (await settleForRegister(again, codes, sigmaMm / level.mmPerPx, 3, task));
    const objective = settled ? registerObjective(again, codes, settled) : energyOf(again, codes, 1) / codes.length;
    if (settled) leave(settled);
    if (objective > best.objective * 0.9995) break;
    best = { found, codes, objective };
  }
  return best;
}

/** Which of the few colours each box of a level is nearest to. */
function nearestTargets(few: FewTargets, level: Level): Uint16Array {
  const { lab, count } = few.targets;
  const out = new Uint16Array(level.bins.count);
  for (let bin = 0; bin < out.length; bin++) {
    let least = Infinity;
    for (let c = 0; c < count; c++) {
      const dl = level.bins.lab[bin * 3] - lab[c * 3],
        da = level.bins.lab[bin * 3 + 1] - lab[c * 3 + 1],
        db = level.bins.lab[bin * 3 + 2] - lab[c * 3 + 2];
      const d = dl * dl + da * da + db * db;
      if (d < least) {
        least = d;
        out[bin] = c;
      }
    }
  }
  return out;
}

/** What is wanted of one plan's inks: how good they are with real masks, and what they become when refitted to them. */
export interface JudgeAsk {
  /** From the level on which it is judged. */
  readonly work: MaskWork;
  readonly few: FewTargets;
  readonly found: Found;
  readonly priceMm: number;
  readonly sigmaMm: number;
}

export async function judgedAndRefitted({ work, few, found, priceMm, sigmaMm }: JudgeAsk, task: Task): Promise<Chosen> {
  return refitted(work, few, await judged(work, found, priceMm, sigmaMm, 0, task), priceMm, sigmaMm, 0, task);
}
