import { deltaE00, type Lab } from '../../colour/index.ts';

export interface StepsAsk {
  /** What the run's film prints, by how much it covers: `weight.length` levels from bare to solid. */
  readonly tones: readonly Lab[];
  /** Share of the image at each of these levels. */
  readonly weight: ArrayLike<number>;
  /** Colours of flats laid one on the other: the paper, the first strength, the first two, … */
  readonly stack: (strengths: readonly number[]) => readonly Lab[];
  readonly runs: number;
}

export interface ToneSteps {
  /** Shares of ink in the pots, in the order of printing: each makes what lies there one step darker. */
  readonly strengths: readonly number[];
  /** Level of the film from which each strength prints, rising, in levels of `tones`. */
  readonly from: readonly number[];
  /** Colour of each step, the paper first. */
  readonly colours: readonly Lab[];
  /** ΔE00 between the film's tones and the steps in their place, over the image. */
  readonly off: number;
}

/** Weaker than that no pot is mixed: one part in fifty (common practice). */
const weakest = 0.02,
  strongest = 1,
  grid = 14;

/**
 * Two or three strengths of one ink, each flat on the one before, for a run's whole tone: those whose steps lie nearest to it over the image, as Lloyd
 * (1982) and Max (1960) choose the levels of a signal, here along the colours that the films really make of one another.
 */
export function toneSteps(ask: StepsAsk): ToneSteps {
  const all = Array.from({ length: grid }, (_, i) => weakest * (strongest / weakest) ** (i / (grid - 1)));
  let best: number[] = [],
    least = Infinity;
  const look = (strengths: readonly number[]): void => {
    const off = nearOff(ask, ask.stack(strengths));
    // Weaker pots first, unless it is worse: what shows of a stencil's edge then shows least.
    const rising = strengths.every((s, i) => i === 0 || s >= strengths[i - 1]);
    if (off < least * (rising ? 1.02 : 1)) [best, least] = [[...strengths], rising ? Math.min(off, least) : off];
  };
  const choose = (chosen: readonly number[]): void => {
    if (chosen.length === ask.runs) look(chosen);
    else for (const strength of all) choose([...chosen, strength]);
  };
  choose([]);
  // Between the grid's strengths (pattern search, Hooke and Jeeves 1961).
  for (let step = 1.15; step > 1.01; ) {
    const before = least;
    for (let i = 0; i < ask.runs; i++)
      for (const by of [step, 1 / step]) {
        const moved = best.map((s, j) => (j === i ? Math.min(strongest, Math.max(weakest, s * by)) : s));
        look(moved);
      }
    if (least === before) step = Math.sqrt(step);
  }
  return settled(ask, best);
}

/** Squared, as steps that are far off are seen first; Lab is even enough along one ink's own tones. */
const apart = (a: Lab, b: Lab): number => (a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2 + (a[2] - b[2]) ** 2;

function nearest(tone: Lab, colours: readonly Lab[]): number {
  let at = 0;
  for (let i = 1; i < colours.length; i++) if (apart(tone, colours[i]) < apart(tone, colours[at])) at = i;
  return at;
}

function nearOff({ tones, weight }: StepsAsk, colours: readonly Lab[]): number {
  let sum = 0;
  for (let i = 0; i < tones.length; i++) if (weight[i] > 0) sum += weight[i] * apart(tones[i], colours[nearest(tones[i], colours)]);
  return sum;
}

/** As whole per cents, and from which level on each step prints. */
function settled(ask: StepsAsk, found: readonly number[]): ToneSteps {
  const strengths = found.map((s) => Math.round(s * 100) / 100);
  const colours = ask.stack(strengths);
  const { tones, weight } = ask;
  const last = tones.length - 1;
  const from = strengths.map((_, i) => {
    // Half way between a step and the one before it.
    let level = 0;
    while (level < last && apart(tones[level], colours[i]) <= apart(tones[level], colours[i + 1])) level++;
    if (level === 0) return 0;
    const [a, b] = [level - 1, level].map((l) => apart(tones[l], colours[i]) - apart(tones[l], colours[i + 1]));
    return level - 1 + a / (a - b || 1);
  });
  for (let i = 1; i < from.length; i++) from[i] = Math.max(from[i], from[i - 1]);
  let [off, all] = [0, 0];
  for (let i = 0; i < tones.length; i++) {
    const step = from.filter((level) => i >= level).length;
    off += weight[i] * deltaE00(tones[i], colours[step]);
    all += weight[i];
  }
  return { strengths, from, colours, off: all > 0 ? off / all : 0 };
}
