import type { Spectrum } from '../colour/index.ts';
import type { Film, Ink, Surface } from '../ink/index.ts';
import { seeded, type Random } from '../random.ts';
import type { Task } from '../task.ts';
import { meanAsPrinted, meanDifference, type Targets, type Use } from './fit-score.ts';
import { filmOfRecipe, overlapLabOf, type LayerRecipe, type PotShare } from './recipe.ts';

/** What the printmaker has decided about one layer; everything left out is free. */
export interface LayerWish {
  /** Ink that must be in the pot, and nothing else. */
  readonly ink?: string;
  /** Volume share of it, 0..1. */
  readonly strength?: number;
  /** This layer stays in its place in the laydown. */
  readonly placeFixed?: boolean;
}

export interface SearchSetup {
  readonly wishes: readonly LayerWish[];
  readonly shelf: ReadonlyMap<string, Ink>;
  /** At most so many inks in one pot. */
  readonly mostInPot: number;
  readonly paper: Spectrum;
  readonly surface: Surface;
  readonly deposit: number;
  /** Films already on the sheet, below everything. */
  readonly below: readonly Film[];
  /** Codes that may be printed; bits count from the first film below. */
  readonly codes: readonly number[];
  /** Least share of ink worth weighing out. */
  readonly leastShare: number;
}

export interface Found {
  readonly recipes: readonly LayerRecipe[];
  /** Films below and of the recipes. */
  readonly overlapLab: Float64Array;
  /** Mean ΔE00 over the targets. */
  readonly score: number;
}

type Score = (overlapLab: Float64Array, stopAt: number) => number;

/** A candidate with its films, so that a changed layer costs one film. */
interface State {
  readonly recipes: readonly LayerRecipe[];
  readonly films: readonly Film[];
}

/**
 * Inks, strengths and order by seeded annealing: change a strength, swap a pot, add or drop a second ink, change the
 * order. Several starts, the best is cooled down longest. Colours choose their best code freely, or as `use` says.
 */
export async function searchInks(setup: SearchSetup, targets: Targets, seed: number, effort: number, task: Task, start?: readonly LayerRecipe[]): Promise<Found> {
  const random = seeded(seed);
  const score: Score = (lab, stopAt) => meanDifference(targets, lab, setup.codes, stopAt);
  const starts = start ? 1 : 3;
  let best: Found | undefined;
  for (let run = 0; run < starts; run++) {
    const found = await anneal(setup, stateOf(setup, start ?? startRecipes(setup, random)), score, random, Math.round(effort * (start ? 1 : 0.25)), start ? 0.3 : 2.5, task);
    if (!best || found.score < best.score) best = found;
  }
  if (!start) {
    const longer = await anneal(setup, stateOf(setup, best!.recipes), score, random, Math.round(effort * 0.6), 0.8, task);
    if (longer.score < best!.score) best = longer;
  }
  return allOrders(setup, best!, score, task);
}

/** Strengths, pots and order again for masks as they are: what prints where stays, only the colours move. */
export async function refitInks(setup: SearchSetup, targets: Targets, use: Use, start: readonly LayerRecipe[], seed: number, effort: number, task: Task): Promise<Found> {
  const score: Score = (lab) => meanAsPrinted(targets, lab, use);
  return anneal(setup, stateOf(setup, start), score, seeded(seed), effort, 0.05, task, true);
}

function stateOf(setup: SearchSetup, recipes: readonly LayerRecipe[]): State {
  return { recipes, films: recipes.map((r) => filmOfRecipe(r, setup.shelf, setup.deposit)) };
}

function labOf(setup: SearchSetup, state: State): Float64Array {
  return overlapLabOf(setup.paper, [...setup.below, ...state.films], setup.surface);
}

async function anneal(setup: SearchSetup, from: State, score: Score, random: Random, steps: number, heat: number, task: Task, keepOrder = false): Promise<Found> {
  let now = from, nowScore = score(labOf(setup, from), Infinity);
  let best = now, bestScore = nowScore;
  for (let step = 0; step < steps; step++) {
    if (step % 64 === 63) await task.pause();
    const temperature = heat * (1 - step / steps) ** 2 * 0.25;
    const next = moved(setup, now, random, 1 - step / steps, keepOrder);
    if (!next) continue;
    const limit = nowScore - temperature * Math.log(1 - random.next());
    const nextScore = score(labOf(setup, next), limit);
    if (nextScore > limit) continue;
    now = next;
    nowScore = nextScore;
    if (nowScore < bestScore) {
      best = now;
      bestScore = nowScore;
    }
  }
  return { recipes: best.recipes, overlapLab: labOf(setup, best), score: bestScore };
}

/** Places in the laydown that may be exchanged. */
function movable(setup: SearchSetup, recipes: readonly LayerRecipe[]): number[] {
  return recipes.map((_, i) => i).filter((i) => !setup.wishes[recipes[i].wish].placeFixed);
}

function moved(setup: SearchSetup, state: State, random: Random, width: number, keepOrder: boolean): State | undefined {
  const { recipes, films } = state;
  const kind = random.next();
  if (kind < 0.2 && !keepOrder) {
    const places = movable(setup, recipes);
    if (places.length < 2) return undefined;
    const a = places[random.below(places.length)], b = places[random.below(places.length)];
    if (a === b) return undefined;
    return { recipes: swapped(recipes, a, b), films: swapped(films, a, b) };
  }
  const at = random.below(recipes.length);
  const parts = changed(setup, recipes[at], random, width, kind);
  if (!parts) return undefined;
  const recipe = { ...recipes[at], parts };
  return {
    recipes: recipes.map((r, i) => (i === at ? recipe : r)),
    films: films.map((f, i) => (i === at ? filmOfRecipe(recipe, setup.shelf, setup.deposit) : f)),
  };
}

function changed(setup: SearchSetup, recipe: LayerRecipe, random: Random, width: number, kind: number): PotShare[] | undefined {
  const wish = setup.wishes[recipe.wish];
  const parts = recipe.parts.slice();
  const ids = [...setup.shelf.keys()];
  const which = random.below(parts.length);
  if (kind < 0.65 || wish.ink !== undefined) {
    if (wish.strength !== undefined) return undefined;
    const factor = Math.exp(random.normal() * (0.08 + 0.5 * width));
    parts[which] = { ...parts[which], share: parts[which].share * factor };
    return within(parts, setup.leastShare);
  }
  if (kind < 0.85) {
    const id = ids[random.below(ids.length)];
    if (parts.some((p) => p.id === id)) return undefined;
    parts[which] = { id, share: random.next() < 0.5 ? parts[which].share : Math.exp(-3 * random.next()) };
    return within(parts, setup.leastShare);
  }
  if (parts.length > 1 && random.next() < 0.5) return parts.filter((_, i) => i !== which);
  if (parts.length >= setup.mostInPot) return undefined;
  const id = ids[random.below(ids.length)];
  if (parts.some((p) => p.id === id)) return undefined;
  return within([...parts, { id, share: Math.exp(-1 - 3 * random.next()) }], setup.leastShare);
}

/** No share below what can be weighed, and no more than the whole pot. */
function within(parts: PotShare[], least: number): PotShare[] {
  const raised = parts.map((p) => ({ ...p, share: Math.max(least, Math.min(1, p.share)) }));
  const sum = raised.reduce((a, p) => a + p.share, 0);
  return sum > 1 ? raised.map((p) => ({ ...p, share: p.share / sum })) : raised;
}

function startRecipes(setup: SearchSetup, random: Random): LayerRecipe[] {
  const ids = [...setup.shelf.keys()];
  return setup.wishes.map((wish, i) => ({
    wish: i,
    parts: [{ id: wish.ink ?? ids[random.below(ids.length)], share: wish.strength ?? Math.exp(-2 * random.next()) }],
  }));
}

function swapped<T>(list: readonly T[], a: number, b: number): T[] {
  const out = list.slice();
  [out[a], out[b]] = [out[b], out[a]];
  return out;
}

/** Every order of up to 6 layers (720); more than that only exchanges of two until none helps. */
async function allOrders(setup: SearchSetup, found: Found, score: Score, task: Task): Promise<Found> {
  const state = stateOf(setup, found.recipes);
  const places = movable(setup, state.recipes);
  let best = state, bestScore = found.score;
  const consider = (order: readonly number[]): void => {
    const next = { recipes: order.map((i) => state.recipes[i]), films: order.map((i) => state.films[i]) };
    const nextScore = score(labOf(setup, next), bestScore);
    if (nextScore < bestScore) {
      best = next;
      bestScore = nextScore;
    }
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
  return { recipes: best.recipes, overlapLab: labOf(setup, best), score: bestScore };
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
