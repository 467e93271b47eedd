import { inEnglish, refusedBy } from '../../../test/said.ts';
import { describe, expect, test } from 'vitest';
import {
  adviseGap,
  adviseMesh,
  completeMesh,
  depositOf,
  edgeRidge,
  fitScreen,
  growthBetween,
  inkForRun,
  offContact,
  paperChange,
  readTestSheets,
  registerBudget,
  registerShifts,
  registerTestSheet,
  risersFor,
  sigmaOf,
  stopsTemplate,
  tapingPlan,
  transferFromWeighing,
  wetFromWeighing,
} from './index.ts';
import type { TestReading } from './index.ts';
import type { Quantity, Saying } from '../../words/say.ts';

const codeOf = (act: () => unknown): string => {
  const [first] = refusedBy(act);
  expect(inEnglish(first.advice)).not.toBe('');
  return first.code;
};

describe('mesh and deposit', () => {
  test('a mesh counted per inch by mistake is refused with the way out', () => {
    expect(codeOf(() => completeMesh({ perCm: 255, threadMicrons: 40 }))).toBe('mesh-closed');
    expect(codeOf(() => completeMesh({ perCm: NaN, threadMicrons: 40 }))).toBe('mesh-figure');
    expect(codeOf(() => completeMesh({ perCm: 77, threadMicrons: 48, openPercent: 100 }))).toBe('mesh-open');
  });

  test('a usual mesh takes its row; one figure of the studio’s own pulls what follows from it off the row', () => {
    expect(completeMesh({ perCm: 77, threadMicrons: 48 })).toMatchObject({
      openingMicrons: 77,
      theoreticalCm3PerM2: 26,
      from: { theoreticalCm3PerM2: 'table' },
    });
    const thicker = completeMesh({ perCm: 77, threadMicrons: 48, thicknessMicrons: 90 });
    expect(thicker.from).toEqual({
      openingMicrons: 'table',
      openPercent: 'table',
      thicknessMicrons: 'given',
      theoreticalCm3PerM2: 'formula',
    });
    expect(thicker.theoreticalCm3PerM2).toBeCloseTo(31.5, 9);
  });

  test('weighed sheets replace the guess about the hand', () => {
    const mesh = { perCm: 77, threadMicrons: 48 };
    const wet = [2.0, 2.1, 1.9].map((grams) => wetFromWeighing(grams, 100_000));
    const [low, high] = transferFromWeighing(mesh, wet);
    const middle = depositOf(mesh, [low, high]).wetMicrons;
    expect(middle).toBeCloseTo(wet[0], 6);
    expect(high - low).toBeLessThan(0.4);
    expect(codeOf(() => transferFromWeighing(mesh, []))).toBe('weighing');
    expect(codeOf(() => wetFromWeighing(0, 100))).toBe('weighing');
    expect(codeOf(() => depositOf(mesh, [1, 0.6]))).toBe('transfer-range');
  });

  test('a thick stencil leaves a ridge, newsprint on a coarse mesh hardly one', () => {
    expect(edgeRidge(20, 0.18).timesTheFilm).toBeCloseTo(10, 9);
    expect(edgeRidge(100, 0.07).note.key).toBe('press.edgeEven');
    expect(codeOf(() => edgeRidge(20, -1))).toBe('stencil-thickness');
  });

  test('a large edition takes more ink than the screen keeps', () => {
    const few = inkForRun({ areaMm2: 43_200, wetMicrons: 20, wetRange: [15, 26], pulls: 10 });
    const many = inkForRun({ areaMm2: 200_000, wetMicrons: 20, pulls: 200 });
    expect(few.stayingDominates).toBe(true);
    expect(many.stayingDominates).toBe(false);
    expect(few.totalRangeGrams[0]).toBeLessThan(few.totalGrams);
    expect(inkForRun({ areaMm2: 1, wetMicrons: 20, pulls: 0 }).totalGrams).toBe(0);
    expect(codeOf(() => inkForRun({ areaMm2: -1, wetMicrons: 20, pulls: 1 }))).toBe('ink-amount');
  });

  test('fine lines want a fine mesh, a tint its ruling', () => {
    const fine = adviseMesh({ leastDetailMm: 0.4 })[0].mesh.perCm;
    expect(fine).toBeGreaterThanOrEqual(75);
    expect(adviseMesh({ leastDetailMm: 3, wetMicrons: 45 })[0].mesh.perCm).toBeLessThanOrEqual(48);
    expect(adviseMesh({ leastDetailMm: 1, linesPerCm: 40 })[0].mesh.perCm).toBeGreaterThanOrEqual(100);
    expect(adviseMesh({ leastDetailMm: 1, grainMicrons: 45 })[0].mesh.openingMicrons).toBeGreaterThanOrEqual(133);
  });
});

describe('does the screen fit', () => {
  test('a frame smaller than the image is refused with what would fit', () => {
    const fit = fitScreen({ frameInsideMm: [170, 300], imageMm: [180, 240], hingeSide: 'top' });
    expect(fit.verdict).toBe('no');
    expect(fit.problems.map((one) => one.code)).toContain('screen-too-small');
    expect(fit.problems.map((one) => inEnglish(one.message))).toContain(
      'The image reaches 5\u00a0mm past the inside of the frame on the left and on the right.',
    );
    expect(fit.remedies.map((one) => one.what)).toContain('larger frame');
  });

  test('turning the image helps where it does', () => {
    const fit = fitScreen({ frameInsideMm: [500, 420], imageMm: [200, 340], hingeSide: 'top' });
    expect(fit.verdict).not.toBe('holds');
    // What lets it fit comes first, and is the advice of the problem.
    expect(fit.remedies[0]).toMatchObject({ what: 'turn image', fits: true });
    expect(inEnglish(fit.remedies[0].text)).toBe('Give the image a quarter turn on the screen. Then it fits.');
    expect(fit.problems[0]).toMatchObject({ path: 'screen.insideHeightMm', advice: fit.remedies[0].text });
    const hinged = fit.remedies.find((one) => one.what === 'hinge elsewhere')!;
    expect(hinged.fits).toBe(false);
    expect(inEnglish(hinged.text)).toMatch(/left or right side\. Then it is .* short instead of/);
  });

  test('the squeegee must pass the image and clear the frame', () => {
    const shared = { frameInsideMm: [400, 500] as const, imageMm: [180, 240] as const, hingeSide: 'top' as const };
    const codes = (squeegeeMm: number): readonly string[] =>
      fitScreen({ ...shared, squeegeeMm }).problems.map((one) => `${one.severity} ${one.code}`);
    expect(codes(210)).toEqual([]);
    expect(codes(190)).toEqual(['warning squeegee-short']);
    expect(codes(150)).toEqual(['error squeegee-short']);
    expect(codes(380)).toEqual(['warning squeegee-long']);
    expect(codes(420)).toEqual(['error squeegee-long']);
  });

  test('an image larger than the sheet, or of no size, is refused', () => {
    expect(fitScreen({ frameInsideMm: [600, 700], imageMm: [180, 240], sheetMm: [150, 300], hingeSide: 'top' }).problems[0].code).toBe(
      'image-over-sheet',
    );
    expect(codeOf(() => fitScreen({ frameInsideMm: [600, 0], imageMm: [180, 240], hingeSide: 'top' }))).toBe('size');
  });

  test('tape holds the stencil by its edge, on the paper side, and leaves to the stencil what its margin masks', () => {
    const plan = tapingPlan({ frameInsideMm: [400, 500], imageMm: [180, 240], stencilMarginMm: 35, bladeMm: 300, travelMm: 280 });
    expect(plan.stencil).toEqual({ xMm: 75, yMm: 95, widthMm: 250, heightMm: 310 });
    // 10 mm on the stencil.
    expect(plan.aperture).toEqual({ xMm: 85, yMm: 105, widthMm: 230, heightMm: 290 });
    expect(plan.side).toBe('paper');
    // The blade is longer than the stencil is wide; the stroke ends on it.
    expect(plan.leaks).toEqual(['left', 'right']);
    expect(plan.tapeMetres).toBeCloseTo(plan.onceMetres + plan.eachMetres, 9);
    expect(tapingPlan({ frameInsideMm: [185, 500], imageMm: [180, 240] }).problems[0].code).toBe('taping-room');
  });

  test('narrow tape takes more strips; a narrow border is never taped to the image', () => {
    const wide = tapingPlan({ frameInsideMm: [400, 500], imageMm: [180, 240], stencilMarginMm: 35 });
    const narrow = tapingPlan({ frameInsideMm: [400, 500], imageMm: [180, 240], stencilMarginMm: 35, tapeWidthMm: 25 });
    expect(narrow.strips.length).toBeGreaterThan(wide.strips.length);
    const tight = tapingPlan({ frameInsideMm: [400, 500], imageMm: [180, 240], stencilMarginMm: 6 });
    expect(tight.image.xMm - tight.aperture.xMm).toBe(3);
  });
});

describe('off-contact', () => {
  const shared = { frameInsideMm: [400, 500] as const, imageMm: [180, 240] as const, hingeSide: 'top' as const };

  test('a gap that would tear the mesh is an error that names a safe one', () => {
    const torn = offContact({ ...shared, imageMm: [380, 490], gapMm: 12 });
    expect(torn.problems[0]).toMatchObject({ severity: 'error', code: 'gap-tears-mesh' });
    const { key, values } = torn.problems[0].advice as Saying;
    expect(key).toBe('press.lowerGap');
    const safe = values!['safe'] as Quantity & { kind: 'length' };
    expect(offContact({ ...shared, imageMm: [380, 490], gapMm: safe.mm }).problems).toEqual([]);
    expect(codeOf(() => offContact({ ...shared, gapMm: -1 }))).toBe('gap');
    expect(codeOf(() => offContact({ ...shared, imageMm: [400, 490], gapMm: 2 }))).toBe('frame-under-image');
  });

  test('two layers with the same gap fit one another, with different gaps they don’t', () => {
    const [a, b] = [offContact({ ...shared, gapMm: 3 }), offContact({ ...shared, gapMm: 8 })];
    expect(growthBetween(a, a)).toEqual({ alongMm: 0, acrossMm: 0 });
    expect(growthBetween(a, b).alongMm).toBeGreaterThan(0.2);
  });

  test('an uneven gap prints wider at the one end than at the other', () => {
    const uneven = offContact({ ...shared, gapMm: [6, 2] });
    expect(uneven.acrossMm[0]).toBeGreaterThan(uneven.acrossMm[1] * 5);
  });

  test('slack mesh wants more gap, tight mesh less', () => {
    const at = (tension?: number): number => adviseGap([300, 400], tension).gapMm;
    expect(at(20)).toBeLessThan(at());
    expect(at(6)).toBeGreaterThan(at());
    expect(codeOf(() => adviseGap([300, 400], 0))).toBe('tension');
  });

  test('a high clamp asks for board under the paper, a low one for packing under the clamp', () => {
    const risers = (hingeLiftMm: number) =>
      risersFor({
        gapMm: 3,
        paperMm: 0.3,
        stencilMm: 0.1,
        hingeLiftMm,
        frameLengthMm: 560,
        imageFromHingeMm: [160, 400],
        boardsMm: [2, 1.75],
      });
    expect(risers(12)).toMatchObject({ underHingeMm: 0, underPaperMm: expect.closeTo(8.6, 9), frontMm: expect.closeTo(12, 9) });
    expect(risers(1)).toMatchObject({ underHingeMm: expect.closeTo(2.4, 9), underPaperMm: 0 });
    expect(risers(12).layers[0]).toMatchObject({ count: 6, heightMm: 12 });
    expect(risers(12).problems[0].code).toBe('gap-uneven');
    expect(
      codeOf(() => risersFor({ gapMm: 3, paperMm: 0.3, stencilMm: 0, hingeLiftMm: 3, frameLengthMm: 100, imageFromHingeMm: [50, 200] })),
    ).toBe('riser-lengths');
    expect(
      codeOf(() =>
        risersFor({ gapMm: 3, paperMm: 0.3, stencilMm: 0, hingeLiftMm: 3, frameLengthMm: 300, imageFromHingeMm: [50, 200], boardsMm: [0] }),
      ),
    ).toBe('riser-board');
  });
});

describe('register', () => {
  const layers = [
    { id: 'a', name: 'Sky' },
    { id: 'b', name: 'Kelp' },
    { id: 'c', name: 'Urchin' },
  ];
  const shared = { layers, edge: 'cut' as const, imageMm: [180, 240] as const, grain: 'unknown' as const };

  test('six layers on stops need more overlap than on pins', () => {
    const [stops, pins] = [registerBudget({ ...shared, method: 'stops' }), registerBudget({ ...shared, method: 'pins' })];
    expect(stops.pairs).toHaveLength(3);
    expect(stops.worstPair!.wantedOverlapMm).toBeGreaterThan(pins.worstPair!.wantedOverlapMm * 2);
  });

  test('the studio’s own spread wins over the table', () => {
    expect(sigmaOf('stops', 'cut', 0.12)).toMatchObject({ sigmaMm: 0.12, measured: true });
    expect(sigmaOf('stops', 'torn').sigmaMm).toBeGreaterThan(sigmaOf('stops', 'cut').sigmaMm);
  });

  test('a drawing that forgives too little gets advice: how far to spread, and what to do about the largest cause', () => {
    const budget = registerBudget({
      ...shared,
      method: 'stops',
      forgives: [
        { first: 'a', second: 'b', overlapMm: 0.3 },
        { first: 'c', second: 'b', overlapMm: 5 },
      ],
    });
    const pair = budget.pairs.find((one) => one.first === 'a' && one.second === 'b')!;
    expect(pair).toMatchObject({ verdict: 'opens', forgivesMm: 0.3 });
    expect(pair.spreadMm + 0.3).toBeCloseTo(pair.wantedOverlapMm, 9);
    expect(inEnglish(pair.advice)).toMatch(/^Spread Sky under Kelp by .*Or place the sheets by a finer method\.$/);
    expect(budget.problems).toHaveLength(1);
    // The lighter of the two is spread, in the text and at the place the problem leads to.
    const over = registerBudget({ ...shared, method: 'stops', forgives: [{ first: 'a', second: 'b', overlapMm: 0.3, lighter: 'b' }] });
    expect(inEnglish(over.problems[0].advice)).toMatch(/^Spread Kelp over Sky by /);
    expect(over.problems[0].path).toBe('layers[#b].spreadMm');
    expect(budget.problems[0]).toMatchObject({
      code: 'register-opens',
      path: 'layers[#a].spreadMm',
      message: { key: 'register.pairOpens' },
    });
    const touching = registerBudget({ ...shared, method: 'stops', forgives: [{ first: 'a', second: 'b', overlapMm: 0 }] });
    expect(inEnglish(touching.problems[0].message)).toContain('they only touch');
    expect(budget.pairs.find((one) => one.first === 'b' && one.second === 'c')!.verdict).toBe('holds');
  });

  test('damp and mesh take their share of the budget', () => {
    const dry = registerBudget({ ...shared, method: 'pins' });
    const damp = registerBudget({ ...shared, method: 'pins', humidityPercent: [35, 60] });
    const gap = registerBudget({ ...shared, method: 'pins', layers: [{ ...layers[0], growthMm: [0.1, 0.6] }, layers[1], layers[2]] });
    expect(damp.pairs[0].causes.paper).toBeGreaterThan(0.5);
    expect(gap.pairs[0].causes.mesh).toBeCloseTo(0.3, 9);
    expect(gap.pairs[2].causes.mesh).toBe(0);
    expect(dry.pairs[0].likelyMm).toBeLessThan(Math.min(damp.pairs[0].likelyMm, gap.pairs[0].likelyMm));
    expect(codeOf(() => paperChange([100, 100], 'unknown', 40, 140))).toBe('humidity');
    expect(codeOf(() => registerBudget({ ...shared, method: 'pins', sigmaMm: -1 }))).toBe('register-sigma');
  });

  test('seeded sheets scatter as asked; nobody gets them without a count', () => {
    const draws = registerShifts(7, { xMm: 0.3, yMm: 0.3, angleDeg: 0 }, 4000, { layers: 2 });
    // Two layers apart in both axes: Rayleigh with σ√2, whose 95 % point is 2.4477 σ√2.
    expect(draws.p95Mm / (0.3 * Math.SQRT2 * 2.4477)).toBeCloseTo(1, 1);
    expect(draws.worst).toHaveLength(200);
    expect(codeOf(() => registerShifts(1, 0.3, 0))).toBe('shift-count');
    expect(codeOf(() => registerShifts(1, -1, 10))).toBe('register-sigma');
  });

  test('a stop that creeps is told from chance', () => {
    const sheet = registerTestSheet([180, 240]);
    const readings = Array.from({ length: 12 }, (_, i): TestReading[] =>
      sheet.places.map((place) => ({ sheet: i + 1, place: place.id, xMm: 0.2 * i + (i % 2 ? 0.02 : -0.02), yMm: i % 2 ? 0.1 : -0.1 })),
    ).flat();
    const found = readTestSheets(sheet.places, readings);
    expect(found.problems.map((one) => one.code)).toEqual(['register-creeps']);
    expect(found.creepMmPerSheet[0]).toBeCloseTo(0.2, 2);
    expect(found.sigmaMm.x).toBeLessThan(0.05);
    expect(found.turnDeg!.mean).toBeCloseTo(0, 9);
    expect(codeOf(() => readTestSheets(sheet.places, readings.slice(0, 4)))).toBe('test-sheets-few');
    expect(codeOf(() => readTestSheets(sheet.places, [...readings, { sheet: 1, place: 'nowhere', xMm: 0, yMm: 0 }]))).toBe('test-place');
  });

  test('a test sheet stays on its image; a small one has fewer places, a tiny one is refused', () => {
    for (const size of [
      [180, 240],
      [400, 100],
      [80, 80],
    ] as const) {
      const sheet = registerTestSheet(size);
      for (const line of sheet.lines) {
        expect(Math.min(line.x1Mm, line.x2Mm, line.y1Mm, line.y2Mm)).toBeGreaterThanOrEqual(0);
        expect(Math.max(line.x1Mm, line.x2Mm)).toBeLessThanOrEqual(size[0]);
        expect(Math.max(line.y1Mm, line.y2Mm)).toBeLessThanOrEqual(size[1]);
      }
    }
    expect(registerTestSheet([180, 240]).places).toHaveLength(4);
    expect(registerTestSheet([400, 100]).places).toHaveLength(2);
    expect(codeOf(() => registerTestSheet([60, 60]))).toBe('test-sheet-small');
    expect(codeOf(() => registerTestSheet([200, 200], { pitchMm: 1 }))).toBe('test-scale');
  });

  test('a torn edge is warned of, an image off the sheet refused', () => {
    expect(stopsTemplate({ sheetMm: [250, 320], imageMm: [180, 240], sheetThicknessMm: 0.3, edge: 'torn' }).problems[0].code).toBe(
      'torn-edge',
    );
    expect(stopsTemplate({ sheetMm: [250, 320], imageMm: [180, 240], imageAtMm: [100, 10], sheetThicknessMm: 0.3 }).problems[0].code).toBe(
      'image-over-sheet',
    );
  });
});
