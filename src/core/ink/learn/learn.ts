import { BANDS, deltaE00, type Lab, type Spectrum } from '../../colour/index.ts';
import { problem, type Problem } from '../../problem.ts';
import { deltaE, name as asName, say, sentences, share, type Saying } from '../../../words/say.ts';
import { stepsAt } from '../film/jitter.ts';
import { chosen } from '../chosen.ts';
import type { Surface } from '../types.ts';
import { carryRests } from './kriging.ts';
import { pressModel, type LearnLayer, type PressModel, type PressState } from './model.ts';
import { exp, log, solveDamped } from '../../numeric/index.ts';

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
  /** How many moves of spectra there are in all; left out: none. */
  readonly moves?: number;
}

export interface Priors {
  /** Relative doubt of a layer's deposit, once readings speak of it. */
  readonly depositSigma: number;
  /** The same as long as they don't: the film is taken to be the one that was read; left out: as above. */
  readonly unreadSigma?: number | undefined;
  /** Trapping expected, and its doubt. 1 ± 0.03 for dried films; 0.85 ± 0.1 wet on wet. */
  readonly trapping: number;
  readonly trappingSigma: number;
  /** Relative doubt of how one film lies on a certain other one. */
  readonly pairSigma: number;
  /** Relative doubt of the gloss. */
  readonly ksSigma: number;
  /** What the model itself is off by on an overlap, ΔE00: in lightness, and in chroma and hue, which belong to one overlap alone. */
  readonly modelSigma: number;
  readonly modelHueSigma: number;
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
  /** The same before what was still off at readings is carried to their kin. */
  readonly bare: (stack: readonly number[]) => Lab;
  /** A state that may be so as well: drawn with standard normal numbers, one a parameter (films, gloss, trapping, spectra). */
  readonly drawn: (normal: (parameter: number) => number) => PressState;
  readonly model: PressModel;
}

const usual: Priors = {
  depositSigma: 0.2,
  trapping: 1,
  trappingSigma: 0.03,
  pairSigma: 0.03,
  ksSigma: 0.4,
  modelSigma: 1,
  modelHueSigma: 1,
};
/** Physical bounds: films are not thinner or thicker than that (common practice), trapping never adds ink. */
const bounds = { deposit: [0.35, 2.5], trapping: [0.5, 1], pair: 0.5, moved: 3 } as const;
/** Matt papers read so much of their surface, at most. */
const mostGloss = 0.1;
/** Degrees of freedom of the errors: outliers pull little (Student's t, as in robust regression). */
const nu = 4;

/**
 * Moves gloss and trapping, then films, then the shapes of spectra by readings of printed overlaps: least squares with priors,
 * inside physical bounds, robust against outliers, which are shown. What explains the readings with less is kept, unless the
 * evidence pays for more (Laplace's approximation, MacKay 1992). Never ends further from the readings than it began.
 */
export function learn(ask: LearnAsk): Learned {
  const priors = { ...usual, ...ask.priors };
  const n = ask.layers.length;
  const moves = ask.moves ?? 0;
  // In this order: a film a layer, gloss, trapping, how each film lies on each other one, shapes of spectra.
  const pairsFrom = n + 2,
    movesFrom = pairsFrom + n * n;
  const m = movesFrom + moves;
  const model = pressModel(ask.paper, ask.layers, ask.surface);
  const start = Float64Array.from({ length: m }, (_, p) => (p === n ? 1 : p === n + 1 ? priors.trapping : 0));
  const stateOf = (x: Float64Array): PressState => ({
    deposits: Float64Array.from(x.subarray(0, n), exp),
    ks: ask.surface.ks * x[n],
    trapping: x[n + 1],
    pairs: x.subarray(pairsFrom, movesFrom),
    moved: x.subarray(movesFrom),
  });
  const sigmaOfPrior = Float64Array.from({ length: m }, (_, p) =>
    p < n ? priors.depositSigma : p === n ? priors.ksSigma : p === n + 1 ? priors.trappingSigma : p < movesFrom ? priors.pairSigma : 1,
  );
  const mostKs = ask.surface.ks > 0 ? Math.min(mostGloss, 0.95 * (ask.darkest ?? ask.surface.ks * 2)) / ask.surface.ks : 1;
  const low = Float64Array.from({ length: m }, (_, p) =>
    p < n ? log(bounds.deposit[0]) : p === n ? 0 : p === n + 1 ? bounds.trapping[0] : p < movesFrom ? -bounds.pair : -bounds.moved,
  );
  const high = Float64Array.from({ length: m }, (_, p) =>
    p < n
      ? log(bounds.deposit[1])
      : p === n
        ? Math.max(1, mostKs)
        : p === n + 1
          ? Math.max(1, priors.trapping)
          : p < movesFrom
            ? bounds.pair
            : bounds.moved,
  );
  const observed = ask.observations.map((o) => ({
    ...o,
    steps: stepsAt(o.lab),
    sigmaL: Math.hypot(o.sigma, o.stack.length > 1 ? priors.modelSigma : 0.2),
    sigmaAB: Math.hypot(o.sigma, o.stack.length > 1 ? priors.modelHueSigma : 0.2),
  }));

  // The same overlap read a thousand times is reckoned once: there are few of them, however many readings.
  const stacks = [...new Map(ask.observations.map(({ stack }) => [stack.join(), stack])).values()];
  const placeOf = new Map(stacks.map((stack, i) => [stack.join(), i]));
  const places = ask.observations.map(({ stack }) => placeOf.get(stack.join())!);

  /** Residuals in doubts, three per observation. */
  const residuals = (x: Float64Array): Float64Array => {
    const state = stateOf(x);
    const labs = stacks.map((stack) => model(state, stack));
    const out = new Float64Array(observed.length * 3);
    observed.forEach((o, i) => {
      const lab = labs[places[i]];
      const da = lab[1] - o.lab[1],
        db = lab[2] - o.lab[2];
      const { sl, sc, sh, ca, cb } = o.steps;
      out[i * 3] = (lab[0] - o.lab[0]) / sl / o.sigmaL;
      out[i * 3 + 1] = (da * ca + db * cb) / sc / o.sigmaAB;
      out[i * 3 + 2] = (db * ca - da * cb) / sh / o.sigmaAB;
    });
    return out;
  };
  const cost = (x: Float64Array, r: Float64Array): number => {
    let sum = 0;
    for (let i = 0; i < observed.length; i++) sum += (nu + 3) * log(1 + (r[i * 3] ** 2 + r[i * 3 + 1] ** 2 + r[i * 3 + 2] ** 2) / nu);
    for (let p = 0; p < m; p++) sum += ((x[p] - start[p]) / sigmaOfPrior[p]) ** 2;
    return sum;
  };

  /** Least cost when only the parameters of a stage may move; others stay where they are expected. */
  const fit = (free: readonly number[], from: Float64Array): Fit => {
    let x = Float64Array.from(from);
    let r = residuals(x);
    let now = cost(x, r);
    let damping = 1e-3;
    let curvature: Float64Array = new Float64Array(free.length ** 2);
    for (let round = 0; round < 30; round++) {
      const { A, b } = normalEquations(x, r, residuals, start, sigmaOfPrior, observed.length, free);
      curvature = A;
      let moved = false;
      for (let attempt = 0; attempt < 8; attempt++) {
        const step = solveDamped(A, b, damping);
        const tried = Float64Array.from(x);
        free.forEach((p, f) => (tried[p] = Math.min(high[p], Math.max(low[p], x[p] + step[f]))));
        const rTried = residuals(tried);
        const c = cost(tried, rTried);
        if (c < now - 1e-9) {
          moved = now - c > 1e-5 * now;
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
    // −2 ln evidence: the cost, and the share of the prior's room that the readings leave.
    let room = lnDeterminant(curvature, free.length);
    for (const p of free) room += 2 * log(sigmaOfPrior[p]);
    return { x, r, cost: now, paid: now + room, free, curvature };
  };

  const press = [n, n + 1];
  const films = Array.from({ length: n }, (_, p) => p).filter((p) => observed.some((o) => o.stack.includes(p)));
  const shapes = [...new Set(films.flatMap((p) => ask.layers[p].moves ?? []))].map((k) => movesFrom + k);
  const pairs = [...new Set(observed.flatMap((o) => o.stack.slice(1).map((above, j) => pairsFrom + o.stack[j] * n + above)))];
  const none: Fit = { x: start, r: residuals(start), cost: 0, paid: 0, free: [], curvature: new Float64Array(0) };
  const atStart = cost(start, none.r);
  let best: Fit = { ...none, cost: atStart, paid: atStart };
  if (observed.length > 0) {
    let from: Float64Array = start;
    // What more parameters gain must be strong evidence (Kass and Raftery 1995: 2 ln of 6), what the press alone gains any at all. How films
    // lie on all others and how one lies on a certain other are weighed together, each by its doubt: else a single reading would be
    // believed of inks that it says nothing of.
    const stages = [
      { free: [...press, ...pairs], least: 0 },
      { free: [...films, ...press, ...pairs], least: strong },
      { free: [...films, ...press, ...pairs, ...shapes], least: strong },
    ];
    for (const { free, least } of stages) {
      const found = fit(free, from);
      if (found.paid < best.paid - least) {
        best = found;
        from = found.x;
      }
    }
  }
  return report(ask, best, start, sigmaOfPrior, stateOf, model);
}

/** 2 ln of a Bayes factor that counts as strong evidence. */
const strong = 6;

interface Fit {
  readonly x: Float64Array;
  readonly r: Float64Array;
  readonly cost: number;
  /** −2 ln evidence but for a constant. */
  readonly paid: number;
  readonly free: readonly number[];
  readonly curvature: Float64Array;
}

function lnDeterminant(A: Float64Array, n: number): number {
  const L = choleskyOf(A, n);
  let sum = 0;
  for (let i = 0; i < n; i++) sum += 2 * log(L[i * n + i]);
  return sum;
}

function normalEquations(
  x: Float64Array,
  r: Float64Array,
  residuals: (x: Float64Array) => Float64Array,
  start: Float64Array,
  sigma: Float64Array,
  count: number,
  free: readonly number[],
): { A: Float64Array<ArrayBuffer>; b: Float64Array } {
  const m = free.length;
  const J: Float64Array[] = [];
  for (const p of free) {
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
    A[p * m + p] += 1 / sigma[free[p]] ** 2;
    b[p] -= (x[free[p]] - start[free[p]]) / sigma[free[p]] ** 2;
    for (let q = p + 1; q < m; q++) A[p * m + q] = A[q * m + p];
  }
  return { A, b };
}

function report(
  ask: LearnAsk,
  best: Fit,
  start: Float64Array,
  sigmaOfPrior: Float64Array,
  stateOf: (x: Float64Array) => PressState,
  model: PressModel,
): Learned {
  const n = ask.layers.length;
  const { x, r } = best;
  const offs = (state: PressState): number[] => ask.observations.map((o) => deltaE00(model(state, o.stack), o.lab));
  const before = offs(stateOf(start));
  const maskOf = (stack: readonly number[]): number => stack.reduce((mask, layer) => mask | (1 << layer), 0);
  const carried = (state: PressState): ((stack: readonly number[]) => Lab) => {
    const carry = carryRests(
      ask.observations
        .filter((o) => o.stack.length > 1)
        .map((o) => {
          const lab = model(state, o.stack);
          return { mask: maskOf(o.stack), lab, off: [0, 1, 2].map((c) => o.lab[c] - lab[c]) as unknown as Lab, sigma: o.sigma };
        }),
      ask.priors?.modelSigma ?? usual.modelSigma,
    );
    return (stack) => (stack.length > 1 ? carry(maskOf(stack), model(state, stack)) : model(state, stack));
  };
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
  const problems = unlikeTheOthers(ask.observations.flatMap((o, i) => (outliers[i] ? [{ place: o.place, off: after[i] }] : [])));
  const free = found === x ? best.free : [];
  const L = choleskyOf(best.curvature, best.free.length);
  const deposits = ask.layers.map((l, p) => {
    const at = free.indexOf(p);
    return { id: l.id, factor: state.deposits[p], doubt: at < 0 ? sigmaOfPrior[p] : doubtOf(L, free.length, at) };
  });
  // Of two layers the later lies on the earlier.
  const isNoPair = (p: number): boolean => p >= n + 2 && p < n + 2 + n * n && Math.floor((p - n - 2) / n) >= (p - n - 2) % n;
  const unread = ask.priors?.unreadSigma ?? sigmaOfPrior[0];
  const drawn = (normal: (p: number) => number): PressState => {
    const y = Float64Array.from(found, (v, p) =>
      free.includes(p) || isNoPair(p) ? v : v + (p < n ? unread : sigmaOfPrior[p]) * normal(p),
    );
    // x = L⁻ᵀ z has the covariance (L Lᵀ)⁻¹.
    const m = free.length;
    const z = Float64Array.from(free, (p) => normal(p));
    for (let i = m - 1; i >= 0; i--) {
      for (let k = i + 1; k < m; k++) z[i] -= L[k * m + i] * z[k];
      z[i] /= L[i * m + i];
    }
    free.forEach((p, f) => (y[p] += chosen.sharpened * z[f]));
    return stateOf(bounded(y, n, ask));
  };
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
    before: { mean: mean(before), worst: Math.max(0, ...before) },
    after: { mean: mean(after), worst: Math.max(0, ...after) },
    observations: ask.observations.map((o, i) => ({ place: o.place, before: before[i], after: after[i], outlier: outliers[i] })),
    words: sentences(
      say('ink.learnt', { n: ask.observations.length, before: deltaE(mean(before)), after: deltaE(mean(after)) }),
      ...moved,
      contradict && say('ink.nothingLearnt'),
    ),
    problems,
    foresee: carried(state),
    bare: (stack) => model(state, stack),
    drawn,
    model,
  };
}

/** The worst of them are named; more than that are counted. */
const mostNamed = 10;

function unlikeTheOthers(found: readonly { readonly place: string; readonly off: number }[]): Problem[] {
  const named = found.length <= mostNamed ? found : [...found].sort((a, b) => b.off - a.off).slice(0, mostNamed);
  const problems = named.map(({ place, off }) =>
    problem('warning', 'reading-unlike-the-others', place, say('ink.unlikeTheOthers', { off: deltaE(off) }), say('ink.readItAgain')),
  );
  const more = found.length - named.length;
  if (more > 0)
    problems.push(
      problem('warning', 'readings-unlike-the-others', 'proofReadings', say('ink.moreUnlike', { n: more }), say('ink.readThemAgain')),
    );
  return problems;
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

/** Lower L with L Lᵀ = A, for a symmetric positive A. */
function choleskyOf(A: Float64Array, n: number): Float64Array {
  const L = Float64Array.from(A);
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let sum = L[i * n + j];
      for (let k = 0; k < j; k++) sum -= L[i * n + k] * L[j * n + k];
      L[i * n + j] = i === j ? Math.sqrt(Math.max(1e-12, sum)) : sum / L[j * n + j];
    }
  return L;
}

/** Standard deviation of one parameter: √ of its place in (L Lᵀ)⁻¹. */
function doubtOf(L: Float64Array, n: number, at: number): number {
  const y = new Float64Array(n);
  let sum = 0;
  for (let i = at; i < n; i++) {
    let v = i === at ? 1 : 0;
    for (let k = at; k < i; k++) v -= L[i * n + k] * y[k];
    y[i] = v / L[i * n + i];
    sum += y[i] * y[i];
  }
  return Math.sqrt(sum);
}

/** What is drawn by chance stays physical too. */
function bounded(x: Float64Array, n: number, ask: LearnAsk): Float64Array {
  const most = ask.surface.ks > 0 ? Math.min(mostGloss, 0.95 * (ask.darkest ?? ask.surface.ks * 2)) / ask.surface.ks : 1;
  return x.map((v, p) => {
    if (p < n) return Math.min(log(bounds.deposit[1]), Math.max(log(bounds.deposit[0]), v));
    if (p === n) return Math.min(Math.max(1, most), Math.max(0.05, v));
    if (p === n + 1) return Math.min(1.1, Math.max(bounds.trapping[0], v));
    if (p < n + 2 + n * n) return Math.min(bounds.pair, Math.max(-bounds.pair, v));
    return Math.min(bounds.moved, Math.max(-bounds.moved, v));
  });
}
