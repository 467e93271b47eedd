import type { Task } from '../../task.ts';
import { say } from '../../../words/say.ts';
import type { Work } from '../prepare/prepare.ts';
import { askedAfter, askedFor, type Hands } from './errand.ts';
import { judgedOn, type Chosen, type MaskWork } from './judge.ts';
import type { LayerRecipe } from './recipe.ts';
import type { Edges } from './fit-score.ts';
import { edgesOf, fewTargets, type FewTargets } from '../prepare/targets.ts';

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
  const seen: MaskWork = { ...plain(work), levels: work.levels.slice(judgedOn(work)) };
  const candidates = askedAfter(plans, ({ found }) => ({ kind: 'judge', work: seen, few, found: found!, priceMm, sigmaMm }), task, hands);
  let best: Chosen | undefined;
  for (const [i, candidate] of candidates.entries()) {
    const chosen = await candidate();
    task.report(0.26 + (0.24 * (i + 1)) / variants.length, say('separate.choosingInks'));
    if (!best || chosen.objective < best.objective) onBetter((best = chosen));
  }
  return best!;
}

/** No more of it than another thread needs. */
const plain = ({ setup, layers, frozen, paired, layerPrice, grid }: Work): Omit<MaskWork, 'levels'> => ({
  setup,
  layers,
  frozen,
  paired,
  layerPrice,
  grid,
});
