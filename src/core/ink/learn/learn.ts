import { BANDS, deltaE00, type Lab, type Spectrum } from '../../colour/index.ts';
import { problem, type Problem } from '../../problem.ts';
import { deltaE, name as asName, say, sentences, share, type Saying } from '../../../words/say.ts';
import { stepsAt } from '../jitter.ts';
import type { Surface } from '../types.ts';
import { pressModel, type LearnLayer, type PressState } from './model.ts';
import { solveDamped } from '../../numeric/index.ts';

/** A printed overlap that was read. */
export interface ProofObservation {
  /** Which layers lie there, first down first, by their place in `layers`. */
  readonly stack: readonly number[];
  readonly lab: Lab;
  /** Doubt of the reading, ΔE00. */
  readonly sigma: number;
  /** Its path in the Job: `proofReadings[2]`. */
  readonly place: string;
}

export interface LearnAsk {
  readonly paper: Spectrum;
  readonly surface: Surface;
  readonly layers: readonly LearnLayer[];
  readonly observations: readonly ProofObservation[];
  /** Doubt before anything is read; what is left out has its usual value. */
  readonly priors?: Partial<Priors>;
  /** Darkest reflectance read anywhere (λ ≥ 400 nm): gloss stays below it. */
  readonly darkest?: number;
}

export interface Priors {
  /** Relative doubt of a layer's deposit. */
  readonly depositSigma: number;
  /** Trapping expected, and its doubt. 1 ± 0.03 for dried films; 0.85 ± 0.1 wet on wet. */
  readonly trapping: number;
  readonly trappingSigma: number;
  /** Relative doubt of the gloss. */
  readonly ksSigma: number;
  /** What the model itself is off by on an overlap, ΔE00. */
  readonly modelSigma: number;
}

export interface Learned {
  readonly state: PressState;
  readonly surface: Surface;
  /** Planned deposit times what was learnt, and its relative doubt now. */
  readonly deposits: readonly { readonly id: string; readonly factor: number; readonly doubt: number }[];
  readonly trapping: number;
  readonly before: { readonly mean: number; readonly worst: number };
  readonly after: { readonly mean: number; readonly worst: number };
  readonly observations: readonly { readonly place: string; readonly before: number; readonly after: number; readonly outlier: boolean }[];
  readonly words: Saying;
  readonly problems: readonly Problem[];
  /** Foresees any overlap with what was learnt. */
  readonly foresee: (stack: readonly number[]) => Lab;
}

const usual: Priors = { depositSigma: 0.2, trapping: 1, trappingSigma: 0.03, ksSigma: 0.4, modelSigma: 1 };
/** Physical bounds: films are not thinner or thicker than that (common practice), trapping never adds ink. */
const bounds = { deposit: [0.35, 2.5], trapping: [0.6, 1] } as const;
/** Degrees of freedom of the errors: outliers pull little (Student's t, as in robust regression). */
const nu = 4;

/**
 * Moves deposit, trapping and gloss by readings of printed overlaps: least squares with priors, inside physical
 * bounds, robust against outliers, which are shown. Never ends further from the readings than it began.
 */
export function learn(ask: LearnAsk): Learned {
  const priors = { ...usual, ...ask.priors };
  const n = ask.layers.length;
  const model = pressModel(ask.paper, ask.layers, ask.surface);
  const start = Float64Array.from({ length: n + 2 }, (_, p) => (p < n ? 0 : p === n ? 1 : priors.trapping));
  const stateOf = (x: Float64Array): PressState => ({
    deposits: Float64Array.from(x.subarray(0, n), Math.exp),
    ks: ask.surface.ks * x[n],
    trapping: x[n + 1],
  });
  const sigmaOfPrior = Float64Array.from({ length: n + 2 }, (_, p) =>
    p < n ? priors.depositSigma : p === n ? priors.ksSigma : priors.trappingSigma,
  );
  const mostKs = ask.surface.ks > 0 ? Math.min(ask.surface.k1, 0.95 * (ask.darkest ?? ask.surface.ks * 2)) / ask.surface.ks : 1;
  const low = Float64Array.from({ length: n + 2 }, (_, p) => (p < n ? Math.log(bounds.deposit[0]) : p === n ? 0 : bounds.trapping[0]));
  const high = Float64Array.from({ length: n + 2 }, (_, p) =>
    p < n ? Math.log(bounds.deposit[1]) : p === n ? Math.max(1, mostKs) : bounds.trapping[1],
  );
  const observed = ask.observations.map((o) => ({
    ...o,
    steps: stepsAt(o.lab),
    sigmaAll: Math.hypot(o.sigma, o.stack.length > 0 ? priors.modelSigma : 0.2),
  }));

  const foresee = foreseenOnce(model, ask.observations);

  /** Residuals in doubts, three per observation. */
  const residuals = (x: Float64Array): Float64Array => {
    const labs = foresee(stateOf(x));
    const out = new Float64Array(observed.length * 3);
    observed.forEach((o, i) => {
      const lab = labs(i);
      const da = lab[1] - o.lab[1],
        db = lab[2] - o.lab[2];
      const { sl, sc, sh, ca, cb } = o.steps;
      out[i * 3] = (lab[0] - o.lab[0]) / sl / o.sigmaAll;
      out[i * 3 + 1] = (da * ca + db * cb) / sc / o.sigmaAll;
      out[i * 3 + 2] = (db * ca - da * cb) / sh / o.sigmaAll;
    });
    return out;
  };
  const cost = (x: Float64Array, r: Float64Array): number => {
    let sum = 0;
    for (let i = 0; i < observed.length; i++) sum += (nu + 3) * Math.log(1 + (r[i * 3] ** 2 + r[i * 3 + 1] ** 2 + r[i * 3 + 2] ** 2) / nu);
    for (let p = 0; p < n + 2; p++) sum += ((x[p] - start[p]) / sigmaOfPrior[p]) ** 2;
    return sum;
  };

  let x = Float64Array.from(start);
  let r = residuals(x);
  let now = cost(x, r);
  const atStart = now;
  let damping = 1e-3;
  let curvature = new Float64Array((n + 2) ** 2);
  for (let round = 0; round < 30; round++) {
    const { A, b } = normalEquations(x, r, residuals, start, sigmaOfPrior, observed.length);
    curvature = A;
    let moved = false;
    for (let attempt = 0; attempt < 8; attempt++) {
      const step = solveDamped(A, b, damping);
      const tried = x.map((v, p) => Math.min(high[p], Math.max(low[p], v + step[p])));
      const rTried = residuals(tried);
      const c = cost(tried, rTried);
      if (c < now - 1e-9) {
        moved = now - c > 1e-6 * now;
        x = tried;
        r = rTried;
        now = c;
        damping = Math.max(1e-9, damping / 5);
        break;
      }
      damping *= 6;
    }
    if (!moved) break;
  }
  // Readings that the plan already explains within their doubt teach nothing but noise: the fit has to gain more than
  // one parameter costs by Schwarz's criterion, else nothing is moved.
  if (atStart - now < Math.log(Math.max(3, 3 * observed.length))) x = Float64Array.from(start);
  return report(ask, x, start, stateOf, { model, foresee }, r, curvature);
}

function normalEquations(
  x: Float64Array,
  r: Float64Array,
  residuals: (x: Float64Array) => Float64Array,
  start: Float64Array,
  sigma: Float64Array,
  count: number,
): { A: Float64Array<ArrayBuffer>; b: Float64Array } {
  const m = x.length;
  const J: Float64Array[] = [];
  for (let p = 0; p < m; p++) {
    const tried = Float64Array.from(x);
    const step = 1e-4;
    tried[p] += step;
    J.push(residuals(tried).map((v, i) => (v - r[i]) / step));
  }
  const A = new Float64Array(m * m),
    b = new Float64Array(m);
  for (let i = 0; i < count; i++) {
    const off = r[i * 3] ** 2 + r[i * 3 + 1] ** 2 + r[i * 3 + 2] ** 2;
    const weight = (nu + 3) / (nu + off);
    for (let c = i * 3; c < i * 3 + 3; c++) {
      for (let p = 0; p < m; p++) {
        b[p] -= weight * J[p][c] * r[c];
        for (let q = 0; q <= p; q++) A[p * m + q] += weight * J[p][c] * J[q][c];
      }
    }
  }
  for (let p = 0; p < m; p++) {
    A[p * m + p] += 1 / sigma[p] ** 2;
    b[p] -= (x[p] - start[p]) / sigma[p] ** 2;
    for (let q = p + 1; q < m; q++) A[p * m + q] = A[q * m + p];
  }
  return { A, b };
}

type Model = (state: PressState, stack: readonly number[]) => Lab;
/** What a press prints: the colour of each observation's overlap. */
type Foresee = (state: PressState) => (observation: number) => Lab;

/** The same overlap read a thousand times is reckoned once: there are 255 of them at most, however many readings. */
function foreseenOnce(model: Model, observations: readonly { readonly stack: readonly number[] }[]): Foresee {
  const stacks = new Map<string, { readonly place: number; readonly stack: readonly number[] }>();
  const places = observations.map(({ stack }) => {
    const key = stack.join();
    const known = stacks.get(key) ?? { place: stacks.size, stack };
    stacks.set(key, known);
    return known.place;
  });
  return (state) => {
    const labs = [...stacks.values()].map(({ stack }) => model(state, stack));
    return (observation) => labs[places[observation]];
  };
}

function report(
  ask: LearnAsk,
  x: Float64Array,
  start: Float64Array,
  stateOf: (x: Float64Array) => PressState,
  { model, foresee }: { readonly model: Model; readonly foresee: Foresee },
  r: Float64Array,
  curvature: Float64Array,
): Learned {
  const n = ask.layers.length;
  const offs = (state: PressState): number[] => {
    const labs = foresee(state);
    return ask.observations.map((o, i) => deltaE00(labs(i), o.lab));
  };
  const before = offs(stateOf(start));
  let after = offs(stateOf(x));
  let found = x;
  let contradict = false;
  // With many outliers the robust fit may leave the mean worse; then nothing is moved.
  if (mean(after) > mean(before) + 1e-9) {
    found = start;
    after = before;
    contradict = true;
  }
  const state = stateOf(found);
  const outliers = ask.observations.map(
    (_, i) => found === x && Math.sqrt(r[i * 3] ** 2 + r[i * 3 + 1] ** 2 + r[i * 3 + 2] ** 2) > 4 && after[i] > 3,
  );
  const shown = farthest(outliers, after);
  const problems: Problem[] = ask.observations.flatMap((o, i) =>
    shown.has(i)
      ? [
          problem(
            'warning',
            'reading-unlike-the-others',
            o.place,
            say('ink.unlikeTheOthers', { off: deltaE(after[i]) }),
            say('ink.readItAgain'),
          ),
        ]
      : [],
  );
  const deposits = ask.layers.map((l, p) => {
    const unit = new Float64Array(n + 2);
    unit[p] = 1;
    return { id: l.id, factor: state.deposits[p], doubt: Math.sqrt(Math.max(0, solveDamped(curvature, unit, 0)[p])) };
  });
  const moved = deposits.flatMap(({ factor }, p) =>
    Math.abs(factor - 1) > 0.05
      ? [
          say(factor > 1 ? 'ink.liesHeavier' : 'ink.liesLighter', {
            layer: asName(ask.layers[p].name),
            by: share(Math.abs(factor - 1), 0),
          }),
        ]
      : [],
  );
  return {
    state,
    surface: { ...ask.surface, ks: state.ks },
    deposits,
    trapping: state.trapping,
    before: { mean: mean(before), worst: before.reduce((a, b) => Math.max(a, b), 0) },
    after: { mean: mean(after), worst: after.reduce((a, b) => Math.max(a, b), 0) },
    observations: ask.observations.map((o, i) => ({ place: o.place, before: before[i], after: after[i], outlier: outliers[i] })),
    words: sentences(
      say('ink.learnt', { n: ask.observations.length, before: deltaE(mean(before)), after: deltaE(mean(after)) }),
      ...moved,
      contradict && say('ink.nothingLearnt'),
    ),
    problems,
    foresee: (stack) => model(state, stack),
  };
}

/** A list of thousands helps nobody: the farthest are told of. */
const mostTold = 30;
function farthest(outliers: readonly boolean[], offs: readonly number[]): ReadonlySet<number> {
  const all = outliers.flatMap((outlier, i) => (outlier ? [i] : []));
  return new Set(all.sort((a, b) => offs[b] - offs[a] || a - b).slice(0, mostTold));
}

function mean(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((a, b) => a + b, 0) / values.length;
}

/** Darkest band (λ ≥ 400 nm) of spectra that were read, for `LearnAsk.darkest`. */
export function darkestOf(readings: readonly Spectrum[]): number {
  let darkest = 1;
  for (const r of readings) for (let i = 2; i < BANDS; i++) darkest = Math.min(darkest, r[i]);
  return darkest;
}
