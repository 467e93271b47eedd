import type { Spectrum } from '../colour/index.ts';
import type { Film, Ink, Surface } from '../ink/index.ts';
import type { Random } from '../random.ts';
import { shareStep } from './descend.ts';
import { asPrinted, meanAsPrinted, meanDifference, roughDifference, type Targets, type Use } from './fit-score.ts';
import { fewBands, groundOf, quickOverlapLab, type Ground } from './kernels/overlap-lab.ts';
import { filmOfRecipe, quickFilmOfRecipe, overlapLabOf, type LayerRecipe, type PotShare } from './recipe.ts';

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
  /** Overlaps worked out in few bands: for telling many plans apart, not for settling one. */
  readonly quick?: boolean;
}

export interface Found {
  readonly recipes: readonly LayerRecipe[];
  /** Films below and of the recipes. */
  readonly overlapLab: Float64Array;
  /** Mean ΔE00 over the targets. */
  readonly score: number;
}

/** How good overlaps are, and which colours they print in which code. */
export interface Judge {
  readonly targets: Targets;
  /** @param stopAt gives up once the score exceeds this */
  score(overlapLab: Float64Array, stopAt: number): number;
  use(overlapLab: Float64Array): Use;
}

/** Each picture colour takes its best code. */
export function freeJudge(targets: Targets, codes: readonly number[]): Judge {
  return {
    targets,
    score: (lab, stopAt) => meanDifference(targets, lab, codes, stopAt),
    use: (lab) => asPrinted(targets, lab, codes),
  };
}

/** The same by rough differences. */
export function roughJudge(targets: Targets, codes: readonly number[]): Judge {
  const use = (lab: Float64Array): Use => {
    const code = new Uint8Array(targets.count);
    roughDifference(targets, lab, codes, Infinity, code);
    return { target: Uint16Array.from(code, (_, i) => i), code, share: targets.weight };
  };
  return { targets, score: (lab, stopAt) => roughDifference(targets, lab, codes, stopAt), use };
}

/** What prints where is given, only the colours move. */
export function printedJudge(targets: Targets, use: Use): Judge {
  return { targets, score: (lab) => meanAsPrinted(targets, lab, use), use: () => use };
}

/** A candidate with its films, so that a changed layer costs one film. */
export interface State {
  readonly recipes: readonly LayerRecipe[];
  readonly films: readonly Film[];
}

export interface Scored {
  readonly state: State;
  readonly score: number;
}

function filmFor(setup: SearchSetup, recipe: LayerRecipe): Film {
  return (setup.quick ? quickFilmOfRecipe : filmOfRecipe)(recipe, setup.shelf, setup.deposit);
}

/** The same search in few bands; its states are no good for the full one. */
export function quickly(setup: SearchSetup): SearchSetup {
  return { ...setup, quick: true, below: setup.below.map((film) => ({ r0: fewBands(film.r0), t2: fewBands(film.t2) })) };
}

export function stateOf(setup: SearchSetup, recipes: readonly LayerRecipe[]): State {
  return { recipes, films: recipes.map((r) => filmFor(setup, r)) };
}

export function scored(setup: SearchSetup, state: State, judge: Judge): Scored {
  return { state, score: judge.score(labOf(setup, state), Infinity) };
}

/** Overlaps of a candidate. */
export function labOf(setup: SearchSetup, state: State): Float64Array {
  if (!setup.quick) return overlapLabOf(setup.paper, [...setup.below, ...state.films], setup.surface);
  let ground = grounds.get(setup);
  if (!ground) grounds.set(setup, ground = groundOf(setup.paper, setup.surface));
  return quickOverlapLab(ground, [...setup.below, ...state.films]);
}

const grounds = new WeakMap<SearchSetup, Ground>();

/** Places in the laydown that may be exchanged. */
export function movable(setup: SearchSetup, recipes: readonly LayerRecipe[]): number[] {
  return recipes.map((_, i) => i).filter((i) => !setup.wishes[recipes[i].wish].placeFixed);
}

/** No share below what can be weighed, and no more than the whole pot. */
function within(parts: PotShare[], least: number): PotShare[] {
  const raised = parts.map((p) => ({ ...p, share: Math.max(least, Math.min(1, p.share)) }));
  const sum = raised.reduce((a, p) => a + p.share, 0);
  return sum > 1 ? raised.map((p) => ({ ...p, share: p.share / sum })) : raised;
}

export function withRecipe(setup: SearchSetup, { recipes, films }: State, at: number, recipe: LayerRecipe): State {
  return {
    recipes: recipes.map((r, i) => (i === at ? recipe : r)),
    films: films.map((f, i) => (i === at ? filmFor(setup, recipe) : f)),
  };
}

/** One layer's pot and strength anew, by chance. */
export function shaken(setup: SearchSetup, state: State, random: Random, wishNumber: number): State {
  const at = state.recipes.findIndex((r) => r.wish === wishNumber);
  const wish = setup.wishes[wishNumber], ids = [...setup.shelf.keys()];
  const parts = [{ id: wish.ink ?? ids[random.below(ids.length)], share: wish.strength ?? Math.exp(-3 * random.next()) }];
  return withRecipe(setup, state, at, { wish: wishNumber, parts });
}

/** All strengths anew around what they are, and sometimes two layers exchanged. */
export function jolted(setup: SearchSetup, state: State, random: Random): State {
  const recipes = state.recipes.map((r) => {
    const factor = Math.exp(0.9 * random.normal());
    return decided(setup, r) ? r : { ...r, parts: within(r.parts.map((p) => ({ ...p, share: p.share * factor * Math.exp(0.3 * random.normal()) })), setup.leastShare) };
  });
  const places = movable(setup, recipes);
  const a = places[random.below(Math.max(1, places.length))], b = places[random.below(Math.max(1, places.length))];
  return stateOf(setup, places.length > 1 && random.next() < 0.5 ? swapped(recipes, a, b) : recipes);
}

/** The shares that may change, as logarithms, and the state that other values of them make. */
function freeShares(setup: SearchSetup, state: State): { readonly at: Float64Array; moved(values: Float64Array): State } {
  const of = state.recipes.map((r) => (decided(setup, r) ? [] : r.parts.map((p) => Math.log(p.share))));
  const at = Float64Array.from(of.flat());
  const moved = (values: Float64Array): State => {
    let from = 0;
    const recipes = state.recipes.map((r, layer) => {
      const first = from;
      from += of[layer].length;
      if (of[layer].every((v, i) => v === values[first + i])) return r;
      return { ...r, parts: within(r.parts.map((p, i) => ({ ...p, share: Math.exp(values[first + i]) })), setup.leastShare) };
    });
    return { recipes, films: recipes.map((r, i) => (r === state.recipes[i] ? state.films[i] : filmFor(setup, r))) };
  };
  return { at, moved };
}

/** All shares of all pots moved together as long as that helps. */
export function descended(setup: SearchSetup, from: Scored, judge: Judge, steps = 6): Scored {
  let best = from, damping = 0.02;
  for (let turn = 0; turn < steps; turn++) {
    const { at, moved } = freeShares(setup, best.state);
    if (at.length === 0) return best;
    const lab = labOf(setup, best.state);
    const step = shareStep({ at, labAt: (values) => labOf(setup, moved(values)) }, lab, judge.targets, judge.use(lab), damping);
    const before = best.score;
    for (let half = 1; half > 0.2; half /= 2) {
      const next = moved(at.map((v, i) => v + step[i] * half));
      const score = judge.score(labOf(setup, next), best.score);
      if (score < best.score) {
        best = { state: next, score };
        break;
      }
    }
    damping *= best.score < before ? 0.4 : 8;
    if (best.score > before * 0.9995 && (best.score < before || damping > 2)) break;
  }
  return best;
}

function decided(setup: SearchSetup, recipe: LayerRecipe): boolean {
  const wish = setup.wishes[recipe.wish];
  return wish.strength !== undefined && wish.ink !== undefined;
}

/** Exchanges of any two layers, while one helps. */
export function exchanged(setup: SearchSetup, from: Scored, judge: Judge): Scored {
  let best = from;
  const places = movable(setup, from.state.recipes);
  for (let i = 0; i < places.length; i++) for (let j = i + 1; j < places.length; j++) {
    const { recipes, films } = best.state;
    const state = { recipes: swapped(recipes, places[i], places[j]), films: swapped(films, places[i], places[j]) };
    const next = judge.score(labOf(setup, state), best.score);
    if (next < best.score) best = { state, score: next };
  }
  return best;
}

/** Pots that differ in kind: a pot exchanged, one added, one dropped, and strengths by large steps; if `fine`, by small ones too. */
export function neighbours(setup: SearchSetup, recipe: LayerRecipe, fine: boolean): PotShare[][] {
  const wish = setup.wishes[recipe.wish], { parts } = recipe;
  if (decided(setup, recipe)) return [];
  const factors = fine ? [0.6, 0.85, 0.95, 1.05, 1.18, 1.6] : [0.6, 1.6];
  const out: PotShare[][] = factors.map((factor) => parts.map((p) => ({ ...p, share: p.share * factor })));
  if (parts.length > 1) for (const factor of factors) parts.forEach((_, i) => out.push(parts.map((p, j) => (i === j ? { ...p, share: p.share * factor } : p))));
  if (wish.ink === undefined) {
    const free = [...setup.shelf.keys()].filter((id) => !parts.some((p) => p.id === id));
    for (const id of free) {
      for (const factor of [1, 3]) parts.forEach((_, i) => out.push(parts.map((p, j) => (i === j ? { id, share: p.share * factor } : p))));
      if (parts.length < setup.mostInPot) for (const share of [0.03, 0.15, 0.5]) out.push([...parts, { id, share }]);
    }
    if (parts.length > 1) parts.forEach((_, i) => out.push(parts.filter((_, j) => i !== j)));
  }
  return out.map((o) => within(o, setup.leastShare));
}

/** Strengths tried when a layer is put back; finer steps are left to `descended`. */
const strengthLadder = [1, 0.5, 0.25, 0.12, 0.05];

/** The layer that answers a wish, taken out and put back as the best single pot, strength and place. */
export function reseat(setup: SearchSetup, from: Scored, wishNumber: number, judge: Judge): Scored {
  const { recipes, films } = from.state;
  const at = recipes.findIndex((r) => r.wish === wishNumber);
  const wish = setup.wishes[wishNumber];
  const others = { recipes: recipes.filter((_, i) => i !== at), films: films.filter((_, i) => i !== at) };
  const places = recipes.some((r) => setup.wishes[r.wish].placeFixed) ? [at] : recipes.map((_, i) => i);
  let best = from;
  for (const id of wish.ink !== undefined ? [wish.ink] : setup.shelf.keys()) {
    for (const share of wish.strength !== undefined ? [wish.strength] : strengthLadder) {
      const recipe = { wish: wishNumber, parts: [{ id, share }] };
      const film = filmFor(setup, recipe);
      for (const place of places) {
        const state = { recipes: inserted(others.recipes, place, recipe), films: inserted(others.films, place, film) };
        const next = judge.score(labOf(setup, state), best.score);
        if (next < best.score) best = { state, score: next };
      }
    }
  }
  return best;
}

function inserted<T>(list: readonly T[], at: number, item: T): T[] {
  return [...list.slice(0, at), item, ...list.slice(at)];
}

export function startRecipes(setup: SearchSetup, random: Random): LayerRecipe[] {
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

