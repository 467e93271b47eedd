import { exp } from '../../numeric/index.ts';
import { shareStep } from './descend.ts';
import { bestPot, judgedScore, shareSlopes, usedBy, type EngineGround, type Judge } from '../kernels/search-engine.ts';
import type { LayerRecipe, PotShare } from './recipe.ts';

/** What the printmaker has decided about one layer; everything left out is free. */
export interface LayerWish {
  /** Ink that must be in the pot, and nothing else. */
  readonly ink?: string;
  /** Volume share of it, 0..1. */
  readonly strength?: number;
  /** This layer stays in its place in the laydown. */
  readonly placeFixed?: boolean;
}

export interface SearchSetup extends EngineGround {
  readonly wishes: readonly LayerWish[];
  /** At most so many inks in one pot. */
  readonly mostInPot: number;
  /** Least share of ink worth weighing out. */
  readonly leastShare: number;
}

export interface Scored {
  readonly recipes: readonly LayerRecipe[];
  readonly score: number;
}

/** The same search in half the bands. */
export function quickly(setup: SearchSetup): SearchSetup {
  return { ...setup, quick: true };
}

export function scored(setup: SearchSetup, recipes: readonly LayerRecipe[], judge: Judge): Scored {
  return { recipes, score: judgedScore(setup, judge, recipes) };
}

/** Places in the laydown that may be exchanged. */
export function movable(setup: SearchSetup, recipes: readonly LayerRecipe[]): number[] {
  return recipes.map((_, i) => i).filter((i) => !setup.wishes[recipes[i].wish].placeFixed);
}

/** No share below what can be weighed, and no more than the whole pot. */
export function within(parts: readonly PotShare[], least: number, factor = 1): PotShare[] {
  const out = new Array<PotShare>(parts.length);
  let sum = 0;
  for (let i = 0; i < parts.length; i++) {
    const share = Math.max(least, Math.min(1, parts[i].share * factor));
    sum += share;
    out[i] = { id: parts[i].id, share };
  }
  return sum > 1 ? out.map(({ id, share }) => ({ id, share: share / sum })) : out;
}

export function withParts(recipes: readonly LayerRecipe[], at: number, parts: readonly PotShare[]): LayerRecipe[] {
  return recipes.map((r, i) => (i === at ? { ...r, parts } : r));
}

/** The recipes with every share that may change grown by its step, a logarithm. */
function grown(setup: SearchSetup, from: readonly LayerRecipe[], step: Float64Array, by: number): LayerRecipe[] {
  let next = 0;
  return from.map((r) =>
    decided(setup, r)
      ? r
      : {
          ...r,
          parts: within(
            r.parts.map((p) => ({ id: p.id, share: p.share * exp(step[next++] * by) })),
            setup.leastShare,
          ),
        },
  );
}

/** All shares of all pots moved together as long as that helps. */
export function descended(setup: SearchSetup, from: Scored, judge: Judge, steps = 6): Scored {
  let best = from,
    damping = 0.02;
  for (let turn = 0; turn < steps; turn++) {
    const use = usedBy(setup, judge, best.recipes),
      { lab, slopes } = shareSlopes(setup, best.recipes, (recipe) => !decided(setup, recipe));
    if (slopes.length === 0) return best;
    const step = shareStep(lab, slopes, judge.targets, use, damping);
    const before = best.score;
    for (let half = 1; half > 0.2; half /= 2) {
      const recipes = grown(setup, best.recipes, step, half);
      const score = judgedScore(setup, judge, recipes, best.score);
      if (score < best.score) {
        best = { recipes, score };
        break;
      }
    }
    damping *= best.score < before ? 0.4 : 8;
    if (best.score > before * 0.9995 && (best.score < before || damping > 2)) break;
  }
  return best;
}

export function decided(setup: SearchSetup, recipe: LayerRecipe): boolean {
  const wish = setup.wishes[recipe.wish];
  return wish.strength !== undefined && wish.ink !== undefined;
}

/** Exchanges of any two layers, while one helps. */
export function exchanged(setup: SearchSetup, from: Scored, judge: Judge): Scored {
  let best = from;
  const places = movable(setup, from.recipes);
  for (let i = 0; i < places.length; i++)
    for (let j = i + 1; j < places.length; j++) {
      const recipes = swapped(best.recipes, places[i], places[j]);
      const score = judgedScore(setup, judge, recipes, best.score);
      if (score < best.score) best = { recipes, score };
    }
  return best;
}

/** Pots that differ in kind: a pot exchanged, one added, one dropped, and strengths by large steps; if `fine`, by small ones too. */
export function neighbours(setup: SearchSetup, recipe: LayerRecipe, fine: boolean): PotShare[][] {
  const wish = setup.wishes[recipe.wish],
    { parts } = recipe;
  if (decided(setup, recipe)) return [];
  const factors = fine ? [0.6, 0.85, 0.95, 1.05, 1.18, 1.6] : [0.6, 1.6];
  const out: PotShare[][] = factors.map((factor) => parts.map((p) => ({ ...p, share: p.share * factor })));
  if (parts.length > 1)
    for (const factor of factors) parts.forEach((_, i) => out.push(parts.map((p, j) => (i === j ? { ...p, share: p.share * factor } : p))));
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
  const { recipes } = from;
  const at = recipes.findIndex((r) => r.wish === wishNumber),
    wish = setup.wishes[wishNumber];
  const others = recipes.filter((_, i) => i !== at);
  const places = recipes.some((r) => setup.wishes[r.wish].placeFixed) ? [at] : recipes.map((_, i) => i);
  const pots = (wish.ink !== undefined ? [wish.ink] : [...setup.shelf.keys()]).flatMap((id) =>
    (wish.strength !== undefined ? [wish.strength] : strengthLadder).map((share) => [{ id, share }]),
  );
  let best = from;
  for (const place of places) {
    const open = [...others.slice(0, place), recipes[at], ...others.slice(place)];
    const found = bestPot(setup, judge, open, place, pots, best.score);
    if (found) best = { recipes: withParts(open, place, pots[found.number]), score: found.score };
  }
  return best;
}

export function swapped<T>(list: readonly T[], a: number, b: number): T[] {
  const out = list.slice();
  [out[a], out[b]] = [out[b], out[a]];
  return out;
}
