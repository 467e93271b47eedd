import { solvePositive } from '../../numeric/index.ts';
import { deltaE00Of, type Lab } from '../../colour/index.ts';
import { residualAt, type Mixer } from './target.ts';

export interface Fit {
  readonly shares: Float64Array;
  readonly lab: Lab;
  readonly deltaE: number;
}

/**
 * Shares of some pots nearest to a wanted colour: damped least squares on the colour difference, kept inside
 * shares ≥ 0 and Σ ≤ `most`, then a short search on ΔE00 itself.
 * @param worthPolishing ΔE00 from which on that search isn't worth while: something much nearer is known
 */
export function fitShares(
  mix: Mixer,
  pots: readonly number[],
  start: readonly number[],
  most: number,
  wanted: Lab,
  worthPolishing: number,
): Fit {
  const n = pots.length;
  const residual = residualAt(wanted);
  const lab = new Float64Array(3),
    r = new Float64Array(3),
    rNew = new Float64Array(3);
  const J = new Float64Array(3 * n);
  let x = inside(Float64Array.from(start), most);
  mix.labInto(x, pots, lab);
  residual(lab, r);
  let misfit = sumOfSquares(r);
  let damping = 1e-3;
  for (let round = 0; round < 14 && misfit > 1e-8; round++) {
    for (let p = 0; p < n; p++) {
      const step = Math.max(1e-5, 1e-3 * x[p]);
      const kept = x[p];
      x[p] = kept + step;
      mix.labInto(x, pots, lab);
      x[p] = kept;
      residual(lab, rNew);
      for (let k = 0; k < 3; k++) J[k * n + p] = (rNew[k] - r[k]) / step;
    }
    let moved = false;
    for (let attempt = 0; attempt < 6; attempt++) {
      const tried = inside(stepFrom(x, J, r, n, damping), most);
      mix.labInto(tried, pots, lab);
      residual(lab, rNew);
      const misfitNew = sumOfSquares(rNew);
      if (misfitNew < misfit) {
        moved = misfit - misfitNew > 1e-3 * misfit;
        x = tried;
        misfit = misfitNew;
        r.set(rNew);
        damping = Math.max(1e-9, damping / 6);
        break;
      }
      damping *= 8;
    }
    if (!moved) break;
  }
  return polish(mix, pots, x, most, wanted, worthPolishing);
}

function sumOfSquares(r: Float64Array): number {
  return r[0] * r[0] + r[1] * r[1] + r[2] * r[2];
}

/** Shares below 0 become 0; shares that fill more than the pot are shrunk together. */
function inside(x: Float64Array, most: number): Float64Array {
  let sum = 0;
  for (let p = 0; p < x.length; p++) {
    if (!(x[p] > 0)) x[p] = 0;
    sum += x[p];
  }
  if (sum > most) for (let p = 0; p < x.length; p++) x[p] *= most / sum;
  return x;
}

/** (JᵀJ + damping · diag) step = −Jᵀ r, solved for up to a handful of pots; pots at 0 that want below are left there. */
function stepFrom(x: Float64Array, J: Float64Array, r: Float64Array, n: number, damping: number): Float64Array {
  const A = new Float64Array(n * n),
    b = new Float64Array(n);
  for (let p = 0; p < n; p++) {
    for (let k = 0; k < 3; k++) b[p] -= J[k * n + p] * r[k];
    for (let q = 0; q < n; q++) for (let k = 0; k < 3; k++) A[p * n + q] += J[k * n + p] * J[k * n + q];
  }
  for (let p = 0; p < n; p++) {
    const held = x[p] <= 0 && b[p] < 0;
    A[p * n + p] = A[p * n + p] * (1 + damping) + 1e-12;
    if (held) {
      for (let q = 0; q < n; q++) {
        A[p * n + q] = 0;
        A[q * n + p] = 0;
      }
      A[p * n + p] = 1;
      b[p] = 0;
    }
  }
  solvePositive(A, b);
  return x.map((v, p) => v + b[p]);
}

function polish(mix: Mixer, pots: readonly number[], start: Float64Array, most: number, wanted: Lab, worthPolishing: number): Fit {
  const lab = new Float64Array(3);
  const off = (x: Float64Array): number => {
    mix.labInto(x, pots, lab);
    return deltaE00Of(wanted[0], wanted[1], wanted[2], lab[0], lab[1], lab[2]);
  };
  let best = Float64Array.from(start);
  let deltaE = off(best);
  if (deltaE > 0.05 && deltaE < worthPolishing) {
    for (let size = 0.08; size > 0.001; size /= 2) {
      for (let p = 0; p < best.length; p++) {
        for (const sign of [1, -1]) {
          const tried = Float64Array.from(best);
          tried[p] += sign * size * Math.max(tried[p], 0.01);
          const e = off(inside(tried, most));
          if (e < deltaE - 1e-9) {
            deltaE = e;
            best = tried;
          }
        }
      }
    }
  }
  off(best);
  return { shares: best, lab: [lab[0], lab[1], lab[2]], deltaE };
}
