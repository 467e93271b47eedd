import { seeded } from '../../random.ts';
import type { Task } from '../../task.ts';
import { flatInks } from './flat-inks.ts';
import { targetsOf, type Targets, type Use } from './fit-score.ts';
import { bestPot, judgedScore, type Judge } from '../kernels/search-engine.ts';
import { kicked, startRecipes, steppedMix } from './kicks.ts';
import { descended, exchanged, movable, neighbours, quickly, reseat, scored, withParts, type Scored, type SearchSetup } from './moves.ts';
import { filmOfRecipe, overlapLabOf, type LayerRecipe } from './recipe.ts';

export type { LayerWish, SearchSetup } from './moves.ts';

export interface Found {
  readonly recipes: readonly LayerRecipe[];
  /** Films below and of the recipes. */
  readonly overlapLab: Float64Array;
  /** Mean ΔE00 over the targets. */
  readonly score: number;
}

/**
 * Inks, strengths and order: many seeded starts, some like flat inks, some in steps of one pot, the rest by chance with every layer
 * in turn taken out and put back as the best pot, strength and place. Each is settled: pots exchanged and all strengths moved
 * together until nothing helps. After that the best are kicked (`kicked`) and settled again.
 * All by rough differences: `bestOfPool` tells the best of them apart.
 * @param setup in few bands (`quickly`)
 * @param known plans to begin with
 * @returns the best that were found, best first, no two alike
 */
export async function inkPool(
  setup: SearchSetup,
  targets: Targets,
  seed: number,
  starts: number,
  kicks: number,
  task: Task,
  known: readonly (readonly LayerRecipe[])[] = [],
): Promise<LayerRecipe[][]> {
  const random = seeded(seed),
    judge: Judge = { kind: 'rough', targets };
  let pool: Scored[] = [];
  const take = (one: Scored): void => {
    if (pool.some((other) => Math.abs(other.score / one.score - 1) < 1e-3)) return;
    pool = [...pool, one].sort((a, b) => a.score - b.score).slice(0, poolSize);
  };
  const settled = async (recipes: readonly LayerRecipe[]): Promise<void> => {
    take(await polished(setup, scored(setup, recipes, judge), judge, task));
  };
  for (const recipes of known) await settled(recipes);
  for (let run = 0; run < starts && !(pool[0]?.score < goodEnough); run++) {
    await task.pause();
    if (run === 1) await settled(await flatRecipes(setup, targets, seed, task));
    else if (run === 2) await settled(steppedRecipes(setup, judge));
    else if (run % 2 === 1) await settled(descended(setup, scored(setup, steppedMix(setup, random), judge), judge, 10).recipes);
    else {
      let now = scored(setup, startRecipes(setup, random), judge);
      for (let layer = 0; layer < setup.wishes.length; layer++) now = reseat(setup, now, layer, judge);
      await settled(now.recipes);
    }
  }
  for (let kick = 0; kick < kicks && pool[0].score > goodEnough; kick++) {
    await task.pause();
    const from = pool[Math.min(pool.length - 1, Math.floor(random.next() ** 2 * poolSize))],
      other = pool[random.below(pool.length)];
    await settled(descended(setup, scored(setup, kicked(setup, from.recipes, other.recipes, kick, random), judge), judge, 5).recipes);
  }
  return pool.map(({ recipes }) => [...recipes]);
}

/** Plans kept of one search, all unlike. */
const poolSize = 8;
/** Nobody sees a mean ΔE00 below this: no need to look on. */
const goodEnough = 0.02;

/** The best of several plans once each is settled on these targets and tried in every order; only that one is then settled in all bands. */
export async function bestOfPool(
  setup: SearchSetup,
  targets: Targets,
  pool: readonly (readonly LayerRecipe[])[],
  task: Task,
): Promise<Found> {
  const rough: Judge = { kind: 'rough', targets },
    judge: Judge = { kind: 'exact', targets },
    quick = quickly(setup);
  let best: Scored | undefined;
  for (const recipes of pool) {
    const now = await polished(quick, scored(quick, recipes, rough), rough, task),
      score = judgedScore(quick, judge, now.recipes);
    if (!best || score < best.score) best = { recipes: now.recipes, score };
  }
  const { recipes } = await allOrders(quick, best!, judge, task);
  return found(setup, await polished(setup, scored(setup, recipes, judge), judge, task, false, true));
}

/** A first idea: one start, settled. */
export async function firstInks(of: SearchSetup, targets: Targets, seed: number, task: Task): Promise<Found> {
  const setup = quickly(of);
  const judge: Judge = { kind: 'exact', targets };
  let now = scored(setup, startRecipes(setup, seeded(seed)), judge);
  for (let layer = 0; layer < setup.wishes.length; layer++) now = reseat(setup, now, layer, judge);
  await task.pause();
  return found(of, exchanged(setup, descended(setup, now, judge), judge));
}

/** Strengths and pots again for masks as they are: what prints where stays, only the colours move. */
export async function refitInks(setup: SearchSetup, targets: Targets, use: Use, start: readonly LayerRecipe[], task: Task): Promise<Found> {
  const judge: Judge = { kind: 'printed', targets, use };
  return found(setup, await polished(setup, scored(setup, start, judge), judge, task, true));
}

function found(setup: SearchSetup, { recipes, score }: Scored): Found {
  const films = recipes.map((recipe) => filmOfRecipe(recipe, setup.shelf, setup.deposit));
  return { recipes, overlapLab: overlapLabOf(setup.paper, [...setup.below, ...films], setup.surface), score };
}

/**
 * A start that prints like flat opaque inks: for each colour that k-medians would choose, the pot that comes nearest to it
 * on this paper, light ones first. Pictures of flat colours have their best plans near it.
 */
async function flatRecipes(setup: SearchSetup, targets: Targets, seed: number, task: Task): Promise<LayerRecipe[]> {
  const palette = flatInks(targets, [...overlapLabOf(setup.paper, [], setup.surface)], setup.wishes.length, seed, 4);
  const recipes: LayerRecipe[] = [];
  for (let i = 0; i < setup.wishes.length; i++) {
    const one: SearchSetup = { ...setup, wishes: [{ ...setup.wishes[i], placeFixed: true }], below: [], codes: [1] };
    const wanted = targetsOf(palette.slice((i + 1) * 3, (i + 2) * 3), Float64Array.of(1));
    const judge: Judge = { kind: 'exact', targets: wanted };
    const id = setup.wishes[i].ink ?? [...setup.shelf.keys()][0];
    const first = scored(one, [{ wish: 0, parts: [{ id, share: setup.wishes[i].strength ?? 0.5 }] }], judge);
    const {
      recipes: [{ parts }],
    } = await polished(one, reseat(one, first, 0, judge), judge, task, true);
    recipes.push({ wish: i, parts });
  }
  return recipes;
}

/** A start for pictures that are nearly of one colour: the one pot whose steps of half the strength come nearest. */
function steppedRecipes(setup: SearchSetup, judge: Judge): LayerRecipe[] {
  let best: Scored | undefined;
  for (const id of setup.shelf.keys())
    for (const top of [1, 0.5, 0.25, 0.12]) {
      const recipes = setup.wishes.map((wish, i) => ({
        wish: i,
        parts: [{ id: wish.ink ?? id, share: wish.strength ?? Math.max(setup.leastShare, top / 2 ** i) }],
      }));
      const now = scored(setup, recipes, judge);
      if (!best || now.score < best.score) best = now;
    }
  return [...best!.recipes];
}

/** All shares together, then every other pot for every layer, again and again until none helps. */
async function polished(setup: SearchSetup, from: Scored, judge: Judge, task: Task, keepOrder = false, fine = false): Promise<Scored> {
  let best = descended(setup, from, judge, 20);
  for (let round = 0; round < 8; round++) {
    const before = best.score;
    for (let at = 0; at < best.recipes.length; at++) {
      await task.pause();
      const pots = neighbours(setup, best.recipes[at], fine);
      const better = bestPot(setup, judge, best.recipes, at, pots, best.score);
      if (better) best = descended(setup, { recipes: withParts(best.recipes, at, pots[better.number]), score: better.score }, judge, 2);
    }
    if (!keepOrder) best = exchanged(setup, best, judge);
    if (best.score > before * 0.9995) break;
    best = descended(setup, best, judge);
  }
  return best;
}

/** Every order of up to 6 layers (720); more than that only exchanges of two until none helps. */
async function allOrders(setup: SearchSetup, from: Scored, judge: Judge, task: Task): Promise<Scored> {
  const places = movable(setup, from.recipes);
  let best = from;
  if (places.length <= 6) {
    let n = 0;
    for (const order of permutations(places)) {
      if (n++ % 32 === 0) await task.pause();
      const recipes = from.recipes.slice();
      places.forEach((place, i) => {
        recipes[place] = from.recipes[order[i]];
      });
      const score = judgedScore(setup, judge, recipes, best.score);
      if (score < best.score) best = { recipes, score };
    }
  }
  return best;
}

export function* permutations(items: readonly number[]): Generator<number[]> {
  if (items.length <= 1) {
    yield items.slice();
    return;
  }
  for (let i = 0; i < items.length; i++) {
    for (const rest of permutations([...items.slice(0, i), ...items.slice(i + 1)])) yield [items[i], ...rest];
  }
}
