import { BANDS, labFromSpectrum, type Spectrum } from '../../colour/index.ts';
import { deltaE, figure, say, type Saying } from '../../../words/say.ts';
import { filmOf, stackReflectance } from './film.ts';
import { mixInks } from './mix.ts';
import { overlapColours, overlapSpectra, type OverlapColours } from './overlaps.ts';
import { findRecipe, type Recipe, type RecipeAsk } from '../recipe/find.ts';
import type { Film, Ink, Surface } from '../types.ts';

export interface ReachAsk {
  readonly paper: Spectrum;
  readonly surface: Surface;
  /** Films of all layers, first down first; null where the open layer lies. */
  readonly films: readonly (Film | null)[];
  readonly inks: readonly { readonly id: string; readonly ink: Ink }[];
  readonly strengths?: readonly number[];
  readonly deposit?: number;
}

export interface ReachStep extends OverlapColours {
  readonly ink: string;
  readonly strength: number;
}

/** What an open layer can do: every overlap that follows for each ink and strength tried in it. */
export function layerReach(ask: ReachAsk): ReachStep[] {
  const strengths = ask.strengths ?? [1, 0.5, 0.25, 0.125, 0.0625];
  return ask.inks.flatMap(({ id, ink }) =>
    strengths.map((strength): ReachStep => {
      const open = filmOf(ink, strength, ask.deposit ?? 1);
      return {
        ink: id,
        strength,
        ...overlapColours(
          overlapSpectra(
            ask.paper,
            ask.films.map((f) => f ?? open),
            ask.surface,
          ),
        ),
      };
    }),
  );
}

export interface BaseCompared {
  readonly base: string;
  readonly recipe: Recipe;
  /** Lightness the same film has over black: what it covers. A clear film stays as dark as the black. */
  readonly lightnessOverBlack: number;
  readonly words: Saying;
}

/**
 * The same colour let down with one base and another: which comes nearer on the paper, and what it does over dark
 * layers. Transparent bases keep overlaps clear, extender bases make them milky.
 */
export function compareBases(ask: RecipeAsk, bases: readonly { readonly id: string; readonly ink: Ink }[]): BaseCompared[] {
  const black = new Float64Array(BANDS).fill(0.03);
  const bare = labFromSpectrum(black)[0];
  return bases.map(({ id, ink }): BaseCompared => {
    const recipe = findRecipe({ ...ask, base: ink }).best;
    const parts = recipe.parts.map((p) => ({ ink: ask.pots.find((pot) => pot.id === p.id)!.ink, share: p.share }));
    const film = filmOf(mixInks([...parts, { ink, share: Math.max(0, recipe.restShare - (ask.additions ?? 0)) }]), 1, ask.deposit ?? 1);
    const lightness = labFromSpectrum(stackReflectance(black, [film], ask.surface))[0];
    const lifts = lightness - bare;
    const off = deltaE(recipe.deltaE);
    return {
      base: id,
      recipe,
      lightnessOverBlack: lightness,
      words:
        lifts < 2
          ? say('ink.baseStaysClear', { off })
          : say(lifts < 10 ? 'ink.baseVeils' : 'ink.baseCovers', { off, lightness: figure(lightness) }),
    };
  });
}
