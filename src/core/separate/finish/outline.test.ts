import { cornersOf } from '../../stencil/index.ts';
import { expect, test } from 'vitest';
import { rasterizeInto, regionArea, regionPerimeter } from '../../form/index.ts';
import { outlinesOf } from './outline.ts';
import { traceArcs } from './trace.ts';

const size = 80,
  mmPerPx = 0.25;
const grid = { originXMm: 0, originYMm: 0, mmPerPx, width: size, height: size };

function painted(code: (x: number, y: number) => number): Uint8Array {
  return Uint8Array.from({ length: size * size }, (_, i) => code((i % size) + 0.5, Math.floor(i / size) + 0.5));
}

test('an edge that three layers share is one arc, so it stays one edge when it is smoothed', () => {
  const arcs = traceArcs(
    painted((x) => (x < 40 ? 0b111 : 0)),
    size,
    size,
  );
  const inner = arcs.filter((arc) => arc.points[0] === 40 && arc.points[arc.points.length - 2] === 40);
  expect(inner).toHaveLength(1);
  const regions = outlinesOf(
    painted((x, y) => (x + 6 * Math.sin(y / 9) < 40 ? 0b111 : 0)),
    size,
    size,
    mmPerPx,
    3,
  );
  expect(regions[1].rings.map((r) => [...r])).toEqual(regions[0].rings.map((r) => [...r]));
});

test('a disc comes back with its own area and a smooth outline, not a staircase', () => {
  const [region] = outlinesOf(
    painted((x, y) => (Math.hypot(x - 40, y - 40) < 25 ? 1 : 0)),
    size,
    size,
    mmPerPx,
    1,
  );
  const radius = 25 * mmPerPx;
  // On average the outline runs within half its tolerance of 0.1 mm.
  expect(Math.abs(regionArea(region) - Math.PI * radius ** 2) / regionPerimeter(region)).toBeLessThan(0.05);
  expect(regionPerimeter(region) / (2 * Math.PI * radius)).toBeGreaterThan(0.99);
  expect(regionPerimeter(region) / (2 * Math.PI * radius)).toBeLessThan(1.03);
});

test('outlines drawn again on the raster leave the masks as they were, but for single pixels along edges', () => {
  const codes = painted(
    (x, y) => (Math.hypot(x - 30, y - 30) < 20 ? 1 : 0) | (Math.hypot(x - 48, y - 44) < 22 ? 2 : 0) | (x + y < 60 ? 4 : 0),
  );
  const again = new Uint8Array(codes.length);
  outlinesOf(codes, size, size, mmPerPx, 3).forEach((region, bit) => rasterizeInto(again, bit, region, grid));
  const moved = codes.reduce((sum, code, i) => sum + (code === again[i] ? 0 : 1), 0);
  expect(moved).toBeLessThan(codes.length * 0.004);
});

test('two patches that touch at a corner stay two patches', () => {
  const [region] = outlinesOf(
    painted((x, y) => (x < 40 === y < 40 ? 1 : 0)),
    size,
    size,
    mmPerPx,
    1,
  );
  expect(regionArea(region)).toBeCloseTo((size * mmPerPx) ** 2 / 2, 0);
});

test('ink that runs off the image ends exactly at its border', () => {
  const [region] = outlinesOf(
    painted(() => 1),
    size,
    size,
    mmPerPx,
    1,
  );
  expect(regionArea(region)).toBeCloseTo((size * mmPerPx) ** 2, 6);
  expect(
    outlinesOf(
      painted(() => 0),
      size,
      size,
      mmPerPx,
      1,
    )[0].rings,
  ).toHaveLength(0);
});

test('where the edges of two layers nearly meet, both come out as lines a knife can follow', () => {
  const codes = painted(
    (x, y) => (Math.hypot(x - 40, y - 40) < 30 ? 1 : 0) | (Math.hypot(x - 40.4, y - 39.7) < 29.7 ? 2 : 0) | (y < 0.37 * x + 20.2 ? 4 : 0),
  );
  const regions = outlinesOf(codes, size, size, mmPerPx, 3);
  // Only where the straight edge runs off the image is there a corner; a circle has none.
  expect(regions.map((region) => cornersOf(region).length).slice(0, 2)).toEqual([0, 0]);
  expect(cornersOf(regions[2])).toHaveLength(4);
  for (const [bit, region] of regions.slice(0, 2).entries()) {
    const radius = (bit === 0 ? 30 : 29.7) * mmPerPx;
    expect(Math.abs(regionPerimeter(region) / (2 * Math.PI * radius) - 1)).toBeLessThan(0.01);
  }
});
