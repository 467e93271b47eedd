import { log } from '../../numeric/index.ts';
import { BANDS, type Spectrum } from '../../colour/index.ts';
import { problem, type Problem } from '../../problem.ts';
import { say, share } from '../../../words/say.ts';
import { kAndSOfFilm } from '../film/film.ts';
import { internal } from '../film/surface.ts';
import type { Ink, InkFound, Surface, Trust } from '../types.ts';

const leastInternal = 1e-4;

/**
 * An ink from one drawdown over one ground: absorption only, KX = max(0, −½ ln(r ink / r ground)), S = 0. Right for
 * transparent inks; what scatters in the ink is counted as if the ground still showed through.
 */
export function inkOverOneGround({
  ink,
  ground,
  surface,
}: {
  readonly ink: Spectrum;
  readonly ground: Spectrum;
  readonly surface: Surface;
}): InkFound {
  const over = internal(ink, surface),
    below = internal(ground, surface);
  const k = new Float64Array(BANDS);
  let lighter = 0,
    atFloor = 0;
  for (let i = 0; i < BANDS; i++) {
    k[i] = Math.max(0, -0.5 * log(over[i] / Math.max(below[i], leastInternal)));
    lighter = Math.max(lighter, over[i] - below[i]);
    if (i >= 2 && over[i] <= leastInternal) atFloor++;
  }
  const problems: Problem[] = [];
  if (lighter > 0.03) {
    problems.push(
      problem(
        'warning',
        'ink-lighter-than-ground',
        'over',
        say('ink.lighterThanGround', { by: share(lighter, 0) }),
        say('ink.readBothGrounds'),
      ),
    );
  }
  if (atFloor > 0) {
    problems.push(problem('warning', 'reading-below-gloss', 'over', say('ink.darkAsGloss'), say('ink.lowerGloss')));
  }
  const trust: Trust =
    lighter > 0.03
      ? { how: 'one-ground', level: 'weak', words: say('ink.trustCovers') }
      : { how: 'one-ground', level: 'fair', words: say('ink.trustOneGround') };
  return { ink: { k, s: new Float64Array(BANDS) }, trust, problems };
}

export interface TwoGroundTrust extends Trust {
  /** How much of the ground is hidden: R over black / R over white at the middle of the spectrum's light (docs/trade.md 4). */
  readonly contrastRatio: number;
}

/**
 * An ink from a drawdown over white and over black (docs/optics.md 4): R0 and T² from both, then K and S.
 * Bands where the two contradict each other (darker over white than over black) count as opaque and are reported.
 */
export function inkOverTwoGrounds({
  overWhite,
  white,
  overBlack,
  black,
  surface,
}: {
  readonly overWhite: Spectrum;
  readonly white: Spectrum;
  readonly overBlack: Spectrum;
  readonly black: Spectrum;
  readonly surface: Surface;
}): InkFound<TwoGroundTrust> {
  const r1 = internal(overWhite, surface),
    p1 = internal(white, surface);
  const r2 = internal(overBlack, surface),
    p2 = internal(black, surface);
  const k = new Float64Array(BANDS),
    s = new Float64Array(BANDS);
  const problems: Problem[] = [];
  let crossed = 0,
    apart = 0,
    ratio = 0;
  for (let i = 0; i < BANDS; i++) {
    apart = Math.max(apart, p1[i] - p2[i]);
    if (overWhite[i] < overBlack[i] - 0.005) crossed++;
    const found = filmFromTwo(r1[i], p1[i], r2[i], p2[i]);
    const ks = kAndSOfFilm(found.r0, found.t);
    k[i] = ks.k;
    s[i] = ks.s;
    ratio = Math.max(ratio, overWhite[i] > 0.02 ? overBlack[i] / overWhite[i] : 0);
  }
  if (apart < 0.2) {
    problems.push(problem('error', 'grounds-too-alike', 'white', say('ink.groundsAlike'), say('ink.useDrawdownCard')));
  }
  if (crossed > 2) {
    problems.push(
      problem(
        'error',
        'darker-over-white',
        'overWhite',
        say('ink.darkerOverWhite', { bands: crossed, all: BANDS }),
        say('ink.groundsSwapped'),
      ),
    );
  }
  const contrastRatio = Math.min(1, ratio);
  const wrong = problems.length > 0;
  const trust: TwoGroundTrust = {
    how: 'two-grounds',
    contrastRatio,
    level: wrong ? 'weak' : contrastRatio >= 0.98 ? 'fair' : 'good',
    words: say(wrong ? 'ink.trustContradicts' : contrastRatio >= 0.98 ? 'ink.trustHides' : 'ink.trustTwoGrounds'),
  };
  return { ink: { k, s }, trust, problems };
}

/** R0 and T of a film from its reflectance r1, r2 over grounds p1, p2 (all inside), kept where a film can be. */
function filmFromTwo(r1: number, p1: number, r2: number, p2: number): { readonly r0: number; readonly t: number } {
  const leastT = 1e-5;
  const below = 1 / p2 - 1 / p1 + r2 - r1;
  let r0 = below === 0 ? r2 : (r2 / p2 - r1 / p1) / below;
  if (!(r0 >= 0)) r0 = 0;
  r0 = Math.min(r0, r1, 0.999);
  let t2 = ((r1 - r0) * (1 - r0 * p1)) / p1;
  t2 = Math.max(leastT * leastT, t2);
  return { r0, t: Math.min(Math.sqrt(t2), 1 - r0) };
}

/** Nothing at all: clear base. */
export function clearInk(): Ink {
  return { k: new Float64Array(BANDS), s: new Float64Array(BANDS) };
}
