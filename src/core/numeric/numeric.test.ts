import fc from 'fast-check';
import { expect, test } from 'vitest';
import { homography, mapPoint, solveDamped, solveLinear, solvePositive } from './index.ts';

const matrix = (n: number): fc.Arbitrary<number[]> =>
  fc.array(fc.double({ min: -9, max: 9, noNaN: true }), { minLength: n * n, maxLength: n * n });

/** A · x. */
function times(A: ArrayLike<number>, x: ArrayLike<number>): number[] {
  const n = x.length;
  return Array.from({ length: n }, (_, row) => Array.from({ length: n }, (__, k) => A[row * n + k] * x[k]).reduce((a, v) => a + v, 0));
}

test('what is solved solves: A x = b, with pivots where the diagonal is nought', () => {
  expect(solveLinear(Float64Array.of(0, 1, 1, 0), Float64Array.of(2, 3))).toBe(true);
  expect(solveLinear(Float64Array.of(1, 2, 2, 4), Float64Array.of(1, 1))).toBe(false);
  fc.assert(
    fc.property(matrix(4), fc.array(fc.double({ min: -9, max: 9, noNaN: true }), { minLength: 4, maxLength: 4 }), (raw, x) => {
      // Strong on the diagonal: never near to singular.
      const A = Float64Array.from(raw, (v, i) => (i % 5 === 0 ? v + 40 * Math.sign(v || 1) : v));
      const b = Float64Array.from(times(A, x));
      expect(solveLinear(A, b)).toBe(true);
      x.forEach((v, i) => expect(b[i]).toBeCloseTo(v, 8));
    }),
  );
});

test('a symmetric positive system is solved alike by both ways, and damping shortens the step', () => {
  fc.assert(
    fc.property(matrix(3), (raw) => {
      const A = new Float64Array(9);
      for (let r = 0; r < 3; r++) for (let c = 0; c < 3; c++) for (let k = 0; k < 3; k++) A[r * 3 + c] += raw[k * 3 + r] * raw[k * 3 + c];
      for (let r = 0; r < 3; r++) A[r * 4] += 1;
      const b = Float64Array.of(1, -2, 3);
      const plain = solveDamped(A, b, 0);
      const positive = solvePositive(Float64Array.from(A), Float64Array.from(b));
      plain.forEach((v, i) => expect(positive[i]).toBeCloseTo(v, 6));
      const energy = (x: Float64Array): number => times(A, x).reduce((sum, v, i) => sum + v * x[i], 0);
      expect(energy(solveDamped(A, b, 1))).toBeLessThan(energy(plain));
    }),
  );
});

test('four corners go where they are sent, and a straight line stays straight', () => {
  const from = [
    [0, 0],
    [210, 0],
    [210, 297],
    [0, 297],
  ] as const;
  const to = [
    [120, 80],
    [900, 130],
    [960, 1200],
    [60, 1100],
  ] as const;
  const h = homography(from, to)!;
  from.forEach(([x, y], i) => {
    const [u, v] = mapPoint(h, x, y);
    expect(u).toBeCloseTo(to[i][0], 6);
    expect(v).toBeCloseTo(to[i][1], 6);
  });
  const [a, m, b] = [mapPoint(h, 0, 100), mapPoint(h, 70, 120), mapPoint(h, 210, 160)];
  expect((b[0] - a[0]) * (m[1] - a[1]) - (b[1] - a[1]) * (m[0] - a[0])).toBeCloseTo(0, 6);
  expect(
    homography(
      [
        [0, 0],
        [1, 1],
        [2, 2],
        [0, 5],
      ],
      to,
    ),
  ).toBeNull();
});
