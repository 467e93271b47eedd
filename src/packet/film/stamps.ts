import { makeShape, mapRegion, rasterize, regionBox, type Region } from '../../core/form/index.ts';

/** A patch of black and bare that stands outside the image. */
export interface Stamp {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** A shape on a film of so many pixels a mm. */
export function stampOf(perMm: number, region: Region, xMm: number, yMm: number, wMm: number, hMm: number): Stamp {
  const px = (mm: number): number => Math.round(mm * perMm);
  const grid = { originXMm: 0, originYMm: 0, mmPerPx: 1 / perMm, width: px(wMm), height: px(hMm) };
  return { x: px(xMm), y: px(yMm), width: grid.width, height: grid.height, data: rasterize(region, grid) };
}

/** A line of text as shapes, and where it stands. */
export interface Line {
  readonly region: Region;
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** A line of text as shapes; smaller where it would not go into its room. */
export function textLine(words: string, capMm: number, x: number, y: number, room = 100): Line {
  const shape = (capHeightMm: number): Region =>
    makeShape({ kind: 'letters', text: words, capHeightMm, weight: 'semibold', bridgeMm: 0, spaceMm: 0 }).region;
  const wide = widthOf(shape(capMm));
  const region = wide > room ? shape((capMm * room) / wide) : shape(capMm);
  const box = regionBox(region);
  return {
    region: mapRegion(region, (px, py) => [px - box.minX, py - box.minY]),
    x,
    y,
    w: widthOf(region) + 0.1,
    h: box.maxY - box.minY + 0.1,
  };
}

function widthOf(region: Region): number {
  const box = regionBox(region);
  return Math.max(0, box.maxX - box.minX);
}

/** How wide a register mark is. */
export const markMm = 7;
const hairMm = 0.15;

/** A cross of hairlines in a ring. */
export function registerMark(): Region {
  const m = markMm / 2,
    h = hairMm / 2;
  const circle = (r: number, turn: 1 | -1): Float64Array =>
    Float64Array.from(
      Array.from({ length: 96 }, (_, i) => (turn * i * 2 * Math.PI) / 96).flatMap((t) => [m + r * Math.cos(t), m + r * Math.sin(t)]),
    );
  const cross = Float64Array.of(
    ...[m - h, 0, m + h, 0, m + h, m - h, 2 * m, m - h, 2 * m, m + h, m + h, m + h],
    ...[m + h, 2 * m, m - h, 2 * m, m - h, m + h, 0, m + h, 0, m - h, m - h, m - h],
  );
  return { rings: [circle(2.2, 1), circle(2.2 - hairMm, -1), cross] };
}
