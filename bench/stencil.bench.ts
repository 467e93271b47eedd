import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Clipper, FillRule } from 'clipper2-ts';
import { medianMs } from './row.ts';
import type { BenchRow } from './row.ts';
import { place, prepareDrawings, rasterize, readSvg, takeAway, boxRegion, toTrueSize, unite } from '../src/core/form/index.ts';
import { toMicrons } from '../src/core/form/polygons.ts';
import { certify, defaultMaterials, makeStencil } from '../src/core/stencil/index.ts';
import { nearDistance } from '../src/core/stencil/raster/edt.ts';
import { labelParts } from '../src/core/stencil/raster/label.ts';

export const title = 'Stencils at 0.25 mm: bridges, certificate, booleans';

interface Mat {
  delete(): void;
}
interface Vision {
  readonly Mat: new () => Mat;
  matFromArray(rows: number, cols: number, type: number, data: ArrayLike<number>): Mat;
  connectedComponents(image: Mat, labels: Mat, connectivity: number, type: number): number;
  distanceTransform(image: Mat, out: Mat, kind: number, maskSize: number): void;
  readonly CV_8U: number;
  readonly CV_32S: number;
  readonly DIST_L2: number;
  readonly DIST_MASK_PRECISE: number;
  onRuntimeInitialized?: () => void;
}

export async function run(): Promise<BenchRow[]> {
  await prepareDrawings(readFileSync('node_modules/@resvg/resvg-wasm/index_bg.wasm'));
  const loaded = createRequire(import.meta.url)('@techstark/opencv-js') as Vision | Promise<Vision>;
  const cv = loaded instanceof Promise ? await loaded : loaded;
  if (!cv.Mat)
    await new Promise<void>((resolve) => {
      cv.onRuntimeInitialized = resolve;
    });
  const rows: BenchRow[] = [];
  for (const [width, height] of [
    [200, 250],
    [500, 700],
  ]) {
    const aperture = { minX: 0, minY: 0, maxX: width, maxY: height };
    const sheet = { minX: -40, minY: -40, maxX: width + 40, maxY: height + 40 };
    const shapes = ['gear', 'bug', 'flower1', 'at', 'snow', 'tree'].map((name) => {
      const form = toTrueSize(readSvg(readFileSync(`node_modules/bootstrap-icons/icons/${name}.svg`, 'utf8'), name).region, {
        widthMm: width * 0.75,
      });
      return place(form, [{ xMm: width / 2, yMm: height / 2, angleDeg: 10, scale: 1, mirror: false }]);
    });
    const material = defaultMaterials[1];
    const size = `${width} × ${height} mm`;
    const six = (side: 'window' | 'piece'): Promise<number> =>
      medianMs(
        () => shapes.map((shape) => makeStencil({ shape, side, aperture, sheet, material, islands: 'bridge' })),
        width === 200 ? { least: 3, most: 9 } : { least: 1, most: 3 },
      );
    for (const side of ['window', 'piece'] as const) {
      const before = process.cpuUsage();
      const start = performance.now();
      const ms = await six(side);
      const { user, system } = process.cpuUsage(before);
      // On a busy machine the clock says more than the work: how much of the time was ours.
      const share = (user + system) / 1000 / (performance.now() - start);
      rows.push({
        name: `six ${side}s, bridges and certificate, ${size}`,
        medianMs: ms,
        note: `${width === 200 ? 'aim 500 ms; ' : ''}processor at work ${Math.round(share * 100)} % of that`,
      });
    }
    const paper = takeAway(boxRegion(sheet), shapes[0]);
    rows.push({
      name: `one certificate of the whole image, ${size}`,
      medianMs: await medianMs(() => certify(paper, sheet, material)),
    });
    const micron = shapes.map(toMicrons);
    rows.push({
      name: `union of six forms, ${size}`,
      medianMs: await medianMs(() => unite(shapes)),
      rivalName: 'the polygon library alone',
      rivalMs: await medianMs(() => Clipper.union(micron.flat(), FillRule.NonZero)),
    });
    const grid = { originXMm: 0, originYMm: 0, mmPerPx: 0.25, width: width * 4, height: height * 4 };
    const mask = rasterize(shapes[0], grid).map((v) => 1 - v);
    const image = cv.matFromArray(grid.height, grid.width, cv.CV_8U, mask),
      out = new cv.Mat();
    rows.push({
      name: `labels, ${size}`,
      medianMs: await medianMs(() => labelParts(mask, grid.width, grid.height, 1, false)),
      rivalName: 'OpenCV connectedComponents',
      rivalMs: await medianMs(() => cv.connectedComponents(image, out, 4, cv.CV_32S)),
    });
    rows.push({
      name: `near distances (6 px), ${size}`,
      medianMs: await medianMs(() => nearDistance(mask, grid.width, grid.height, 1, 6)),
      rivalName: 'OpenCV distanceTransform',
      rivalMs: await medianMs(() => cv.distanceTransform(image, out, cv.DIST_L2, cv.DIST_MASK_PRECISE)),
    });
    image.delete();
    out.delete();
  }
  const shape = place(
    toTrueSize(readSvg(readFileSync('node_modules/bootstrap-icons/icons/gear.svg', 'utf8'), 'gear').region, { widthMm: 170 }),
    [{ xMm: 90, yMm: 120, angleDeg: 0, scale: 1, mirror: false }],
  );
  rows.push({
    name: 'raster of 180 × 240 mm at 300 ppi (6 Mpx)',
    medianMs: await medianMs(() => rasterize(shape, { originXMm: 0, originYMm: 0, mmPerPx: 25.4 / 300, width: 2126, height: 2835 })),
  });
  return rows;
}
