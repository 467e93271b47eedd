import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { refusedBy } from '../../../../test/said.ts';
import { paperChange } from './damp.ts';
import { articleDeposit, depositOf, edgeRidge, transferFromWeighing, wetFromWeighing } from './deposit.ts';
import { inkForRun } from './ink-run.ts';
import { adviseMesh } from './mesh-choice.ts';
import { completeMesh, meshTable, openPercentOf, openingOf, theoreticalVolume } from './mesh.ts';

const close = (...values: readonly number[]): unknown[] => values.map((value) => expect.closeTo(value, 9) as unknown);
const codeOf = (act: () => unknown): string => refusedBy(act)[0].code;
const mesh = { perCm: 77, threadMicrons: 48 };

describe('a mesh', () => {
  // docs/trade.md 1: opening 10000/n − d; open area (w/p)²; volume = open area × thickness. 100 threads of 40 µm: 60 µm, 36 %.
  test('of 100 threads a cm and 40 µm leaves 60 µm open, 36 % of the area, and 23 cm³ in a fabric of 64 µm', () => {
    expect(openingOf(100, 40)).toBe(60);
    expect(openPercentOf(100, 60)).toBeCloseTo(36, 9);
    expect(theoreticalVolume(36, 64)).toBeCloseTo(23.04, 9);
  });

  // docs/trade.md 1, the row of defaults: per cm–thread: per inch | opening | open % | thickness | Vth.
  test('of the usual ones is as the trade notes have it', () => {
    const notes = readFileSync(new URL('../../../../docs/trade.md', import.meta.url), 'utf8');
    const rows = [...notes.matchAll(/(\d+)-(\d+): (\d+)\|(\d+)\|(\d+)\|(\d+)\|(\d+)/g)].map((found) => found.slice(1).map(Number));
    expect(
      meshTable.map((r) => [
        r.perCm,
        r.threadMicrons,
        r.perInch,
        r.openingMicrons,
        r.openPercent,
        r.thicknessMicrons,
        r.theoreticalCm3PerM2,
      ]),
    ).toEqual(rows);
    expect(rows).toHaveLength(13);
  });

  test('is sold by the inch', () => {
    expect(completeMesh(mesh).perInch).toBeCloseTo(195.58, 9);
  });

  test('not in the table is worked out from count and thread, its fabric 1.6 threads thick', () => {
    const found = completeMesh({ perCm: 100, threadMicrons: 30 });
    expect(found).toMatchObject({
      openingMicrons: 70,
      openPercent: expect.closeTo(49, 9),
      thicknessMicrons: 48,
      theoreticalCm3PerM2: expect.closeTo(23.52, 9),
    });
    expect(new Set(Object.values(found.from))).toEqual(new Set(['formula']));
    // The count alone is not the mesh.
    expect(completeMesh({ perCm: 77, threadMicrons: 50 }).from.openingMicrons).toBe('formula');
    expect(completeMesh({ perCm: 78, threadMicrons: 48 }).from.openingMicrons).toBe('formula');
  });

  test('whose opening was measured takes its area and volume from that, its thickness still from the table', () => {
    const found = completeMesh({ ...mesh, openingMicrons: 80 });
    expect(found.openPercent).toBeCloseTo(37.9456, 4);
    expect(found.theoreticalCm3PerM2).toBeCloseTo(0.379456 * 75, 4);
    expect(found.from).toEqual({
      openingMicrons: 'given',
      openPercent: 'formula',
      thicknessMicrons: 'table',
      theoreticalCm3PerM2: 'formula',
    });
    expect(completeMesh({ ...mesh, openPercent: 30 })).toMatchObject({
      openingMicrons: 77,
      theoreticalCm3PerM2: 22.5,
      from: { openPercent: 'given' },
    });
    expect(completeMesh({ ...mesh, theoreticalCm3PerM2: 31 })).toMatchObject({
      theoreticalCm3PerM2: 31,
      from: { theoreticalCm3PerM2: 'given', openPercent: 'table' },
    });
  });

  test('must leave an opening, and be of figures that a mesh can have', () => {
    expect(codeOf(() => completeMesh({ perCm: 100, threadMicrons: 100 }))).toBe('mesh-closed');
    expect(completeMesh({ perCm: 100, threadMicrons: 99 }).openingMicrons).toBe(1);
    for (const perCm of [0, -3, 10_000]) expect(codeOf(() => completeMesh({ perCm, threadMicrons: 0.5 }))).toBe('mesh-figure');
    expect(refusedBy(() => completeMesh({ ...mesh, openPercent: 100 }))[0]).toMatchObject({
      code: 'mesh-open',
      path: 'screen.mesh.openPercent',
    });
    expect(completeMesh({ ...mesh, openPercent: 99 }).openPercent).toBe(99);
  });
});

describe('ink through it', () => {
  // docs/trade.md 1 and 3: 60..100 % of 26 cm³/m² goes down, 30..40 % of that is solid, 1000 / wet µm = m² a litre. By hand.
  test('a hand pull on 77-48 lays down 15.6 to 26 µm, a quarter to two fifths of which dry, and a litre prints 38 to 64 m²', () => {
    const found = depositOf(mesh);
    expect(found.transferShare).toEqual([0.6, 1]);
    expect(found.wetRange).toEqual(close(15.6, 26));
    expect(found.wetMicrons).toBeCloseTo(20.8, 9);
    expect(found.dryMicrons).toBeCloseTo(7.28, 9);
    expect(found.dryRange).toEqual(close(4.68, 10.4));
    expect(found.coverageM2PerL).toEqual(close(1000 / 26, 1000 / 15.6));
    expect(found.articleMicrons).toBeCloseTo(0.285 * 75, 9);
  });

  test('shares that are none are refused; a share of one figure is one', () => {
    for (const transfer of [
      [0, 1],
      [0.8, 0.6],
      [0.5, 1.6],
      [-0.1, 1],
    ] as const)
      expect(codeOf(() => depositOf(mesh, transfer))).toBe('transfer-range');
    for (const solids of [
      [0, 0.3],
      [0.4, 0.3],
      [0.5, 1.1],
    ] as const)
      expect(codeOf(() => depositOf(mesh, [0.6, 1], solids))).toBe('solids-range');
    expect(depositOf(mesh, [1.5, 1.5], [1, 1])).toMatchObject({ wetMicrons: 39, dryMicrons: 39 });
  });

  // Trade magazine, 'How much ink do you need?' (docs/trade.md 1): up to 42/cm 1.82 d (1 − Md)²; 43..139 0.285 F; from 140 0.35 F; twill 0.31 F.
  test('the article’s four rules hold where it says', () => {
    const at = (perCm: number, twill?: boolean) => articleDeposit({ perCm, threadMicrons: 50, thicknessMicrons: 100 }, twill);
    expect([at(40), at(42), at(43), at(139), at(140), at(200), at(40, true), at(200, true)]).toEqual(
      close(1.82 * 50 * 0.64, 1.82 * 50 * 0.79 ** 2, 28.5, 28.5, 35, 35, 31, 31),
    );
  });

  // Arithmetic: 2.2 g on 1000 cm² at 1.1 g/mL are 2 mL, and 2 mL on 0.1 m² stand 20 µm high.
  test('2.2 g on a tenth of a square metre are 20 µm', () => {
    expect(wetFromWeighing(2.2, 100_000)).toBeCloseTo(20, 9);
    expect(wetFromWeighing(2, 100_000, 1)).toBeCloseTo(20, 9);
    for (const [gain, area, density] of [
      [0, 1, 1],
      [1, 0, 1],
      [1, 1, 0],
      [-1, -1, 1],
    ])
      expect(codeOf(() => wetFromWeighing(gain, area, density))).toBe('weighing');
  });

  // Two sheets at half and at the whole of 26 µm: mean 0.75, standard deviation √(2 · 0.25²) = 0.354.
  test('weighed sheets tell the hand’s share, and twice their scatter its range', () => {
    expect(transferFromWeighing(mesh, [13, 26])).toEqual(close(0.75 - 2 * Math.sqrt(0.125), 0.75 + 2 * Math.sqrt(0.125)));
    expect(transferFromWeighing(mesh, [13, 13, 26])).toEqual(close(2 / 3 - 2 * Math.sqrt(1 / 12), 2 / 3 + 2 * Math.sqrt(1 / 12)));
    expect(transferFromWeighing(mesh, [20.8])).toEqual(close(0.72, 0.88));
    expect(transferFromWeighing(mesh, [20.8, 20.8])).toEqual(close(0.72, 0.88));
    expect(transferFromWeighing(mesh, [5.2, 46.8])[0]).toBe(0.01);
    for (const wet of [[], [0], [20, -1], [20, NaN]]) expect(codeOf(() => transferFromWeighing(mesh, wet))).toBe('weighing');
  });

  // docs/trade.md 1: cut film 75..127 µm, so extra ink stands within 1..2 mm of edges.
  test('at a stencil’s edge ink stands as high as mesh and stencil together', () => {
    expect(edgeRidge(25, 0.1)).toMatchObject({ wetMicrons: 125, timesTheFilm: 5, withinMm: [1, 2], note: { key: 'press.edgeRidge' } });
    expect(edgeRidge(100, 0.1).note.key).toBe('press.edgeRidge');
    expect(edgeRidge(100, 0.099).note.key).toBe('press.edgeEven');
    expect(edgeRidge(20, 0).timesTheFilm).toBe(1);
    expect(edgeRidge(20, 10).timesTheFilm).toBeCloseTo(501, 9);
    expect(codeOf(() => edgeRidge(20, 10.01))).toBe('stencil-thickness');
    expect(codeOf(() => edgeRidge(20, -0.01))).toBe('stencil-thickness');
  });
});

describe('ink for a run', () => {
  // docs/trade.md 3: area × wet film × density × pulls, and 50..150 g that stay in screen and pot. 0.1 m² × 20 µm = 2 mL a print.
  test('20 sheets of a tenth of a square metre at 20 µm take 40 mL, 44 g, and 100 g that stay', () => {
    const run = inkForRun({ areaMm2: 100_000, wetMicrons: 20, wetRange: [15, 25], pulls: 20 });
    expect(run).toMatchObject({
      printedMl: expect.closeTo(40, 9),
      printedGrams: expect.closeTo(44, 9),
      perPullGrams: expect.closeTo(2.2, 9),
      totalGrams: expect.closeTo(144, 9),
      totalMl: expect.closeTo(144 / 1.1, 9),
    });
    expect(run.totalRangeGrams).toEqual(close(33 + 50, 55 + 150));
    expect(run.stayingShare).toBeCloseTo(100 / 144, 9);
    expect(run).toMatchObject({ stayingDominates: true, note: { key: 'press.mostStays' } });
    // The film’s own doubt left out, the range is what stays.
    expect(inkForRun({ areaMm2: 100_000, wetMicrons: 20, pulls: 20 }).totalRangeGrams).toEqual(close(94, 194));
  });

  test('half and half does not dominate; no sheet takes no ink', () => {
    const even = inkForRun({ areaMm2: 100_000, wetMicrons: 10, densityGPerMl: 1, pulls: 100, stayingGrams: [50, 150] });
    expect(even).toMatchObject({ stayingShare: 0.5, stayingDominates: false, note: { key: 'press.someStays' } });
    expect(inkForRun({ areaMm2: 100_000, wetMicrons: 10, pulls: 0 })).toMatchObject({
      totalGrams: 0,
      totalRangeGrams: [0, 0],
      stayingShare: 0,
      stayingDominates: false,
      note: { key: 'press.noSheetThrough' },
    });
    expect(inkForRun({ areaMm2: 100_000, wetMicrons: 20, pulls: 1 })).toMatchObject({
      note: { values: { printed: { grams: expect.closeTo(2.2, 9) } } },
    });
    expect(inkForRun({ areaMm2: 123_456, wetMicrons: 20, pulls: 100 })).toMatchObject({ note: { values: { printed: { grams: 272 } } } });
    expect(inkForRun({ areaMm2: 0, wetMicrons: 0, pulls: 3, stayingGrams: [0, 0] })).toMatchObject({ totalGrams: 0, stayingShare: 0 });
  });

  test('figures that are none are refused', () => {
    const run = { areaMm2: 100, wetMicrons: 10, pulls: 1 };
    for (const wrong of [
      { areaMm2: -1 },
      { wetMicrons: NaN },
      { pulls: Infinity },
      { densityGPerMl: 0 },
      { wetRange: [-1, 2] as const },
      { stayingGrams: [-1, 2] as const },
    ])
      expect(codeOf(() => inkForRun({ ...run, ...wrong }))).toBe('ink-amount');
    expect(codeOf(() => inkForRun({ ...run, wetRange: [2, 1] }))).toBe('ink-range');
    expect(codeOf(() => inkForRun({ ...run, stayingGrams: [2, 1] }))).toBe('ink-range');
    expect(inkForRun({ ...run, wetRange: [10, 10], stayingGrams: [5, 5] }).totalGrams).toBeGreaterThan(5);
  });
});

describe('which mesh', () => {
  // Common practice: a line three threads with their openings wide; an opening three grains; 2.5 threads a ruling line (mesh maker's questions).
  test('a line of 0.3 mm wants 100 threads a cm', () => {
    const advice = adviseMesh({ leastDetailMm: 0.3 });
    expect(Math.min(...advice.filter((one) => one.against === 0).map((one) => one.mesh.perCm))).toBe(100);
    // Of all that do, the one that lays down most; of the rest, the least wrong.
    expect(advice[0].mesh.id).toBe('100-40');
    expect(advice.at(-1)!.mesh.id).toBe('32-100');
    expect(advice.at(-1)!.against).toBeCloseTo(10 * (30 / 32 / 0.3 - 1) + 5, 9);
    expect(advice.at(-1)!.reasons.map((r) => r.key)).toEqual(['press.fineLinesSaw']);
    expect(codeOf(() => adviseMesh({ leastDetailMm: 0 }))).toBe('detail');
  });

  test('a grain of 19 µm passes 57 µm and no less; a ruling of 40 wants 100 threads', () => {
    const speaks = (wish: object, key: string): number[] =>
      adviseMesh({ leastDetailMm: 9, ...wish })
        .filter((one) => one.reasons.some((r) => r.key === key))
        .map((one) => one.mesh.openingMicrons)
        .sort((a, b) => a - b);
    expect(speaks({ grainMicrons: 19 }, 'press.grainsBlock')).toEqual(
      meshTable
        .map((row) => row.openingMicrons)
        .filter((w) => w < 57)
        .sort((a, b) => a - b),
    );
    expect(speaks({ linesPerCm: 40 }, 'press.rulingNeeds')).toHaveLength(meshTable.filter((row) => row.perCm < 100).length);
    expect(adviseMesh({ leastDetailMm: 9, linesPerCm: 40 }).at(-1)).toMatchObject({ against: 20, reasons: [{ values: { threads: 100 } }] });
    expect(adviseMesh({ leastDetailMm: 9, grainMicrons: 19 }).at(-1)!.against).toBe(20);
  });

  test('a film that is wished for is met as nearly as a mesh can', () => {
    const [best, ...rest] = adviseMesh({ leastDetailMm: 9, wetMicrons: 20.8 });
    expect(best).toMatchObject({ mesh: { id: '77-48' }, wetMicrons: expect.closeTo(20.8, 9), against: expect.closeTo(0, 9), reasons: [] });
    // A fifth more or less is near enough to keep quiet about: e^0.2.
    for (const one of rest) expect(one.reasons.length).toBe(Math.abs(Math.log(one.wetMicrons / 20.8)) > 0.2 ? 1 : 0);
  });
});

describe('paper and damp', () => {
  // docs/trade.md 5: bond 0.10..0.20 % along, 0.20..0.40 % across the grain, for 33 → 66 %.
  test('a metre grows 1 to 2 mm along its grain, 2 to 4 across it, and either where nobody knows', () => {
    const over = (grain: 'along-width' | 'along-height' | 'unknown', from = 33, to = 66) => paperChange([1000, 500], grain, from, to);
    expect(over('along-width')).toMatchObject({
      xMm: close(1, 2),
      yMm: close(1, 2),
      xShare: close(0.001, 0.002),
      yShare: close(0.002, 0.004),
    });
    expect(over('along-height')).toMatchObject({ xMm: close(2, 4), yMm: close(0.5, 1) });
    expect(over('unknown')).toMatchObject({ xMm: close(1, 4), yMm: close(0.5, 2) });
    // Drying, it shrinks: the most first.
    expect(over('along-width', 66, 33).xMm).toEqual(close(-2, -1));
    expect(
      paperChange([100, 100], 'unknown', 0, 100, { alongPercent: [0.3, 0.4], acrossPercent: [0.1, 0.2], overPoints: 100 }).xMm,
    ).toEqual(close(0.1, 0.4));
  });

  test('where nothing changes nothing moves, and a hygrometer shows 0 to 100', () => {
    const still = paperChange([1000, 500], 'along-width', 50, 50);
    expect(still.xMm.map((v) => Object.is(v, 0))).toEqual([true, true]);
    expect(paperChange([1000, 500], 'along-width', 100, 0).xMm[0]).toBeLessThan(0);
    for (const [from, to] of [
      [-1, 50],
      [50, 101],
      [NaN, 50],
    ])
      expect(codeOf(() => paperChange([100, 100], 'unknown', from, to))).toBe('humidity');
    for (const overPoints of [0, -33])
      expect(codeOf(() => paperChange([1, 1], 'unknown', 0, 1, { alongPercent: [0, 1], acrossPercent: [0, 1], overPoints }))).toBe(
        'paper-growth',
      );
  });
});
