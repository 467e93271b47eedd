import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cutRoom, leastCut } from './cut.ts';
import { outlineLengths } from './length.ts';

function costOf(mask: Uint8Array, gain: Float32Array, width: number, height: number, price: number): number {
  return mask.reduce((sum, on, i) => sum + (on ? gain[i] : 0), 0) + price * outlineLengths(mask, width, height, 1)[0];
}

function cut(gain: Float32Array, width: number, height: number, price: number): Uint8Array {
  const mask = new Uint8Array(gain.length);
  leastCut(gain, width, height, price, cutRoom(gain.length), mask);
  return mask;
}

test('on rasters small enough to try every mask, none is better than the cut', () => {
  const raster = fc.record({ width: fc.integer({ min: 1, max: 3 }), height: fc.integer({ min: 1, max: 3 }), price: fc.double({ min: 0, max: 6, noNaN: true }) })
    .chain((one) => fc.tuple(fc.constant(one), fc.array(fc.double({ min: -10, max: 10, noNaN: true }), { minLength: one.width * one.height, maxLength: one.width * one.height })));
  fc.assert(fc.property(raster, ([{ width, height, price }, values]) => {
    const gain = Float32Array.from(values), n = gain.length;
    let least = Infinity;
    for (let code = 0; code < 1 << n; code++) least = Math.min(least, costOf(Uint8Array.from({ length: n }, (_, i) => (code >> i) & 1), gain, width, height, price));
    expect(costOf(cut(gain, width, height, price), gain, width, height, price)).toBeCloseTo(least, 3);
  }), { numRuns: 60 });
});

test('without a price every pixel that gains is in the mask, with a dear one all or nothing', () => {
  const gain = Float32Array.from({ length: 100 }, (_, i) => (i % 3 === 0 ? -2 : 1.5));
  expect([...cut(gain, 10, 10, 0)]).toEqual([...gain].map((g) => (g < 0 ? 1 : 0)));
  expect(cut(gain, 10, 10, 1000).every((v) => v === 0)).toBe(true);
  expect(cut(gain.map((g) => g - 1.5), 10, 10, 1000).every((v) => v === 1)).toBe(true);
});
