import { describe, expect, test } from 'vitest';
import { seeded } from './random.ts';

const first = (take: (seed: number) => number): number[] => Array.from({ length: 2000 }, (_, seed) => take(seed));
const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

describe('seeded numbers', () => {
  test('the first draw of seeds 0, 1, 2 … is as random as any other', () => {
    const uniforms = first((seed) => seeded(seed).next());
    // Bounds of four standard errors of a uniform's mean and variance.
    expect(Math.abs(mean(uniforms) - 0.5)).toBeLessThan(4 * Math.sqrt(1 / 12 / 2000));
    expect(Math.abs(mean(uniforms.map((u) => (u - 0.5) ** 2)) - 1 / 12)).toBeLessThan(4 * Math.sqrt(1 / 180 / 2000));
    // Neighbouring seeds don't lie alike.
    expect(Math.abs(mean(uniforms.slice(1).map((u, i) => (u - 0.5) * (uniforms[i] - 0.5))))).toBeLessThan(4 / 12 / Math.sqrt(1999));
  });

  test('the first normal of a seed is a normal: mean 0, spread 1, none far out', () => {
    const normals = first((seed) => seeded(seed).normal());
    expect(Math.abs(mean(normals))).toBeLessThan(4 / Math.sqrt(2000));
    expect(Math.abs(mean(normals.map((v) => v * v)) - 1)).toBeLessThan(4 * Math.sqrt(2 / 2000));
    expect(Math.max(...normals.map(Math.abs))).toBeLessThan(5);
  });

  test('the same seed gives the same numbers, another gives others', () => {
    const draw = (seed: number): number[] => {
      const random = seeded(seed);
      return Array.from({ length: 20 }, () => random.normal());
    };
    expect(draw(7)).toEqual(draw(7));
    expect(draw(7)).not.toEqual(draw(8));
    expect(
      Array.from(
        { length: 500 },
        (
          (r) => () =>
            r.below(6)
        )(seeded(3)),
      ).every((n) => Number.isInteger(n) && n >= 0 && n < 6),
    ).toBe(true);
  });
});
