import type { Point } from './sample.ts';

/** The perspective that takes four points to four others; undefined when three lie on a line. */
export function perspective(from: readonly Point[], to: readonly Point[]): ((p: Point) => Point) | undefined {
  const A: number[][] = [];
  for (let i = 0; i < 4; i++) {
    const [x, y] = from[i],
      [u, v] = to[i];
    A.push([x, y, 1, 0, 0, 0, -u * x, -u * y, u], [0, 0, 0, x, y, 1, -v * x, -v * y, v]);
  }
  for (let c = 0; c < 8; c++) {
    let pivot = c;
    for (let r = c + 1; r < 8; r++) if (Math.abs(A[r][c]) > Math.abs(A[pivot][c])) pivot = r;
    if (Math.abs(A[pivot][c]) < 1e-9) return undefined;
    [A[c], A[pivot]] = [A[pivot], A[c]];
    for (let r = 0; r < 8; r++) {
      if (r === c) continue;
      const f = A[r][c] / A[c][c];
      for (let k = c; k < 9; k++) A[r][k] -= f * A[c][k];
    }
  }
  const h = A.map((row, i) => row[8] / row[i]);
  return ([x, y]) => {
    const below = h[6] * x + h[7] * y + 1;
    return [(h[0] * x + h[1] * y + h[2]) / below, (h[3] * x + h[4] * y + h[5]) / below];
  };
}
