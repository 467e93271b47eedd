import { exp } from '../../numeric/index.ts';
/** What a model is off by, carried from where it is known to what lies near. */
export interface Kriged {
  readonly at: (coverages: ArrayLike<number>) => readonly [number, number, number];
  /** How much of the model's own doubt is left there, 0..1. */
  readonly left: (coverages: ArrayLike<number>) => number;
}

export interface KnownOff {
  readonly coverages: readonly number[];
  readonly off: readonly [number, number, number];
}

/** Of coverage: over this much the likeness of errors falls to a third. */
const reachOfTone = 0.4;
/** Doubt of a reading against the model's own error, squared. */
const nugget = 0.05;
/** No chart needs more of them: evenly thinned. */
const most = 400;

/** Simple kriging (Krige 1951; Matheron 1963) with an exponential likeness, mean nought. */
export function krige(all: readonly KnownOff[]): Kriged {
  const known = all.length <= most ? all : Array.from({ length: most }, (_, i) => all[Math.floor((i * all.length) / most)]);
  const n = known.length;
  const like = (a: ArrayLike<number>, b: ArrayLike<number>): number => {
    let sum = 0;
    for (let i = 0; i < b.length; i++) sum += (a[i] - b[i]) ** 2;
    return exp(-Math.sqrt(sum) / reachOfTone);
  };
  const L = new Float64Array(n * n);
  for (let r = 0; r < n; r++) {
    for (let c = 0; c <= r; c++) {
      let v = like(known[r].coverages, known[c].coverages) + (r === c ? nugget : 0);
      for (let i = 0; i < c; i++) v -= L[r * n + i] * L[c * n + i];
      L[r * n + c] = r === c ? Math.sqrt(v) : v / L[c * n + c];
    }
  }
  /** Forward through L. */
  const forward = (b: Float64Array): Float64Array => {
    for (let r = 0; r < n; r++) {
      let v = b[r];
      for (let i = 0; i < r; i++) v -= L[r * n + i] * b[i];
      b[r] = v / L[r * n + r];
    }
    return b;
  };
  const solve = (b: Float64Array): Float64Array => {
    forward(b);
    for (let r = n - 1; r >= 0; r--) {
      let v = b[r];
      for (let i = r + 1; i < n; i++) v -= L[i * n + r] * b[i];
      b[r] = v / L[r * n + r];
    }
    return b;
  };
  const weights = [0, 1, 2].map((c) => solve(Float64Array.from(known, (one) => one.off[c])));
  return {
    at: (coverages) => {
      const out: [number, number, number] = [0, 0, 0];
      for (let i = 0; i < n; i++) {
        const w = like(coverages, known[i].coverages);
        for (let c = 0; c < 3; c++) out[c] += w * weights[c][i];
      }
      return out;
    },
    left: (coverages) => {
      const v = forward(Float64Array.from(known, (one) => like(coverages, one.coverages)));
      return Math.sqrt(Math.max(0.05, 1 - v.reduce((sum, x) => sum + x * x, 0)));
    },
  };
}
