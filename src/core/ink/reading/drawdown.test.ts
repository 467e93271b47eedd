import { describe, expect, test } from 'vitest';
import { BANDS } from '../../colour/index.ts';
import { refusedBy } from '../../../../test/said.ts';
import { filmOf, stackReflectance } from '../film/film.ts';
import { clearInk, inkOverOneGround, inkOverTwoGrounds } from './from-drawdown.ts';
import { inkFromLadder } from './ladder.ts';
import { mixInks, sharesOfParts } from '../film/mix.ts';
import { modelBand } from '../model-band.ts';
import { measured } from '../film/surface.ts';

const flat = (value: number): Float64Array => new Float64Array(BANDS).fill(value);
const ramp = (from: number, to: number): Float64Array =>
  Float64Array.from({ length: BANDS }, (_, i) => from + ((to - from) * i) / (BANDS - 1));
const skin = { ks: 0.02, k1: 0.04, k2: 0.6 };
const paper = measured(ramp(0.6, 0.8), skin);
const codes = (problems: readonly { readonly code: string }[]): string[] => problems.map((p) => p.code);

describe('a drawdown over one ground', () => {
  // docs/optics.md 4: KX = max(0, −½ ln(r ink / r ground)), S = 0.
  test('gives the clear ink back that was drawn down', () => {
    const drawn = { k: ramp(0.1, 1.4), s: flat(0) };
    const found = inkOverOneGround({ ink: stackReflectance(paper, [filmOf(drawn)], skin), ground: paper, surface: skin });
    for (let i = 0; i < BANDS; i++) expect(found.ink.k[i]).toBeCloseTo(drawn.k[i], 10);
    expect([...found.ink.s]).toEqual([...flat(0)]);
    expect(found).toMatchObject({ problems: [], trust: { how: 'one-ground', level: 'fair', words: { key: 'ink.trustOneGround' } } });
  });

  test('an ink lighter than its ground covers: not clear, and said from 3 % inside on', () => {
    const over = (r: number) => inkOverOneGround({ ink: measured(flat(r), skin), ground: measured(flat(0.5), skin), surface: skin });
    expect(over(0.52)).toMatchObject({ problems: [], trust: { level: 'fair' } });
    expect(over(0.54)).toMatchObject({
      problems: [{ code: 'ink-lighter-than-ground' }],
      trust: { level: 'weak', words: { key: 'ink.trustCovers' } },
    });
    expect([...over(0.54).ink.k]).toEqual([...flat(0)]);
    // One band is enough.
    const peak = flat(0.5);
    peak[20] = 0.6;
    expect(codes(inkOverOneGround({ ink: measured(peak, skin), ground: measured(flat(0.5), skin), surface: skin }).problems)).toEqual([
      'ink-lighter-than-ground',
    ]);
  });

  test('a band as dark as the gloss can’t be told, but in the violet that is no matter', () => {
    const dark = (band: number): string[] => {
      const ink = measured(flat(0.3), skin);
      ink[band] = 0.02;
      return codes(inkOverOneGround({ ink, ground: paper, surface: skin }).problems);
    };
    expect([dark(0), dark(1), dark(2), dark(35)]).toEqual([[], [], ['reading-below-gloss'], ['reading-below-gloss']]);
    // On a ground as dark as that nothing is told, and nothing is endless.
    expect(inkOverOneGround({ ink: flat(0.01), ground: flat(0.01), surface: skin }).ink.k[5]).toBeCloseTo(0, 12);
  });
});

describe('a drawdown over white and black', () => {
  const [white, black] = [measured(flat(0.75), skin), measured(flat(0.01), skin)];
  const card = (ink: { k: Float64Array; s: Float64Array }) =>
    inkOverTwoGrounds({
      overWhite: stackReflectance(white, [filmOf(ink)], skin),
      white,
      overBlack: stackReflectance(black, [filmOf(ink)], skin),
      black,
      surface: skin,
    });

  test('gives absorption and scattering back, and says how much it hides', () => {
    const drawn = { k: ramp(0.1, 0.9), s: ramp(0.5, 0.05) };
    const found = card(drawn);
    for (let i = 0; i < BANDS; i++) {
      expect(found.ink.k[i]).toBeCloseTo(drawn.k[i], 8);
      expect(found.ink.s[i]).toBeCloseTo(drawn.s[i], 8);
    }
    // Contrast ratio: R over black / R over white (docs/trade.md 4), where it hides most.
    const [b, w] = [black, white].map((ground) => stackReflectance(ground, [filmOf(drawn)], skin));
    expect(found.trust.contrastRatio).toBeCloseTo(Math.max(...b.map((v, i) => v / w[i])), 12);
    expect(found).toMatchObject({ problems: [], trust: { how: 'two-grounds', level: 'good', words: { key: 'ink.trustTwoGrounds' } } });
  });

  test('an ink with a contrast ratio of 0.98 hides: what lies under it no longer tells how thick it is', () => {
    expect(card({ k: flat(0.4), s: flat(6) })).toMatchObject({ trust: { level: 'fair', words: { key: 'ink.trustHides' } } });
    const wouldBe = inkOverTwoGrounds({ overWhite: flat(0.5), white, overBlack: flat(0.5 * 0.9799), black, surface: skin });
    expect(wouldBe.trust.level).toBe('good');
    expect(inkOverTwoGrounds({ overWhite: flat(0.5), white, overBlack: flat(0.49), black, surface: skin }).trust.level).toBe('fair');
    expect(inkOverTwoGrounds({ overWhite: flat(0.5), white, overBlack: flat(0.503), black, surface: skin }).trust.contrastRatio).toBe(1);
  });

  test('a clear ink on the black leaves the black: nothing scatters', () => {
    const found = card({ k: flat(0.6), s: flat(0) });
    expect(found.ink.k[12]).toBeCloseTo(0.6, 8);
    expect(found.ink.s[12]).toBeCloseTo(0, 8);
    // Darker over white than 2 % tells nothing of how it hides.
    expect(inkOverTwoGrounds({ overWhite: flat(0.02), white, overBlack: flat(0.02), black, surface: skin }).trust.contrastRatio).toBe(0);
  });

  test('grounds nearly alike are no drawdown card', () => {
    const on = (ground: number) =>
      inkOverTwoGrounds({
        overWhite: flat(0.3),
        white: measured(flat(0.5), skin),
        overBlack: flat(0.28),
        black: measured(flat(ground), skin),
        surface: skin,
      });
    expect(on(0.31)).toMatchObject({
      problems: [{ code: 'grounds-too-alike', severity: 'error' }],
      trust: { level: 'weak', words: { key: 'ink.trustContradicts' } },
    });
    expect(codes(on(0.29).problems)).toEqual([]);
  });

  test('over white darker than over black in three bands: the two were swapped', () => {
    const crossedIn = (bands: number, by = 0.05): string[] => {
      const overBlack = flat(0.2);
      overBlack.fill(0.3 + by, 0, bands);
      return codes(inkOverTwoGrounds({ overWhite: flat(0.3), white, overBlack, black, surface: skin }).problems);
    };
    expect([crossedIn(2), crossedIn(3), crossedIn(36, 0.004)]).toEqual([[], ['darker-over-white'], []]);
  });

  test('whatever two readings say, a film is one that can be: no light is made', () => {
    for (const [w, b] of [
      [0.9, 0.02],
      [0.3, 0.9],
      [0.5, 0.5],
      [0.02, 0.021],
      [0.95, 0.94],
    ]) {
      const { ink } = inkOverTwoGrounds({ overWhite: flat(w), white, overBlack: flat(b), black, surface: skin });
      const film = filmOf(ink);
      for (let i = 0; i < BANDS; i++) {
        expect(film.r0[i]).toBeGreaterThanOrEqual(0);
        expect(film.r0[i] + Math.sqrt(film.t2[i])).toBeLessThanOrEqual(1 + 1e-9);
        expect(Number.isFinite(ink.k[i] + ink.s[i])).toBe(true);
      }
    }
  });

  test('clear base is nothing at all', () => {
    expect(clearInk()).toEqual({ k: flat(0), s: flat(0) });
  });
});

describe('a tint ladder', () => {
  const steps = (gamma: number, shares: readonly number[], k = 1.2) =>
    shares.map((share) => ({ share, over: stackReflectance(paper, [filmOf({ k: flat(k * share ** gamma), s: flat(0) })], skin) }));
  const read = (list: ReturnType<typeof steps>) => inkFromLadder({ ground: paper, steps: list, surface: skin });
  // Ladder by weight 1:0, 1:1, 1:3, 1:7 (docs/trade.md 4).
  const usual = [1, 0.5, 0.25, 0.125];

  test('a straight ink is found straight, in whatever order its steps are read', () => {
    const found = read(steps(1, [0.25, 1, 0.125, 0.5]));
    expect(found.trust.gamma).toBeCloseTo(1, 3);
    for (let i = 0; i < BANDS; i++) expect(found.ink.k[i]).toBeCloseTo(1.2, 2);
    expect(found.trust.curve.map((c) => c.share)).toEqual([0.125, 0.25, 0.5, 1]);
    for (const { share, worksLike } of found.trust.curve) expect(worksLike / share).toBeCloseTo(1, 2);
    expect(found.trust.worstDeparture).toBeLessThan(0.005);
    expect(found).toMatchObject({ problems: [], trust: { how: 'ladder', level: 'good', words: { key: 'ink.trustStraight' } } });
    expect([...found.ink.s]).toEqual([...flat(0)]);
  });

  test('an ink that weakens less than its share is found bent, by how much', () => {
    const found = read(steps(0.85, usual));
    expect(found.trust.gamma).toBeCloseTo(0.85, 2);
    expect(found.ink.gamma).toBe(found.trust.gamma);
    expect(found.ink.k[8]).toBeCloseTo(1.2, 1);
    expect(found.trust.curve[0].worksLike).toBeCloseTo(0.125 ** 0.85, 2);
    expect(found.trust).toMatchObject({ level: 'good', words: { key: 'ink.trustBent' } });
    expect(read(steps(1.2, usual)).trust.gamma).toBeCloseTo(1.2, 1);
    // No one ink bends further than 0.7 or 1.4.
    expect(read(steps(0.4, usual)).trust.gamma).toBeCloseTo(0.7, 3);
    expect(read(steps(2, usual)).trust.gamma).toBeCloseTo(1.4, 3);
  });

  test('one step tells no bend; two are fairly sure; shares of nothing or more than all are left out', () => {
    const one = read(steps(0.8, [0.5]));
    expect(one).toMatchObject({ problems: [], trust: { gamma: 1, level: 'fair', words: { key: 'ink.trustOneStep' } } });
    expect(one.ink.gamma).toBeUndefined();
    expect(one.ink.k[0]).toBeCloseTo((1.2 * 0.5 ** 0.8) / 0.5, 9);
    expect(read(steps(1, [1, 0.5])).trust.level).toBe('fair');
    expect(read(steps(1, [1, 0.5, 0.25])).trust.level).toBe('good');
    const odd = [...steps(1, [0.5, 1]), { share: 0, over: flat(0.5) }, { share: -1, over: flat(0.5) }, { share: 1.5, over: flat(0.01) }];
    expect(read(odd).trust.curve.map((c) => c.share)).toEqual([0.5, 1]);
    expect(refusedBy(() => read([{ share: 0, over: flat(0.5) }]))[0].code).toBe('ladder-empty');
  });

  test('two steps that were swapped are named where they stand, and the ladder is weak', () => {
    const list = steps(1, usual);
    const swapped = [list[0], { share: 0.5, over: list[2].over }, { share: 0.25, over: list[1].over }, list[3]];
    const found = read(swapped);
    expect(found.problems).toMatchObject([{ code: 'ladder-out-of-order', severity: 'warning', path: 'steps[1]' }]);
    expect(found.trust).toMatchObject({ level: 'weak', words: { key: 'ink.trustLadderContradicts' } });
    expect(found.trust.worstDeparture).toBeGreaterThan(0.3);
  });

  test('steps as strong as one another within 3 % are no contradiction', () => {
    const k = (share: number, as: number) => ({ share, over: stackReflectance(paper, [filmOf({ k: flat(as), s: flat(0) })], skin) });
    expect(read([k(0.45, 0.5), k(0.5, 0.49)]).problems).toEqual([]);
    expect(codes(read([k(0.45, 0.5), k(0.5, 0.48)]).problems)).toEqual(['ladder-out-of-order']);
  });

  test('a step that departs takes the ladder’s word down: 15 % and it is fair only', () => {
    const list = steps(1, usual);
    const off = (times: number) =>
      read([
        list[0],
        list[1],
        list[3],
        { share: 0.25, over: stackReflectance(paper, [filmOf({ k: flat(1.2 * 0.25 * times), s: flat(0) })], skin) },
      ]).trust;
    expect(off(1.05)).toMatchObject({ level: 'good' });
    expect(off(1.05).worstDeparture).toBeGreaterThan(0.02);
    expect(off(1.45)).toMatchObject({ level: 'fair' });
    expect(off(0.6).worstDeparture).toBeGreaterThan(0.15);
    expect(off(0.6).level).toBe('fair');
  });

  test('a clear base read as an ink has no strength at all', () => {
    const found = read([1, 0.5].map((share) => ({ share, over: paper })));
    expect([...found.ink.k]).toEqual([...flat(0)]);
    expect(found.trust.curve.map((c) => c.worksLike)).toEqual([0, 0]);
  });
});

describe('mixing', () => {
  const [sky, sun] = [
    { k: flat(1), s: flat(0.2) },
    { k: flat(0.4), s: flat(0.6), gamma: 2 },
  ];
  // docs/optics.md 4: per volume K = Σ cᵢ kᵢ, S = Σ cᵢ sᵢ.
  test('adds up what each part absorbs and scatters, a bent ink by its power', () => {
    const { k, s } = mixInks([
      { ink: sky, share: 0.3 },
      { ink: sun, share: 0.5 },
    ]);
    expect([k[0], s[35]]).toEqual([expect.closeTo(0.3 + 0.25 * 0.4, 12), expect.closeTo(0.06 + 0.25 * 0.6, 12)]);
  });

  test('a pot holds no more than the whole and no part below nothing', () => {
    const pot = (...shares: number[]) => mixInks(shares.map((share) => ({ ink: sky, share })));
    expect(pot(0.5, 0.5).k[0]).toBeCloseTo(1, 12);
    expect(pot(0, 0.2, 0.1, 0.7).k[0]).toBeCloseTo(1, 12);
    expect(pot(0.5, 0.5000005).k[3]).toBeCloseTo(1, 5);
    expect(refusedBy(() => pot(0.6, 0.5))[0].code).toBe('shares-exceed-whole');
    expect(refusedBy(() => pot(0.6, -0.5))[0].code).toBe('share-out-of-range');
    expect(refusedBy(() => pot(NaN))[0].code).toBe('share-out-of-range');
  });

  // docs/trade.md 3, worked: 500 g at 20/30/50 % → 100/150/250 g.
  test('parts in any measure are shares of their sum', () => {
    expect(sharesOfParts([100, 150, 250])).toEqual([0.2, 0.3, 0.5]);
    expect(sharesOfParts([4, 0])).toEqual([1, 0]);
    for (const parts of [[], [0, 0], [2, -1], [NaN, 1]]) expect(refusedBy(() => sharesOfParts(parts))[0].code).toBe('parts-out-of-range');
  });
});

test('the doubt of the model itself: none for bare paper and one ink, more for a worse reading, more with black among the inks', () => {
  const of = (kind: 'spectrum' | 'lab' | 'photo', layers: number, black = false): number[] => {
    const { light, colour } = modelBand(kind, layers, black);
    return [light, colour];
  };
  for (const kind of ['spectrum', 'lab', 'photo'] as const) for (const layers of [0, 1]) expect(of(kind, layers)).toEqual([0, 0]);
  const [spectrum, lab, photo] = (['spectrum', 'lab', 'photo'] as const).map((kind) => of(kind, 2));
  for (const axis of [0, 1]) {
    expect(lab[axis]).toBeGreaterThan(spectrum[axis]);
    expect(photo[axis]).toBeGreaterThan(lab[axis]);
    expect(of('lab', 3, true)[axis]).toBeGreaterThan(of('lab', 3)[axis]);
  }
});
