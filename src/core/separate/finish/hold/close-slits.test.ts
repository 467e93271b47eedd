import { expect, test } from 'vitest';
import type { Field } from '../../kernels/relax.ts';
import { closeSlits, slitCost, slitWatch } from './close-slits.ts';

const width = 120,
  height = 60,
  mmPerPx = 0.25,
  rules = { openingPx: 6, paperPx: 6, leastInkPx: 60, leastIslandPx: 90 };
/** L* of paper, the one ink, the other, both. */
const lightness = Float32Array.from([95, 60, 55, 42]);

/** A picture of one grey, or with a light line down its middle; two runs meet there but for two columns of paper. */
function meeting(light: boolean): { field: Field; planned: Uint8Array; target: Float32Array } {
  const inSlit = (i: number): boolean => i % width === 60 || i % width === 61,
    lightLine = (i: number): boolean => light && inSlit(i);
  return {
    field: {
      width,
      height,
      binOf: Uint16Array.from({ length: width * height }, (_, i) => (lightLine(i) ? 1 : 0)),
      table: Float32Array.from([28, 2, 2, 11, 0, 28, 28, 40]),
      codeCount: 4,
      layers: 2,
      candidates: Uint8Array.from([1, 2, 3, 0, 0, 1, 2, 3]),
      perBin: 4,
      price: new Float32Array(8),
      frozen: 0,
    },
    planned: Uint8Array.from({ length: width * height }, (_, i) => (inSlit(i) ? 0 : i % width < 60 ? 1 : 2)),
    target: Float32Array.from({ length: 3 * width * height }, (_, k) => (k % 3 ? 0 : lightLine((k - (k % 3)) / 3) ? 94 : 58)),
  };
}

test('a slit of paper between two runs is closed by one of them, and nothing else changes', () => {
  const { field, planned, target } = meeting(false),
    prints = planned.slice(),
    watch = slitWatch(prints, width, height, lightness, target, mmPerPx);
  expect(slitCost(watch, prints)).toBeGreaterThan(1000);
  expect(closeSlits(field, planned, prints, [0, 1], rules, watch, mmPerPx).length).toBeGreaterThan(0);
  expect(slitCost(watch, planned)).toBe(0);
  // No farther than half a millimetre beyond the slit.
  expect(planned.every((code, i) => code === prints[i] || Math.abs((i % width) - 60.5) < 3)).toBe(true);
});

test('a light line that is in the picture stays', () => {
  const { field, planned, target } = meeting(true),
    before = planned.slice(),
    watch = slitWatch(before, width, height, lightness, target, mmPerPx);
  expect(slitCost(watch, before)).toBe(0);
  expect(closeSlits(field, planned, before, [0, 1], rules, watch, mmPerPx)).toEqual([]);
  expect(planned).toEqual(before);
});

test('through its own bridge a run prints nothing: the other one hides it', () => {
  const { field, planned, target } = meeting(false),
    // Ink of the first everywhere but a bridge of two columns.
    wanted = planned.map(() => 1),
    prints = wanted.map((_, i) => (i % width === 60 || i % width === 61 ? 0 : 1)),
    watch = slitWatch(prints, width, height, lightness, target, mmPerPx);
  const changed = closeSlits(field, wanted, prints, [0, 1], { ...rules, openingPx: 2, leastInkPx: 4 }, watch, mmPerPx);
  expect(changed).toEqual([1]);
  expect(wanted.filter((code, i) => (i % width === 60 || i % width === 61) && code === 3).length).toBe(2 * height);
});
