import { describe, expect, test } from 'vitest';
import { refusedBy } from '../../../../test/said.ts';
import {
  adviseGap,
  growthAlong,
  growthApproximate,
  growthBetween,
  offContact,
  strainAcross,
  strainApproximate,
  strainAt,
} from './off-contact.ts';
import { layersOf, risersFor } from './risers.ts';

const close = (...values: readonly number[]): unknown[] => values.map((value) => expect.closeTo(value, 9) as unknown);
const codeOf = (act: () => unknown): string => refusedBy(act)[0].code;

describe('gap by the size of the print', () => {
  // docs/trade.md 2 (common practice): A4 1.5..2 mm, A3 2..3, A2 3..4, A1 4..6.
  test.each([
    [210, 297, [1.5, 2]],
    [298, 200, [2, 3]],
    [297, 420, [2, 3]],
    [594, 420, [3, 4]],
    [600, 200, [4, 6]],
  ])('%d × %d mm', (width, height, range) => {
    const advice = adviseGap([width, height]);
    expect(advice).toMatchObject({ rangeMm: range, gapMm: (range[0] + range[1]) / 2, why: { key: 'press.gapTensionUnknown' } });
    expect(adviseGap([width, height], 12)).toMatchObject({ rangeMm: range, why: { key: 'press.gapByHand' } });
  });

  // Supplier's note: at 16 N/cm and more at most 1/16 in. Overall 1/32..1/4 in.
  test('tight mesh takes a sixteenth of an inch at most, slack mesh half as much again, a quarter of an inch at most', () => {
    expect(adviseGap([297, 420], 16)).toMatchObject({ gapMm: 1.5875, rangeMm: [1, 1.5875], why: { key: 'press.tightMeshGap' } });
    expect(adviseGap([200, 200], 20).gapMm).toBe(1.5);
    expect(adviseGap([200, 200], 15.9).why.key).toBe('press.gapByHand');
    expect(adviseGap([297, 420], 9.9)).toMatchObject({ gapMm: 3.75, rangeMm: [3, 4.5], why: { key: 'press.slackMeshGap' } });
    expect(adviseGap([297, 420], 10).why.key).toBe('press.gapByHand');
    expect(adviseGap([700, 420], 5)).toMatchObject({ rangeMm: [6, 6.35] });
    for (const tension of [0, -2, NaN]) expect(codeOf(() => adviseGap([100, 100], tension))).toBe('tension');
  });
});

describe('mesh pressed down is Pythagoras', () => {
  // By hand, in whole triangles: 3-4-5 twice over a span of 80, 5-12-13 and 12-16-20 over one of 21.
  test('strain along the stroke', () => {
    expect(strainAt(80, 30, 40)).toBeCloseTo(0.25, 12);
    expect(strainAt(21, 12, 5)).toBeCloseTo(33 / 21 - 1, 12);
    expect(strainApproximate(600, 6, 100)).toBeCloseTo(36 / (2 * 100 * 500), 12);
    // Blade 200 in a span of 280: 40 mm on each side, 30 deep, come to 50.
    expect(strainAcross(280, 200, 30)).toBeCloseTo(300 / 280 - 1, 12);
  });

  test('growth: what is printed less the mesh it came through', () => {
    // The mesh point over x = 5 is 13/33 of the mesh on its way, the one over 16 at 20/33.
    expect(growthAlong(21, [5, 5], [12, 12])).toBeCloseTo(11 - (21 * (20 - 13)) / 33, 12);
    // Ends of different margin and gap: at 5 with 12, at 40 of 80 with 30.
    expect(growthAlong(80, [40, 40], [30, 30])).toBeCloseTo(0, 12);
    expect(growthAlong(21, [5, 5], [0, 12])).toBeCloseTo(11 - ((21 * 20) / 33 - 5), 12);
    expect(growthAlong(21, [5, 5], [12, 0])).toBeCloseTo(11 - (16 - (21 * 13) / 33), 12);
    expect(growthAlong(21, [5, 9], [12, 0])).toBeCloseTo(7 - (12 - (21 * 13) / 33), 12);
    expect(growthApproximate(600, 6, 50)).toBeCloseTo((36 * 500) / (50 * 550), 12);
  });
});

describe('off-contact of a job', () => {
  const screen = { frameInsideMm: [400, 600], imageMm: [200, 400], hingeSide: 'top', gapMm: 6 } as const;
  test('the stroke runs away from the hinge; the blade stands a centimetre past the image', () => {
    const found = offContact(screen);
    expect(found.alongMm).toBeCloseTo(growthAlong(600, [100, 100], [6, 6]), 12);
    // docs/trade.md 2: W = 600, a 100, h 6 → 0.288 mm.
    expect(found.alongApproximateMm).toBeCloseTo(0.288, 3);
    expect(found.acrossMm).toEqual(close(200 * strainAcross(400, 220, 6), 200 * strainAcross(400, 220, 6)));
    expect(found.mostStrain).toBeCloseTo(Math.max(strainAt(600, 6, 100), strainAcross(400, 220, 6)), 12);
    expect(found.problems).toEqual([]);
    const turned = offContact({ ...screen, frameInsideMm: [600, 400], imageMm: [400, 200], hingeSide: 'left' });
    expect(turned).toEqual(found);
  });

  test('its own squeegee counts, up to the frame less a millimetre', () => {
    expect(offContact({ ...screen, squeegeeMm: 300 }).acrossMm[0]).toBeCloseTo(200 * strainAcross(400, 300, 6), 12);
    expect(offContact({ ...screen, imageMm: [396, 400], gapMm: 0.2 }).acrossMm[0]).toBeCloseTo(396 * strainAcross(400, 399, 0.2), 12);
  });

  test('an image off the middle, and a gap wider at one end: hinge first, whichever side it is on', () => {
    const high = offContact({ ...screen, imageAtMm: [100, 50], gapMm: [2, 6] });
    expect(high.alongMm).toBeCloseTo(growthAlong(600, [50, 150], [2, 6]), 12);
    expect(high.alongApproximateMm).toBeCloseTo(growthApproximate(600, 4, 100), 12);
    expect(high.acrossMm).toEqual(close(200 * strainAcross(400, 220, 2), 200 * strainAcross(400, 220, 6)));
    expect(high.mostStrain).toBeCloseTo(Math.max(strainAt(600, 6, 150), strainAcross(400, 220, 6)), 12);
    // Hinged at the foot, the foot's margin comes first.
    const low = offContact({ ...screen, hingeSide: 'bottom', imageAtMm: [100, 50], gapMm: [2, 6] });
    expect(low.alongMm).toBeCloseTo(growthAlong(600, [150, 50], [2, 6]), 12);
    expect(low.mostStrain).toBeCloseTo(Math.max(strainAt(600, 6, 50), strainAcross(400, 220, 6)), 12);
    const right = offContact({ frameInsideMm: [600, 400], imageMm: [400, 200], imageAtMm: [50, 100], hingeSide: 'right', gapMm: [2, 6] });
    expect(right.alongMm).toBeCloseTo(low.alongMm, 12);
    const left = offContact({ frameInsideMm: [600, 400], imageMm: [400, 200], imageAtMm: [50, 100], hingeSide: 'left', gapMm: [2, 6] });
    expect(left.alongMm).toBeCloseTo(high.alongMm, 12);
  });

  test('layers with different gaps differ by the growth of the wider end', () => {
    const [even, uneven] = [offContact({ ...screen, gapMm: 3 }), offContact({ ...screen, gapMm: [3, 8] })];
    const apart = growthBetween(even, uneven);
    expect(apart.acrossMm).toBeCloseTo(200 * (strainAcross(400, 220, 8) - strainAcross(400, 220, 3)), 12);
    expect(apart.alongMm).toBeCloseTo(Math.abs(even.alongMm - uneven.alongMm), 12);
    expect(growthBetween(uneven, even)).toEqual(apart);
    const other = offContact({ ...screen, gapMm: [8, 3] });
    expect(growthBetween(even, other).acrossMm).toBeCloseTo(apart.acrossMm, 12);
  });

  test('gaps that are none, and frames under the image, are refused', () => {
    for (const gapMm of [-0.1, 101, NaN, [3, -1] as const, [-1, 3] as const])
      expect(codeOf(() => offContact({ ...screen, gapMm }))).toBe('gap');
    expect(offContact({ ...screen, gapMm: 0 })).toMatchObject({ alongMm: expect.closeTo(0, 12), mostStrain: expect.closeTo(0, 12) });
    expect(codeOf(() => offContact({ ...screen, imageAtMm: [100, 0] }))).toBe('frame-under-image');
    expect(codeOf(() => offContact({ ...screen, imageAtMm: [100, 200] }))).toBe('frame-under-image');
    expect(codeOf(() => offContact({ ...screen, imageMm: [400, 400] }))).toBe('frame-under-image');
  });

  // Common practice: over 0.4 % of stretch doubtful, from 2 % on a mesh tears.
  test('a stretch over 0.4 % is warned of, over 2 % refused, and the gap that is named is the largest that does', () => {
    // Margin 40 in a span of 480: the blade at x = 40 stretches it by h²/(2 · 40 · 440).
    const at = (gapMm: number) => offContact({ frameInsideMm: [4000, 480], imageMm: [200, 400], hingeSide: 'top', gapMm });
    const least = Math.sqrt(0.004 * 2 * 40 * 440);
    expect(at(least - 0.2).problems).toEqual([]);
    const warned = at(least + 0.3).problems;
    expect(warned).toMatchObject([
      {
        severity: 'warning',
        code: 'gap-stretches-mesh',
        path: 'screen.offContactMm',
        message: { values: { strain: { share: expect.closeTo(at(least + 0.3).mostStrain, 9) } } },
      },
    ]);
    const safe = (problems: typeof warned): number =>
      (problems[0].advice as unknown as { values: { safe: { mm: number } } }).values.safe.mm;
    expect(at(safe(warned)).problems).toEqual([]);
    expect(at(safe(warned) + 0.1).problems).toHaveLength(1);
    const tears = at(30).problems;
    expect(tears).toMatchObject([{ severity: 'error', code: 'gap-tears-mesh' }]);
    expect(safe(tears)).toBe(safe(warned));
    expect(at(30).mostStrain).toBeGreaterThan(0.02);
    expect(at(25).problems[0].code).toBe('gap-stretches-mesh');
    // An uneven gap is lowered at both ends alike; its middle is told.
    const unevenAt = (times: number) =>
      offContact({ frameInsideMm: [4000, 480], imageMm: [200, 400], hingeSide: 'top', gapMm: [6 * times, 14 * times] }).problems;
    const uneven = unevenAt(1);
    expect(uneven).toMatchObject([{ message: { values: { gap: { mm: 10 } } } }]);
    expect(unevenAt(safe(uneven) / 10)).toEqual([]);
    expect(unevenAt((safe(uneven) + 0.1) / 10)).toHaveLength(1);
  });
});

describe('packing for a frame in clamps', () => {
  const frame = { gapMm: 3, paperMm: 0.3, stencilMm: 0.1, hingeLiftMm: 1, frameLengthMm: 560, imageFromHingeMm: [160, 400] } as const;
  // docs/trade.md 2: gap(y) = hb + (hf − hb) y/L, above paper and stencil; by hand.
  test('a clamp too low: 2.4 mm under it, 3.4 in front; in front alone 5.8 would leave 2 to 4 mm of gap', () => {
    const found = risersFor(frame);
    expect([found.heightMm, found.underHingeMm, found.underPaperMm, found.frontMm]).toEqual(close(3.4, 2.4, 0, 3.4));
    expect(found.gapMm).toEqual([3, 3]);
    expect(found.frontOnly.frontMm).toBeCloseTo(5.8, 9);
    expect(found.frontOnly.gapMm).toEqual(close(1 + (4.8 * 160) / 560 - 0.4, 1 + (4.8 * 400) / 560 - 0.4));
    expect(found.problems).toMatchObject([
      { severity: 'note', code: 'gap-uneven', advice: { key: 'press.packUnderHinge', values: { by: { mm: 2.5 } } } },
    ]);
    expect(found.layers).toEqual([]);
    // In board as it is sold: half millimetres, front and hinge alike, and the gap that comes of it.
    expect(found.built).toEqual({ underHingeMm: 2.5, underPaperMm: 0, frontMm: 3.5, gapMm: expect.closeTo(3.1, 9) });
    const crooked = risersFor({ ...frame, hingeLiftMm: 8.3 });
    expect(crooked.built).toMatchObject({ underPaperMm: 5, frontMm: 8.5 });
    expect(crooked.built.gapMm).toBeCloseTo(8.3 + (0.2 * 280) / 560 - 5 - 0.4, 9);
  });

  test('a clamp too high: board under the paper; the front cannot go below the table', () => {
    const found = risersFor({ ...frame, hingeLiftMm: 12, boardsMm: [2, 5] });
    expect([found.underHingeMm, found.underPaperMm, found.frontMm]).toEqual(close(0, 8.6, 12));
    expect(found.frontOnly.frontMm).toBe(0);
    expect(found.frontOnly.gapMm).toEqual(close(12 - (12 * 160) / 560 - 0.4, 12 - (12 * 400) / 560 - 0.4));
    expect(found.problems).toMatchObject([{ advice: { key: 'press.boardUnderPaper', values: { by: { mm: 8.5 } } } }]);
    expect(found.layers).toEqual([
      { thicknessMm: 2, count: 6, cardMm: 0, heightMm: 12, offMm: 0 },
      { thicknessMm: 5, count: 2, cardMm: 2, heightMm: 12, offMm: 0 },
    ]);
    expect(layersOf(12, 1.75)).toEqual({ thicknessMm: 1.75, count: 6, cardMm: 1.5, heightMm: 12, offMm: 0 });
    expect(layersOf(11.9, 3)).toMatchObject({ count: 4, cardMm: 0, heightMm: 12 });
  });

  test('a clamp at the right height, or nearly, needs no word', () => {
    const even = risersFor({ ...frame, hingeLiftMm: 3.4 });
    expect(even.problems).toEqual([]);
    expect(even.frontOnly.gapMm).toEqual(close(3, 3));
    // 0.5 mm from one end of the image to the other.
    expect(risersFor({ ...frame, hingeLiftMm: 3.4 + 0.58 }).problems).toEqual([]);
    expect(risersFor({ ...frame, hingeLiftMm: 3.4 + 0.59 }).problems).toHaveLength(1);
  });

  test('figures that cannot be are refused, each with its place', () => {
    const wrong = (more: Partial<Parameters<typeof risersFor>[0]>): string => {
      const [first] = refusedBy(() => risersFor({ ...frame, ...more }));
      return `${first.code} ${'path' in first ? first.path : ''}`;
    };
    expect(wrong({ gapMm: -1 })).toBe('riser-heights screen.offContactMm');
    expect(wrong({ paperMm: 301 })).toBe('riser-heights papers');
    expect(wrong({ stencilMm: NaN })).toBe('riser-heights materials');
    expect(wrong({ hingeLiftMm: -0.1 })).toBe('riser-heights screen.hingeLiftMm');
    for (const more of [
      { frameLengthMm: 0 },
      { imageFromHingeMm: [-1, 400] },
      { imageFromHingeMm: [400, 400] },
      { imageFromHingeMm: [160, 561] },
    ] as const)
      expect(wrong(more)).toBe('riser-lengths screen');
    expect(wrong({ boardsMm: [2, 0] })).toBe('riser-board screen.riserStepMm');
    expect(risersFor({ ...frame, gapMm: 0, paperMm: 0, stencilMm: 0, hingeLiftMm: 300, imageFromHingeMm: [0, 560] }).underPaperMm).toBe(
      300,
    );
  });
});
