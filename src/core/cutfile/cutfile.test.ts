import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pathData, rectangle, takeAway, unite } from '../form/index.ts';
import type { Region } from '../form/index.ts';
import { inEnglish, refusalOf } from '../../../test/said.ts';
import { cornersOf, cutOrder, defaultMaterials, makeStencil, ridgeWarnings } from '../stencil/index.ts';
import { certifyWritten, layOnStock, writePaths } from './index.ts';
import type { ToCut } from './index.ts';

const paper = defaultMaterials[1],
  film = defaultMaterials[3];

describe('cutting', () => {
  test('inside before outside', () => {
    const nested = unite([
      takeAway(rectangle(0, 0, 100, 100), rectangle(10, 10, 80, 80)),
      rectangle(40, 40, 20, 20),
      rectangle(200, 0, 5, 5),
    ]);
    const order = cutOrder(nested);
    const at = (size: number): number =>
      order.findIndex((i) => Math.round(Math.max(...nested.rings[i]) - Math.min(...nested.rings[i])) === size);
    expect(order).toHaveLength(4);
    expect(at(20)).toBeLessThan(at(80));
    expect(at(80)).toBeLessThan(at(100));
  });
  test('corners into the paper are told from those of what drops out', () => {
    // A sheet with an L-shaped hole: five of its corners point into the paper, the sixth is a corner of paper.
    const hole = unite([rectangle(20, 20, 40, 20), rectangle(20, 20, 20, 40)]);
    const made = makeStencil({
      shape: hole,
      side: 'window',
      aperture: rectangle(0, 0, 100, 100),
      sheet: { minX: -20, minY: -20, maxX: 120, maxY: 120 },
      material: paper,
      islands: 'bridge',
    });
    const corners = cornersOf(made.cutLines);
    expect(corners.map((c) => Math.round(c.turnDeg))).toEqual([90, 90, 90, 90, 90, 90]);
    expect(corners.filter((c) => !c.inner).map((c) => c.atMm)).toEqual([[40, 40]]);
  });
  test('paths are written in the order in which to cut them', () => {
    const made = makeStencil({
      shape: takeAway(rectangle(10, 10, 70, 70), rectangle(25, 25, 40, 40)),
      side: 'window',
      aperture: rectangle(0, 0, 100, 100),
      sheet: { minX: -20, minY: -20, maxX: 120, maxY: 120 },
      material: paper,
      islands: 'loose',
    });
    const { outlines, certificate } = writePaths(made.cutLines, made, paper);
    expect(certificate.holds).toBe(true);
    expect(outlines.map((o) => o[0].points.every((v) => v > 20 && v < 70))).toEqual([true, false]);
  });
  test('a file that a slip has spoiled is not certified, and the place is named', () => {
    const made = makeStencil({
      shape: rectangle(20, 20, 40, 40),
      side: 'window',
      aperture: { minX: 0, minY: 0, maxX: 100, maxY: 100 },
      sheet: { minX: -20, minY: -20, maxX: 120, maxY: 120 },
      material: paper,
      islands: 'bridge',
    });
    const d = pathData(made.cutLines);
    expect(certifyWritten(d, made, paper).holds).toBe(true);
    const spoiled = certifyWritten(`${d}M61 20L80 20L80 60L61 60Z`, made, paper);
    expect(spoiled.holds).toBe(false);
    expect(spoiled.faults[0]).toMatchObject({ kind: 'neck' });
    expect(spoiled.faults[0].atMm[0]).toBeCloseTo(60.5, 0);
    const ring = certifyWritten(`${d}M30 30L50 30L50 50L30 50Z`, made, paper);
    expect(ring).toMatchObject({ holds: false, pieces: 2 });
  });
});

describe('stock', () => {
  const box = (t: ToCut, turned: boolean): [number, number] => (turned ? [t.heightMm, t.widthMm] : [t.widthMm, t.heightMm]);
  test('nothing overlaps or hangs over, and grain is respected', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({ widthMm: fc.integer({ min: 20, max: 280 }), heightMm: fc.integer({ min: 20, max: 380 }), mayTurn: fc.boolean() }),
          { minLength: 1, maxLength: 14 },
        ),
        (sizes) => {
          const things = sizes.map((s, i): ToCut => ({ id: `t${i}`, ...s }));
          const stock = { widthMm: 500, heightMm: 700, marginMm: 5, gapMm: 4 };
          const laid = layOnStock(things, stock);
          expect(laid).toHaveLength(things.length);
          const boxes = laid.map((l) => {
            const thing = things.find((t) => t.id === l.id)!;
            if (l.turned) expect(thing.mayTurn).toBe(true);
            const [w, h] = box(thing, l.turned);
            expect(l.xMm >= 5 && l.yMm >= 5 && l.xMm + w <= 495.001 && l.yMm + h <= 695.001).toBe(true);
            return { ...l, w, h };
          });
          for (const a of boxes)
            for (const b of boxes)
              if (a !== b && a.sheet === b.sheet)
                expect(
                  a.xMm + a.w + 3.999 <= b.xMm ||
                    b.xMm + b.w + 3.999 <= a.xMm ||
                    a.yMm + a.h + 3.999 <= b.yMm ||
                    b.yMm + b.h + 3.999 <= a.yMm,
                ).toBe(true);
        },
      ),
      { numRuns: 60 },
    );
  });
  test('four quarters fill one sheet', () => {
    const quarter = (i: number): ToCut => ({ id: `q${i}`, widthMm: 100, heightMm: 150, mayTurn: false });
    expect(
      Math.max(...layOnStock([0, 1, 2, 3].map(quarter), { widthMm: 200, heightMm: 300, marginMm: 0, gapMm: 0 }).map((l) => l.sheet)),
    ).toBe(1);
  });
  test('no stencil is turned so that fewer fit: four of 250 × 310 mm on 500 × 700', () => {
    const laid = layOnStock(
      [0, 1, 2, 3].map((i): ToCut => ({ id: `s${i}`, widthMm: 250, heightMm: 310, mayTurn: true })),
      { widthMm: 500, heightMm: 700, marginMm: 0, gapMm: 0 },
    );
    expect(laid.every((l) => l.sheet === 1 && !l.turned)).toBe(true);
  });
  test('what is larger than the stock is said', () =>
    expect(
      refusalOf(() =>
        layOnStock([{ id: 'kelp', widthMm: 900, heightMm: 100, mayTurn: true }], { widthMm: 500, heightMm: 700, marginMm: 5, gapMm: 4 }),
      ),
    ).toMatch(/“kelp” \(900 × 100\u00a0mm\) does not fit on a sheet of 500 × 700\u00a0mm/));
});

describe('ridges', () => {
  const layer = (id: string, prints: Region, material = film) => ({ id, name: id, prints, material });
  const half = rectangle(0, 0, 50, 100),
    other = rectangle(30, 0, 70, 100);
  test('a later layer over the edge of a film stencil is warned of, with the length', () => {
    const [found] = ridgeWarnings([layer('kelp', half), layer('tide', other)]);
    expect(found.code).toBe('ridge-crossed');
    expect(inEnglish(found.message)).toContain('tide along 140\u00a0mm');
    expect(found.path).toBe('layers[#kelp]');
  });
  test('thin paper, or layers apart, are no matter', () => {
    expect(ridgeWarnings([layer('kelp', half, paper), layer('tide', other)])).toEqual([]);
    expect(ridgeWarnings([layer('kelp', half), layer('tide', rectangle(60, 0, 20, 20))])).toEqual([]);
  });
});
