import { seeded } from '../random.ts';
import type { Task } from '../task.ts';
import { flatInks } from './flat-inks.ts';
import { targetsOf, type Targets, type Use } from './fit-score.ts';
import {
  descended, exchanged, freeJudge, jolted, labOf, movable, neighbours, printedJudge, quickly, reseat, roughJudge, scored, shaken, startRecipes, stateOf, withRecipe,
  type Judge, type Scored, type SearchSetup, type State,
} from './moves.ts';
import { overlapLabOf, type LayerRecipe } from './recipe.ts';

export type { LayerWish, SearchSetup } from './moves.ts';

export interface Found {
  readonly recipes: readonly LayerRecipe[];
  /** Films below and of the recipes. */
  readonly overlapLab: Float64Array;
  /** Mean ΔE00 over the targets. */
  readonly score: number;
}

/**
 * Inks, strengths and order: many seeded starts, some like flat inks, some like one ink in steps of strength, the rest by chance.
 * In each, every layer in turn is taken out and put back as the best pot, strength and place; then pots are exchanged and all
 * strengths moved together until nothing helps. After that the best are kicked (strengths, or one or two layers anew) and settled
 * again. All by rough differences: `bestOfPool` tells the best of them apart.
 * @param setup in few bands (`quickly`)
 * @param known plans to begin with
 * @returns the best that were found, best first, no two alike
 */
export async function inkPool(setup: SearchSetup, targets: Targets, seed: number, starts: number, kicks: number, task: Task, known: readonly (readonly LayerRecipe[])[] = []): Promise<LayerRecipe[][]> {
  const random = seeded(seed), judge = roughJudge(targets, setup.codes);
  let pool: Scored[] = [];
  const take = (one: Scored): void => {
    if (pool.some((other) => Math.abs(other.score / one.score - 1) < 1e-3)) return;
    pool = [...pool, one].sort((a, b) => a.score - b.score).slice(0, 8);
  };
  for (const recipes of known) take(await polished(setup, scored(setup, stateOf(setup, recipes), judge), judge, task));
  for (let run = 0; run < starts; run++) {
    const recipes = run === 1 ? await flatRecipes(setup, targets, seed, task) : run === 2 ? steppedRecipes(setup, judge) : startRecipes(setup, random);
    let now = scored(setup, stateOf(setup, recipes), judge);
    if (run === 1 || run === 2) take(await polished(setup, now, judge, task));
    for (let layer = 0; layer < setup.wishes.length; layer++) {
      await task.pause();
      now = reseat(setup, now, layer, judge);
    }
    take(await polished(setup, now, judge, task));
  }
  for (let kick = 0; kick < kicks; kick++) {
    await task.pause();
    const from = pool[Math.min(pool.length - 1, Math.floor(random.next() ** 2 * 4))];
    const first = random.below(setup.wishes.length);
    const far = kick % 2 === 1;
    let next = scored(setup, far ? shaken(setup, from.state, random, first) : jolted(setup, from.state, random), judge);
    if (far) {
      for (let layer = 0; layer < setup.wishes.length; layer++) {
        if (layer === first || random.next() < 0.7) continue;
        await task.pause();
        next = reseat(setup, next, layer, judge);
      }
    }
    next = descended(setup, next, judge, 5);
    take(await polished(setup, next, judge, task));
  }
  return pool.map(({ state }) => [...state.recipes]);
}

/** The best of several plans once each is settled on these targets and tried in every order; only that one is then settled in all bands. */
export async function bestOfPool(setup: SearchSetup, targets: Targets, pool: readonly (readonly LayerRecipe[])[], task: Task): Promise<Found> {
  const judge = freeJudge(targets, setup.codes), quick = quickly(setup);
  let best: Scored | undefined;
  for (const recipes of pool) {
    const now = await polished(quick, scored(quick, stateOf(quick, recipes), judge), judge, task);
    if (!best || now.score < best.score) best = now;
  }
  const { state } = await allOrders(quick, best!, judge, task);
  return found(setup, await polished(setup, scored(setup, stateOf(setup, state.recipes), judge), judge, task, false, true));
}

/** A first idea: one start, settled. */
export async function firstInks(of: SearchSetup, targets: Targets, seed: number, task: Task): Promise<Found> {
  const setup = quickly(of);
  const judge = freeJudge(targets, setup.codes);
  let now = scored(setup, stateOf(setup, startRecipes(setup, seeded(seed))), judge);
  for (let layer = 0; layer < setup.wishes.length; layer++) now = reseat(setup, now, layer, judge);
  await task.pause();
  const { state, score } = exchanged(setup, descended(setup, now, judge), judge);
  return found(of, { state: stateOf(of, state.recipes), score });
}

/** Strengths and pots again for masks as they are: what prints where stays, only the colours move. */
export async function refitInks(setup: SearchSetup, targets: Targets, use: Use, start: readonly LayerRecipe[], task: Task): Promise<Found> {
  const judge = printedJudge(targets, use);
  return found(setup, await polished(setup, scored(setup, stateOf(setup, start), judge), judge, task, true));
}

function found(setup: SearchSetup, { state, score }: Scored): Found {
  return { recipes: state.recipes, overlapLab: overlapLabOf(setup.paper, [...setup.below, ...state.films], setup.surface), score };
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
    const judge = freeJudge(wanted, one.codes);
    const id = setup.wishes[i].ink ?? [...setup.shelf.keys()][0];
    const first = scored(one, stateOf(one, [{ wish: 0, parts: [{ id, share: setup.wishes[i].strength ?? 0.5 }] }]), judge);
    const { state } = await polished(one, reseat(one, first, 0, judge), judge, task, true);
    recipes.push({ wish: i, parts: state.recipes[0].parts });
  }
  return recipes;
}

/** A start for pictures that are nearly of one colour: the one pot whose steps of half the strength come nearest. */
function steppedRecipes(setup: SearchSetup, judge: Judge): LayerRecipe[] {
  let best: Scored | undefined;
  for (const id of setup.shelf.keys()) for (const top of [1, 0.5, 0.25, 0.12]) {
    const recipes = setup.wishes.map((wish, i) => ({ wish: i, parts: [{ id: wish.ink ?? id, share: wish.strength ?? Math.max(setup.leastShare, top / 2 ** i) }] }));
    const now = scored(setup, stateOf(setup, recipes), judge);
    if (!best || now.score < best.score) best = now;
  }
  return [...best!.state.recipes];
}

/** All shares together, then every other pot for every layer, again and again until none helps. */
async function polished(setup: SearchSetup, from: Scored, judge: Judge, task: Task, keepOrder = false, fine = false): Promise<Scored> {
  let best = descended(setup, from, judge, 20);
  for (let round = 0; round < 8; round++) {
    const before = best.score;
    for (let at = 0; at < best.state.recipes.length; at++) {
      await task.pause();
      const start = best;
      for (const parts of neighbours(setup, best.state.recipes[at], fine)) {
        const state = withRecipe(setup, best.state, at, { wish: best.state.recipes[at].wish, parts });
        const next = judge.score(labOf(setup, state), best.score);
        if (next < best.score) best = { state, score: next };
      }
      if (best !== start) best = descended(setup, best, judge, 2);
    }
    if (!keepOrder) best = exchanged(setup, best, judge);
    if (best.score > before * 0.9995) break;
    best = descended(setup, best, judge);
  }
  return best;
}

/** Every order of up to 6 layers (720); more than that only exchanges of two until none helps. */
async function allOrders(setup: SearchSetup, from: Scored, judge: Judge, task: Task): Promise<Scored> {
  const { state } = from;
  const places = movable(setup, state.recipes);
  let best = from;
  const consider = (order: readonly number[]): void => {
    const next: State = { recipes: order.map((i) => state.recipes[i]), films: order.map((i) => state.films[i]) };
    const score = judge.score(labOf(setup, next), best.score);
    if (score < best.score) best = { state: next, score };
  };
  if (places.length <= 6) {
    let n = 0;
    for (const order of permutations(places)) {
      if (n++ % 32 === 0) await task.pause();
      const full = state.recipes.map((_, i) => i);
      places.forEach((place, i) => { full[place] = order[i]; });
      consider(full);
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
