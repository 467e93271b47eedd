import { chromaOf, hueDegOf, labFromXyz, xyzAt, type Lab, type Spectrum } from '../../colour/index.ts';
import { fail } from '../../problem.ts';
import { figure, name as asName, say, share as asShare, type Saying } from '../../../words/say.ts';
import { internal, measured } from '../film/surface.ts';
import { addFilm, thinned } from '../film/film.ts';
import type { Film, Ink, Surface } from '../types.ts';
import { fitShares, type Fit } from './fit.ts';
import { mixer, type Mixer } from './target.ts';

export interface Pot {
  readonly id: string;
  readonly name: string;
  readonly ink: Ink;
  /** Volume share that must not be exceeded (a pigment that floods, a rule of the studio). */
  readonly mostShare?: number;
}

export interface RecipeAsk {
  readonly wanted: Lab;
  /** Measured. */
  readonly paper: Spectrum;
  /** Films already printed, first down first. */
  readonly under?: readonly Film[];
  readonly surface: Surface;
  readonly pots: readonly Pot[];
  /** Mixes at hand: taken whole or let down, never mixed further. */
  readonly whole?: readonly Pot[];
  /** The least share that can be weighed; 0.002 when left out: 0.2 g in a pot of 100 g on a scale that shows 0.1 g (common practice). */
  readonly leastShare?: number;
  /** What the rest of the pot is; clear base when left out. */
  readonly base?: Ink;
  readonly deposit?: number;
  /** Share of the pot that goes to retarder and other additions (see `additionProblems`). */
  readonly additions?: number;
  /** Pots at most; 3 when left out, 4 at most. */
  readonly mostPots?: number;
  /** ΔE00 that is near enough to stop adding pots. */
  readonly nearEnough?: number;
}

export interface Recipe {
  readonly parts: readonly { readonly id: string; readonly name: string; readonly share: number }[];
  /** Volume share of base and additions. */
  readonly restShare: number;
  readonly lab: Lab;
  readonly deltaE: number;
}

export interface RecipesFound {
  /** The one to mix: fewest pots that come near enough, or nearest. */
  readonly best: Recipe;
  /** The nearest with one pot, with two, …; more pots only where they come nearer. */
  readonly byPots: readonly Recipe[];
  /** Why it comes no nearer; empty when it is near enough. */
  readonly why: readonly Saying[];
}

/** A second pot must be worth opening: it has to come nearer by this much (common practice: a difference just seen side by side is about 1). */
const worthAPot = 0.3;
const leastShare = 0.002;

/**
 * The best recipe for a wanted colour over what is printed already, fewest pots first.
 * @throws ProblemError when there is no pot to mix from
 */
export function findRecipe(asked: RecipeAsk): RecipesFound {
  const whole = asked.whole ?? [];
  const ask = whole.length === 0 ? asked : { ...asked, pots: [...asked.pots, ...whole] };
  const nearEnough = ask.nearEnough ?? 1;
  const usable = asked.pots.map((_, i) => i);
  if (ask.pots.length === 0) fail('no-pots', 'inks', say('recipes.noPots'), say('recipes.addInks'));
  const most = 1 - (ask.additions ?? 0);
  const under = ask.under ?? [];
  const trapping = ask.surface.trapping ?? 1;
  const ground = under.reduce(
    (below, film, j) => addFilm(below, j === 0 ? film : thinned(film, trapping)),
    internal(ask.paper, ask.surface),
  );
  const mix = mixer(
    ask.pots.map((p) => p.ink),
    ground,
    ask.surface,
    (ask.deposit ?? 1) * (under.length > 0 ? trapping : 1),
    ask.base,
  );
  const mostPots = Math.max(1, Math.min(4, ask.mostPots ?? 3, usable.length));
  const least = ask.leastShare ?? leastShare;
  const byPots: Recipe[] = [];
  const fits = new Map<string, Fit>();
  for (let count = 1; count <= mostPots; count++) {
    let best: { pots: readonly number[]; fit: Fit } | undefined;
    const choices = count === 1 ? ask.pots.map((_, i) => [i]) : combinations(usable, count);
    const alone: { pots: readonly number[]; fit: Fit }[] = [];
    for (const pots of choices) {
      const fit = bestFit(mix, pots, ask, most, fits, best ? best.fit.deltaE * 1.3 + 0.3 : Infinity);
      fits.set(pots.join(), fit);
      // What no scale shows is left out: the same without it was tried already.
      if (count > 1 && fit.shares.some((share) => share < least)) continue;
      if (count === 1) alone.push({ pots, fit });
      if (!best || fit.deltaE < best.fit.deltaE - 1e-9) best = { pots, fit };
      if (count > 1 && best.fit.deltaE < 0.01) break;
    }
    if (!best) continue;
    if (count === 1) best = fullest(alone, best.fit.deltaE, nearEnough);
    const recipe = recipeOf(ask, best.pots, best.fit);
    const before = byPots[byPots.length - 1];
    if (!before || recipe.deltaE < before.deltaE - worthAPot) byPots.push(recipe);
    if (byPots[byPots.length - 1].deltaE <= Math.min(nearEnough, worthAPot)) break;
  }
  const best = byPots.find((r) => r.deltaE <= nearEnough) ?? byPots[byPots.length - 1];
  const faint = best.parts.some((part) => part.share < least);
  const bare = labFromXyz(xyzAt(measured(ground, ask.surface), 0));
  return {
    best,
    byPots,
    why:
      best.deltaE <= nearEnough && !faint
        ? []
        : best.deltaE <= nearEnough
          ? [say('recipes.tooLittleToWeigh')]
          : reasons(ask, best, bare, most),
  };
}

/** Of single pots that come as near, or near enough, the one that is let down least: a light grey that stands there before a black thinned out. */
function fullest(
  alone: readonly { readonly pots: readonly number[]; readonly fit: Fit }[],
  nearest: number,
  nearEnough: number,
): { readonly pots: readonly number[]; readonly fit: Fit } {
  return alone
    .filter(({ fit }) => fit.deltaE <= Math.max(nearEnough, nearest + worthAPot))
    .reduce((most, one) => (one.fit.shares[0] > most.fit.shares[0] + 1e-9 ? one : most));
}

function bestFit(
  mix: Mixer,
  pots: readonly number[],
  ask: RecipeAsk,
  most: number,
  known: ReadonlyMap<string, Fit>,
  worthPolishing: number,
): Fit {
  const starts: number[][] = [];
  if (pots.length === 1) for (const s of [0.01, 0.05, 0.2, 0.6]) starts.push([s]);
  else {
    // From the best smaller choice, with a little of the one that is new.
    let nearest: { skip: number; fit: Fit } | undefined;
    for (let skip = 0; skip < pots.length; skip++) {
      const fit = known.get(pots.filter((_, i) => i !== skip).join());
      if (fit && (!nearest || fit.deltaE < nearest.fit.deltaE)) nearest = { skip, fit };
    }
    if (nearest) starts.push([...nearest.fit.shares.subarray(0, nearest.skip), 0.03, ...nearest.fit.shares.subarray(nearest.skip)]);
    starts.push(pots.map(() => 0.1 / pots.length));
  }
  let best: Fit | undefined;
  for (const start of starts) {
    const fit = fitShares(limited(mix, pots, ask), pots, start, most, ask.wanted, worthPolishing);
    if (!best || fit.deltaE < best.deltaE) best = fit;
    if (best.deltaE < 0.02) break;
  }
  return capped(pots, best!, ask);
}

/** Pots with a limit of their own: shares above it count as if at it, and `capped` writes them back. */
function limited(mix: Mixer, pots: readonly number[], ask: RecipeAsk): Mixer {
  if (!pots.some((p) => ask.pots[p].mostShare !== undefined)) return mix;
  return {
    labInto: (shares, which, out) =>
      mix.labInto(
        Array.from({ length: which.length }, (_, i) => Math.min(shares[i], ask.pots[which[i]].mostShare ?? 1)),
        which,
        out,
      ),
  };
}

function capped(pots: readonly number[], fit: Fit, ask: RecipeAsk): Fit {
  if (!pots.some((p, i) => fit.shares[i] > (ask.pots[p].mostShare ?? 1))) return fit;
  return { ...fit, shares: fit.shares.map((s, i) => Math.min(s, ask.pots[pots[i]].mostShare ?? 1)) };
}

function recipeOf(ask: RecipeAsk, pots: readonly number[], fit: Fit): Recipe {
  const parts = pots
    .map((p, i) => ({ id: ask.pots[p].id, name: ask.pots[p].name, share: fit.shares[i] }))
    .filter((p) => p.share >= leastShare / 10);
  parts.sort((a, b) => b.share - a.share);
  return { parts, restShare: 1 - parts.reduce((sum, p) => sum + p.share, 0), lab: fit.lab, deltaE: fit.deltaE };
}

function reasons(ask: RecipeAsk, best: Recipe, bare: Lab, most: number): Saying[] {
  const out: Saying[] = [];
  const [l, c] = [best.lab[0] - ask.wanted[0], chromaOf(best.lab) - chromaOf(ask.wanted)];
  const full = best.restShare <= 1 - most + 0.005;
  const covers = ask.pots.some((p) => p.ink.s.some((v) => v > 0.3));
  if (bare[0] < ask.wanted[0] - 0.5 && !covers) {
    out.push(say('recipes.groundDarker', { ground: figure(bare[0]), wanted: figure(ask.wanted[0]) }));
  } else if (l < -1) out.push(say('recipes.showsThrough', { by: figure(-l, 1) }));
  if (full && l > 0.5) out.push(say('recipes.tooWeak', { by: figure(l, 1) }));
  if (c < -1) out.push(say('recipes.tooDull', { by: figure(-c, 1), hue: figure(hueDegOf(ask.wanted)) }));
  if (c > 1) out.push(say('recipes.tooColourful', { by: figure(c, 1) }));
  for (const part of best.parts) {
    const limit = ask.pots.find((p) => p.id === part.id)?.mostShare;
    if (limit !== undefined && part.share > limit - 1e-3)
      out.push(say('recipes.atItsLimit', { part: asName(part.name), limit: asShare(limit, 0) }));
  }
  if (best.parts.some((part) => part.share < (ask.leastShare ?? leastShare))) out.push(say('recipes.tooLittleToWeigh'));
  if (out.length === 0) out.push(say('recipes.hueBetween', { by: figure(Math.abs(turn(hueDegOf(best.lab) - hueDegOf(ask.wanted)))) }));
  return out;
}

function turn(deg: number): number {
  return ((deg + 540) % 360) - 180;
}

function* combinations(items: readonly number[], count: number, from = 0): Generator<number[]> {
  if (count === 0) {
    yield [];
    return;
  }
  for (let i = from; i <= items.length - count; i++) for (const rest of combinations(items, count - 1, i + 1)) yield [items[i], ...rest];
}
