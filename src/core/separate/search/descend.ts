import { solvePositive } from '../../numeric/index.ts';
import type { Targets, Use } from './fit-score.ts';

/** Differences smaller than this weigh no more than this one: mean ΔE00 has a kink at nothing. */
const kink = 0.3;

/**
 * The direction in which the shares of all pots together lessen the mean ΔE00 most: Gauss and Newton's step on the difference
 * as a quadratic form around each colour, each reweighted by its own size so that it is the mean that falls and not the
 * mean square; steadied by `damping` (Levenberg, Marquardt).
 * @param lab overlaps as they are, 3 a code
 * @param slopes how each of them changes with the logarithm of each share
 * @param use which colour is printed by which code, and how much
 */
export function shareStep(lab: Float64Array, slopes: readonly Float64Array[], targets: Targets, use: Use, damping: number): Float64Array {
  const n = slopes.length,
    codes = lab.length / 3;
  // Everything a code's colours pull at it, summed: 6 numbers of a symmetric form and 3 of a force.
  const pull = new Float64Array(codes * 9);
  for (let k = 0; k < use.share.length; k++) {
    const t = use.target[k],
      c = use.code[k] * 3,
      to = use.code[k] * 9;
    const dl = lab[c] - targets.lab[t * 3],
      da = lab[c + 1] - targets.lab[t * 3 + 1],
      db = lab[c + 2] - targets.lab[t * 3 + 2];
    const fl = targets.form[t * 4],
      faa = targets.form[t * 4 + 1],
      fab = targets.form[t * 4 + 2] / 2,
      fbb = targets.form[t * 4 + 3];
    const w = use.share[k] / Math.max(kink, Math.sqrt(fl * dl * dl + faa * da * da + 2 * fab * da * db + fbb * db * db));
    pull[to] += w * fl;
    pull[to + 1] += w * faa;
    pull[to + 2] += w * fab;
    pull[to + 3] += w * fbb;
    pull[to + 6] += w * fl * dl;
    pull[to + 7] += w * (faa * da + fab * db);
    pull[to + 8] += w * (fab * da + fbb * db);
  }
  const matrix = new Float64Array(n * n),
    force = new Float64Array(n);
  for (let code = 0; code < codes; code++) {
    const f = code * 9,
      c = code * 3;
    if (pull[f] === 0) continue;
    for (let p = 0; p < n; p++) {
      const sp = slopes[p],
        l = sp[c],
        a = sp[c + 1],
        b = sp[c + 2];
      if (l === 0 && a === 0 && b === 0) continue;
      const fl = pull[f] * l,
        fa = pull[f + 1] * a + pull[f + 2] * b,
        fb = pull[f + 2] * a + pull[f + 3] * b;
      force[p] -= l * pull[f + 6] + a * pull[f + 7] + b * pull[f + 8];
      for (let q = 0; q <= p; q++) matrix[p * n + q] += fl * slopes[q][c] + fa * slopes[q][c + 1] + fb * slopes[q][c + 2];
    }
  }
  for (let p = 0; p < n; p++) matrix[p * n + p] = matrix[p * n + p] * (1 + damping) + 1e-4;
  const step = solvePositive(matrix, force);
  const most = step.reduce((m, v) => Math.max(m, Math.abs(v)), 0);
  return most > 0.7 ? step.map((v) => (v * 0.7) / most) : step;
}
