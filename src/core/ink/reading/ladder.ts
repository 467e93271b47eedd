import { exp, log, pow } from '../../numeric/index.ts';
import { BANDS, type Spectrum } from '../../colour/index.ts';
import { fail, problem, type Problem } from '../../problem.ts';
import { figure, say, share as asShare } from '../../../words/say.ts';
import { internal } from '../film/surface.ts';
import type { InkFound, Surface, Trust } from '../types.ts';

export interface LadderStep {
  /** Volume share of concentrate. */
  readonly share: number;
  /** Measured reflectance over the ground. */
  readonly over: Spectrum;
}

export interface LadderTrust extends Trust {
  /** Strength goes with share^gamma; 1 is straight. */
  readonly gamma: number;
  /** For each step: its share and the share at which a straight ink would be as strong. */
  readonly curve: readonly { readonly share: number; readonly worksLike: number }[];
  /** Largest departure of a step from the fitted curve, as a share of the step's strength. */
  readonly worstDeparture: number;
}

/** Inks outside this are not believed to be one ink (common practice). */
const gammaLimits: readonly [number, number] = [0.7, 1.4];
/** Doubt of gamma before anything is read: most inks are straight. */
const gammaSigma = 0.15;

/**
 * An ink from a tint ladder over one ground: K at share 1 per band, and how straight its strength goes with the share.
 * Steps are weighed by how well they can be told: neither almost paper nor almost black.
 * @throws ProblemError `ladder-empty` without any step of a share above 0
 */
export function inkFromLadder({
  ground,
  steps,
  surface,
}: {
  readonly ground: Spectrum;
  readonly steps: readonly LadderStep[];
  readonly surface: Surface;
}): InkFound<LadderTrust> {
  const used = steps.map((step, i) => ({ ...step, place: `steps[${i}]` })).filter((step) => step.share > 0 && step.share <= 1);
  if (used.length === 0) fail('ladder-empty', 'steps', say('ink.ladderEmpty'), say('ink.giveAStep'));
  used.sort((a, b) => a.share - b.share);
  const below = internal(ground, surface);
  const K = used.map(({ over }) => {
    const r = internal(over, surface);
    return Float64Array.from({ length: BANDS }, (_, i) => -0.5 * log(r[i] / Math.max(below[i], 1e-4)));
  });
  // dR/dK is about 2r, so 4r² is how much a small error of the reading spoils K; light near black says little.
  const weight = K.map((row) => row.map((v, i) => (below[i] * exp(-2 * Math.max(0, v))) ** 2 + 1e-6));

  let gamma = 1;
  let k = fitK(
    used.map((s) => s.share),
    K,
    weight,
  );
  if (used.length >= 2) {
    gamma = fitGamma(
      used.map((s) => s.share),
      K,
      weight,
    );
    k = fitK(
      used.map((s) => pow(s.share, gamma)),
      K,
      weight,
    );
  }
  const curve = used.map(({ share }, j) => ({ share, worksLike: strengthAgainst(K[j], k, weight[j]) }));
  const worstDeparture = Math.max(...curve.map(({ share, worksLike }) => Math.abs(worksLike / pow(share, gamma) - 1)));
  const problems: Problem[] = [];
  for (let j = 1; j < curve.length; j++) {
    if (curve[j].worksLike < curve[j - 1].worksLike * 0.97) {
      problems.push(
        problem(
          'warning',
          'ladder-out-of-order',
          used[j].place,
          say('ink.ladderOutOfOrder', { step: asShare(used[j].share), below: asShare(used[j - 1].share) }),
          say('ink.stepsSwapped'),
        ),
      );
    }
  }
  const straight = Math.abs(gamma - 1) < 0.06 && worstDeparture < 0.1;
  const level = problems.length > 0 ? 'weak' : worstDeparture < 0.15 && used.length >= 3 ? 'good' : 'fair';
  const trust: LadderTrust = {
    how: 'ladder',
    level,
    gamma,
    curve,
    worstDeparture,
    words:
      problems.length > 0
        ? say('ink.trustLadderContradicts')
        : used.length === 1
          ? say('ink.trustOneStep')
          : straight
            ? say('ink.trustStraight', { within: asShare(worstDeparture) })
            : say('ink.trustBent', { power: figure(gamma, 2), most: asShare(worstDeparture) }),
  };
  return { ink: gamma === 1 ? { k, s: new Float64Array(BANDS) } : { k, s: new Float64Array(BANDS), gamma }, trust, problems };
}

function fitK(amounts: readonly number[], K: readonly Float64Array[], weight: readonly Float64Array[]): Float64Array {
  return Float64Array.from({ length: BANDS }, (_, i) => {
    let top = 0,
      bottom = 0;
    for (let j = 0; j < K.length; j++) {
      top += weight[j][i] * amounts[j] * K[j][i];
      bottom += weight[j][i] * amounts[j] ** 2;
    }
    return Math.max(0, top / bottom);
  });
}

/** Least squares over gamma (golden section), with the prior that inks are straight. */
function fitGamma(shares: readonly number[], K: readonly Float64Array[], weight: readonly Float64Array[]): number {
  const misfit = (gamma: number): number => {
    const amounts = shares.map((c) => pow(c, gamma));
    const k = fitK(amounts, K, weight);
    let sum = 0;
    for (let j = 0; j < K.length; j++) for (let i = 0; i < BANDS; i++) sum += weight[j][i] * (K[j][i] - amounts[j] * k[i]) ** 2;
    // Reading noise of about 0.005 in reflectance makes both terms comparable.
    return sum / 0.005 ** 2 / 4 + ((gamma - 1) / gammaSigma) ** 2;
  };
  let [low, high] = gammaLimits;
  const cut = (Math.sqrt(5) - 1) / 2;
  for (let i = 0; i < 40; i++) {
    const left = high - cut * (high - low),
      right = low + cut * (high - low);
    if (misfit(left) < misfit(right)) high = right;
    else low = left;
  }
  return (low + high) / 2;
}

function strengthAgainst(row: Float64Array, k: Float64Array, weight: Float64Array): number {
  let top = 0,
    bottom = 0;
  for (let i = 0; i < BANDS; i++) {
    top += weight[i] * row[i] * k[i];
    bottom += weight[i] * k[i] * k[i];
  }
  return bottom === 0 ? 0 : top / bottom;
}
