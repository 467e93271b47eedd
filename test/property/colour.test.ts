import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  BANDS,
  deltaE00,
  labFromSpectrum,
  labFromXyz,
  smoothestSpectrum,
  smoothestSpectrumNear,
  srgbFromXyz,
  xyzFromLab,
  xyzFromSpectrum,
  xyzFromSrgb,
  type Lab,
  type Xyz,
} from '../../src/core/colour/index.ts';

/** Colours that something can have: of smooth reflectances between nearly black and nearly white. */
const surfaceColour = fc.array(fc.double({ min: 0.01, max: 0.95, noNaN: true }), { minLength: 8, maxLength: 8 }).map((knots) =>
  xyzFromSpectrum(
    Float64Array.from({ length: BANDS }, (_, i) => {
      const x = (i / (BANDS - 1)) * 6.999,
        at = Math.floor(x);
      return knots[at] + (knots[at + 1] - knots[at]) * (x - at);
    }),
  ),
);
const anyLab = fc.tuple(
  fc.double({ min: 1, max: 99, noNaN: true }),
  fc.double({ min: -120, max: 120, noNaN: true }),
  fc.double({ min: -120, max: 120, noNaN: true }),
) as fc.Arbitrary<Lab>;

describe('spectra from colours', () => {
  test('whatever a surface can look like has a smoothest spectrum of that colour, inside 0..1', () => {
    fc.assert(
      fc.property(surfaceColour, (xyz) => {
        const r = smoothestSpectrum(xyz);
        expect(r.every((v) => v > 0 && v < 1)).toBe(true);
        xyzFromSpectrum(r).forEach((v, k) => expect(v).toBeCloseTo(xyz[k], 9));
      }),
      { numRuns: 300 },
    );
  });
  test('a grey has a flat spectrum', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 0.98, noNaN: true }), (grey) => {
        for (const v of smoothestSpectrum([0.96422 * grey, grey, 0.82521 * grey])) expect(v).toBeCloseTo(grey, 4);
      }),
    );
  });
  test('any three numbers at all give a spectrum near them, or the nearest that can be', () => {
    fc.assert(
      fc.property(anyLab, (lab) => {
        const { spectrum, moved } = smoothestSpectrumNear(xyzFromLab(lab));
        expect(spectrum.every((v) => v >= 0 && v <= 1)).toBe(true);
        if (moved === 0) expect(deltaE00(labFromSpectrum(spectrum), lab)).toBeLessThan(1e-5);
      }),
      { numRuns: 60 },
    );
  });
});

describe('colour difference and the screen', () => {
  test('no difference from itself, the same both ways, and some from any other', () => {
    fc.assert(
      fc.property(anyLab, anyLab, (a, b) => {
        expect(deltaE00(a, a)).toBe(0);
        if (Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) > 1) expect(deltaE00(a, b)).toBeGreaterThan(0.1);
        expect(deltaE00(a, b)).toBeCloseTo(deltaE00(b, a), 9);
      }),
    );
  });
  test('every colour of the screen is shown as itself', () => {
    fc.assert(
      fc.property(fc.nat(255), fc.nat(255), fc.nat(255), (r, g, b) => {
        const shown = srgbFromXyz(xyzFromSrgb([r / 255, g / 255, b / 255]));
        expect(shown.rgb).toEqual([r, g, b]);
        expect(shown.inGamut).toBe(true);
      }),
    );
  });
  test('every colour gets some bytes, and lightness survives the screen', () => {
    fc.assert(
      fc.property(anyLab, (lab) => {
        const shown = srgbFromXyz(xyzFromLab(lab));
        expect(shown.hex).toMatch(/^#[0-9a-f]{6}$/);
        if (shown.inGamut) {
          const back = labFromXyz(xyzFromSrgb(shown.rgb.map((v) => v / 255) as unknown as Xyz));
          expect(deltaE00(back, lab)).toBeLessThan(1.5);
        }
      }),
    );
  });
});
