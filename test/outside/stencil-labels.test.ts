// Counts of pieces, holes and areas of 300 shapes against OpenCV (connectedComponentsWithStats, distanceTransform with a
// 5 × 5 mask and the exact precise mask), built for JavaScript by @techstark/opencv-js (Apache-2.0).
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { beforeAll, describe, expect, test } from 'vitest';
import {
  offsetRegion,
  parts,
  prepareDrawings,
  rasterize,
  readSvg,
  regionArea,
  regionPerimeter,
  toTrueSize,
} from '../../src/core/form/index.ts';
import type { Region } from '../../src/core/form/index.ts';
import { nearDistance } from '../../src/core/stencil/raster/edt.ts';
import { labelParts } from '../../src/core/stencil/raster/label.ts';

interface Mat {
  readonly data: Uint8Array;
  readonly data32F: Float32Array;
  readonly data32S: Int32Array;
  delete(): void;
}
interface Vision {
  readonly Mat: new () => Mat;
  matFromArray(rows: number, cols: number, type: number, data: ArrayLike<number>): Mat;
  connectedComponentsWithStats(image: Mat, labels: Mat, stats: Mat, centroids: Mat, connectivity: number, type: number): number;
  distanceTransform(image: Mat, out: Mat, kind: number, maskSize: number): void;
  readonly CV_8U: number;
  readonly CV_32S: number;
  readonly DIST_L2: number;
  readonly DIST_MASK_PRECISE: number;
  onRuntimeInitialized?: () => void;
}

const size = 220;
const grid = { originXMm: -2, originYMm: -2, mmPerPx: 0.25, width: size, height: size };
let cv: Vision;
const shapes: { name: string; region: Region }[] = [];

beforeAll(async () => {
  await prepareDrawings(readFileSync('node_modules/@resvg/resvg-wasm/index_bg.wasm'));
  const loaded = createRequire(import.meta.url)('@techstark/opencv-js') as Vision | Promise<Vision>;
  cv = loaded instanceof Promise ? await loaded : loaded;
  if (!cv.Mat)
    await new Promise<void>((resolve) => {
      cv.onRuntimeInitialized = resolve;
    });
  const folder = 'node_modules/bootstrap-icons/icons/';
  const names = readdirSync(folder).filter((n) => n.endsWith('.svg'));
  for (let i = 0; shapes.length < 300 && i < names.length; i += 6) {
    const region = toTrueSize(readSvg(readFileSync(folder + names[i], 'utf8'), names[i]).region, { widthMm: 50, heightMm: 50 });
    shapes.push({ name: names[i], region });
  }
}, 120_000);

describe('a second opinion on 300 shapes', () => {
  const counted = (data: Uint8Array, side: number, connectivity: 4 | 8): { count: number; area: number } => {
    const image = cv.matFromArray(side, side, cv.CV_8U, data),
      labels = new cv.Mat(),
      stats = new cv.Mat(),
      centroids = new cv.Mat();
    const count = cv.connectedComponentsWithStats(image, labels, stats, centroids, connectivity, cv.CV_32S) - 1;
    let area = 0;
    for (let i = 1; i <= count; i++) area += stats.data32S[i * 5 + 4];
    for (const m of [image, labels, stats, centroids]) m.delete();
    return { count, area };
  };
  const fine = { originXMm: -2, originYMm: -2, mmPerPx: 0.05, width: 1080, height: 1080 };
  test('pieces, holes and areas', () => {
    expect(shapes).toHaveLength(300);
    const closer: { name: string; region: Region }[] = [];
    for (const { name, region } of shapes) {
      const mask = rasterize(region, grid);
      const there = counted(mask, size, 8),
        gaps = counted(
          mask.map((v) => 1 - v),
          size,
          4,
        );
      expect([name, labelParts(mask, size, size, 1, true).count]).toEqual([name, there.count]);
      expect([name, labelParts(mask, size, size, 0, false).count]).toEqual([name, gaps.count]);
      // A pixel counts when its centre is inside: at most half a pixel along the whole outline.
      expect(Math.abs(there.area * 0.0625 - regionArea(region))).toBeLessThan(0.125 * regionPerimeter(region));
      const outlineParts = parts(region).length;
      if (there.count !== outlineParts || gaps.count - 1 !== region.rings.length - outlineParts) closer.push({ name, region });
    }
    // A quarter of a millimetre can't tell very near pieces apart; a twentieth can. Pieces that touch in a point are drawn
    // apart first.
    expect(closer.length).toBeLessThan(15);
    for (const { name, region: drawn } of closer) {
      const region = offsetRegion(drawn, -0.04);
      const mask = rasterize(region, fine);
      const pieces = parts(region).length;
      const there = counted(mask, 1080, 4).count,
        gaps =
          counted(
            mask.map((v) => 1 - v),
            1080,
            8,
          ).count - 1;
      expect([name, there, gaps]).toEqual([name, pieces, region.rings.length - pieces]);
    }
  });
  test('distances to the edge', () => {
    for (const { region } of shapes.slice(0, 60)) {
      const mask = rasterize(region, grid);
      const image = cv.matFromArray(size, size, cv.CV_8U, mask),
        out = new cv.Mat();
      cv.distanceTransform(image, out, cv.DIST_L2, cv.DIST_MASK_PRECISE);
      const ours = nearDistance(mask, size, size, 1, 60);
      let worst = 0;
      for (let p = 0; p < mask.length; p++) worst = Math.max(worst, Math.abs(Math.sqrt(ours[p]) - Math.min(60, out.data32F[p])));
      expect(worst).toBeLessThan(0.001);
      image.delete();
      out.delete();
    }
  });
});
