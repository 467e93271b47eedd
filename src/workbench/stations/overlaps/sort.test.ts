import { expect, test } from 'vitest';
import type { PlannedOverlap } from '../../../core/plan/index.ts';
import { sortOverlaps } from './sort.ts';

const overlap = (code: number, layers: string[], areaMm2: number, lab: [number, number, number]): PlannedOverlap => ({
  code,
  layers,
  areaMm2,
  lab,
  srgb: '#000000',
  inGamut: true,
  band: 1,
  measured: false,
  possible: [],
});
const all = [
  overlap(3, ['a', 'b'], 10, [40, 20, 20]),
  overlap(0, [], 5, [95, 0, 0]),
  overlap(1, ['a'], 20, [60, -30, 0]),
  overlap(2, ['b'], 30, [70, 0, 40]),
  overlap(7, ['a', 'b', 'c'], 0, [10, 0, 0]),
];
const codes = (by: Parameters<typeof sortOverlaps>[1]): number[] => sortOverlaps(all, by).map((o) => o.code);

test('the chart lists what covers area, by films, area, lightness or hue', () => {
  expect(codes('films')).toEqual([0, 2, 1, 3]);
  expect(codes('area')).toEqual([2, 1, 3, 0]);
  expect(codes('lightness')).toEqual([0, 2, 1, 3]);
  expect(codes('hue')).toEqual([0, 3, 2, 1]);
});
