import type { Spectrum } from '../colour/index.ts';
import type { Film, Ink, Surface } from '../ink/index.ts';
import { seeded, type Random } from '../random.ts';
import type { Task } from '../task.ts';
import { flatInks } from './flat-inks.ts';
import { meanAsPrinted, meanDifference, targetsOf, type Targets, type Use } from './fit-score.ts';
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
 * Inks, strengths and order by local search with kicks: from several seeded starts each layer in turn is taken out and put back
 * as the best pot, strength and place (`reseat`), then every small change is tried until none helps (`polished`); then the
 * best is kicked (one or two layers anew) and polished again, `effort` times (0: one start, no kicks). At the end every order is tried.
 * Each picture colour takes its best code.
 */
export async function searchInks(setup: SearchSetup, targets: Targets, seed: number, effort: number, task: Task, start?: readonly LayerRecipe[]): Promise<Found> {
  const random = seeded(seed);
  const score: Score = (lab, stopAt) => meanDifference(targets, lab, setup.codes, stopAt);
  let best: Scored | undefined;
  for (let run = 0; run < (start || effort === 0 ? 1 : (effort <= 1 ? 2 : Math.max(3, Math.round(effort / 3)))); run++) {
    const likeFlat = !start && run === 1;
    const recipes = start ?? (likeFlat ? await flatRecipes(setup, targets, seed, task) : startRecipes(setup, random));
    let now = scored(setup, stateOf(setup, recipes), score);
    for (let round = 0; round < 2; round++) {
      for (let layer = 0; layer < setup.wishes.length; layer++) {
        await task.pause();
        now = reseat(setup, now, layer, score);
      }
    }
    now = await polished(setup, now, score, task);
    if (!best || now.score < best.score) best = now;
  }
  let at = best!;
  for (let kick = 0; kick < effort; kick++) {
    let next: Scored = at;
    const first = random.below(setup.wishes.length);
    next = scored(setup, shaken(setup, at.state, random, first), score);
    for (let layer = 0; layer < setup.wishes.length; layer++) {
      if (layer === first || random.next() < 0.7) continue;
      await task.pause();
      next = reseat(setup, next, layer, score);
    }
    next = await polished(setup, next, score, task);
    if (next.score < at.score * 1.004) at = next;
    if (at.score < best!.score) best = at;
  }
  return allOrders(setup, found(setup, best!), score, task);
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
    const score: Score = (lab, stopAt) => meanDifference(wanted, lab, one.codes, stopAt);
    const id = setup.wishes[i].ink ?? [...setup.shelf.keys()][0];
    const first = scored(one, stateOf(one, [{ wish: 0, parts: [{ id, share: setup.wishes[i].strength ?? 0.5 }] }]), score);
    const { state } = await polished(one, reseat(one, first, 0, score), score, task, true);
    recipes.push({ wish: i, parts: state.recipes[0].parts });
  }
  return recipes;
}

interface Scored {
  readonly state: State;
  readonly score: number;
}

function scored(setup: SearchSetup, state: State, score: Score): Scored {
  return { state, score: score(labOf(setup, state), Infinity) };
}

function found(setup: SearchSetup, { state, score }: Scored): Found {
  return { recipes: state.recipes, overlapLab: labOf(setup, state), score };
}

/** One layer's pot and strength anew, by chance. */
function shaken(setup: SearchSetup, state: State, random: Random, wishNumber: number): State {
  const at = state.recipes.findIndex((r) => r.wish === wishNumber);
  const wish = setup.wishes[wishNumber], ids = [...setup.shelf.keys()];
  const parts = [{ id: wish.ink ?? ids[random.below(ids.length)], share: wish.strength ?? Math.exp(-3 * random.next()) }];
  return withRecipe(setup, state, at, { wish: wishNumber, parts });
}

function withRecipe(setup: SearchSetup, { recipes, films }: State, at: number, recipe: LayerRecipe): State {
  return {
    recipes: recipes.map((r, i) => (i === at ? recipe : r)),
    films: films.map((f, i) => (i === at ? filmOfRecipe(recipe, setup.shelf, setup.deposit) : f)),
  };
}

/** Every small change of every layer, again and again until none helps. */
async function polished(setup: SearchSetup, from: Scored, score: Score, task: Task, keepOrder = false): Promise<Scored> {
  let best = from;
  for (const factors of [[0.6, 1.6], [0.85, 1.18], [0.95, 1.05]]) {
    for (let round = 0; round < 12; round++) {
      const before = best.score;
      for (let at = 0; at < best.state.recipes.length; at++) {
        await task.pause();
        for (const parts of neighbours(setup, best.state.recipes[at], factors)) {
          const state = withRecipe(setup, best.state, at, { wish: best.state.recipes[at].wish, parts });
          const next = score(labOf(setup, state), best.score);
          if (next < best.score) best = { state, score: next };
        }
      }
      if (!keepOrder) best = exchanged(setup, best, score);
      if (best.score > before * 0.999) break;
    }
  }
  return best;
}

/** Exchanges of any two layers, while one helps. */
function exchanged(setup: SearchSetup, from: Scored, score: Score): Scored {
  let best = from;
  const places = movable(setup, from.state.recipes);
  for (let i = 0; i < places.length; i++) for (let j = i + 1; j < places.length; j++) {
    const { recipes, films } = best.state;
    const state = { recipes: swapped(recipes, places[i], places[j]), films: swapped(films, places[i], places[j]) };
    const next = score(labOf(setup, state), best.score);
    if (next < best.score) best = { state, score: next };
  }
  return best;
}

/** Pots a small step away: a share changed, all shares changed, a pot exchanged, one added, one dropped. */
function neighbours(setup: SearchSetup, recipe: LayerRecipe, factors: readonly number[]): PotShare[][] {
  const wish = setup.wishes[recipe.wish], { parts } = recipe;
  if (wish.strength !== undefined && wish.ink !== undefined) return [];
  const out: PotShare[][] = [];
  for (const factor of factors) {
    if (parts.length > 1) out.push(parts.map((p) => ({ ...p, share: p.share * factor })));
    parts.forEach((_, i) => out.push(parts.map((p, j) => (i === j ? { ...p, share: p.share * factor } : p))));
  }
  if (wish.ink === undefined) {
    const free = [...setup.shelf.keys()].filter((id) => !parts.some((p) => p.id === id));
    for (const id of free) {
      parts.forEach((_, i) => out.push(parts.map((p, j) => (i === j ? { id, share: p.share } : p))));
      if (parts.length < setup.mostInPot) for (const share of [0.03, 0.15]) out.push([...parts, { id, share }]);
    }
    if (parts.length > 1) parts.forEach((_, i) => out.push(parts.filter((_, j) => i !== j)));
  }
  return out.map((o) => within(o, setup.leastShare));
}

/** Strengths tried when a layer is put back; finer steps are left to annealing. */
const strengthLadder = [1, 0.5, 0.25, 0.12, 0.05];

/** The layer that answers a wish, taken out and put back as the best single pot, strength and place. */
function reseat(setup: SearchSetup, from: Scored, wishNumber: number, score: Score): Scored {
  const { recipes, films } = from.state;
  const at = recipes.findIndex((r) => r.wish === wishNumber);
  const wish = setup.wishes[wishNumber];
  const others = { recipes: recipes.filter((_, i) => i !== at), films: films.filter((_, i) => i !== at) };
  const places = recipes.some((r) => setup.wishes[r.wish].placeFixed) ? [at] : recipes.map((_, i) => i);
  let best = from;
  for (const id of wish.ink !== undefined ? [wish.ink] : setup.shelf.keys()) {
    for (const share of wish.strength !== undefined ? [wish.strength] : strengthLadder) {
      const recipe = { wish: wishNumber, parts: [{ id, share }] };
      const film = filmOfRecipe(recipe, setup.shelf, setup.deposit);
      for (const place of places) {
        const state = { recipes: inserted(others.recipes, place, recipe), films: inserted(others.films, place, film) };
        const next = score(labOf(setup, state), best.score);
        if (next < best.score) best = { state, score: next };
      }
    }
  }
  return best;
}

function inserted<T>(list: readonly T[], at: number, item: T): T[] {
  return [...list.slice(0, at), item, ...list.slice(at)];
}

/** Strengths, pots and order again for masks as they are: what prints where stays, only the colours move. */
export async function refitInks(setup: SearchSetup, targets: Targets, use: Use, start: readonly LayerRecipe[], task: Task): Promise<Found> {
  const score: Score = (lab) => meanAsPrinted(targets, lab, use);
  return found(setup, await polished(setup, scored(setup, stateOf(setup, start), score), score, task, true));
}

function stateOf(setup: SearchSetup, recipes: readonly LayerRecipe[]): State {
  return { recipes, films: recipes.map((r) => filmOfRecipe(r, setup.shelf, setup.deposit)) };
}

function labOf(setup: SearchSetup, state: State): Float64Array {
  return overlapLabOf(setup.paper, [...setup.below, ...state.films], setup.surface);
}

/** Places in the laydown that may be exchanged. */
function movable(setup: SearchSetup, recipes: readonly LayerRecipe[]): number[] {
  return recipes.map((_, i) => i).filter((i) => !setup.wishes[recipes[i].wish].placeFixed);
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
async function allOrders(setup: SearchSetup, from: Found, score: Score, task: Task): Promise<Found> {
  const state = stateOf(setup, from.recipes);
  const places = movable(setup, state.recipes);
  let best = state, bestScore = from.score;
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
