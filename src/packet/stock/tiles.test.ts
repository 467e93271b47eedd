import fc from 'fast-check';
import { expect, test } from 'vitest';
import { seams, tile } from './tiles.ts';

const length = fc.double({ min: 20, max: 1500, noNaN: true });
const room = fc.tuple(fc.double({ min: 120, max: 400, noNaN: true }), fc.double({ min: 120, max: 400, noNaN: true }));

test('sheets joined together hold the whole drawing, none larger than the printer reaches', () => {
  fc.assert(
    fc.property(length, length, room, fc.double({ min: -50, max: 50, noNaN: true }), (width, height, reach, from) => {
      const tiling = tile({ extent: { minX: from, minY: -from, maxX: from + width, maxY: height - from } }, reach);
      const [w, h] = tiling.turned ? [reach[1], reach[0]] : reach;
      for (const { box } of tiling.tiles) {
        expect(box.maxX - box.minX).toBeLessThanOrEqual(w + 1e-6);
        expect(box.maxY - box.minY).toBeLessThanOrEqual(h + 1e-6);
      }
      expect(Math.min(...tiling.tiles.map((t) => t.box.minX))).toBeCloseTo(from, 6);
      expect(Math.max(...tiling.tiles.map((t) => t.box.maxX))).toBeCloseTo(from + width, 6);
      expect(Math.max(...tiling.tiles.map((t) => t.box.maxY))).toBeCloseTo(height - from, 6);
      expect(tiling.tiles.length).toBe(tiling.columns * tiling.rows);
    }),
  );
});

test('neighbours overlap by ten millimetres and their seam lies in the middle of it', () => {
  const tiling = tile({ extent: { minX: 0, minY: 0, maxX: 300, maxY: 300 } }, [180, 250]);
  expect([tiling.columns, tiling.rows]).toEqual([2, 2]);
  const [a, b] = tiling.tiles;
  expect(a.box.maxX - b.box.minX).toBeCloseTo(10, 9);
  expect(seams(tiling).x).toEqual([150]);
  expect(tiling.tiles.map((t) => t.name)).toEqual(['A1', 'A2', 'B1', 'B2']);
});

test('a wide drawing is turned when that saves a sheet', () => {
  expect(tile({ extent: { minX: 0, minY: 0, maxX: 250, maxY: 170 } }, [186, 258])).toMatchObject({ turned: true, columns: 1, rows: 1 });
  expect(tile({ extent: { minX: 0, minY: 0, maxX: 170, maxY: 250 } }, [186, 258])).toMatchObject({ turned: false, columns: 1, rows: 1 });
});

test('what fits one sheet without its margins is not split for them: an image of 180 × 240 mm on one upright A4', () => {
  const [width, height] = [180, 240];
  const extent = { minX: -13, minY: -13, maxX: width + 13, maxY: height + 13 };
  const least = { minX: 0, minY: 0, maxX: width, maxY: height };
  expect(tile({ extent }, [186, 256]).tiles.length).toBeGreaterThan(1);
  const one = tile({ extent, least }, [186, 256]);
  expect(one).toMatchObject({ turned: false, columns: 1, rows: 1 });
  fc.assert(
    fc.property(room, fc.double({ min: 0, max: 40, noNaN: true }), fc.double({ min: 0, max: 40, noNaN: true }), (reach, left, right) => {
      const around = { minX: -left, minY: -right, maxX: width + right, maxY: height + left };
      const tiling = tile({ extent: around, least }, reach);
      if (tiling.tiles.length > 1) return;
      const [{ box }] = tiling.tiles;
      expect(Math.max(box.minX - least.minX, box.minY - least.minY, least.maxX - box.maxX, least.maxY - box.maxY)).toBeLessThan(0.001);
      expect(Math.min(box.minX - around.minX, box.minY - around.minY, around.maxX - box.maxX, around.maxY - box.maxY)).toBeGreaterThan(
        -0.001,
      );
      expect(box.maxX - box.minX).toBeLessThanOrEqual((tiling.turned ? reach[1] : reach[0]) + 1e-6);
      expect(box.maxY - box.minY).toBeLessThanOrEqual((tiling.turned ? reach[0] : reach[1]) + 1e-6);
    }),
  );
});

test('a sheet with no line on it is marked, and no other', () => {
  const extent = { minX: 0, minY: 0, maxX: 500, maxY: 700 };
  const tiling = tile({ extent, drawnIn: (box) => box.minX < 100 && box.minY < 100 }, [186, 256]);
  expect(tiling.tiles.filter((one) => !one.empty).map((one) => one.name)).toEqual(['A1']);
});
