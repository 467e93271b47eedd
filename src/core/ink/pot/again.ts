import { BANDS, deltaE00, labFromSpectrum, type Lab, type Spectrum } from '../../colour/index.ts';
import { deltaE as ofDeltaE, say, type Saying } from '../../../words/say.ts';
import { addFilm, filmOf } from '../film/film.ts';
import { mixInks } from '../film/mix.ts';
import { findRecipe, type Pot, type Recipe } from '../recipe/find.ts';
import { internal, measured } from '../film/surface.ts';
import type { Ink, Surface } from '../types.ts';

export interface RecordedPart {
  readonly id: string;
  readonly name: string;
  /** Volume share, as mixed then. */
  readonly share: number;
  /** The lot it was mixed from. */
  readonly oldInk: Ink;
  /** The lot at hand; the same object when nothing changed. */
  readonly newInk: Ink;
}

export interface AgainAsk {
  readonly parts: readonly RecordedPart[];
  /** Reading of the pot or print of then, when there is one; else the recipe says what it was. */
  readonly recorded?: Spectrum;
  readonly ground: Spectrum;
  readonly surface: Surface;
  readonly base?: Ink;
  readonly nearEnough?: number;
}

export interface MatchedAgain {
  readonly wanted: Lab;
  /** The old recipe with the new lots, unchanged. */
  readonly unchanged: { readonly lab: Lab; readonly deltaE: number };
  readonly corrected: Recipe;
  /** New lot against old, 1 = as strong, per part. */
  readonly lots: readonly { readonly id: string; readonly strength: number }[];
  /** ΔE00 between then and now under daylight D65 and lamp light A: how well the match holds in other light. */
  readonly otherLight: { readonly D65: number; readonly A: number };
  readonly words: Saying;
}

/** The same colour again, years later, with new lots of concentrate (one drawdown of each new lot). */
export function matchAgain(ask: AgainAsk): MatchedAgain {
  const ground = internal(ask.ground, ask.surface);
  const print = (ink: Ink): Spectrum => measured(addFilm(ground, filmOf(ink)), ask.surface);
  const rest = 1 - ask.parts.reduce((sum, p) => sum + p.share, 0);
  const mixed = (which: 'oldInk' | 'newInk'): Ink =>
    mixInks([
      ...ask.parts.map((p) => ({ ink: p[which], share: p.share })),
      ...(ask.base && rest > 1e-6 ? [{ ink: ask.base, share: Math.max(0, rest) }] : []),
    ]);
  const then = ask.recorded ?? print(mixed('oldInk'));
  const wanted = labFromSpectrum(then);
  const unchangedLab = labFromSpectrum(print(mixed('newInk')));
  const pots: Pot[] = ask.parts.map((p) => ({ id: p.id, name: p.name, ink: p.newInk }));
  const found = findRecipe({
    wanted,
    paper: ask.ground,
    surface: ask.surface,
    pots,
    mostPots: Math.min(4, pots.length),
    nearEnough: 0.3,
    ...(ask.base ? { base: ask.base } : {}),
  });
  const corrected = found.byPots[found.byPots.length - 1];
  const unchanged = { lab: unchangedLab, deltaE: deltaE00(unchangedLab, wanted) };
  const newMix = mixInks([
    ...corrected.parts.map((p) => ({ ink: pots.find((pot) => pot.id === p.id)!.ink, share: p.share })),
    ...(ask.base && corrected.restShare > 1e-6 ? [{ ink: ask.base, share: corrected.restShare }] : []),
  ]);
  const now = print(newMix);
  const otherLight = {
    D65: deltaE00(labFromSpectrum(then, 'D65'), labFromSpectrum(now, 'D65')),
    A: deltaE00(labFromSpectrum(then, 'A'), labFromSpectrum(now, 'A')),
  };
  const lots = ask.parts.map((p) => ({ id: p.id, strength: strengthOf(p.newInk, p.oldInk) }));
  const keeps = unchanged.deltaE <= (ask.nearEnough ?? 1);
  const off = { unchanged: ofDeltaE(unchanged.deltaE), corrected: ofDeltaE(corrected.deltaE) };
  return {
    wanted,
    unchanged,
    corrected,
    lots,
    otherLight,
    words: keeps
      ? say('recipes.recipeHolds', { off: off.unchanged })
      : otherLight.A > 2
        ? say('recipes.recipeCorrectedLamp', { ...off, lamp: ofDeltaE(otherLight.A) })
        : say('recipes.recipeCorrected', off),
  };
}

/** How much stronger one lot absorbs than another, by least squares over the bands. */
function strengthOf(ink: Ink, against: Ink): number {
  let top = 0,
    bottom = 0;
  for (let i = 2; i < BANDS; i++) {
    top += ink.k[i] * against.k[i];
    bottom += against.k[i] * against.k[i];
  }
  return bottom === 0 ? 1 : top / bottom;
}
