import { describe, expect, test } from 'vitest';
import type { Region } from '../form/index.ts';
import { codeAreas, layerCodes, proofGrid, withLayer } from './codes.ts';
import { meetingOverlap } from './meeting.ts';
import { overlapIndex, packRgb, paint, paletteOf } from './paint.ts';
import { shiftCodes } from './shift.ts';

const polygon = (...points: number[]): Region => ({ rings: [Float64Array.from(points)] });
const box = (x: number, y: number, w: number, h: number): Region => polygon(x, y, x + w, y, x + w, y + h, x, y + h);

describe('the raster of a proof', () => {
  test('is 300 pixels an inch unless asked otherwise, coarser from 16 million pixels on', () => {
    expect(proofGrid(254, 127)).toEqual({ originXMm: 0, originYMm: 0, mmPerPx: 25.4 / 300, width: 3000, height: 1500 });
    expect(proofGrid(254, 127, 100)).toMatchObject({ mmPerPx: 0.254, width: 1000, height: 500 });
    expect(proofGrid(2000, 2000)).toMatchObject({ mmPerPx: 0.5, width: 4000, height: 4000 });
    expect(proofGrid(0.01, 0.01)).toMatchObject({ width: 1, height: 1 });
  });

  test('bits of layers, moved by what they fell off; areas in mm²', () => {
    const grid = { originXMm: 0, originYMm: 0, mmPerPx: 0.5, width: 20, height: 16 };
    const codes = layerCodes(
      [
        { bit: 0, prints: box(0, 0, 4, 4) },
        { bit: 7, prints: box(2, 2, 4, 4), shiftMm: [1, -2] },
      ],
      grid,
    );
    // The second lies at 3..7, 0..4.
    expect([...codeAreas(codes)].flatMap((area, code) => (area > 0 ? [[code, area]] : []))).toEqual([
      [0, 80 - 28],
      [1, 12],
      [128, 12],
      [129, 4],
    ]);
    const back = withLayer(codes, { bit: 7, prints: box(2, 2, 4, 4) });
    expect(back.data).toEqual(
      layerCodes(
        [
          { bit: 0, prints: box(0, 0, 4, 4) },
          { bit: 7, prints: box(2, 2, 4, 4) },
        ],
        grid,
      ).data,
    );
    expect(withLayer(back, { bit: 7, prints: box(2, 2, 4, 4), shiftMm: [1, -2] }).data).toEqual(codes.data);
    expect(back).toMatchObject({ width: 20, height: 16, mmPerPx: 0.5 });
  });
});

describe('colours of codes', () => {
  test('a word holds red lowest and no transparency', () => {
    expect(packRgb(1, 2, 3)).toBe(0xff030201);
    expect(packRgb(2, 4, 6)).toBe(0xff060402);
    expect(packRgb(255, 255, 255)).toBe(0xffffffff);
  });

  test('bits in laydown order, as far as it was printed', () => {
    expect([
      overlapIndex(0b100, [2, 0]),
      overlapIndex(0b001, [2, 0]),
      overlapIndex(0b101, [2, 0]),
      overlapIndex(0b101, [2, 0], 1),
      overlapIndex(0b010, [2, 0]),
    ]).toEqual([1, 2, 3, 1, 0]);
    const rgb = Uint8Array.from([9, 9, 9, 10, 20, 30, 40, 50, 60, 70, 80, 90]);
    const palette = paletteOf(rgb, [1, 0]);
    expect([palette[0], palette[2], palette[1], palette[3], palette[255]]).toEqual([
      packRgb(9, 9, 9),
      packRgb(10, 20, 30),
      packRgb(40, 50, 60),
      packRgb(70, 80, 90),
      packRgb(70, 80, 90),
    ]);
    expect(paletteOf(rgb, [1, 0], 1)[3]).toBe(packRgb(10, 20, 30));
  });

  test('long stretches, short ones and dots are painted alike', () => {
    const palette = Uint32Array.from({ length: 256 }, (_, code) => code + 1000);
    for (const stretches of [[40, 3, 200, 16, 15, 60], [1, 2, 1, 3, 1], [500], [], [300, 1]]) {
      const data = Uint8Array.from(stretches.flatMap((length, i) => new Array<number>(length).fill(i + 1)));
      const out = new Uint32Array(data.length + 1);
      paint({ width: data.length, height: 1, mmPerPx: 1, data }, palette, out);
      expect([...out]).toEqual([...data].map((code) => code + 1000).concat(0));
      paint(
        { width: data.length, height: 1, mmPerPx: 1, data },
        palette.map((v) => v + 1),
        out,
      );
      expect([...out]).toEqual([...data].map((code) => code + 1001).concat(0));
    }
  });
});

describe('a sheet on which layers fell off', () => {
  const one = (width: number, height: number, x: number, y: number) => ({
    width,
    height,
    mmPerPx: 0.5,
    data: Uint8Array.from({ length: width * height }, (_, p) => (p === y * width + x ? 2 : 0)),
  });
  const where = (data: Uint8Array): number[] => Array.from(data.keys()).filter((p) => data[p] !== 0);
  const still = { bit: 1, dxMm: 0, dyMm: 0, angleDeg: 0 };

  test('a dot goes where it is moved, in millimetres, and off the sheet is gone', () => {
    const dot = one(9, 7, 3, 2);
    expect(where(shiftCodes(dot, [{ ...still, dxMm: 1, dyMm: 0.5 }]).data)).toEqual([3 * 9 + 5]);
    expect(where(shiftCodes(dot, [{ ...still, dxMm: -1.5, dyMm: -1 }]).data)).toEqual([0]);
    expect(where(shiftCodes(dot, [{ ...still, dxMm: -2 }]).data)).toEqual([]);
    expect(where(shiftCodes(dot, [{ ...still, dyMm: -1.5 }]).data)).toEqual([]);
    expect(where(shiftCodes(dot, [{ ...still, dxMm: 3 }]).data)).toEqual([]);
    expect(where(shiftCodes(dot, [{ ...still, dyMm: 2.5 }]).data)).toEqual([]);
    expect(where(shiftCodes(dot, [{ ...still, bit: 0 }]).data)).toEqual([]);
  });

  test('by half a pixel and a little it goes to the next; the first row and column are of the sheet, and no row runs on into the next', () => {
    const dot = one(9, 7, 3, 2);
    expect(where(shiftCodes(dot, [{ ...still, dxMm: 0.26 }]).data)).toEqual([2 * 9 + 4]);
    expect(where(shiftCodes(dot, [{ ...still, dyMm: 0.26 }]).data)).toEqual([3 * 9 + 3]);
    expect(where(shiftCodes(dot, [{ ...still, dxMm: 0.24, dyMm: 0.24 }]).data)).toEqual([2 * 9 + 3]);
    expect(where(shiftCodes(one(7, 7, 4, 1), [{ ...still, angleDeg: 90, dxMm: 0.26, dyMm: 0.24 }]).data)).toEqual([4 * 7 + 6]);
    expect(where(shiftCodes(one(9, 7, 0, 0), [still]).data)).toEqual([0]);
    expect(where(shiftCodes(one(9, 7, 0, 2), [{ ...still, dxMm: -0.5 }]).data)).toEqual([]);
    // Far from the middle half a degree is nearly a pixel.
    expect(where(shiftCodes(one(201, 201, 0, 100), [{ ...still, angleDeg: 90 }]).data)).toEqual([100]);
  });

  test('a quarter turn clockwise takes the top to the right, about the middle; then it is moved', () => {
    const top = one(7, 7, 4, 1);
    expect(where(shiftCodes(top, [{ ...still, angleDeg: 90 }]).data)).toEqual([4 * 7 + 5]);
    expect(where(shiftCodes(top, [{ ...still, angleDeg: -90 }]).data)).toEqual([2 * 7 + 1]);
    expect(where(shiftCodes(top, [{ ...still, angleDeg: 180 }]).data)).toEqual([5 * 7 + 2]);
    expect(where(shiftCodes(top, [{ ...still, angleDeg: 90, dxMm: 0.5, dyMm: -1 }]).data)).toEqual([2 * 7 + 6]);
    expect(where(shiftCodes(one(9, 5, 4, 0), [{ ...still, angleDeg: 90 }]).data)).toEqual([2 * 9 + 6]);
  });
});

describe('seams', () => {
  const inside =
    (points: readonly number[]) =>
    (x: number, y: number): boolean => {
      // By winding of a convex shape.
      let side = 0;
      for (let i = 0, j = points.length - 2; i < points.length; j = i, i += 2) {
        const turn = (points[i] - points[j]) * (y - points[j + 1]) - (points[i + 1] - points[j + 1]) * (x - points[j]);
        if (turn * side < 0) return false;
        side = turn;
      }
      return true;
    };
  const left = [0, 0, 30, 0, 30, 40, 0, 40];
  const meet = (points: readonly number[], a: readonly number[] = left): number | null =>
    meetingOverlap(polygon(...a), polygon(...points), inside(points));
  const beside = (x: number, y = 0, h = 40): readonly number[] => [x, y, x + 30, y, x + 30, y + h, x, y + h];

  // Common practice: more than 2 mm of paper is no seam, nor more than 5 mm of overlap.
  test('paper between them up to 2 mm, overlap up to 5', () => {
    expect([meet(beside(31.9)), meet(beside(32.1)), meet(beside(25.1)), meet(beside(24.9))]).toEqual([
      0,
      null,
      expect.closeTo(4.9, 6),
      null,
    ]);
  });

  test('ten millimetres of edge in common at least', () => {
    expect(meet(beside(29, 0, 13.5))).toBeCloseTo(1, 6);
    expect(meet(beside(29, 0, 8.5))).toBeNull();
  });

  test('edges within about 20° of one another; the least overlap but for a twentieth of the seam decides', () => {
    // From 1 mm of overlap at the top to 5 at the foot: a twentieth down it is 1.2.
    const slant = [29, -2, 60, -2, 60, 42, 25, 42];
    const seam = meet(slant)!;
    expect(seam).toBeGreaterThan(1.1);
    expect(seam).toBeLessThan(1.6);
    // Turned by 18° about the middle of the seam it is still one, by 23° not.
    const turned = (deg: number): readonly number[] => {
      const t = Math.tan((deg * Math.PI) / 180) * 30;
      return [29 + t, -10, 80, -10, 80, 50, 29 - t, 50];
    };
    expect(meet(turned(4))).not.toBeNull();
    expect(meet(turned(23))).toBeNull();
  });

  test('the one on the left or above, or whichever is looked at first', () => {
    const upper = [0, 0, 40, 0, 40, 30, 0, 30];
    const lower = [0, 28.5, 40, 28.5, 40, 60, 0, 60];
    expect(meet(lower, upper)).toBeCloseTo(1.5, 6);
    expect(meet(upper, lower)).toBeCloseTo(1.5, 6);
    expect(meet(left, beside(28.5))).toBeCloseTo(1.5, 6);
    // Wherever on the sheet.
    const far = (points: readonly number[]): number[] => points.map((v) => v + 333);
    expect(meet(far(beside(28.5)), far(left))).toBeCloseTo(1.5, 6);
    expect(
      meet(
        beside(28.5).map((v) => v - 200),
        left.map((v) => v - 200),
      ),
    ).toBeCloseTo(1.5, 6);
    // A slanting seam, long against the cells it is looked up in.
    const [a, b] = [
      [0, 0, 100, 100, 60, 140, -40, 40],
      [0, 0, 40, -40, 140, 60, 100, 100],
    ];
    expect(
      meet(
        b.map((v, i) => v + (i % 2 ? 1 : -1)),
        a,
      ),
    ).toBeCloseTo(Math.SQRT2, 6);
  });
});
