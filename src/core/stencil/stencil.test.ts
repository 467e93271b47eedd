import { describe, expect, test } from 'vitest';
import { common, parts, place, rectangle, regionArea, regionBox, strip, takeAway, unite } from '../form/index.ts';
import type { Region } from '../form/index.ts';
import { certify, cornersOf, defaultMaterials, knifeWork, makeStencil } from './index.ts';
import type { CostRaster, Stencil, StencilRequest } from './index.ts';
import { asWritten } from '../../words/say.ts';
import type { Reader } from '../../words/index.ts';
import { inEnglish } from '../../../test/said.ts';

const aperture = { minX: 0, minY: 0, maxX: 120, maxY: 100 };
const sheet = { minX: -20, minY: -20, maxX: 140, maxY: 120 };
const paper = defaultMaterials[1];
const disc = (cx: number, cy: number, r: number): Region => ({
  rings: [
    Float64Array.from({ length: 240 }, (_, i) =>
      i % 2 ? cy + r * Math.sin((Math.PI * (i - 1)) / 120) : cx + r * Math.cos((Math.PI * i) / 120),
    ),
  ],
});
const ring = takeAway(disc(60, 50, 30), disc(60, 50, 18));
const make = (shape: Region, more: Partial<StencilRequest> = {}): Stencil =>
  makeStencil({ shape, side: 'window', aperture, sheet, material: paper, islands: 'bridge', ...more });
const pieceAt = (r: Region, x: number, y: number): boolean => regionArea(common(r, rectangle(x - 0.05, y - 0.05, 0.1, 0.1))) > 0.005;

describe('a window and its islands', () => {
  test('a plain opening needs no bridge', () => {
    const made = make(disc(60, 50, 30));
    expect(made).toMatchObject({ islands: [], bridges: [], certificate: { holds: true, pieces: 1 } });
    // Half a micron of rounding along 190 mm of outline.
    expect(Math.abs(regionArea(made.prints) - regionArea(disc(60, 50, 30)))).toBeLessThan(0.0005 * 190);
  });
  test('the middle of a ring is an island and gets a bridge straight across the opening', () => {
    const made = make(ring);
    expect(made.islands).toHaveLength(1);
    expect(made.islands[0].areaMm2).toBeCloseTo(regionArea(disc(60, 50, 18)), 0);
    expect(made.certificate).toMatchObject({ holds: true, pieces: 1 });
    expect(made.bridges.length).toBeGreaterThanOrEqual(1);
    for (const b of made.bridges) {
      expect(Math.hypot(b.from[0] - b.to[0], b.from[1] - b.to[1])).toBeLessThan(13);
      expect(b.widthMm).toBeGreaterThanOrEqual(paper.leastBridgeMm);
      // A bridge keeps ink away only where the layer would print.
      expect(regionArea(common(b.region, ring))).toBeCloseTo(regionArea(b.region), 3);
    }
    expect(regionArea(made.prints) + made.bridges.reduce((sum, b) => sum + b.areaMm2, 0)).toBeCloseTo(regionArea(ring), 1);
  });
  test('paper and print share the image without gap or overlap', () => {
    const made = make(ring);
    expect(regionArea(common(made.paper, made.prints))).toBeCloseTo(0, 3);
    expect(regionArea(unite([made.paper, made.prints]))).toBeCloseTo(160 * 140, 2);
  });
  test('the other side of the cut prints everything around', () => {
    const made = make(ring, { side: 'piece' });
    expect(made.islands).toHaveLength(1);
    expect(made.certificate.holds).toBe(true);
    const bridged = made.bridges.reduce((sum, b) => sum + b.areaMm2, 0);
    expect(regionArea(made.prints) + bridged).toBeCloseTo(120 * 100 - regionArea(ring), 1);
  });
  test('loose pieces are numbered and counted, not bridged', () => {
    const made = make(unite([ring, takeAway(disc(15, 15, 12), disc(15, 15, 6))]), { islands: 'loose' });
    expect(made.bridges).toEqual([]);
    expect(made.loosePieces.map((p) => p.number)).toEqual([1, 2]);
    expect(made.certificate).toMatchObject({ holds: true, pieces: 1 });
    for (const p of made.loosePieces) expect(pieceAt(p.region, ...p.at)).toBe(true);
  });
  test('a dropped island prints', () => {
    const made = make(ring, { islands: 'drop' });
    expect(made.islands[0].handled).toBe('dropped');
    expect(regionArea(made.prints)).toBeCloseTo(regionArea(disc(60, 50, 30)), 1);
  });
  test('an island smaller than a bridge is dropped, and said', () => {
    const made = make(takeAway(disc(60, 50, 30), disc(60, 50, 0.7)));
    expect(made.problems.map((p) => p.code)).toEqual(['stencil-island-too-small']);
    expect(inEnglish(made.problems[0].message)).toBe('1 island is smaller than a bridge; ink will print there.');
  });
  test('a long island hangs on two bridges or more, far from one another', () => {
    const long = takeAway(rectangle(10, 40, 100, 20), rectangle(16, 46, 88, 8));
    const made = make(long);
    expect(made.bridges.length).toBeGreaterThanOrEqual(2);
    const [a, b] = made.bridges;
    expect(Math.hypot(a.from[0] - b.from[0], a.from[1] - b.from[1])).toBeGreaterThan(30);
  });
});

describe('where bridges go', () => {
  const cost = (deltaE: (x: number, y: number) => number): CostRaster => {
    const grid = { originXMm: 0, originYMm: 0, mmPerPx: 0.5, width: 240, height: 200 };
    return { grid, deltaE: Float32Array.from({ length: 240 * 200 }, (_, p) => deltaE((p % 240) * 0.5, Math.floor(p / 240) * 0.5)) };
  };
  test('where a later layer hides them', () => {
    // Right of x = 74 nothing shows, and the way is longer there.
    const shifted = takeAway(disc(60, 50, 30), disc(55, 50, 18));
    const made = make(shifted, { cost: cost((x) => (x > 74 ? 0 : 25)) });
    expect(made.certificate.holds).toBe(true);
    expect(made.bridges.every((b) => (b.costDeltaE ?? 99) < 12)).toBe(true);
    const shortest = make(shifted, { cost: undefined });
    const seen = (s: Stencil): number => s.bridges.reduce((sum, b) => sum + regionArea(common(b.region, rectangle(0, 0, 74, 100))), 0);
    expect(seen(made)).toBeLessThan(0.5 * seen(shortest));
  });
  test('never where the printmaker forbids them', () => {
    const first = make(ring).bridges[0];
    const at = [(first.from[0] + first.to[0]) / 2, (first.from[1] + first.to[1]) / 2] as const;
    const made = make(ring, { forbidden: [{ atMm: at, radiusMm: 8 }] });
    expect(made.certificate.holds).toBe(true);
    for (const b of made.bridges) expect(regionArea(common(b.region, disc(at[0], at[1], 8)))).toBeLessThan(0.2);
  });
  test('where the printmaker pins them, and then no others', () => {
    const made = make(ring, {
      pins: [{ fromMm: [60, 75], toMm: [60, 60], widthMm: 4 }].map((p) => ({ ...p, fromMm: [60, 82] as const, toMm: [60, 66] as const })),
    });
    expect(made.bridges.map((b) => b.pinned)).toContain(true);
    expect(made.certificate.holds).toBe(true);
  });
  test('islands within islands hang together through one another', () => {
    const rings = unite([30, 22, 14].map((r) => takeAway(disc(60, 50, r), disc(60, 50, r - 4))));
    const made = make(rings);
    expect(made.islands).toHaveLength(3);
    expect(made.certificate).toMatchObject({ holds: true, pieces: 1 });
  });
});

describe('what is too thin', () => {
  test('a neck under the least width is found where it is', () => {
    // Two openings with 1 mm of paper between them, for 20 mm.
    const openings = unite([rectangle(20, 40, 20, 20), rectangle(41, 40, 20, 20)]);
    const found = certify(takeAway(rectangle(-20, -20, 160, 140), openings), sheet, paper);
    expect(found.holds).toBe(false);
    expect(found.faults[0].kind).toBe('neck');
    expect(found.faults[0].atMm[0]).toBeCloseTo(40.5, 0);
    expect(found.leastNeckMm).toBeGreaterThan(0.5);
    expect(found.leastNeckMm).toBeLessThan(1.5);
  });
  test.each([
    [2.05, true],
    [3, true],
    [1.9, false],
    [1.4, false],
    [0.6, false],
  ])('a neck of %s mm: holds %s', (gap, holds) => {
    const openings = unite([rectangle(20, 40, 20, 20), rectangle(40 + gap, 40, 20, 20)]);
    expect(certify(takeAway(rectangle(-20, -20, 160, 140), openings), sheet, paper).holds).toBe(holds);
  });
  test('an opening narrower than the knife can cut, and one that is wide enough', () => {
    const slit = (w: number): boolean => certify(takeAway(rectangle(-20, -20, 160, 140), strip([20, 20, 90, 70], w)), sheet, paper).holds;
    expect([slit(0.5), slit(0.9), slit(1.02)]).toEqual([false, false, true]);
  });
  test('points of stars and leaves are no faults', () => {
    const star: Region = {
      rings: [
        Float64Array.from(
          { length: 20 },
          (_, i) => (i % 2 ? 50 : 60) + ((i >> 1) % 2 ? 12 : 35) * (i % 2 ? Math.sin : Math.cos)(((i >> 1) * Math.PI) / 5),
        ),
      ],
    };
    const both = (side: 'window' | 'piece'): Stencil => make(star, { side });
    expect(both('window').certificate.holds).toBe(true);
    expect(both('piece').certificate.holds).toBe(true);
  });
  test('thin paper is made broader and thin openings wider, with a warning each', () => {
    const thin = unite([rectangle(20, 20, 20, 20), rectangle(41, 20, 20, 20), rectangle(20, 70, 60, 0.8)]);
    const made = make(thin);
    expect(made.certificate.holds).toBe(true);
    expect(made.problems.map((p) => p.code).sort()).toEqual(['stencil-strengthened', 'stencil-widened']);
    const [broader] = made.problems;
    const german = { language: 'de', units: 'mm' } as const;
    const said = (material: StencilRequest['material'], reader?: Reader): string =>
      inEnglish(make(thin, { material }).problems[0].message, reader);
    expect(inEnglish(broader.message)).toBe(
      'The stencil was too thin for its material (Coated paper) and was made broader in 1 place, at 40, 20\u00a0mm.',
    );
    expect(said(paper, german)).toMatch(
      /für ihr Material \(Gestrichenes Papier\) und wurde an 1 Stelle breiter gemacht, bei 40, 20\u00a0mm/,
    );
    expect(said(paper, { language: 'en', units: 'in' })).toMatch(/at 1\.\d{3}, 0\.\d{3}\u00a0in/);
    expect(said({ ...paper, name: asWritten('Coated paper') }, german)).toContain('(Coated paper)');
  });
  test('a hatching too fine for both is refused with the place', () => {
    const hatch = unite(Array.from({ length: 40 }, (_, i) => rectangle(20, 20 + i * 1.1, 60, 0.5)));
    const made = make(hatch);
    if (made.certificate.holds) {
      // If mending found a way, it must be a real one.
      expect(certify(made.paper, sheet, paper).holds).toBe(true);
    } else expect(made.problems.map((p) => p.code)).toContain('stencil-does-not-hold');
  });
});

describe('what only looks harmless', () => {
  const whole = (openings: Region): Stencil['certificate'] => certify(takeAway(rectangle(-20, -20, 160, 140), openings), sheet, paper);
  const block = rectangle(20, 20, 70, 60);
  test('a knob on a hair is a neck, a point that tapers is none', () => {
    const hair = unite([rectangle(50, 15, 0.6, 9), disc(50.3, 24, 1.2)]);
    expect(whole(takeAway(block, hair)).faults[0]).toMatchObject({ kind: 'neck' });
    const point: Region = { rings: [Float64Array.of(48, 15, 52, 15, 50, 27)] };
    expect(whole(takeAway(block, point)).holds).toBe(true);
  });
  test('a hair that does not taper is a tongue', () => {
    expect(whole(takeAway(block, rectangle(50, 15, 0.9, 12))).faults[0]).toMatchObject({ kind: 'tongue' });
  });
  test('two tips that nearly meet leave a neck, though discs reach everything', () => {
    const tips: Region = { rings: [Float64Array.of(20, 20, 60, 49.9, 20, 80), Float64Array.of(100, 20, 100, 80, 60.4, 49.9)] };
    expect(whole(tips).faults.some((f) => f.kind === 'neck' && Math.hypot(f.atMm[0] - 60.2, f.atMm[1] - 49.9) < 1)).toBe(true);
    expect(make(tips).certificate.holds).toBe(true);
  });
  test('an opening finer than any pixel is an opening', () => {
    expect(whole(unite([block, rectangle(95, 20, 0.04, 40)])).faults[0]).toMatchObject({ kind: 'opening' });
  });
  test('a hairline between neighbours is left out, not bridged; one of ink closes', () => {
    const made = make(unite([rectangle(20, 20, 30, 40), rectangle(50.3, 20, 30, 40)]));
    expect(made.problems.map((p) => p.code)).toEqual(['stencil-dropped']);
    expect(made.bridges).toEqual([]);
    const shut = make(unite([rectangle(20, 20, 30, 40), rectangle(50, 30, 30, 0.3)]));
    expect(shut.problems.map((p) => p.code)).toEqual(['stencil-closed']);
  });
  test('a bridge is as wide as asked', () => {
    for (const b of make(ring).bridges) expect(b.widthMm / paper.leastBridgeMm).toBeLessThan(1.06);
  });
});

describe('odd requests', () => {
  test('two discs that touch in a point are joined for good, not only to the eye (camera-reels)', () => {
    const made = make(unite([disc(40, 50, 15), disc(70, 50, 15)]), { side: 'piece' });
    expect(made.certificate.holds).toBe(true);
    expect(parts(made.paper)).toHaveLength(1);
  });
  test('a form outside the image prints nothing, and says so', () => {
    expect(make(rectangle(500, 500, 10, 10)).problems[0].code).toBe('stencil-prints-nothing');
    expect(make(rectangle(-50, -50, 500, 500), { side: 'piece' }).problems[0].code).toBe('stencil-prints-nothing');
  });
  test('a sheet without margin is made larger, and says so', () => {
    const made = make(ring, { sheet: aperture });
    expect(made.problems.map((p) => p.code)).toContain('stencil-margin-too-small');
    expect(made.certificate.holds).toBe(true);
  });
  test('the same request gives the same stencil', () => expect(make(ring)).toEqual(make(ring)));
  test('a form that reaches over the image is cut off there', () => {
    const made = make(place(ring, [{ xMm: 110, yMm: 50, angleDeg: 0, scale: 1.2, mirror: false }]));
    expect(regionBox(made.prints).maxX).toBeLessThanOrEqual(120.001);
    expect(made.certificate.holds).toBe(true);
  });
});

describe('work for the knife', () => {
  test('metres, corners and pieces of a square', () => {
    const made = make(rectangle(20, 20, 50, 50));
    expect(made.knife).toMatchObject({ corners: 4, pieces: 1, difficulty: 'easy' });
    expect(made.knife.metres).toBeCloseTo(0.2, 3);
    expect(cornersOf(made.cutLines).map((c) => Math.round(c.turnDeg))).toEqual([90, 90, 90, 90]);
  });
  test('a slower hand takes longer', () => {
    const slow = knifeWork(rectangle(0, 0, 100, 100), 3, { metresPerMinute: 0.1, secondsPerCorner: 10, secondsPerPiece: 20 });
    expect(slow.minutes).toBeCloseTo(4 + 40 / 60 + 1, 3);
  });
});
