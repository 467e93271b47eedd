/** (A + damping · diag A) step = b for a symmetric positive A, by Gauss. A is left as it is. */
export function solveSymmetric(A: Float64Array, b: Float64Array, damping: number): Float64Array {
  const n = b.length;
  const M = Float64Array.from(A),
    out = Float64Array.from(b);
  for (let p = 0; p < n; p++) M[p * n + p] = M[p * n + p] * (1 + damping) + 1e-12;
  for (let c = 0; c < n; c++) {
    for (let row = c + 1; row < n; row++) {
      const f = M[row * n + c] / M[c * n + c];
      if (f === 0) continue;
      for (let k = c; k < n; k++) M[row * n + k] -= f * M[c * n + k];
      out[row] -= f * out[c];
    }
  }
  for (let row = n - 1; row >= 0; row--) {
    for (let k = row + 1; k < n; k++) out[row] -= M[row * n + k] * out[k];
    out[row] /= M[row * n + row];
  }
  return out;
}
