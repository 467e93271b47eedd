import { exp } from '../../numeric/index.ts';
import type { Random } from '../../random.ts';
import { decided, movable, swapped, within, withParts, type SearchSetup } from './moves.ts';
import type { LayerRecipe, PotShare } from './recipe.ts';

/** One pot of any ink and strength a layer. */
export function startRecipes(setup: SearchSetup, random: Random): LayerRecipe[] {
  return setup.wishes.map((_, wish) => ({ wish, parts: anyPot(setup, wish, random) }));
}

function anyPot(setup: SearchSetup, wish: number, random: Random): PotShare[] {
  const { ink, strength } = setup.wishes[wish];
  return [{ id: ink ?? anyInk(setup, random), share: strength ?? exp(-2.5 * random.next()) }];
}

function anyInk({ shelf }: SearchSetup, random: Random): string {
  const ids = [...shelf.keys()];
  return ids[random.below(ids.length)];
}

/** One mix of inks for all layers, weaker from step to step, in any order: pictures of nearly one colour have their best plans near such. */
export function steppedMix(setup: SearchSetup, random: Random): LayerRecipe[] {
  const ids = [...new Set(Array.from({ length: setup.mostInPot }, () => anyInk(setup, random)))];
  const mix = ids.map((id) => ({ id, share: exp(-2 * random.next()) })),
    sum = mix.reduce((all, p) => all + p.share, 0);
  const top = exp(-1.5 * random.next()) / sum,
    ratio = 0.3 + 0.5 * random.next();
  const recipes = setup.wishes.map((wish, i) =>
    wish.ink !== undefined
      ? { wish: i, parts: [{ id: wish.ink, share: wish.strength ?? Math.max(setup.leastShare, top * sum * ratio ** i) }] }
      : { wish: i, parts: within(mix, setup.leastShare, top * ratio ** i) },
  );
  return reordered(setup, recipes, random);
}

/** Layers that may move, in any order. */
function reordered(setup: SearchSetup, recipes: readonly LayerRecipe[], random: Random): LayerRecipe[] {
  const places = movable(setup, recipes);
  let out = recipes.slice();
  for (let i = places.length - 1; i > 0; i--) out = swapped(out, places[i], places[random.below(i + 1)]);
  return out;
}

/** A plan pushed out of its place, in one of six ways in turn: those that were seen to lead to better ones most often come first. */
export function kicked(
  setup: SearchSetup,
  from: readonly LayerRecipe[],
  other: readonly LayerRecipe[],
  turn: number,
  random: Random,
): LayerRecipe[] {
  switch (turn % 6) {
    case 0:
      return crossed(setup, from, other, random);
    case 1:
      return inksExchanged(setup, from, 1, random);
    case 2:
      return inksExchanged(setup, from, 2, random);
    case 3:
      return reordered(setup, from, random);
    case 4: {
      const at = random.below(from.length);
      return withParts(from, at, anyPot(setup, from[at].wish, random));
    }
    default:
      return jolted(setup, from, random);
  }
}

/** Of two plans, each place as the one or the other has it; pots that are wished for stay. */
function crossed({ wishes }: SearchSetup, from: readonly LayerRecipe[], other: readonly LayerRecipe[], random: Random): LayerRecipe[] {
  return from.map((recipe, i) =>
    random.next() < 0.5 || wishes[recipe.wish].ink !== undefined || wishes[other[i].wish].ink !== undefined
      ? recipe
      : { wish: recipe.wish, parts: other[i].parts },
  );
}

/** So many inks in the pots exchanged for any others, at about the same strength. */
function inksExchanged(setup: SearchSetup, from: readonly LayerRecipe[], count: number, random: Random): LayerRecipe[] {
  let recipes = from.slice();
  for (let turn = 0; turn < count; turn++) {
    const at = random.below(recipes.length),
      { wish, parts } = recipes[at];
    const out = random.below(parts.length),
      id = anyInk(setup, random),
      factor = exp(0.7 * random.normal());
    if (setup.wishes[wish].ink !== undefined || parts.some((p) => p.id === id)) continue;
    recipes = withParts(
      recipes,
      at,
      within(
        parts.map((p, i) => (i === out ? { id, share: p.share * factor } : p)),
        setup.leastShare,
      ),
    );
  }
  return recipes;
}

/** All strengths anew around what they are, and sometimes two layers exchanged. */
function jolted(setup: SearchSetup, from: readonly LayerRecipe[], random: Random): LayerRecipe[] {
  const recipes = from.map((r) => {
    const factor = exp(0.9 * random.normal());
    return decided(setup, r)
      ? r
      : {
          ...r,
          parts: within(
            r.parts.map((p) => ({ ...p, share: p.share * factor * exp(0.3 * random.normal()) })),
            setup.leastShare,
          ),
        };
  });
  const places = movable(setup, recipes);
  if (places.length < 2 || random.next() < 0.5) return recipes;
  return swapped(recipes, places[random.below(places.length)], places[random.below(places.length)]);
}
