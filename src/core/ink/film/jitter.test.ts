import { expect, test } from 'vitest';
import { seeded } from '../../random.ts';
import { cloudPoint, spreadOf, stepsAt } from './jitter.ts';

/** The colour of given a′ (stretched by 1 + G), b and lightness. */
const stretchedBack = (L: number, a: number, b: number, G: number): readonly [number, number, number] => [L, a / (1 + G), b];

// Sharma, Wu, Dalal 2005, table 1: pairs 1 and 17 with the means L̄, C̄′, h̄′ and the published T, SL, SC, SH.
test('a step of one ΔE00 is as long as the published weights say', () => {
  const polar = (L: number, C: number, h: number, G: number) =>
    stepsAt(stretchedBack(L, C * Math.cos((h * Math.PI) / 180), C * Math.sin((h * Math.PI) / 180), G));
  const blue = polar(50, (79.82 + 82.7485) / 2, 270.9611, 0.0001);
  expect([blue.sl, blue.sc, blue.sh]).toEqual([expect.closeTo(1, 3), expect.closeTo(4.6578, 3), expect.closeTo(1.8421, 3)]);
  const green = polar((60.2574 + 60.4626) / 2, (3.2946 - 1) / 0.045, (133.2088 + 130.9584) / 2, 0.0017);
  expect([green.sl, green.sc, green.sh]).toEqual([expect.closeTo(1.1427, 3), expect.closeTo(3.2946, 2), expect.closeTo(1.9951, 2)]);
});

test('near grey a is stretched by half, and a grey has a direction of hue all the same', () => {
  expect(stepsAt([50, 4, 0]).sc).toBeCloseTo(1 + 0.045 * 6, 3);
  expect(stepsAt([50, 0, 4]).sc).toBeCloseTo(1 + 0.045 * 4, 6);
  // C*⁷ = 25⁷: half-way, 1 + ½ (1 − √½).
  expect(stepsAt([50, 25, 0]).sc).toBeCloseTo(1 + 0.045 * 25 * (1 + 0.5 * (1 - Math.SQRT1_2)), 9);
  expect(stepsAt([50, 0, 0])).toEqual({ sl: 1, sc: 1, sh: 1, ca: 1, cb: 0 });
  expect(stepsAt([50, 3, -4])).toMatchObject({ ca: 0.6, cb: -0.8 });
});

// SL = 1 + 0.015 (L − 50)² / √(20 + (L − 50)²), Sharma et al. 2005; by hand at L = 60 and at 40: 1 + 1.5/√120.
test('in light and in dark a step of lightness is longer', () => {
  for (const L of [40, 60]) expect(stepsAt([L, 0, 0]).sl).toBeCloseTo(1.13693, 5);
});

// Maxwell's distribution, as the sum of its density: two thirds (68 %) lie within the radius.
test('a cloud of spread σ/1.872 keeps 68 % within σ', () => {
  const radius = 1 / spreadOf(1);
  let share = 0;
  for (let r = 0.0005; r < radius; r += 0.001) share += Math.sqrt(2 / Math.PI) * r * r * Math.exp((-r * r) / 2) * 0.001;
  expect(share).toBeCloseTo(0.68, 3);
  expect(spreadOf(3)).toBeCloseTo(3 * spreadOf(1), 12);
  const [l, c, h] = cloudPoint(seeded(7));
  expect(new Set([l, c, h]).size).toBe(3);
});
