import { describe, expect, test } from 'vitest';
import { refusedBy } from '../../../../test/said.ts';
import { registerBudget } from '../budget.ts';
import type { BudgetInput } from '../budget.ts';
import { sigmaOf } from './register-methods.ts';
import { registerShifts } from './shifts.ts';
import { stopsTemplate } from '../stops.ts';

const close = (...values: readonly number[]): unknown[] => values.map((value) => expect.closeTo(value, 9) as unknown);
const codeOf = (act: () => unknown): string => refusedBy(act)[0].code;

describe('all causes of misregister together', () => {
  const two = (a: object, b: object, more: Partial<BudgetInput> = {}): BudgetInput => ({
    layers: [
      { id: 'a', name: 'Sky', ...a },
      { id: 'b', name: 'Kelp', ...b },
    ],
    method: 'stops',
    edge: 'cut',
    sigmaMm: 0.15,
    imageMm: [500, 300],
    grain: 'along-width',
    paperGrowth: { alongPercent: [0.3, 0.3], acrossPercent: [0.3, 0.3], overPoints: 30 },
    ...more,
  });
  const pair = (a: object, b: object, more: Partial<BudgetInput> = {}) => registerBudget(two(a, b, more)).pairs[0];

  // docs/trade.md 5, [D]: tolerance A + tolerance B + paper growth. Two placings of ±0.3 and ±0.4: 0.5 likely (3-4-5), 0.7 at worst.
  test('two placings go as a root of squares, or at worst as a sum', () => {
    const found = pair({ sigmaMm: 0.15 }, { sigmaMm: 0.2 });
    expect([found.causes.method, found.likelyMm, found.worstMm, found.wantedOverlapMm]).toEqual(close(0.5, 0.5, 0.7, 0.5));
    expect(found).toMatchObject({
      first: 'a',
      second: 'b',
      forgivesMm: null,
      spreadMm: 0,
      verdict: 'unknown',
      advice: { key: 'register.letOverlap' },
    });
  });

  // 0.3 % over 30 points, 10 points more: 0.1 % of 500 mm is 0.5 mm along x, of 300 mm 0.3 along y.
  test('damp moves the far edge, mesh by half its growth, drift by all of it; the worse axis counts', () => {
    const found = pair(
      { humidityPercent: 40, growthMm: [0.1, 0.3], driftMm: [0.2, -0.1] },
      { humidityPercent: 50, growthMm: [0.3, 0.1], driftMm: [0.1, 0.3] },
    );
    expect(found.causes).toEqual({
      method: expect.closeTo(0.3 * Math.SQRT2, 9),
      paper: expect.closeTo(0.5, 9),
      mesh: expect.closeTo(0.1, 9),
      drift: expect.closeTo(0.4, 9),
    });
    // x: 0.5 + 0.1 + 0.1; y: 0.3 + 0.1 + 0.4.
    expect(found.likelyMm).toBeCloseTo(0.3 * Math.SQRT2 + 0.8, 9);
    expect(found.worstMm).toBeCloseTo(0.6 + 0.8, 9);
    expect(found.wantedOverlapMm).toBe(1.3);
    // One of the two not told is none.
    expect(pair({ growthMm: [0.4, 0] }, {}).causes.mesh).toBeCloseTo(0.2, 9);
    expect(pair({}, { growthMm: [0, 0.4] }).causes.mesh).toBeCloseTo(0.2, 9);
    expect(pair({ driftMm: [0, 0.4] }, {}).causes.drift).toBeCloseTo(0.4, 9);
    expect(pair({}, { driftMm: [0.4, 0] }).causes.drift).toBeCloseTo(0.4, 9);
    // From the stops the whole sheet may count.
    expect(pair({ humidityPercent: 40 }, { humidityPercent: 50 }, { fromStopsMm: [200, 600] }).causes.paper).toBeCloseTo(0.6, 9);
    expect(pair({ humidityPercent: 50 }, { humidityPercent: 40 }).causes.paper).toBeCloseTo(0.5, 9);
  });

  test('a run that says nothing of the air had that of the run before; before any, the middle of what is usual', () => {
    const layers = [
      { id: 'a', name: 'A' },
      { id: 'b', name: 'B', humidityPercent: 60 },
      { id: 'c', name: 'C' },
      { id: 'd', name: 'D', humidityPercent: 40 },
    ];
    const found = registerBudget({ ...two({}, {}), layers, humidityPercent: [30, 50] }).pairs;
    const paper = (first: string, second: string): number =>
      found.find((one) => one.first === first && one.second === second)!.causes.paper;
    // 20 points from 40 to 60 are 1 mm on 500.
    expect([paper('a', 'b'), paper('b', 'c'), paper('c', 'd'), paper('a', 'd')]).toEqual(close(1, 0, 1, 0));
    // Nobody said anything: it may wander through all of the range, and stays where none is given.
    expect(pair({}, {}, { humidityPercent: [30, 50] }).causes.paper).toBeCloseTo(1, 9);
    expect(pair({}, {}).causes.paper).toBe(0);
    expect(registerBudget({ ...two({}, {}), layers }).pairs[0].causes.paper).toBeCloseTo(0.5, 9);
  });

  test('what the drawing forgives decides: all that can be, what is likely, or less', () => {
    const forgives = (overlapMm: number, first = 'a', second = 'b') =>
      registerBudget(
        two(
          { sigmaMm: 0.15 },
          { sigmaMm: 0.2 },
          {
            forgives: [
              { first: 'a', second: 'z', overlapMm: 9 },
              { first: 'z', second: 'b', overlapMm: 9 },
              { first, second, overlapMm },
            ],
          },
        ),
      );
    expect(forgives(0.71).pairs[0]).toMatchObject({ verdict: 'holds', spreadMm: 0, advice: { key: 'register.nothingToDo' } });
    expect(forgives(0.69).pairs[0]).toMatchObject({ verdict: 'tight', advice: { key: 'register.lookAtEverySheet' } });
    expect(forgives(0.69, 'b', 'a').pairs[0].verdict).toBe('tight');
    expect(forgives(0.51).pairs[0].verdict).toBe('tight');
    expect(forgives(0.51).problems).toEqual([]);
    const opens = forgives(0.2);
    expect(opens.pairs[0]).toMatchObject({ verdict: 'opens', forgivesMm: 0.2, spreadMm: 0.3 });
    expect(opens.problems).toMatchObject([
      {
        severity: 'warning',
        code: 'register-opens',
        path: 'layers[#a].spreadMm',
        message: { key: 'register.pairOpens', values: { first: { name: 'Sky' }, second: { name: 'Kelp' }, overlap: { mm: 0.2 } } },
      },
    ]);
    expect(forgives(0.04).problems[0].message).toMatchObject({ key: 'register.pairTouches' });
    expect(forgives(0.05).problems[0].message).toMatchObject({ key: 'register.pairOpens' });
    expect(forgives(0.5).pairs[0].verdict).toBe('tight');
  });

  test('the advice goes to the largest cause', () => {
    const helped = (a: object, b: object, more: Partial<BudgetInput> = {}): string => {
      const said = JSON.stringify(pair(a, b, { forgives: [{ first: 'a', second: 'b', overlapMm: 0 }], ...more }).advice);
      return /register\.or\w+/.exec(said)![0];
    };
    expect(helped({}, {})).toBe('register.orFinerMethod');
    expect(helped({ humidityPercent: 20 }, { humidityPercent: 60 })).toBe('register.orSteadierAir');
    expect(helped({ growthMm: [0, 3] }, {})).toBe('register.orSameGap');
    expect(helped({ driftMm: [2, 0] }, {})).toBe('register.orMoveStops');
    expect(helped({ humidityPercent: 50 }, { humidityPercent: 58 }, { fromStopsMm: [500, 1] })).toBe('register.orFinerMethod');
    expect(helped({ humidityPercent: 50 }, { humidityPercent: 60 }, { fromStopsMm: [500, 1] })).toBe('register.orSteadierAir');
    expect(helped({ growthMm: [4, 0] }, { driftMm: [0, 1] })).toBe('register.orSameGap');
  });

  test('a layer’s own method or spread goes before the job’s; the worst pair is the likeliest to open', () => {
    // docs/trade.md 5: stops on a cut edge ±0.5..1, torn ±1..1.5, pins ±0.2..0.3; two standard deviations hold nineteen in twenty.
    expect(sigmaOf('stops', 'cut')).toMatchObject({ toleranceMm: 0.75, sigmaMm: 0.375, measured: false });
    expect(sigmaOf('stops', 'torn').toleranceMm).toBe(1.25);
    expect(sigmaOf('pins', 'torn').toleranceMm).toBe(0.25);
    expect(sigmaOf('pins', 'cut', 0.1)).toMatchObject({ toleranceMm: 0.2, sigmaMm: 0.1, measured: true });
    expect(pair({ method: 'pins' }, {}).causes.method).toBeCloseTo(Math.hypot(0.25, 0.3), 9);
    expect(pair({ method: 'pins', sigmaMm: 0.4 }, {}).causes.method).toBeCloseTo(Math.hypot(0.8, 0.3), 9);
    const layers = [
      { id: 'a', name: 'A' },
      { id: 'b', name: 'B', sigmaMm: 1 },
      { id: 'c', name: 'C', sigmaMm: 0.5 },
    ];
    const found = registerBudget({ ...two({}, {}), layers });
    expect(found.pairs.map((p) => p.first + p.second)).toEqual(['ab', 'ac', 'bc']);
    expect(found.worstPair).toMatchObject({ first: 'b', second: 'c' });
    expect(registerBudget({ ...two({}, {}), layers: layers.slice(0, 1) }).worstPair).toBeNull();
    for (const sigmaMm of [-1, 51, NaN]) expect(codeOf(() => registerBudget(two({ sigmaMm }, {})))).toBe('register-sigma');
    expect(pair({ sigmaMm: 50 }, { sigmaMm: 0 }).worstMm).toBeCloseTo(100, 9);
  });
});

describe('sheets drawn by chance', () => {
  test('a steady shift of 3 mm to the right and 4 down leaves two layers 5 mm apart, on every sheet', () => {
    const draws = registerShifts(1, 0, 40, {
      driftMm: [
        [0, 0],
        [3, 4],
      ],
    });
    for (const sheet of draws.sheets) expect(sheet.offMm).toBeCloseTo(5, 12);
    expect(draws.sheets[0].layers[1]).toMatchObject({ dxMm: 3, dyMm: 4 });
    expect(draws.sheets[0].layers[1].angleDeg).toBeCloseTo(0, 12);
    // A layer that is not told stays; each pair counts.
    expect(
      registerShifts(1, 0, 1, {
        layers: 3,
        driftMm: [
          [0, 0],
          [3, 4],
        ],
      }).sheets[0].offMm,
    ).toBeCloseTo(5, 12);
    expect(
      registerShifts(1, 0, 1, {
        layers: 3,
        driftMm: [
          [0, 0],
          [0, 1],
          [0, -2],
        ],
      }).sheets[0].offMm,
    ).toBeCloseTo(3, 12);
  });

  test('turned against one another, corners of 180 × 240 mm move on a circle of 150 mm', () => {
    const turns = registerShifts(5, { xMm: 0, yMm: 0, angleDeg: 0.2 }, 30, { imageMm: [180, 240] });
    for (const { layers, offMm } of turns.sheets) {
      const between = ((layers[0].angleDeg - layers[1].angleDeg) * Math.PI) / 180;
      expect(offMm).toBeCloseTo(2 * 150 * Math.abs(Math.sin(between / 2)), 9);
      expect(layers[0].dxMm).toBe(0);
    }
    expect(turns.sheets.some((sheet) => sheet.layers[0].angleDeg !== 0)).toBe(true);
  });

  test('about the middle of the image, either way round: its far corner moves with the shift and the turn', () => {
    const turns = { xMm: 0, yMm: 0, angleDeg: 0.3 };
    const between = (one: { layers: readonly { angleDeg: number }[] }): number =>
      Math.abs(Math.sin(((one.layers[1].angleDeg - one.layers[0].angleDeg) * Math.PI) / 180));
    // A bar of 300 mm lying down, shifted down by a millimetre; and one standing, shifted to the right.
    for (const one of registerShifts(3, turns, 20, {
      imageMm: [300, 0.002],
      driftMm: [
        [0, 0],
        [0, 1],
      ],
    }).sheets)
      expect(one.offMm).toBeCloseTo(1 + 150 * between(one), 2);
    for (const one of registerShifts(4, turns, 20, {
      imageMm: [0.002, 300],
      driftMm: [
        [0, 0],
        [1, 0],
      ],
    }).sheets)
      expect(one.offMm).toBeCloseTo(1 + 150 * between(one), 2);
  });

  test('one number for the spread: as much both ways, and half of it at the corners by turning', () => {
    const one = registerShifts(9, 0.3, 25);
    expect(one).toEqual(
      registerShifts(9, { xMm: 0.3, yMm: 0.3, angleDeg: ((0.15 / 150) * 180) / Math.PI }, 25, { layers: 2, imageMm: [180, 240] }),
    );
    const spread = registerShifts(9, { xMm: 1, yMm: 10, angleDeg: 0 }, 400).sheets.map((sheet) => sheet.layers[0]);
    const rms = (values: number[]): number => Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length);
    expect(rms(spread.map((s) => s.dxMm))).toBeCloseTo(1, 0);
    expect(rms(spread.map((s) => s.dyMm)) / 10).toBeCloseTo(1, 0);
  });

  test('worst first, a twentieth of them; median and nineteen in twenty as counted', () => {
    const draws = registerShifts(2, 0.4, 100);
    const sorted = draws.sheets.map((sheet) => sheet.offMm).sort((a, b) => a - b);
    expect(draws.worst).toHaveLength(5);
    expect(draws.worst.map((i) => draws.sheets[i].offMm)).toEqual(sorted.slice(-5).reverse());
    expect(draws.medianMm).toBe(sorted[49]);
    expect(draws.p95Mm).toBe(sorted[94]);
    expect(registerShifts(2, 0.4, 3).worst).toHaveLength(1);
    // Of sheets equally far off the earlier comes first.
    expect(registerShifts(2, 0, 60).worst).toEqual([0, 1, 2]);
  });

  test('numbers that cannot be drawn are refused', () => {
    for (const n of [0, 1.5, 100_001]) expect(codeOf(() => registerShifts(1, 0.1, n))).toBe('shift-count');
    for (const layers of [0, 65, 1.5]) expect(codeOf(() => registerShifts(1, 0.1, 1, { layers }))).toBe('shift-count');
    expect(registerShifts(1, 0.1, 1, { layers: 64 }).sheets[0].layers).toHaveLength(64);
    for (const sigma of [-0.1, Infinity, NaN]) expect(codeOf(() => registerShifts(1, sigma, 1))).toBe('register-sigma');
    expect(codeOf(() => registerShifts(1, { xMm: 0, yMm: 0, angleDeg: -1 }, 1))).toBe('register-sigma');
  });
});

describe('the drawing with three stops', () => {
  // Printmaker's article (docs/trade.md 5): two on the long side, one on the short one near their corner, slightly thicker than the paper.
  const job = { sheetMm: [400, 300], imageMm: [200, 150], sheetThicknessMm: 0.3 } as const;
  test('of a broad sheet pushed to the lower left: two below at a fifth and four fifths, one on the left at a quarter from below', () => {
    const made = stopsTemplate(job);
    expect(made.image).toEqual({ xMm: 100, yMm: 75, widthMm: 200, heightMm: 150 });
    expect(made.stops).toEqual([
      { number: 1, side: 'bottom', xMm: 80 - 12.5, yMm: 300, widthMm: 25, heightMm: 12 },
      { number: 2, side: 'bottom', xMm: 320 - 12.5, yMm: 300, widthMm: 25, heightMm: 12 },
      { number: 3, side: 'left', xMm: -12, yMm: 225 - 12.5, widthMm: 12, heightMm: 25 },
    ]);
    expect(made).toMatchObject({
      cornerMm: [0, 300],
      fromStopsMm: [300, 225],
      sheet: { xMm: 0, yMm: 0, widthMm: 400, heightMm: 300 },
      drawing: { xMm: -12, yMm: -12, widthMm: 424, heightMm: 324 },
      problems: [],
    });
    expect(made.marks).toEqual([
      [200, 69],
      [200, 231],
      [94, 150],
      [306, 150],
    ]);
    expect(made.thicknessMm).toEqual(close(0.4, 0.8));
    expect(made.steps).toHaveLength(4);
  });

  test('of a tall sheet pushed to the upper right, the image off its middle', () => {
    const made = stopsTemplate({ ...job, sheetMm: [60, 80], imageMm: [20, 30], imageAtMm: [10, 5], corner: 'top-right' });
    // On a small sheet a stop is a quarter of its short side long.
    expect(made.stops).toEqual([
      { number: 1, side: 'right', xMm: 60, yMm: 16 - 7.5, widthMm: 12, heightMm: 15 },
      { number: 2, side: 'right', xMm: 60, yMm: 64 - 7.5, widthMm: 12, heightMm: 15 },
      { number: 3, side: 'top', xMm: 45 - 7.5, yMm: -12, widthMm: 15, heightMm: 12 },
    ]);
    expect(made).toMatchObject({ cornerMm: [60, 0], fromStopsMm: [50, 35] });
    expect(stopsTemplate({ ...job, sheetMm: [300, 300] }).stops.map((stop) => stop.side)).toEqual(['bottom', 'bottom', 'left']);
  });

  test('stops stay under the gap; a torn edge is said; an image off the sheet refused', () => {
    expect(stopsTemplate({ ...job, gapMm: 3 }).thicknessMm).toEqual(close(0.4, 0.8));
    expect(stopsTemplate({ ...job, gapMm: 0.6 }).thicknessMm).toEqual(close(0.4, 0.6));
    expect(stopsTemplate({ ...job, gapMm: 0.1 }).thicknessMm).toEqual(close(0.35, 0.35));
    expect(stopsTemplate({ ...job, edge: 'torn', paper: 'papers[#p]' }).problems).toMatchObject([
      { code: 'torn-edge', severity: 'note', path: 'papers[#p].edge' },
    ]);
    const off = (imageAtMm: readonly [number, number]): number => stopsTemplate({ ...job, imageAtMm }).problems.length;
    expect([off([0, 0]), off([200, 150]), off([-0.1, 0]), off([0, -0.1]), off([200.1, 0]), off([0, 150.1])]).toEqual([0, 0, 1, 1, 1, 1]);
  });
});
