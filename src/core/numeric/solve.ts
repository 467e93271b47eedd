/**
 * Small dense systems, in place, no allocation: they stand inside loops that run a million times, where a matrix library's objects
 * cost more than the sums. Matrices are n × n, row by row.
 */

/** A x = b by Gauss with row pivots. `A` is used up, `b` becomes x. False where A has no inverse to be trusted. */
export function solveLinear(A: Float64Array, b: Float64Array): boolean {
  const n = b.length;
  for (let col = 0; col < n; col++) {
    let pivot = col;
    for (let row = col + 1; row < n; row++) if (Math.abs(A[row * n + col]) > Math.abs(A[pivot * n + col])) pivot = row;
    const head = A[pivot * n + col];
    if (!(Math.abs(head) >= 1e-14)) return false;
    if (pivot !== col) {
      for (let k = col; k < n; k++) {
        const kept = A[col * n + k];
        A[col * n + k] = A[pivot * n + k];
        A[pivot * n + k] = kept;
      }
      const kept = b[col];
      b[col] = b[pivot];
      b[pivot] = kept;
    }
    for (let row = col + 1; row < n; row++) {
      const factor = A[row * n + col] / head;
      if (factor === 0) continue;
      for (let k = col; k < n; k++) A[row * n + k] -= factor * A[col * n + k];
      b[row] -= factor * b[col];
    }
  }
  for (let row = n - 1; row >= 0; row--) {
    let sum = b[row];
    for (let k = row + 1; k < n; k++) sum -= A[row * n + k] * b[k];
    b[row] = sum / A[row * n + row];
  }
  return true;
}

/** A x = b for a symmetric positive A by Cholesky, on its lower half. Both are used up; `b` becomes x. */
export function solvePositive(A: Float64Array, b: Float64Array): Float64Array {
  const n = b.length;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = A[i * n + j];
      for (let k = 0; k < j; k++) sum -= A[i * n + k] * A[j * n + k];
      A[i * n + j] = i === j ? Math.sqrt(Math.max(1e-12, sum)) : sum / A[j * n + j];
    }
  }
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) b[i] -= A[i * n + k] * b[k];
    b[i] /= A[i * n + i];
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) b[i] -= A[k * n + i] * b[k];
    b[i] /= A[i * n + i];
  }
  return b;
}

/** (A + damping · diag A) step = b for a symmetric positive A: a step of Levenberg and Marquardt. Both are left as they are. */
export function solveDamped(A: Float64Array, b: Float64Array, damping: number): Float64Array {
  const n = b.length;
  const M = Float64Array.from(A);
  for (let p = 0; p < n; p++) M[p * n + p] = M[p * n + p] * (1 + damping) + 1e-12;
  const out = Float64Array.from(b);
  // Pivots, not Cholesky: normal equations of a photograph's surface are so near to singular that its floor would show.
  return solveLinear(M, out) ? out : out.fill(0);
}
