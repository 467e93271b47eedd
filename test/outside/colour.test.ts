import { readFileSync } from 'node:fs';
import Color from 'colorjs.io';
import { differenceCiede2000 } from 'culori';
import { describe, expect, test } from 'vitest';
import {
  deltaE00,
  labFromSpectrum,
  labFromXyz,
  smoothestSpectrum,
  srgbFromXyz,
  wavelengthsNm,
  whitePoints,
  xyzFromLab,
  xyzFromSpectrum,
  xyzFromSrgb,
  type Illuminant,
  type Lab,
  type Xyz,
} from '../../src/core/colour/index.ts';
import { filmOf, inkOverOneGround, stackReflectance, type Ink } from '../../src/core/ink/index.ts';
import { seeded } from '../../src/core/random.ts';

const read = <T>(name: string): T => JSON.parse(readFileSync(new URL(`data/${name}.json`, import.meta.url), 'utf8')) as T;

describe('colour difference', () => {
  // Sharma, Wu, Dalal 2005, Color Research and Application 30(1), table 1.
  const { pairs } = read<{ pairs: { lab1: Lab; lab2: Lab; dE00: number }[] }>('ciede2000-pairs');
  test('CIEDE2000 gives all 34 published pairs to four digits', () => {
    expect(pairs).toHaveLength(34);
    pairs.forEach(({ lab1, lab2, dE00 }) => {
      expect(deltaE00(lab1, lab2)).toBeCloseTo(dE00, 4);
      expect(deltaE00(lab2, lab1)).toBeCloseTo(dE00, 4);
    });
  });
  test('and agrees with a colour library on 5000 pairs', () => {
    const random = seeded(11);
    const rival = differenceCiede2000();
    const pick = (): Lab => [random.next() * 100, random.next() * 200 - 100, random.next() * 200 - 100];
    for (let i = 0; i < 5000; i++) {
      const a = pick();
      const b: Lab = i % 2 ? pick() : [a[0] + random.normal(), a[1] + random.normal(), a[2] + random.normal()];
      const other = rival({ mode: 'lab65', l: a[0], a: a[1], b: a[2] }, { mode: 'lab65', l: b[0], a: b[1], b: b[2] });
      expect(deltaE00(a, b)).toBeCloseTo(other, 8);
    }
  });
});

describe('light and white', () => {
  // ISO/CIE 11664-2 and CIE 15 table T.3: white points of the illuminants for the 2° observer. D50 as ISO 13655 has it.
  test.each([
    ['D50', 0.9642, 0.8252],
    ['D65', 0.9505, 1.0888],
    ['A', 1.0985, 0.3558],
  ] as const)('the perfect white under %s', (name, x, z) => {
    const white = xyzFromSpectrum(new Float64Array(36).fill(1), name);
    expect(white[0]).toBeCloseTo(x, 3);
    expect(white[1]).toBeCloseTo(1, 6);
    expect(white[2]).toBeCloseTo(z, 3);
  });
  test('10 nm weights give what the 5 nm tables give, for smooth reflectances', () => {
    // The 5 nm tables of the standard; a smooth reflectance read between its bands.
    const cie = read<{ xyzBar: number[][]; illuminants: Record<Illuminant, number[]> }>('cie');
    const shape = (nm: number): number => 0.5 + 0.3 * Math.sin((nm - 380) / 70) + 0.15 * Math.cos((nm - 400) / 35);
    const coarse = Float64Array.from(wavelengthsNm, shape);
    for (const name of ['D50', 'D65', 'A'] as const) {
      const light = cie.illuminants[name];
      const whole = light.reduce((sum, v, i) => sum + v * cie.xyzBar[1][i], 0);
      const fine = cie.xyzBar.map((bar) => bar.reduce((sum, v, i) => sum + v * light[i] * shape(380 + 5 * i), 0) / whole) as unknown as Xyz;
      expect(deltaE00(labFromXyz(fine, name), labFromSpectrum(coarse, name))).toBeLessThan(0.12);
    }
  });
});

describe('Lab, XYZ and the screen', () => {
  const random = seeded(5);
  const colours: Lab[] = Array.from({ length: 500 }, () => [random.next() * 98 + 1, random.next() * 160 - 80, random.next() * 160 - 80]);
  test('XYZ to Lab and back agrees with an independent library', () => {
    for (const lab of colours) {
      const xyz = xyzFromLab(lab);
      expect(labFromXyz(xyz).every((v, i) => Math.abs(v - lab[i]) < 1e-9)).toBe(true);
      const other = new Color('lab', [...lab]).to('xyz-d50').coords.map(Number);
      // The library's D50 is written with chromaticities to four places, ours is the printing standard's: scale both to their white.
      const otherWhite = new Color('lab', [100, 0, 0]).to('xyz-d50').coords.map(Number);
      xyz.forEach((v, i) => expect(v / whitePoints.D50[i]).toBeCloseTo(other[i] / otherWhite[i], 9));
    }
  });
  test('what a screen can show agrees with an independent library within one step of 8 bits', () => {
    let shown = 0;
    for (const lab of colours) {
      const xyz = xyzFromLab(lab);
      const ours = srgbFromXyz(xyz);
      const other = new Color('xyz-d50', [...xyz]).to('srgb');
      const fits = other.coords.every((v) => Number(v) > 0.003 && Number(v) < 0.997);
      if (!fits) continue;
      shown++;
      expect(ours.inGamut).toBe(true);
      other.coords.forEach((v, i) => expect(Math.abs(ours.rgb[i] - Number(v) * 255)).toBeLessThan(1));
      const back = xyzFromSrgb([ours.rgb[0] / 255, ours.rgb[1] / 255, ours.rgb[2] / 255]);
      expect(deltaE00(labFromXyz(back), lab)).toBeLessThan(1);
    }
    expect(shown).toBeGreaterThan(100);
  });
  test('a cyan outside the screen is flagged and keeps its hue', () => {
    const xyz = xyzFromLab([55, -37, -50]);
    const shown = srgbFromXyz(xyz);
    expect(shown.inGamut).toBe(false);
    const wanted = new Color('xyz-d50', [...xyz]).to('oklch').coords.map(Number);
    const got = new Color('srgb', shown.rgb.map((v) => v / 255) as [number, number, number]).to('oklch').coords.map(Number);
    expect(Math.abs(wanted[2] - got[2])).toBeLessThan(6);
    expect(Math.abs(wanted[0] - got[0])).toBeLessThan(0.04);
  });
});

describe('golden trace of the overprint model', () => {
  interface Trace {
    surface: { ks: number; k1: number; k2: number };
    paper: number[];
    inks: Record<string, number[]>;
    expected: Record<string, { R: number[]; Lab: Lab; measuredLab: Lab }>;
    smoothSpectraFromXyz: Record<string, Record<string, { XYZ: [number, number, number]; R: number[] }>>;
  }
  // Worked out beforehand by another program from the model as written in Kubelka 1948 and Saunderson 1942.
  const trace = read<Trace>('overprint-trace');
  test('overlaps of two inks', () => {
    const paper = Float64Array.from(trace.paper);
    const inks = new Map<string, Ink>(
      Object.entries(trace.inks).map(([name, r]) => [
        name,
        inkOverOneGround({ ink: Float64Array.from(r), ground: paper, surface: trace.surface }).ink,
      ]),
    );
    for (const [name, { R, Lab }] of Object.entries(trace.expected)) {
      const stack = stackReflectance(
        paper,
        [...name].map((letter) => filmOf(inks.get(letter)!)),
        trace.surface,
      );
      stack.forEach((v, i) => expect(v).toBeCloseTo(R[i], 9));
      labFromSpectrum(stack).forEach((v, i) => expect(v).toBeCloseTo(Lab[i], 5));
    }
  });
  test('smoothest spectra of colours', () => {
    let count = 0;
    for (const set of Object.values(trace.smoothSpectraFromXyz)) {
      for (const { XYZ, R } of Object.values(set)) {
        const r = smoothestSpectrum([XYZ[0] / 100, XYZ[1] / 100, XYZ[2] / 100]);
        r.forEach((v, i) => expect(v).toBeCloseTo(R[i], 6));
        count++;
      }
    }
    expect(count).toBeGreaterThan(3);
  });
});
