import { exp } from '../../numeric/index.ts';
import { deltaE00Of, labFromXyz, srgbFromXyz, xyzFromLab, xyzFromSrgb, type Lab } from '../../colour/index.ts';
import { seeded } from '../../random.ts';
import { stepsAt } from '../film/jitter.ts';
import { rounded, screenSigma } from './guess.ts';

/** Comparing a drawdown with patches on the screen, step by step: which of seven looks most like it? */
export interface Staircase {
  /** Patches to show now, as the screen shows them: the best guess first, then lighter, darker, and four around it in hue and chroma. */
  readonly patches: readonly { readonly lab: Lab; readonly srgb: string }[];
  /** What the drawdown looks like by all answers so far. */
  readonly lab: Lab;
  /** Its doubt, ΔE00: of the answers, and of the screen. */
  readonly sigma: number;
  readonly answers: number;
  /** More answers would hardly narrow it: what is left is the screen's doubt. */
  readonly done: boolean;
}

/** How far apart two comparisons of the same patch lie with one person, ΔE00 (common practice: 1 to 2 side by side; a drawdown held to a screen more). */
const noise = 2;
/** A colour picked to begin with lies within this of the drawdown, ΔE00. */
const startSpread = 11;
const points = 500;
const leastAnswers = 6,
  mostAnswers = 14;
const enough = 2.6;

/**
 * Where a comparison stands after these answers (numbers of the patches that were shown each time). Colours that may be are points with
 * weights (importance sampling, resampled with a little blur: Gordon, Salmond and Smith 1993); each answer weighs them by how likely
 * someone who sees that colour, with noise, finds that patch the nearest (Luce 1959: exp(−ΔE/noise) over the sum). Seeded; same answers,
 * same colour.
 */
export function staircase(start: Lab, answers: readonly number[], seed = 1): Staircase {
  const random = seeded(seed);
  const { sl, sc, sh, ca, cb } = stepsAt(start);
  let cloud = Array.from({ length: points }, (): Lab => {
    const r = startSpread / 1.87;
    const [l, c, h] = [random.normal() * r * sl, random.normal() * r * sc, random.normal() * r * sh];
    return [lightness(start[0] + l), start[1] + c * ca - h * cb, start[2] + c * cb + h * ca];
  });
  let spread = startSpread;
  let at = start;
  for (const answer of answers) {
    const shown = patchesAround(at, spread);
    const chosen = Math.max(0, Math.min(shown.length - 1, Math.round(answer)));
    const weights = cloud.map((point) => {
      const likes = shown.map((p) => exp(-deltaE00Of(...point, ...p) / noise));
      return likes[chosen] / likes.reduce((a, b) => a + b, 0);
    });
    cloud = resampled(cloud, weights, spread, random);
    ({ lab: at, spread } = middle(cloud));
  }
  const patches = patchesAround(at, spread).map((lab) => ({ lab, srgb: hexOf(lab) }));
  return {
    patches,
    lab: rounded(at),
    sigma: Math.round(10 * Math.hypot(spread, screenSigma)) / 10,
    answers: answers.length,
    done: answers.length >= mostAnswers || (answers.length >= leastAnswers && spread <= enough),
  };
}

/** Seven patches: the middle, and steps of about the doubt around it. */
function patchesAround(at: Lab, spread: number): Lab[] {
  const step = Math.max(1.6, 1.1 * spread);
  const { sl, sc, sh, ca, cb } = stepsAt(at);
  const steps: (readonly [number, number, number])[] = [
    [0, 0, 0],
    [1, 0, 0],
    [-1, 0, 0],
    [0, 1, 0],
    [0, -1, 0],
    [0, 0, 1],
    [0, 0, -1],
  ];
  return steps.map(([l, c, h]) =>
    onScreen([at[0] + step * l * sl, at[1] + step * (c * sc * ca - h * sh * cb), at[2] + step * (c * sc * cb + h * sh * ca)]),
  );
}

const lightness = (L: number): number => Math.max(2, Math.min(100, L));

/** What the screen makes of a patch: one that it can't show would be compared as another than it is. The drawdown itself may lie beyond. */
function onScreen(lab: Lab): Lab {
  const within: Lab = [lightness(lab[0]), lab[1], lab[2]];
  const shown = srgbFromXyz(xyzFromLab(within));
  if (shown.inGamut) return within;
  return labFromXyz(xyzFromSrgb([shown.rgb[0] / 255, shown.rgb[1] / 255, shown.rgb[2] / 255]));
}

function hexOf(lab: Lab): string {
  return srgbFromXyz(xyzFromLab(lab)).hex;
}

function resampled(cloud: readonly Lab[], weights: readonly number[], spread: number, random: ReturnType<typeof seeded>): Lab[] {
  const whole = weights.reduce((a, b) => a + b, 0);
  const first = random.next() / cloud.length;
  const blur = 0.12 * spread;
  const out: Lab[] = [];
  let sum = weights[0] / whole,
    from = 0;
  for (let i = 0; i < cloud.length; i++) {
    while (sum < first + i / cloud.length && from < cloud.length - 1) sum += weights[++from] / whole;
    const p = cloud[from];
    const { sl, sc } = stepsAt(p);
    out.push([lightness(p[0] + blur * sl * random.normal()), p[1] + blur * sc * random.normal(), p[2] + blur * sc * random.normal()]);
  }
  return out;
}

/** The middle of the colours that may be, and the ΔE00 that two thirds of them lie within. */
function middle(cloud: readonly Lab[]): { readonly lab: Lab; readonly spread: number } {
  const lab: Lab = [0, 1, 2].map((c) => cloud.reduce((sum, p) => sum + p[c], 0) / cloud.length) as unknown as Lab;
  const off = Float64Array.from(cloud, (p) => deltaE00Of(...lab, ...p)).sort();
  return { lab, spread: off[Math.floor(off.length * 0.67)] };
}
