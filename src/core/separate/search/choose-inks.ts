import type { Task } from '../../task.ts';
import { say } from '../../../words/say.ts';
import type { Field } from '../kernels/relax.ts';
import { doubled, energyOf, fieldOf, settle, solveLevel, withFixed, type Level, type MaskRules } from '../prepare/masks.ts';
import type { Work } from '../prepare/prepare.ts';
import { settleForRegister } from '../kernels/register.ts';
import { expectedUse, registerObjective, registerRoom } from '../kernels/register.ts';
import { askedFor, type Hands } from './errand.ts';
import type { LayerRecipe } from './recipe.ts';
import { refitInks, type Found } from './search.ts';
import type { Edges } from './fit-score.ts';
import { edgesOf, fewTargets, usePairs, type FewTargets } from '../prepare/targets.ts';

/** Inks with the masks that go with them on one level. */
export interface Chosen {
  readonly found: Found;
  readonly codes: Uint8Array;
  /** ΔE00 a pixel: expected colour error and the price of the knife. */
  readonly objective: number;
}

export function rulesOf(work: Work, overlapLab: Float64Array, priceMm: number): MaskRules {
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
export async function judged(work: Work, found: Found, priceMm: number, sigmaMm: number, finest: number, task: Task): Promise<Chosen> {
  const rules = rulesOf(work, found.overlapLab, priceMm);
  const { levels } = work;
  let codes: Uint8Array | undefined;
  for (let at = levels.length - 1; at >= finest; at--) {
    await task.pause();
    const level = levels[at],
      coarsest = at === levels.length - 1;
    // Masks find their place on the coarsest level as if nothing moved; from then on every step reckons with layers that sit off.
    if (sigmaMm === 0 || coarsest) codes = solveLevel(levels, rules, at, codes);
    else codes = withFixed(doubled(codes!, levels[at + 1], level), level, work.frozen);
    if (sigmaMm > 0) await settleForRegister(fieldOf(level, rules), codes, sigmaMm / level.mmPerPx, coarsest ? 8 : at === 0 ? 2 : 4, task);
  }
  return { found, codes: codes!, objective: objectiveOf(fieldOf(levels[finest], rules), codes!, levels[finest], sigmaMm) };
}

function objectiveOf(field: Field, codes: Uint8Array, level: Level, sigmaMm: number): number {
  if (sigmaMm === 0) return energyOf(field, codes, 1) / codes.length;
  return registerObjective(field, codes, registerRoom(field, codes, sigmaMm / level.mmPerPx));
}

/** Coarser than this, neither knife length nor register would be judged rightly. */
export function judgedOn(work: Work): number {
  return Math.min(1, work.levels.length - 1);
}

/**
 * Inks, strengths and order that suit the picture, the knife and the register together. The search sees the picture as a list of
 * colours and what borders on what; several of its answers (edges counted little, more, much) are then judged on
 * a raster of twice the pixel with real masks, and the best of them is refitted to what its masks really print.
 */
export async function chooseInks(
  work: Work,
  few: FewTargets,
  priceMm: number,
  sigmaMm: number,
  seed: number,
  effort: number,
  task: Task,
  onBetter: (chosen: Chosen) => void,
  hands?: Hands,
): Promise<Chosen> {
  const coarse = work.levels.length - 1,
    level = work.levels[coarse];
  // Off register, an edge between overlaps that differ in two layers shows slivers of a third one: about σ times such a difference.
  const edgePrice = priceMm + 4 * sigmaMm;
  const variants = sigmaMm > 0 ? [0, 0.1, 0.25, 0.6] : edgePrice > 0 ? [0, 0.25, 0.6] : [0];
  // Pots and order are told apart well enough by few colours; the finer list settles the strengths.
  const fewer = fewTargets(level.bins, 56);
  const edgesAt = (targets: FewTargets, share: number): Edges | undefined =>
    share > 0 ? edgesOf(targets, level.lab, level.width, level.height, level.mmPerPx, edgePrice * share) : undefined;
  const half = (n: number): number => Math.max(2, Math.round((n * effort) / 2));
  const { setup } = work;
  const halves = askedFor(
    [0, 1].map((i) => ({ kind: 'pool', setup, targets: fewer.targets, seed: seed + 1000 * i, starts: half(24), kicks: half(240) })),
    task,
    hands,
  );
  const pool: (readonly LayerRecipe[])[] = [];
  // Two halves, best first each: their plans in turn.
  const looking = say('separate.lookingForInks');
  task.report(0.1, looking);
  const one = (await halves[0]()).pool;
  task.report(0.18, looking);
  const other = (await halves[1]()).pool;
  task.report(0.26, looking);
  for (let i = 0; i < Math.max(one.length, other.length); i++) pool.push(...one.slice(i, i + 1), ...other.slice(i, i + 1));
  const plans = askedFor(
    variants.map((share, i) => ({
      kind: 'plan',
      setup,
      fewer: { ...fewer.targets, edges: edgesAt(fewer, share) },
      targets: { ...few.targets, edges: edgesAt(few, share) },
      pool,
      seed: seed + i,
      kicks: share > 0 ? Math.round(24 * effort) : 0,
    })),
    task,
    hands,
  );
  let best: Chosen | undefined;
  for (const [i, plan] of plans.entries()) {
    const found = (await plan()).found!;
    const chosen = await refitted(
      work,
      few,
      await judged(work, found, priceMm, sigmaMm, judgedOn(work), task),
      priceMm,
      sigmaMm,
      judgedOn(work),
      task,
    );
    task.report(0.26 + (0.24 * (i + 1)) / variants.length, say('separate.choosingInks'));
    if (!best || chosen.objective < best.objective) onBetter((best = chosen));
  }
  return best!;
}

/** Inks refitted to masks and masks to inks in turn, as long as the whole gets better. */
export async function refitted(
  work: Work,
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
    const found = await refitInks(work.setup, few.targets, use, best.found.recipes, task);
    const again = fieldOf(level, rulesOf(work, found.overlapLab, priceMm));
    const codes = best.codes.slice();
    settle(again, codes, []);
    if (sigmaMm > 0) await settleForRegister(again, codes, sigmaMm / level.mmPerPx, 3, task);
    const objective = objectiveOf(again, codes, level, sigmaMm);
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
