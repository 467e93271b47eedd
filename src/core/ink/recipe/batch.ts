import { deltaE00, type Lab, type Spectrum } from '../../colour/index.ts';
import { labFromSpectrum } from '../../colour/index.ts';
import { fail, problem, type Problem } from '../../problem.ts';
import { deltaE as ofDeltaE, mass, say, share as asShare, type Saying } from '../../../words/say.ts';
import { addFilm, filmOf } from '../film/film.ts';
import { mixInks } from '../film/mix.ts';
import { internal, measured } from '../film/surface.ts';
import type { Ink, Place, Surface } from '../types.ts';

export interface BatchPart {
  readonly id: string;
  readonly name: Saying;
  /** Share of the whole by volume; base and additions are parts like any other. */
  readonly share: number;
  readonly ink: Ink;
  readonly densityGPerMl: number;
}

export interface BatchAsk {
  readonly parts: readonly BatchPart[];
  readonly totalGrams: number;
  /** Smallest step of the scale; 0 for no rounding. */
  readonly scaleStepGrams: number;
  /** Where the colour is judged: the ground (measured) under this layer. */
  readonly ground: Spectrum;
  readonly surface: Surface;
  readonly deposit?: number;
  /** The pot, for problems: `layers[#sky].ink`. */
  readonly place?: Place;
}

export interface Batch {
  readonly parts: readonly {
    readonly id: string;
    readonly name: Saying;
    readonly grams: number;
    readonly exactGrams: number;
    readonly millilitres: number;
    readonly share: number;
  }[];
  readonly totalGrams: number;
  readonly lab: Lab;
  /** ΔE00 that the rounding costs. */
  readonly roundingDeltaE: number;
  readonly problems: readonly Problem[];
}

/**
 * Weighs a batch: parts by volume to grams by density, rounded to the scale's step in the way that harms the colour least.
 * @throws ProblemError when parts don't fill the pot, or total or density are no amounts
 */
export function mixBatch(ask: BatchAsk): Batch {
  const place = ask.place ?? say('where.pot');
  const whole = ask.parts.reduce((sum, p) => sum + p.share, 0);
  if (ask.parts.length === 0 || Math.abs(whole - 1) > 1e-6)
    fail('shares-not-whole', place, say('recipes.sharesNotWhole', { whole: asShare(whole, 1) }), say('recipes.fillWithBase'));
  if (!(ask.totalGrams > 0)) fail('grams-out-of-range', place, say('recipes.batchWeighsNothing'), say('recipes.giveAmount'));
  if (ask.parts.some((p) => !(p.densityGPerMl > 0) || !(p.share >= 0)))
    fail('density-out-of-range', place, say('recipes.partNeedsDensity'), say('recipes.usualDensity'));
  const density = ask.parts.reduce((sum, p) => sum + p.share * p.densityGPerMl, 0);
  const exact = ask.parts.map((p) => (ask.totalGrams * p.share * p.densityGPerMl) / density);
  const labOf = (grams: readonly number[]): Lab => {
    const volumes = grams.map((g, i) => g / ask.parts[i].densityGPerMl);
    const all = volumes.reduce((a, b) => a + b, 0);
    const ink = mixInks(ask.parts.map((p, i) => ({ ink: p.ink, share: volumes[i] / all })));
    return labFromSpectrum(measured(addFilm(internal(ask.ground, ask.surface), filmOf(ink, 1, ask.deposit ?? 1)), ask.surface));
  };
  const wanted = labOf(exact);
  const step = ask.scaleStepGrams;
  let grams: readonly number[] = exact;
  let off = 0;
  if (step > 0) {
    off = Infinity;
    const small = ask.parts.length <= 8;
    const choices = small ? 1 << ask.parts.length : 1;
    for (let choice = 0; choice < choices; choice++) {
      // A part never rounds away to nothing.
      const tried = exact.map((g, i) =>
        g === 0 ? 0 : Math.max(step, (small ? Math.floor(g / step) + ((choice >> i) & 1) : Math.round(g / step)) * step),
      );
      const e = deltaE00(labOf(tried), wanted) + 1e-6 * Math.abs(tried.reduce((a, b) => a + b, 0) - ask.totalGrams);
      if (e < off) {
        off = e;
        grams = tried;
      }
    }
    off = deltaE00(labOf(grams), wanted);
  }
  const volumes = grams.map((g, i) => g / ask.parts[i].densityGPerMl);
  const volume = volumes.reduce((a, b) => a + b, 0);
  const problems: Problem[] = [];
  if (off > 0.5) {
    const message = say('recipes.roundingCosts', { step: mass(step), off: ofDeltaE(off) });
    problems.push(problem('warning', 'scale-too-coarse', place, message, say('recipes.finerScale')));
  }
  const smallest = Math.min(...exact.filter((g) => g > 0));
  if (step > 0 && smallest < step) {
    const message = say('recipes.partBelowScale', { part: ask.parts[exact.indexOf(smallest)].name, step: mass(step) });
    problems.push(problem('warning', 'part-below-scale', place, message, say('recipes.letDownFirst')));
  }
  return {
    parts: ask.parts.map((p, i) => ({
      id: p.id,
      name: p.name,
      grams: grams[i],
      exactGrams: exact[i],
      millilitres: volumes[i],
      share: volumes[i] / volume,
    })),
    totalGrams: grams.reduce((a, b) => a + b, 0),
    lab: labOf(grams),
    roundingDeltaE: off,
    problems,
  };
}

/** Shares as small whole parts (1 : 4 : 10): the fewest parts whose shares stay within `within` of the exact ones, relatively. */
export function wholeParts(shares: readonly number[], within = 0.05, most = 60): number[] {
  const least = Math.min(...shares.filter((s) => s > 0));
  for (let unit = 1; unit <= most; unit++) {
    const parts = shares.map((s) => (s === 0 ? 0 : Math.max(1, Math.round((s / least) * unit))));
    const sum = parts.reduce((a, b) => a + b, 0);
    if (shares.every((s, i) => s === 0 || Math.abs(parts[i] / sum / s - 1) <= within)) return parts;
  }
  return shares.map((s) => Math.round(s * 1000));
}

/** Grams of ink for a run: what lies on the sheets, and what stays in screen and pot (docs/trade.md 3). */
export function runGrams(run: {
  readonly areaM2: number;
  readonly coverage: number;
  readonly wetMicrons: number;
  readonly densityGPerMl: number;
  readonly pulls: number;
  readonly staysGrams: number;
}): { readonly printed: number; readonly total: number } {
  const printed = run.areaM2 * run.coverage * run.wetMicrons * run.densityGPerMl * run.pulls;
  return { printed, total: printed + run.staysGrams };
}

/** Grams of an addition of strength s that bring a pot of M grams from strength c up to c* (docs/trade.md 3). */
export function strengthenGrams(potGrams: number, from: number, to: number, additionStrength = 1): number {
  if (!(to >= from) || !(additionStrength > to))
    fail(
      'strength-out-of-reach',
      say('where.pot'),
      say('recipes.strengthOutOfReach', { from: asShare(from), to: asShare(to), addition: asShare(additionStrength) }),
      say('recipes.strongerAddition'),
    );
  return (potGrams * (to - from)) / (additionStrength - to);
}

/** Grams of clear base that bring a pot of M grams from strength c down to c* (docs/trade.md 3). */
export function weakenGrams(potGrams: number, from: number, to: number): number {
  if (!(to > 0) || !(to <= from))
    fail(
      'strength-out-of-reach',
      say('where.pot'),
      say('recipes.baseCannot', { from: asShare(from), to: asShare(to) }),
      say('recipes.baseOnlyWeakens'),
    );
  return potGrams * (from / to - 1);
}

/** Retarder: usual range and ceiling, by share of the pot (docs/trade.md 3). */
export const retarderLimits = { usual: [0.02, 0.05], ceiling: 0.1 } as const;

/** Warns of more retarder and additions than the ink bears. */
export function additionProblems(retarderShare: number, otherShare: number, place: Place): Problem[] {
  const out: Problem[] = [];
  const percent = (v: number): ReturnType<typeof asShare> => asShare(v, Math.round(v * 1000) % 10 === 0 ? 0 : 1);
  const usual = { from: percent(retarderLimits.usual[0]), to: percent(retarderLimits.usual[1]) };
  if (retarderShare > retarderLimits.ceiling) {
    out.push(
      problem(
        'error',
        'too-much-retarder',
        place,
        say('recipes.tooMuchRetarder', { share: percent(retarderShare), ceiling: percent(retarderLimits.ceiling) }),
        say('recipes.retarderWithin', usual),
      ),
    );
  } else if (retarderShare > retarderLimits.usual[1]) {
    out.push(
      problem(
        'warning',
        'much-retarder',
        place,
        say('recipes.muchRetarder', { share: percent(retarderShare), ...usual }),
        say('recipes.driesSlowly'),
      ),
    );
  }
  if (retarderShare + otherShare > 0.15)
    out.push(
      problem(
        'warning',
        'many-additions',
        place,
        say('recipes.manyAdditions', { share: percent(retarderShare + otherShare) }),
        say('recipes.binderThin'),
      ),
    );
  return out;
}
