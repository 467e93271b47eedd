import fc from 'fast-check';
import { expect, test } from 'vitest';
import { regionArea } from '../../core/form/index.ts';
import { widestPlace } from '../widest-place.ts';
import { outline } from './outline.ts';
import { say } from './numbers.ts';

test('points along a straight edge are left out, corners stay', () => {
  const ring = Float64Array.of(0, 0, 5, 0, 10, 0, 10, 5, 10, 10, 5, 10, 0, 10, 0, 5);
  const [segments] = outline({ rings: [ring] });
  expect(segments.map((s) => s.points)).toEqual([
    [0, 0],
    [10, 0],
    [10, 10],
    [0, 10],
  ]);
});

test('an outline leaves a circle no further than it may', () => {
  fc.assert(
    fc.property(fc.double({ min: 1, max: 200, noNaN: true }), fc.double({ min: 0.005, max: 0.2, noNaN: true }), (radius, tolerance) => {
      const n = 720;
      const ring = Float64Array.from({ length: n * 2 }, (_, i) => radius * (i % 2 ? Math.sin : Math.cos)((Math.PI * 2 * (i >> 1)) / n));
      const [segments] = outline({ rings: [ring] }, tolerance);
      const kept = Float64Array.from(segments.flatMap((s) => s.points));
      const area = regionArea({ rings: [ring] });
      expect(Math.abs(regionArea({ rings: [kept] }) - area)).toBeLessThanOrEqual(2 * Math.PI * radius * tolerance + 1e-9);
    }),
  );
});

test('a word about an island stands inside it, not in its hole', () => {
  const square = (a: number, b: number): Float64Array => Float64Array.of(a, a, b, a, b, b, a, b);
  const hole = Float64Array.of(2, 2, 2, 18, 18, 18, 18, 2);
  const place = widestPlace({ rings: [square(0, 20), hole] })!;
  expect(place.x > 2 && place.x < 18 && place.y > 2 && place.y < 18).toBe(false);
});

test('numbers in a page have no exponent', () => {
  expect(say(1e-7)).toBe('0');
  expect(say(-0.00001)).toBe('0');
  expect(say(123.45)).toBe('123.45');
  expect(say(100)).toBe('100');
  expect(() => say(Number.NaN)).toThrow(RangeError);
});
