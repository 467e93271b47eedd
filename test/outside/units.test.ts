import { PageSizes } from '@cantoo/pdf-lib';
import { describe, expect, test } from 'vitest';
import {
  gramsPerOunce,
  millilitresPerFluidOunce,
  mmPerInch,
  paperSizes,
  readLength,
  readMass,
  readVolume,
} from '../../src/core/units/index.ts';
import sizes from './data/paper-sizes.json' with { type: 'json' };

describe('sheet sizes hold against the standard', () => {
  // ISO 216 and ISO 269, tables in data/paper-sizes.json.
  test.each(['A', 'B', 'C'] as const)('%s sizes, from 0 to 10', (family) => {
    expect(paperSizes.filter((size) => size.family === family).map((size) => [size.widthMm, size.heightMm])).toEqual(sizes[family]);
  });

  // A general library (pdf-lib) carries the same sizes in points, rounded to 0.01 pt.
  test('and against a general library that carries them in points', () => {
    const points = new Map<string, readonly number[]>(Object.entries(PageSizes));
    let held = 0;
    for (const size of paperSizes) {
      const theirs = points.get(size.name);
      if (!theirs || size.name === 'Tabloid') continue;
      const mm = theirs.map((pt) => (pt / 72) * mmPerInch);
      expect(Math.abs(mm[0] - size.widthMm)).toBeLessThan(0.02);
      expect(Math.abs(mm[1] - size.heightMm)).toBeLessThan(0.02);
      held++;
    }
    expect(held).toBeGreaterThanOrEqual(30);
  });

  // ANSI/ASME Y14.1: A 8.5 × 11, B 11 × 17, C 17 × 22, D 22 × 34, E 34 × 44 in.
  test.each([
    ['letter', 8.5, 11],
    ['tabloid', 11, 17],
    ['ansi-c', 17, 22],
    ['ansi-d', 22, 34],
    ['ansi-e', 34, 44],
  ])('%s in inches', (id, width, height) => {
    const size = paperSizes.find((one) => one.id === id)!;
    expect(size.widthMm / 25.4).toBeCloseTo(width, 9);
    expect(size.heightMm / 25.4).toBeCloseTo(height, 9);
  });
});

// NIST Special Publication 811, appendix B: conversion factors (inch, foot, mil exact; the others to seven figures).
test.each([
  ['length', readLength('1 in'), 25.4],
  ['length', readLength('1 ft'), 304.8],
  ['length', readLength('1 mil'), 0.0254],
  ['mass', readMass('1 oz'), 28.34952],
  ['mass', readMass('1 lb'), 453.5924],
  ['volume', readVolume('1 fl oz'), 29.57353],
])('%s conversions as in the handbook', (_, ours, handbook) => {
  expect(Math.abs(ours / handbook - 1)).toBeLessThan(5e-7);
});

test('ounce and fluid ounce follow from their definitions', () => {
  expect(gramsPerOunce).toBeCloseTo(28.349523125, 12);
  expect(millilitresPerFluidOunce).toBeCloseTo(29.5735295625, 9);
});
