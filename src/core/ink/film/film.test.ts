import { describe, expect, test } from 'vitest';
import { BANDS, wavelengthsNm } from '../../colour/index.ts';
import { inkCurves } from './curves.ts';
import { addFilm, effectiveShare, filmOf, filmOfBand, kAndSOfFilm, overGround, stackReflectance } from './film.ts';
import { overlapColours, overlapSpectra } from './overlaps.ts';
import { refusedBy } from '../../../../test/said.ts';

const flat = (value: number): Float64Array => new Float64Array(BANDS).fill(value);
const bare = { ks: 0, k1: 0, k2: 0 };
const skin = { ks: 0.02, k1: 0.04, k2: 0.6 };

/** Kubelka 1948 (docs/optics.md 3), as published: r = (1 − g(a − b coth bSX)) / (a − g + b coth bSX). */
function published(K: number, S: number, g: number): number {
  const a = 1 + K / S,
    b = Math.sqrt(a * a - 1);
  const coth = 1 / Math.tanh(b * S);
  return (1 - g * (a - b * coth)) / (a - g + b * coth);
}

describe('one film', () => {
  test.each([
    [0.5, 0.25, 0.8],
    [2, 0.1, 0.9],
    [0.05, 3, 0.1],
  ])('K %d and S %d over a ground of %d reflect what the published form says', (K, S, g) => {
    expect(overGround(K, S, g)).toBeCloseTo(published(K, S, g), 10);
    const { r0, t } = filmOfBand(K, S);
    expect(r0 + (t * t * g) / (1 - r0 * g)).toBeCloseTo(published(K, S, g), 10);
    expect(addFilm(flat(g), { r0: flat(r0), t2: flat(t * t) })[35]).toBeCloseTo(published(K, S, g), 10);
  });

  // Kubelka 1948, the limit of a film that absorbs nothing: R0 = S/(1 + S), T = 1/(1 + S). White ink.
  test('a white that absorbs nothing sends back S/(1+S) and lets the rest through', () => {
    expect(filmOfBand(0, 3)).toEqual({ r0: expect.closeTo(0.75, 12), t: expect.closeTo(0.25, 12) });
    expect(overGround(0, 3, 0)).toBeCloseTo(0.75, 12);
    const back = kAndSOfFilm(0.75, 0.25);
    expect(back.k).toBeCloseTo(0, 12);
    expect(back.s).toBeCloseTo(3, 12);
    // Over white that stays white.
    expect(overGround(0, 3, 1)).toBeCloseTo(1, 12);
  });

  // Beer and Lambert: light goes down and up, exp(−2 K).
  test('a clear ink dims by exp(−2K)', () => {
    expect(filmOfBand(0.7, 0)).toEqual({ r0: 0, t: Math.exp(-0.7) });
    expect(overGround(0.7, 0, 0.9)).toBeCloseTo(0.9 * Math.exp(-1.4), 12);
    const back = kAndSOfFilm(0, Math.exp(-0.7));
    expect(back.k).toBeCloseTo(0.7, 12);
    expect(back.s).toBe(0);
  });

  test('almost clear films: both ways of working them out agree where each changes to its series', () => {
    for (const [K, S] of [
      [4e-10, 10],
      [1e-9, 5],
      [2e-8, 10],
      [4e-8, 9],
      [3e-8, 2],
      [1e-12, 1],
    ]) {
      for (const g of [0.05, 0.5, 0.95]) {
        const { r0, t } = filmOfBand(K, S);
        expect(Math.abs(overGround(K, S, g) - (r0 + (t * t * g) / (1 - r0 * g)))).toBeLessThan(3e-13);
      }
    }
  });

  test('K and S come back out of a film, thin, thick, milky and clear', () => {
    for (const [K, S] of [
      [0.3, 0.2],
      [2, 0.05],
      [1e-4, 1.5],
      [0.01, 1e-3],
      [1.5, 2],
      [1e-9, 0.5],
    ]) {
      const { r0, t } = filmOfBand(K, S);
      const { k, s } = kAndSOfFilm(r0, t);
      expect(k / K).toBeCloseTo(1, 5);
      expect(s / S).toBeCloseTo(1, 9);
    }
    // More than all the light, as noise can say it, is a film that absorbs nothing.
    expect(kAndSOfFilm(0.7, 0.4).k).toBe(0);
  });
});

describe('an ink let down and printed', () => {
  const sky = { k: flat(0.8), s: flat(0.1) };
  test('half the strength on a deposit twice as thick is the same film; a bent ink works at share^gamma', () => {
    expect(filmOf(sky, 0.5, 2)).toEqual(filmOf(sky));
    expect(filmOf({ ...sky, gamma: 0.5 }, 0.25, 1)).toEqual(filmOf(sky, 0.5));
    const { r0, t } = filmOfBand(0.8, 0.1);
    expect(filmOf(sky).r0[0]).toBe(r0);
    expect(filmOf(sky).t2[35]).toBe(t * t);
    expect([effectiveShare({ ...sky, gamma: 2 }, 0.3), effectiveShare({ ...sky, gamma: 1 }, 0.3), effectiveShare(sky, 0.3)]).toEqual([
      expect.closeTo(0.09, 12),
      0.3,
      0.3,
    ]);
    expect(effectiveShare({ ...sky, gamma: 0.5 }, 0)).toBe(0);
    expect(effectiveShare({ ...sky, gamma: -1 }, 0)).toBe(0);
  });

  test('a stack is read through the surface, first film lowest', () => {
    const [milk, black] = [filmOf({ k: flat(0), s: flat(3) }), filmOf({ k: flat(20), s: flat(0) })];
    expect(stackReflectance(flat(0.9), [black, milk], bare)[3]).toBeCloseTo(0.75, 9);
    expect(stackReflectance(flat(0.9), [milk, black], bare)[3]).toBeLessThan(1e-9);
    expect(stackReflectance(flat(0.9), [], skin)[3]).toBeCloseTo(0.9, 12);
  });

  test('curves of an ink: from full strength down to a sixteenth unless asked otherwise, each with its colour', () => {
    const curves = inkCurves(sky, flat(0.8), bare);
    expect(curves.strengths.map((s) => s.share)).toEqual([1, 0.5, 0.25, 0.125, 0.0625]);
    expect(curves.wavelengthsNm).toBe(wavelengthsNm);
    expect([curves.k[0], curves.s[35]]).toEqual([0.8, 0.1]);
    expect(curves.strengths[1].reflectance[9]).toBeCloseTo(published(0.4, 0.05, 0.8), 10);
    const [none] = inkCurves(sky, flat(1), bare, [0]).strengths;
    // A perfect white is L* 100 and #ffffff.
    expect(none).toMatchObject({
      srgb: '#ffffff',
      inGamut: true,
      lab: [expect.closeTo(100, 2), expect.closeTo(0, 1), expect.closeTo(0, 1)],
    });
  });
});

describe('all overlaps of a job', () => {
  const films = [0.2, 0.6, 1.1].map((k, i) => filmOf({ k: flat(k), s: flat(0.1 * i) }));
  test('bit i of the number says that the i-th run is printed, whatever lies above it', () => {
    const all = overlapSpectra(flat(0.85), films, skin);
    expect(all).toHaveLength(8 * BANDS);
    for (let code = 0; code < 8; code++) {
      const stack = stackReflectance(
        flat(0.85),
        films.filter((_, i) => code & (1 << i)),
        skin,
      );
      for (const i of [0, 20, 35]) expect(all[code * BANDS + i]).toBeCloseTo(stack[i], 12);
    }
  });

  test('eight runs are worked out, nine refused', () => {
    const eight = Array.from({ length: 8 }, () => films[0]);
    expect(overlapSpectra(flat(0.85), eight, skin)).toHaveLength(256 * BANDS);
    expect(refusedBy(() => overlapSpectra(flat(0.85), [...eight, films[1]], skin))[0].code).toBe('too-many-layers');
  });

  test('white is L* 100 and 255, 255, 255; a green of one wavelength is more than a screen can show', () => {
    const spectra = new Float64Array(3 * BANDS);
    spectra.fill(1, 0, BANDS);
    spectra[BANDS + wavelengthsNm.indexOf(520)] = 1;
    const seen = overlapColours(spectra);
    expect([...seen.lab.slice(0, 3)]).toEqual([expect.closeTo(100, 2), expect.closeTo(0, 1), expect.closeTo(0, 1)]);
    expect([...seen.rgb.slice(0, 3), ...seen.rgb.slice(6)]).toEqual([255, 255, 255, 0, 0, 0]);
    expect([...seen.inGamut]).toEqual([1, 0, 1]);
    expect(seen.lab[4]).toBeLessThan(-50);
  });
});
