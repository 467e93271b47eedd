import { describe, expect, test } from 'vitest';
import { BANDS, deltaE00, labFromSpectrum } from '../../colour/index.ts';
import { inEnglish, refusedBy } from '../../../../test/said.ts';
import { ProblemError } from '../../problem.ts';
import {
  defaultSurface,
  filmOf,
  inkCurves,
  inkFromLadder,
  inkOverOneGround,
  inkOverTwoGrounds,
  layerReach,
  mixInks,
  overlapSpectra,
  spectrumFromReading,
  stackReflectance,
  type Reading,
} from '../index.ts';

const codesOf = (reading: Reading): string[] => {
  try {
    spectrumFromReading(reading, 'inks[2].over');
  } catch (error) {
    if (error instanceof ProblemError) {
      for (const p of error.problems) expect(p.path).toBe('inks[2].over');
      return error.problems.map((p) => p.code);
    }
    throw error;
  }
  return [];
};
const flat = (v: number): Float64Array => new Float64Array(BANDS).fill(v);
const surface = { ks: 0.005, k1: 0.04, k2: 0.6 };

describe('readings', () => {
  test.each<[string, Reading, string[]]>([
    ['percent instead of factors', { kind: 'spectrum', values: new Array(36).fill(45) }, ['reading-out-of-range']],
    ['31 bands', { kind: 'spectrum', values: new Array(31).fill(0.4) }, ['spectrum-bands']],
    ['a missing band', { kind: 'spectrum', values: [...new Array(35).fill(0.4), NaN] }, ['reading-not-a-number']],
    ['below nothing', { kind: 'spectrum', values: new Array(36).fill(-0.1) }, ['reading-out-of-range']],
    [
      'three faults at once',
      { kind: 'lab', lab: [150, 200, -300] },
      ['reading-out-of-range', 'reading-out-of-range', 'reading-out-of-range'],
    ],
    ['XYZ of no light', { kind: 'xyz', xyz: [0, 0, 0] }, ['reading-out-of-range', 'reading-out-of-range', 'reading-out-of-range']],
    ['a colour that no surface has', { kind: 'lab', lab: [90, 100, -100] }, ['not-a-surface-colour']],
    ['not a number', { kind: 'lab', lab: [NaN, 0, 0] }, ['reading-not-a-number']],
  ])('%s is refused with its place', (_, reading, codes) => expect(codesOf(reading)).toEqual(codes));
  test('each fault names its number, in the reader’s language', () => {
    const problems = refusedBy(() => spectrumFromReading({ kind: 'lab', lab: [150, 0, -300.5] }, 'papers[0].reading'));
    expect(problems.map((p) => inEnglish(p.message))).toEqual([
      'L is 150; it has to lie between 0 (no light at all, which no surface has) and 105.',
      'b is -300.5; it has to lie between −150 and 150.',
    ]);
    expect(inEnglish(problems[1].message, { language: 'de', units: 'mm' })).toBe('b ist -300,5, muss aber zwischen −150 und 150 liegen.');
    const glowing = refusedBy(() => spectrumFromReading({ kind: 'spectrum', values: new Array(36).fill(45) }, 'papers[0].reading'));
    expect(inEnglish(glowing[0].advice)).toBe('These look like percentages: divide by 100.');
  });
  test('Lab and XYZ become a spectrum of that very colour; a photograph the nearest one', () => {
    expect(deltaE00(labFromSpectrum(spectrumFromReading({ kind: 'lab', lab: [46, 70, -2] }, 'x')), [46, 70, -2])).toBeLessThan(1e-6);
    expect(deltaE00(labFromSpectrum(spectrumFromReading({ kind: 'photo', lab: [46, 70, -2], sigma: 6 }, 'x')), [46, 70, -2])).toBeLessThan(
      1e-6,
    );
    // No surface is so light and so colourful: lightness stays, chroma is given up, as little as needed.
    const near = labFromSpectrum(spectrumFromReading({ kind: 'photo', lab: [90, 60, -60], sigma: 6 }, 'x'));
    expect(near[0]).toBeCloseTo(90, 0);
    expect(Math.abs(Math.atan2(near[2], near[1]) - Math.atan2(-60, 60))).toBeLessThan(0.35);
    expect(Math.hypot(near[1], near[2])).toBeGreaterThan(15);
  });
  test.each([
    [97, 2, -10],
    [96, 3, -12],
    [100.5, 0, -2],
  ] as const)('a bright paper that glows reads as it is: Lab %d %d %d', (l, a, b) => {
    const r = spectrumFromReading({ kind: 'lab', lab: [l, a, b] }, 'papers[0].reading');
    expect(deltaE00(labFromSpectrum(r), [l, a, b])).toBeLessThan(1e-6);
    expect(Math.max(...r)).toBeLessThanOrEqual(1.2);
  });
  test('gloss stays below every dark reading', () => {
    const skin = defaultSurface([flat(0.5), flat(0.02)], true);
    expect(skin.ks).toBeCloseTo(0.01, 9);
    for (let dark = 0.001; dark < 0.9; dark += 0.007) {
      for (const fromSpectra of [true, false]) {
        const { ks } = defaultSurface([flat(dark)], fromSpectra);
        expect(ks).toBeGreaterThanOrEqual(0);
        // Matt papers give back more than their surface: fibres that no film covers.
        expect(ks).toBeLessThan(Math.min(dark, 0.0901));
        expect(Math.abs(defaultSurface([flat(dark + 0.007)], fromSpectra).ks - ks)).toBeLessThan(0.0071);
      }
    }
    expect(defaultSurface([flat(0.5)], false).ks).toBe(0.02);
    expect(defaultSurface([], false).ks).toBe(0.02);
  });
});

describe('what can’t be', () => {
  const white = flat(0.85),
    black = flat(0.04);
  test('darker over white than over black', () => {
    const found = inkOverTwoGrounds({ overWhite: flat(0.1), white, overBlack: flat(0.3), black, surface });
    expect(found.problems.map((p) => p.code)).toEqual(['darker-over-white']);
    expect(found.trust.level).toBe('weak');
  });
  test('white and black mixed up', () => {
    expect(
      inkOverTwoGrounds({ overWhite: flat(0.3), white: black, overBlack: flat(0.1), black: white, surface }).problems.map((p) => p.code),
    ).toContain('grounds-too-alike');
  });
  test('an ink lighter than its ground', () => {
    expect(inkOverOneGround({ ink: flat(0.7), ground: flat(0.5), surface }).problems.map((p) => p.code)).toEqual([
      'ink-lighter-than-ground',
    ]);
  });
  test('a ladder out of order, and one without ink', () => {
    const pot = { k: flat(1), s: flat(0) };
    const at = (share: number): Float64Array => stackReflectance(white, [filmOf(pot, share)], surface);
    expect(
      inkFromLadder({
        ground: white,
        surface,
        steps: [
          { share: 1, over: at(0.25) },
          { share: 0.5, over: at(0.5) },
          { share: 0.25, over: at(1) },
        ],
      }).problems.map((p) => p.code),
    ).toContain('ladder-out-of-order');
    expect(inkFromLadder({ ground: white, surface, steps: [1, 0.5, 0.25].map((share) => ({ share, over: at(share) })) }).trust.level).toBe(
      'good',
    );
    expect(() => inkFromLadder({ ground: white, surface, steps: [] })).toThrow(ProblemError);
  });
  test('an ink that hides its ground says how far to trust it', () => {
    const found = inkOverTwoGrounds({ overWhite: flat(0.31), white, overBlack: flat(0.309), black, surface });
    expect(found.trust.contrastRatio).toBeGreaterThan(0.98);
    expect(found.trust.level).toBe('fair');
  });
  test('more than the pot holds, more layers than can be told apart', () => {
    const pot = { k: flat(1), s: flat(0) };
    expect(() =>
      mixInks([
        { ink: pot, share: 0.7 },
        { ink: pot, share: 0.4 },
      ]),
    ).toThrow(ProblemError);
    expect(() => mixInks([{ ink: pot, share: -0.1 }])).toThrow(ProblemError);
    expect(() =>
      overlapSpectra(
        white,
        Array.from({ length: 9 }, () => filmOf(pot)),
        surface,
      ),
    ).toThrow(ProblemError);
  });
});

describe('for plots and the open layer', () => {
  const pot = { k: Float64Array.from({ length: BANDS }, (_, i) => 1 / (1 + i)), s: flat(0.02) };
  test('curves get lighter as the ink thins', () => {
    const curves = inkCurves(pot, flat(0.85), surface);
    const lightness = curves.strengths.map((s) => s.lab[0]);
    expect(lightness).toEqual([...lightness].sort((a, b) => a - b));
  });
  test('the open layer shows all overlaps for each ink and strength', () => {
    const films = [filmOf(pot), null, filmOf(pot, 0.5)];
    const reach = layerReach({
      paper: flat(0.85),
      surface,
      films,
      inks: [
        { id: 'a', ink: pot },
        { id: 'b', ink: mixInks([{ ink: pot, share: 0.3 }]) },
      ],
      strengths: [1, 0.5],
    });
    expect(reach.map((r) => [r.ink, r.strength, r.lab.length])).toEqual([
      ['a', 1, 24],
      ['a', 0.5, 24],
      ['b', 1, 24],
      ['b', 0.5, 24],
    ]);
    const direct = labFromSpectrum(stackReflectance(flat(0.85), [filmOf(pot), filmOf(pot, 0.5)], surface));
    expect(deltaE00([reach[1].lab[9], reach[1].lab[10], reach[1].lab[11]], direct)).toBeLessThan(1e-9);
  });
});
