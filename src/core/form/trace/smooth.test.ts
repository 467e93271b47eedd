import { expect, test } from 'vitest';
import { seeded } from '../../random.ts';
import { smoothRing } from './smooth.ts';

const step = 0.18;
/** A circle of 20 mm with a pixel's unrest. */
const restless = (unrestMm: number): Float64Array => {
  const random = seeded(3),
    n = 700;
  return Float64Array.from({ length: 2 * n }, (_, i) => {
    const turn = ((i >> 1) / n) * 2 * Math.PI;
    return (i & 1 ? Math.sin(turn) : Math.cos(turn)) * 20 + unrestMm * random.normal();
  });
};
const unrest = (ring: Float64Array): number => {
  let sum = 0;
  for (let i = 0; i < ring.length; i += 2) sum += (Math.hypot(ring[i], ring[i + 1]) - 20) ** 2;
  return Math.sqrt((2 * sum) / ring.length);
};

test('the unrest of pixels goes, the size stays', () => {
  const ring = restless(0.05),
    calm = smoothRing(ring, step, 0.2);
  expect(unrest(calm)).toBeLessThan(0.4 * unrest(ring));
  const mean = calm.reduce((sum, _, i) => (i & 1 ? sum : sum + Math.hypot(calm[i], calm[i + 1])), 0) / (calm.length / 2);
  expect(mean).toBeCloseTo(20, 1);
});

test.each([0.03, 0.2, 1, 5])('no point goes farther than the %s mm that are allowed, corners least of all', (most) => {
  // A square of 30 mm: points every 0.18 mm, corners among them.
  const side = 150,
    square = Float64Array.from({ length: 8 * side }, (_, i) => {
      const k = i >> 1,
        edge = Math.floor(k / side),
        t = (k % side) * 0.2;
      return [
        [t, 0],
        [30, t],
        [30 - t, 30],
        [0, 30 - t],
      ][edge][i & 1];
    });
  const calm = smoothRing(square, step, most);
  for (let i = 0; i < calm.length; i += 2) {
    const [x, y] = [calm[i], calm[i + 1]];
    const toEdge = Math.min(Math.abs(x), Math.abs(y), Math.abs(30 - x), Math.abs(30 - y));
    expect(toEdge).toBeLessThan(most + 1e-9);
  }
});

test('what is too small to smooth, or not to be smoothed, stays as it is', () => {
  const tiny = Float64Array.of(0, 0, 1, 0, 1, 1, 0, 1),
    ring = restless(0.1);
  expect(smoothRing(tiny, step, 0.2)).toBe(tiny);
  expect(smoothRing(ring, step, 0)).toBe(ring);
});
