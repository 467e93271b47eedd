import type { FlatDrawing } from './flat.ts';
import { bordersOf, partsOf } from './parts.ts';

/** A dot is as large as this, mm², no longer than this, mm, and fills so much of its box. */
const leastMm2 = 0.8,
  mostMm2 = 20,
  mostMm = 6,
  fills = 0.5;
/** It stands out by so much (Lab) from one colour around nearly all of it, in so many times its own area. */
const leastContrast = 25,
  nearlyAll = 0.9,
  wideArea = 40;

/** Small closed marks that stand free, an eye before all, largest first: each as its box in pixels, from left, top to right, bottom. */
export function dotsOf({ of, width, height, colours }: FlatDrawing, mmPerPx: number): (readonly [number, number, number, number])[] {
  const parts = partsOf(of, width, height),
    mm2 = mmPerPx ** 2,
    found: { readonly area: number; readonly box: readonly [number, number, number, number] }[] = [];
  for (const pixels of parts.pixels) {
    const area = pixels.length;
    if (area * mm2 < leastMm2 || area * mm2 > mostMm2) continue;
    const box = boxOf(pixels, width),
      [across, down] = [box[2] - box[0], box[3] - box[1]];
    if (Math.max(across, down) * mmPerPx > mostMm || area < fills * across * down || onBorder(box, width, height)) continue;
    const borders = bordersOf(pixels, of, width, height),
      ground = borders.indexOf(Math.max(...borders)),
      all = borders.reduce((sum, v) => sum + v, 0),
      own = of[pixels[0]];
    if (borders[ground] < nearlyAll * all || parts.pixels[parts.of[pixels[0] - 1]].length < wideArea * area) continue;
    const far = [0, 1, 2].reduce((sum, c) => sum + (colours[3 * own + c] - colours[3 * ground + c]) ** 2, 0);
    if (far >= leastContrast ** 2) found.push({ area, box });
  }
  return found.sort((a, b) => b.area - a.area || a.box[1] - b.box[1] || a.box[0] - b.box[0]).map(({ box }) => box);
}

const onBorder = ([left, top, right, bottom]: readonly number[], width: number, height: number): boolean =>
  left === 0 || top === 0 || right === width || bottom === height;

function boxOf(pixels: Int32Array, width: number): [number, number, number, number] {
  const box: [number, number, number, number] = [Infinity, Infinity, 0, 0];
  for (const i of pixels) {
    const x = i % width,
      y = (i - x) / width;
    box[0] = Math.min(box[0], x);
    box[1] = Math.min(box[1], y);
    box[2] = Math.max(box[2], x + 1);
    box[3] = Math.max(box[3], y + 1);
  }
  return box;
}
