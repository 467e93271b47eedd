import { solveLinear } from './solve.ts';

/** Plane to plane: nine numbers, row by row, the last 1. */
export type Homography = readonly number[];
export type Point = readonly [number, number];

/** The homography that takes four points to four others; null where three of them lie in line. */
export function homography(from: readonly Point[], to: readonly Point[]): Homography | null {
  const A = new Float64Array(64);
  const b = new Float64Array(8);
  for (let i = 0; i < 4; i++) {
    const [x, y] = from[i];
    const [u, v] = to[i];
    A.set([x, y, 1, 0, 0, 0, -u * x, -u * y], i * 16);
    A.set([0, 0, 0, x, y, 1, -v * x, -v * y], i * 16 + 8);
    b[i * 2] = u;
    b[i * 2 + 1] = v;
  }
  return solveLinear(A, b) ? [...b, 1] : null;
}

export function mapPoint(h: Homography, x: number, y: number): Point {
  const w = h[6] * x + h[7] * y + h[8];
  return [(h[0] * x + h[1] * y + h[2]) / w, (h[3] * x + h[4] * y + h[5]) / w];
}
