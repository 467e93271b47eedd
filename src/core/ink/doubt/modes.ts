import { BANDS, labFromXyz, xyzAt, type Lab, type Spectrum } from '../../colour/index.ts';
import { exp, solveLinear } from '../../numeric/index.ts';
import { spreadOf, stepsAt } from '../film/jitter.ts';
import { filmOfBand } from '../film/film.ts';
import { internal } from '../film/surface.ts';
import { chosen } from '../chosen.ts';
import type { Ink, Surface } from '../types.ts';

/** Ways in which an ink's spectrum may differ though its colour does not: smooth, slow ones first. */
const shapesPerInk = 6;
/** The same, and three for what its reading may be off by: along lightness, chroma, hue. */
export const modesPerInk = shapesPerInk + 3;

/** How fast the doubt falls towards quicker waves. */
const slowest = 4;

/** Slow cosines with the standard deviation each has before anything is known: a smooth random curve (its Karhunen–Loève series, nearly). */
const waves: readonly Float64Array[] = Array.from({ length: 9 }, (_, m) => {
  const height = exp(-0.5 * (m / slowest) ** 2);
  return Float64Array.from({ length: BANDS }, (__, i) => height * Math.cos((Math.PI * m * (i + 0.5)) / BANDS));
});
const unit = 1 / Math.sqrt(waves.reduce((sum, w) => sum + w.reduce((s, v) => s + v * v, 0) / BANDS, 0));

export interface InkModes {
  /** What each mode does to ln K, one standard deviation of it. */
  readonly shapes: readonly Float64Array[];
  /** 36 × 3: the change of ln K that brings a colour back, per ΔE00 step off along lightness, chroma, hue. */
  readonly back: Float64Array;
  /** One standard deviation of the reading along each of the three, in steps of ΔE00. */
  readonly readingSpread: number;
}

/** Lab of a film over a ground, and that in steps of ΔE00 around a colour. */
export function filmLab(k: Float64Array, s: Float64Array, ground: Spectrum, surface: Surface): Lab {
  const out = new Float64Array(BANDS);
  const { ks, k1, k2 } = surface;
  const through = (1 - k1) * (1 - k2);
  for (let i = 0; i < BANDS; i++) {
    const { r0, t } = filmOfBand(k[i], s[i]);
    const r = r0 + (t * t * ground[i]) / (1 - r0 * ground[i]);
    out[i] = ks + (through * r) / (1 - k2 * r);
  }
  return labFromXyz(xyzAt(out, 0));
}

function inSteps(lab: Lab, from: Lab, into: Float64Array | number[], at = 0): void {
  const { sl, sc, sh, ca, cb } = stepsAt(from);
  const da = lab[1] - from[1],
    db = lab[2] - from[2];
  into[at] = (lab[0] - from[0]) / sl;
  into[at + 1] = (da * ca + db * cb) / sc;
  into[at + 2] = (db * ca - da * cb) / sh;
}

/**
 * Curves of ln K that leave the colour of the film over its paper as it was read: a smooth random curve, given that the three
 * numbers of its colour don't move (conditioning of normal variables, to first order).
 */
export function modesOf(ink: Ink, paper: Spectrum, surface: Surface, readingSigma: number): InkModes {
  const norm = chosen.shapes * unit;
  const ground = internal(paper, surface);
  const own = filmLab(ink.k, ink.s, ground, surface);
  // J: 3 × 36, steps of colour per ln K of each band.
  const J = new Float64Array(3 * BANDS);
  const k = Float64Array.from(ink.k);
  const off = [0, 0, 0];
  const tiny = 1e-3;
  for (let i = 0; i < BANDS; i++) {
    k[i] = ink.k[i] * (1 + tiny);
    inSteps(filmLab(k, ink.s, ground, surface), own, off);
    for (let c = 0; c < 3; c++) J[c * BANDS + i] = off[c] / tiny;
    k[i] = ink.k[i];
  }
  const seen = waves.map((w) => [0, 1, 2].map((c) => norm * dot(J, c * BANDS, w)));
  // J C Jᵀ, with a touch on the diagonal: a black has hardly any colour to keep.
  const JCJ = new Float64Array(9);
  for (let a = 0; a < 3; a++) for (let b = 0; b < 3; b++) JCJ[a * 3 + b] = seen.reduce((sum, s) => sum + s[a] * s[b], a === b ? 1e-4 : 0);
  // back = C Jᵀ (J C Jᵀ)⁻¹
  const inverse = [0, 1, 2].map((c) => {
    const unit = Float64Array.of(c === 0 ? 1 : 0, c === 1 ? 1 : 0, c === 2 ? 1 : 0);
    solveLinear(Float64Array.from(JCJ), unit);
    return unit;
  });
  const back = new Float64Array(BANDS * 3);
  waves.forEach((w, m) => {
    for (let c = 0; c < 3; c++) {
      const gain = norm * (seen[m][0] * inverse[c][0] + seen[m][1] * inverse[c][1] + seen[m][2] * inverse[c][2]);
      for (let i = 0; i < BANDS; i++) back[i * 3 + c] += gain * w[i];
    }
  });
  const shapes = waves.map((w, m) =>
    Float64Array.from(w, (v, i) => norm * v - (back[i * 3] * seen[m][0] + back[i * 3 + 1] * seen[m][1] + back[i * 3 + 2] * seen[m][2])),
  );
  return { shapes: mainOf(shapes), back, readingSpread: spreadOf(readingSigma) };
}

/** The few directions that hold most of what nine waves may do together: Jacobi turns on their small Gram matrix. */
function mainOf(shapes: readonly Float64Array[]): Float64Array[] {
  const n = shapes.length;
  const A = Float64Array.from({ length: n * n }, (_, at) => dot(shapes[Math.floor(at / n)], 0, shapes[at % n]));
  const V = Float64Array.from({ length: n * n }, (_, at) => (at % (n + 1) === 0 ? 1 : 0));
  for (let round = 0; round < 12; round++) {
    for (let p = 0; p < n; p++)
      for (let q = p + 1; q < n; q++) {
        const apq = A[p * n + q];
        if (Math.abs(apq) < 1e-14) continue;
        const theta = (A[q * n + q] - A[p * n + p]) / (2 * apq);
        const t = Math.sign(theta || 1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
        const c = 1 / Math.sqrt(t * t + 1),
          s = t * c;
        for (let i = 0; i < n; i++) {
          const a = A[i * n + p],
            b = A[i * n + q];
          A[i * n + p] = c * a - s * b;
          A[i * n + q] = s * a + c * b;
        }
        for (let i = 0; i < n; i++) {
          const a = A[p * n + i],
            b = A[q * n + i];
          A[p * n + i] = c * a - s * b;
          A[q * n + i] = s * a + c * b;
        }
        for (let i = 0; i < n; i++) {
          const a = V[i * n + p],
            b = V[i * n + q];
          V[i * n + p] = c * a - s * b;
          V[i * n + q] = s * a + c * b;
        }
      }
  }
  return Array.from({ length: n }, (_, at) => at)
    .sort((a, b) => A[b * n + b] - A[a * n + a] || a - b)
    .slice(0, shapesPerInk)
    .map((col) => {
      const out = new Float64Array(BANDS);
      for (let m = 0; m < n; m++) for (let i = 0; i < BANDS; i++) out[i] += V[m * n + col] * shapes[m][i];
      return out;
    });
}

/** The ink with its modes moved by so many standard deviations each, its colour brought to where its reading may truly be. */
export function movedInk(ink: Ink, modes: InkModes, by: Float64Array, from: number, paper: Spectrum, surface: Surface): Ink {
  const lnK = new Float64Array(BANDS);
  let any = false;
  for (let m = 0; m < modes.shapes.length; m++) {
    const z = by[from + m];
    if (z === 0) continue;
    any = true;
    const shape = modes.shapes[m];
    for (let i = 0; i < BANDS; i++) lnK[i] += z * shape[i];
  }
  const wanted = [0, 1, 2].map((c) => modes.readingSpread * by[from + shapesPerInk + c]);
  if (!any && wanted.every((v) => v === 0)) return ink;
  const ground = internal(paper, surface);
  const own = filmLab(ink.k, ink.s, ground, surface);
  const k = new Float64Array(BANDS);
  const off = [0, 0, 0];
  for (let round = 0; round < 3; round++) {
    for (let i = 0; i < BANDS; i++) {
      lnK[i] = Math.max(-most, Math.min(most, lnK[i]));
      k[i] = ink.k[i] * exp(lnK[i]);
    }
    if (round === 2) break;
    inSteps(filmLab(k, ink.s, ground, surface), own, off);
    for (let c = 0; c < 3; c++) off[c] -= wanted[c];
    for (let i = 0; i < BANDS; i++) lnK[i] -= modes.back[i * 3] * off[0] + modes.back[i * 3 + 1] * off[1] + modes.back[i * 3 + 2] * off[2];
  }
  return { ...ink, k };
}

/** No band absorbs more than this many times (e^…) what the smoothest spectrum says, or less. */
const most = 2.5;

function dot(a: Float64Array, from: number, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < b.length; i++) sum += a[from + i] * b[i];
  return sum;
}
