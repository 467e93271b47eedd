import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BANDS } from '../../src/core/colour/index.ts';
import {
  addFilm,
  filmOf,
  filmOfBand,
  inkFromLadder,
  inkOverOneGround,
  inkOverTwoGrounds,
  internal,
  kAndSOfFilm,
  measured,
  mixInks,
  overlapSpectra,
  stackReflectance,
  type Ink,
  type Surface,
} from '../../src/core/ink/index.ts';

const band = (min: number, max: number): fc.Arbitrary<Float64Array> =>
  fc.array(fc.double({ min, max, noNaN: true }), { minLength: BANDS, maxLength: BANDS }).map((v) => Float64Array.from(v));
const ink: fc.Arbitrary<Ink> = fc.record({ k: band(0, 3), s: band(0, 1) });
const surface: fc.Arbitrary<Surface> = fc.record({
  ks: fc.double({ min: 0, max: 0.03, noNaN: true }),
  k1: fc.constant(0.04),
  k2: fc.double({ min: 0, max: 0.6, noNaN: true }),
});
const closest = (a: Float64Array, b: Float64Array): number => a.reduce((worst, v, i) => Math.max(worst, Math.abs(v - b[i])), 0);

describe('films of ink', () => {
  // Kubelka 1948, J. Opt. Soc. Am. 38, 448: r = (1 − g(a − b coth bSX)) / (a − g + b coth bSX), written out as published.
  test('a film over a ground is what the published closed form says', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 4, noNaN: true }),
        fc.double({ min: 0.001, max: 4, noNaN: true }),
        fc.double({ min: 0.01, max: 0.95, noNaN: true }),
        (K, S, g) => {
          const a = 1 + K / S,
            b = Math.sqrt(a * a - 1);
          const coth = 1 / Math.tanh(b * S);
          const published = (1 - g * (a - b * coth)) / (a - g + b * coth);
          const { r0, t } = filmOfBand(K, S);
          expect(r0 + (t * t * g) / (1 - r0 * g)).toBeCloseTo(published, 10);
        },
      ),
    );
  });
  test('an ink that does not scatter dims its ground by exp(−2 K), and ever less scattering comes as near to that as wanted', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5, noNaN: true }), fc.double({ min: 0.01, max: 1, noNaN: true }), (K, g) => {
        const none = filmOfBand(K, 0),
          hardly = filmOfBand(K, 1e-9);
        expect(none.t ** 2 * g).toBeCloseTo(g * Math.exp(-2 * K), 12);
        expect(hardly.r0 + (hardly.t ** 2 * g) / (1 - hardly.r0 * g)).toBeCloseTo(g * Math.exp(-2 * K), 8);
      }),
    );
  });
  // Kubelka–Munk 1931: R∞ = a − b = 1 + K/S − √((K/S)² + 2 K/S).
  test('a very thick film hides its ground and shows R∞ = a − b', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 5, noNaN: true }), fc.double({ min: 0.05, max: 5, noNaN: true }), (K, S) => {
        const { r0, t } = filmOfBand(K * 2000, S * 2000);
        const a = 1 + K / S;
        expect(r0).toBeCloseTo(a - Math.sqrt(a * a - 1), 9);
        expect(t).toBeLessThan(1e-9);
      }),
    );
  });
  test('two coats of an ink equal one coat twice as thick', () => {
    fc.assert(
      fc.property(ink, band(0.02, 0.9), (pot, ground) => {
        const twice = addFilm(addFilm(ground, filmOf(pot)), filmOf(pot));
        expect(closest(twice, addFilm(ground, filmOf(pot, 1, 2)))).toBeLessThan(1e-10);
      }),
    );
  });
  test('transparent inks give the same overlap in either order', () => {
    fc.assert(
      fc.property(ink, ink, band(0.02, 0.9), surface, (a, b, paper, skin) => {
        const [clearA, clearB] = [a, b].map((v) => filmOf({ k: v.k, s: new Float64Array(BANDS) }));
        expect(closest(stackReflectance(paper, [clearA, clearB], skin), stackReflectance(paper, [clearB, clearA], skin))).toBeLessThan(
          1e-12,
        );
      }),
    );
  });
  test('no stack of films reflects less than nothing or more than paper and scattering allow', () => {
    fc.assert(
      fc.property(fc.array(ink, { maxLength: 4 }), band(0.02, 0.9), surface, (inks, paper, skin) => {
        for (const v of overlapSpectra(
          paper,
          inks.map((i) => filmOf(i)),
          skin,
        ))
          expect(v >= 0 && v <= 1).toBe(true);
      }),
      { numRuns: 40 },
    );
  });
  test('the table of all overlaps holds each stack under its own number', () => {
    fc.assert(
      fc.property(fc.array(ink, { minLength: 1, maxLength: 4 }), band(0.05, 0.9), surface, fc.nat(), (inks, paper, skin, pick) => {
        const films = inks.map((i) => filmOf(i));
        const all = overlapSpectra(paper, films, skin);
        const code = pick % (1 << films.length);
        const stack = stackReflectance(
          paper,
          films.filter((_, i) => code & (1 << i)),
          skin,
        );
        expect(closest(all.subarray(code * BANDS, (code + 1) * BANDS), stack)).toBeLessThan(1e-12);
      }),
      { numRuns: 40 },
    );
  });
});

describe('from drawdown back to ink', () => {
  test('surface: inside and measured are each other’s inverse', () => {
    fc.assert(
      fc.property(band(0.04, 1), surface, (R, skin) => {
        expect(closest(measured(internal(R, skin), skin), R)).toBeLessThan(1e-12);
      }),
    );
  });
  test('absorption and scattering come back from a film to 1e-9', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 3, noNaN: true }), fc.double({ min: 0, max: 2, noNaN: true }), (K, S) => {
        const { r0, t } = filmOfBand(K, S);
        const back = kAndSOfFilm(r0, t);
        expect(Math.abs(back.k - K)).toBeLessThan(1e-9 * (1 + 1 / t));
        expect(Math.abs(back.s - S)).toBeLessThan(1e-9 * (1 + 1 / t));
      }),
      { numRuns: 500 },
    );
  });
  test('a drawdown over white and black gives back the film that made it to 1e-9', () => {
    const white = new Float64Array(BANDS).fill(0.85),
      black = new Float64Array(BANDS).fill(0.045);
    fc.assert(
      fc.property(fc.record({ k: band(0, 1.5), s: band(0, 0.6) }), surface, (pot, skin) => {
        const found = inkOverTwoGrounds({
          overWhite: stackReflectance(white, [filmOf(pot)], skin),
          white,
          overBlack: stackReflectance(black, [filmOf(pot)], skin),
          black,
          surface: skin,
        });
        const back = filmOf(found.ink),
          truth = filmOf(pot);
        expect(closest(back.r0, truth.r0)).toBeLessThan(1e-9);
        expect(closest(back.t2, truth.t2)).toBeLessThan(1e-9);
        expect(closest(found.ink.k, pot.k)).toBeLessThan(1e-6);
        expect(closest(found.ink.s, pot.s)).toBeLessThan(1e-6);
        expect(found.problems).toHaveLength(0);
      }),
    );
  });
  test('a clear ink comes back from one drawdown on paper', () => {
    fc.assert(
      fc.property(band(0, 1.5), band(0.4, 0.9), surface, (k, paper, skin) => {
        const pot = { k, s: new Float64Array(BANDS) };
        const found = inkOverOneGround({ ink: stackReflectance(paper, [filmOf(pot)], skin), ground: paper, surface: skin });
        expect(closest(found.ink.k, k)).toBeLessThan(1e-9);
      }),
    );
  });
  test('a tint ladder of a straight ink is found straight, and of a bent one is found bent', () => {
    fc.assert(
      fc.property(band(0.05, 1.5), fc.double({ min: 0.85, max: 1.2, noNaN: true }), (k, gamma) => {
        const skin = { ks: 0.01, k1: 0.04, k2: 0.6 };
        const paper = new Float64Array(BANDS).fill(0.85);
        const pot: Ink = { k, s: new Float64Array(BANDS), gamma };
        const steps = [1, 0.5, 0.25, 0.125].map((share) => ({ share, over: stackReflectance(paper, [filmOf(pot, share)], skin) }));
        const found = inkFromLadder({ ground: paper, steps, surface: skin });
        expect(Math.abs(found.trust.gamma - gamma)).toBeLessThan(0.02);
        expect(
          closest(stackReflectance(paper, [filmOf(found.ink, 0.3)], skin), stackReflectance(paper, [filmOf(pot, 0.3)], skin)),
        ).toBeLessThan(0.01);
      }),
      { numRuns: 60 },
    );
  });
  test('a mix of an ink with itself is that ink, and base only thins it', () => {
    fc.assert(
      fc.property(ink, fc.double({ min: 0, max: 1, noNaN: true }), (pot, share) => {
        const same = mixInks([
          { ink: pot, share: share },
          { ink: pot, share: 1 - share },
        ]);
        expect(closest(same.k, pot.k)).toBeLessThan(1e-12);
        expect(closest(filmOf(mixInks([{ ink: pot, share }])).t2, filmOf(pot, share).t2)).toBeLessThan(1e-12);
      }),
    );
  });
});
