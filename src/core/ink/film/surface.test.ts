import { describe, expect, test } from 'vitest';
import { BANDS } from '../../colour/index.ts';
import { defaultSurface, internal, measured } from './surface.ts';

const flat = (value: number): Float64Array => new Float64Array(BANDS).fill(value);
const ofInk = (darkest: number, fromSpectra = true): number => defaultSurface([flat(darkest)], fromSpectra).ks;

describe('light through the surface', () => {
  // docs/optics.md 2 (Saunderson 1942), worked by hand with k1 = 0.04, k2 = 0.6: R = ks + 0.96 · 0.4 r / (1 − 0.6 r).
  test.each([
    [0, 0.04, 0.04],
    [0.5, 0.04, 0.04 + 0.192 / 0.7],
    [1, 0.04, 1],
    [0.5, 0, 0.192 / 0.7],
    [0.25, 0.02, 0.02 + 0.096 / 0.85],
  ])('a film that sends back %d inside, with gloss %d, measures %d', (r, ks, R) => {
    const surface = { ks, k1: 0.04, k2: 0.6 };
    expect(measured(flat(r), surface)[17]).toBeCloseTo(R, 12);
    if (r > 0) expect(internal(flat(R), surface)[17]).toBeCloseTo(r, 12);
  });

  test('a reading at the gloss or under it is black inside, and never nothing: a logarithm follows', () => {
    const surface = { ks: 0.03, k1: 0.04, k2: 0.6 };
    expect([...internal(Float64Array.of(0.03, 0.01, 0), surface)]).toEqual([1e-4, 1e-4, 1e-4]);
    expect([...measured(Float64Array.of(0), surface)]).toEqual([0.03]);
  });
});

describe('the gloss that is taken for a set of readings', () => {
  // docs/optics.md 2: ks = max(f · min R, min R − 0.015), f 0.5 for spectra and 0.3 for colours; Saunderson's k1 and k2.
  test('all of the darkest reading but the light that still comes from within, at least a share of it', () => {
    const { ks, ...rest } = defaultSurface([flat(0.06)], true);
    expect(ks).toBeCloseTo(0.045, 12);
    expect(rest).toEqual({ k1: 0.04, k2: 0.6 });
    expect(ofInk(0.02)).toBeCloseTo(0.01, 12);
    expect(ofInk(0.02, false)).toBeCloseTo(0.006, 12);
    expect(ofInk(0.06, false)).toBeCloseTo(0.045, 12);
  });

  test('the darkest of all inks tells it, from 400 nm up: in the violet instruments see little', () => {
    const dark = flat(0.5);
    dark[0] = 0.001;
    dark[1] = 0.001;
    dark[2] = 0.05;
    expect(defaultSurface([flat(0.3), dark, flat(0.07)], true).ks).toBeCloseTo(0.035, 12);
    const last = flat(0.5);
    last[BANDS - 1] = 0.02;
    expect(defaultSurface([last], true).ks).toBeCloseTo(0.01, 12);
  });

  test('a pale set of readings says nothing: from a tenth on it fades to the middle of the usual geometries', () => {
    // At a tenth 0.085; half-way to two tenths half-way from there to 0.02.
    expect(ofInk(0.1)).toBeCloseTo(0.085, 12);
    expect(ofInk(0.15)).toBeCloseTo(0.0525, 12);
    expect(ofInk(0.2)).toBeCloseTo(0.02, 12);
    expect(ofInk(0.9)).toBeCloseTo(0.02, 12);
    expect(defaultSurface([], true).ks).toBeCloseTo(0.02, 12);
  });

  test('a reading below nothing, as noise makes it, gives no gloss; no paler reading ever gives a leap', () => {
    expect(ofInk(-0.01)).toBe(0);
    for (let darkest = 0.001; darkest < 0.3; darkest += 0.001)
      expect(Math.abs(ofInk(darkest + 0.001) - ofInk(darkest))).toBeLessThan(0.00101);
  });
});
