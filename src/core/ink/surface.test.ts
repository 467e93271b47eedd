import { describe, expect, test } from 'vitest';
import { BANDS } from '../colour/index.ts';
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
  // docs/optics.md 2: ks = f · min R, f 0.5 for spectra and 0.7..0.8 for Lab readings, near k1 at most; Saunderson's k1 and k2.
  test('half of the darkest spectrum, three quarters of the darkest colour', () => {
    expect(defaultSurface([flat(0.06)], true)).toEqual({ ks: 0.03, k1: 0.04, k2: 0.6 });
    expect(ofInk(0.04, false)).toBeCloseTo(0.03, 12);
    expect(ofInk(0.08)).toBeCloseTo(0.04, 12);
  });

  test('the darkest of all inks tells it, from 400 nm up: in the violet instruments see little', () => {
    const dark = flat(0.5);
    dark[0] = 0.001;
    dark[1] = 0.001;
    dark[2] = 0.05;
    expect(defaultSurface([flat(0.3), dark, flat(0.07)], true).ks).toBeCloseTo(0.025, 12);
    const last = flat(0.5);
    last[BANDS - 1] = 0.02;
    expect(defaultSurface([last], true).ks).toBeCloseTo(0.01, 12);
  });

  test('a pale set of readings says nothing: from the most gloss there is it fades to the middle of the usual geometries', () => {
    // Half of 8 % is k1; half-way from there to 20 % lies half-way from 0.04 to 0.02.
    expect(ofInk(0.14)).toBeCloseTo(0.03, 12);
    expect(ofInk(0.2)).toBeCloseTo(0.02, 12);
    expect(ofInk(0.9)).toBeCloseTo(0.02, 12);
    expect(defaultSurface([], true).ks).toBeCloseTo(0.02, 12);
    // Three quarters of 5.33 % is k1.
    expect(ofInk((0.2 + 0.04 / 0.75) / 2, false)).toBeCloseTo(0.03, 12);
  });

  test('a reading below nothing, as noise makes it, gives no gloss; no paler reading ever gives a leap', () => {
    expect(ofInk(-0.01)).toBe(0);
    for (let darkest = 0.001; darkest < 0.3; darkest += 0.001)
      expect(Math.abs(ofInk(darkest + 0.001) - ofInk(darkest))).toBeLessThan(0.00051);
  });
});
