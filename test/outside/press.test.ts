import { chiSquaredDistributionTable } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import {
  adviseGap,
  articleDeposit,
  completeMesh,
  depositOf,
  fitScreen,
  growthAlong,
  growthApproximate,
  inkForRun,
  meshTable,
  paperChange,
  registerBudget,
  registerMethods,
  sigmaRange,
  stopsTemplate,
  strainApproximate,
  strainAt,
  wetFromWeighing,
} from '../../src/core/press/index.ts';

const perInch = (count: number): number => count / 2.54;

describe('mesh figures hold against a published table', () => {
  // Mesh maker's published specification table, the three 225/in rows: thread, opening, open %, thickness, theoretical volume.
  const published = [
    [40, 73, 42, 59, 25],
    [48, 65, 33, 72, 24],
    [54, 59, 27, 84, 23],
  ] as const;
  test.each(published)('225 an inch, thread %i µm', (threadMicrons, opening, open, thicknessMicrons, volume) => {
    const mesh = completeMesh({ perCm: perInch(225), threadMicrons, thicknessMicrons });
    expect(Math.round(mesh.openingMicrons)).toBe(opening);
    expect(Math.round(mesh.openPercent)).toBe(open);
    expect(Math.round(mesh.theoreticalCm3PerM2)).toBe(volume);
    expect(mesh.from).toEqual({
      openingMicrons: 'formula',
      openPercent: 'formula',
      thicknessMicrons: 'given',
      theoreticalCm3PerM2: 'formula',
    });
  });

  // Trade magazine, 'Mesh matters': 305/in with 40 µm is published at 63 µm and 25 %, where the formula gives 27 %.
  test('a mesh’s own open area wins over the formula', () => {
    const own = completeMesh({ perCm: perInch(305), threadMicrons: 40, thicknessMicrons: 63, openPercent: 25 });
    expect(own.openPercent).toBe(25);
    expect(own.theoreticalCm3PerM2).toBeCloseTo(0.25 * 63, 9);
    expect(Math.round(completeMesh({ perCm: perInch(305), threadMicrons: 40, thicknessMicrons: 63 }).openPercent)).toBe(27);
  });

  // The table of usual meshes is common practice; its rows are of one piece with the geometry, but for the conventions above.
  test('rows of the usual meshes agree with the geometry about as well as mesh makers do with one another', () => {
    for (const row of meshTable) {
      const plain = completeMesh({
        perCm: row.perCm,
        threadMicrons: row.threadMicrons,
        thicknessMicrons: row.thicknessMicrons,
        openingMicrons: row.openingMicrons,
      });
      expect(Math.abs(plain.openPercent - row.openPercent)).toBeLessThan(4);
      expect(Math.abs((row.openPercent / 100) * row.thicknessMicrons - row.theoreticalCm3PerM2)).toBeLessThan(1.6);
    }
  });
});

describe('wet deposit', () => {
  // Trade magazine, 'How much ink do you need?', worked examples: 39/cm, d = 55 → 61.76 µm; F = 50 → 14.25.
  test('as in the article’s worked examples', () => {
    expect(articleDeposit({ perCm: 39, threadMicrons: 55, thicknessMicrons: 90 })).toBeCloseTo(61.76, 2);
    expect(articleDeposit({ perCm: 100, threadMicrons: 30, thicknessMicrons: 50 })).toBeCloseTo(14.25, 9);
  });

  // Same article against the maker's rows: 67..104 % of the theoretical volume; by hand 60..100 % (common practice) covers nearly all.
  test('lies where a hand pull is expected', () => {
    const shares = [
      [40, 59, 25],
      [48, 72, 24],
      [54, 84, 23],
    ].map(([threadMicrons, thicknessMicrons, volume]) => articleDeposit({ perCm: perInch(225), threadMicrons, thicknessMicrons }) / volume);
    expect(Math.min(...shares)).toBeCloseTo(0.67, 2);
    expect(Math.max(...shares)).toBeCloseTo(1.04, 2);
  });

  // 1000 / wet µm = m² a litre, arithmetic.
  test('a litre covers 1000 m² at a micron', () => {
    const deposit = depositOf({ perCm: 77, threadMicrons: 48 });
    expect(deposit.coverageM2PerL[0]).toBeCloseTo(1000 / 26, 9);
  });

  // Worked by hand: 0.12 m² × 20.5 µm × 1.1 g/mL = 2.706 g a print.
  test('a print of 0.12 m² at 20.5 µm takes 2.7 g, and what stays dominates a small edition', () => {
    const run = inkForRun({ areaMm2: 120_000, wetMicrons: 20.5, densityGPerMl: 1.1, pulls: 12 });
    expect(run.perPullGrams).toBeCloseTo(2.706, 9);
    expect(run.stayingDominates).toBe(true);
    expect(wetFromWeighing(2.706, 120_000, 1.1)).toBeCloseTo(20.5, 9);
  });
});

describe('off-contact holds against worked examples', () => {
  // Worked by hand for W = 600 mm: margin 100, gap 3 → 0.072 mm; 100, 6 → 0.288; 50, 6 → 0.652 exact, 0.655 approximately.
  test('growth along the stroke', () => {
    expect(growthApproximate(600, 3, 100)).toBeCloseTo(0.072, 3);
    expect(growthApproximate(600, 6, 100)).toBeCloseTo(0.288, 3);
    expect(growthAlong(600, [50, 50], [6, 6])).toBeCloseTo(0.652, 3);
    expect(growthApproximate(600, 6, 50)).toBeCloseTo(0.655, 3);
  });

  test('strain in the middle of the span is Pythagoras', () => {
    expect(strainAt(600, 40, 300)).toBeCloseTo(Math.sqrt(1 + (40 / 300) ** 2) - 1, 12);
    expect(strainApproximate(600, 3, 100) / strainAt(600, 3, 100)).toBeCloseTo(1, 3);
  });

  // Supplier's note on off-contact: at 16 N/cm and more at most 1/16 in; overall 1/32..1/4 in (trade blog).
  test('gaps stay within what suppliers print', () => {
    expect(adviseGap([420, 594], 20).gapMm).toBeLessThanOrEqual(25.4 / 16);
    for (const side of [150, 297, 420, 594, 800]) {
      for (const tension of [undefined, 6, 12, 18]) {
        const { gapMm } = adviseGap([side, side / 1.4], tension);
        expect(gapMm).toBeGreaterThan(25.4 / 32);
        expect(gapMm).toBeLessThanOrEqual(6.35);
      }
    }
  });
});

// Supplier's note: 2.5 in at the blade's ends, 4 in at the ink wells.
test('margins wanted around the image are 2.5 in and 4 in', () => {
  const fit = fitScreen({ frameInsideMm: [8 * 25.4 + 5 * 25.4, 10 * 25.4 + 8 * 25.4], imageMm: [8 * 25.4, 10 * 25.4], hingeSide: 'top' });
  expect(fit.verdict).toBe('holds');
  expect(fit.margins.map((margin) => Math.round(margin.mm * 10) / 10)).toEqual([101.6, 101.6, 63.5, 63.5]);
});

describe('paper that moves with damp', () => {
  // Dimensional stability of paper, printing technology notes; worked: 500 mm at 0.3 % over the span, 10 points → 0.45 mm.
  test('500 mm at 0.3 % for the whole span moves 0.45 mm for ten points', () => {
    const growth = { alongPercent: [0.3, 0.3], acrossPercent: [0.3, 0.3], overPoints: 33 } as const;
    expect(paperChange([500, 500], 'along-width', 40, 50, growth).xMm[0]).toBeCloseTo(0.4545, 3);
  });

  // Same notes: bond 0.10..0.20 % along, 0.20..0.40 % across the grain.
  test('bond moves twice as far across the grain as along it', () => {
    const change = paperChange([1000, 1000], 'along-height', 33, 66);
    expect(change.yMm).toEqual([expect.closeTo(1, 9), expect.closeTo(2, 9)]);
    expect(change.xMm).toEqual([expect.closeTo(2, 9), expect.closeTo(4, 9)]);
  });
});

// Rule: tolerance A + tolerance B + paper growth (arithmetic). Tolerances themselves: common practice.
test('the worst case of two layers is tolerance and tolerance and paper', () => {
  const budget = registerBudget({
    layers: [
      { id: 'a', name: 'A', humidityPercent: 40 },
      { id: 'b', name: 'B', humidityPercent: 50 },
    ],
    method: 'stops',
    edge: 'cut',
    sigmaMm: 0.2,
    imageMm: [500, 300],
    grain: 'along-width',
    paperGrowth: { alongPercent: [0.3, 0.3], acrossPercent: [0.3, 0.3], overPoints: 33 },
  });
  expect(budget.pairs[0].worstMm).toBeCloseTo(0.4 + 0.4 + 0.4545, 3);
});

// common practice: pins finer than a hinged sheet, that finer than stops, those finer on a cut than on a torn edge.
test('methods of register are ranked as printmakers rank them', () => {
  const middle = (id: string): number => registerMethods.find((one) => one.id === id)!.toleranceMm.reduce((a, b) => a + b) / 2;
  const ranked = ['pins', 'hinged-sheet', 'stops-cut', 'stops-torn'].map(middle);
  expect(ranked).toEqual([...ranked].sort((a, b) => a - b));
});

// Printmaker's article on registration: three stops, two on the long side, one on the short, slightly thicker than the paper.
test('two stops on the long side, one on the short, a little thicker than the paper', () => {
  for (const sheetMm of [
    [250, 320],
    [320, 250],
  ] as const) {
    const template = stopsTemplate({ sheetMm, imageMm: [180, 200], sheetThicknessMm: 0.3, gapMm: 3 });
    const onLong = template.stops.filter((stop) => (sheetMm[0] > sheetMm[1] ? ['top', 'bottom'] : ['left', 'right']).includes(stop.side));
    expect(onLong).toHaveLength(2);
    expect(template.stops).toHaveLength(3);
    expect(template.thicknessMm[0]).toBeGreaterThan(0.3);
    expect(template.thicknessMm[1]).toBeLessThan(0.3 + 3);
  }
});

describe('how sure a measured spread is', () => {
  // simple-statistics 7, its table of chi-square: σ lies between s √(f / χ²(0.025)) and s √(f / χ²(0.975)).
  const table = chiSquaredDistributionTable as unknown as Readonly<Record<string, Readonly<Record<string, number>>>>;
  test.each([3, 4, 5, 6, 10, 17, 18, 22, 30])('%i degrees of freedom', (freedom) => {
    const [low, high] = sigmaRange(1, freedom);
    // Within the table's rounding, two places.
    expect(freedom / low ** 2).toBeCloseTo(table[freedom]['0.025'], 2);
    expect(freedom / high ** 2).toBeCloseTo(table[freedom]['0.975'], 2);
  });
});
