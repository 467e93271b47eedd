import { boxRegion, common, contours, ringArea, simplify, type Region } from '../../form/index.ts';
import { blurred } from '../lines/flow-field.ts';

export interface StepCutsAsk {
  /** What the run's film covers, 0..255. */
  readonly plane: Uint8Array;
  readonly width: number;
  readonly height: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Covers from which each step prints, rising, 0..1. */
  readonly from: readonly number[];
  readonly leastBridgeMm: number;
  readonly leastOpeningMm: number;
}

/** Pixels to the narrowest that can be cut: enough for a smooth outline. */
const perLeast = 4;
const smoothMm = 0.03;

/** Where each strength prints: everything darker than its step begins. Each lies within the one before it, so no two outlines have to meet. */
export function stepCuts(ask: StepCutsAsk): Region[] {
  const { widthMm, heightMm, leastBridgeMm, leastOpeningMm } = ask;
  const least = Math.min(leastBridgeMm, leastOpeningMm);
  const step = Math.max(widthMm / ask.width, least / perLeast);
  // One pixel beyond the image all round, so that outlines run off it.
  const field = fieldOf(ask, step);
  // What is finer than a knife can follow goes before there is an outline of it.
  const calm = blurred(field.data, field.width, field.height, (0.5 * least) / step);
  const image = boxRegion({ minX: 0, minY: 0, maxX: widthMm, maxY: heightMm });
  const crumbMm2 = (1.5 * Math.max(leastBridgeMm, leastOpeningMm)) ** 2;
  const [sx, sy] = [widthMm / (field.width - 2), heightMm / (field.height - 2)];
  return ask.from.map((cover): Region => {
    const rings = contours(calm, field.width, field.height, cover).map((ring) =>
      ring.map((v, i) => (i % 2 === 0 ? (v - 1) * sx : (v - 1) * sy)),
    );
    return simplify(common({ rings: rings.filter((ring) => Math.abs(ringArea(ring)) >= crumbMm2) }, image), smoothMm);
  });
}

/** Means of the film on a coarser grid, its edge pixels once more beyond the edge. */
function fieldOf(
  { plane, width, height, widthMm, heightMm }: StepCutsAsk,
  step: number,
): { readonly data: Float32Array; readonly width: number; readonly height: number } {
  const w = Math.max(2, Math.min(width, Math.round(widthMm / step))),
    h = Math.max(2, Math.min(height, Math.round(heightMm / step)));
  const data = new Float32Array((w + 2) * (h + 2));
  const span = (i: number, of: number, all: number): readonly [number, number] => {
    const from = Math.floor((i * all) / of);
    return [from, Math.max(from + 1, Math.floor(((i + 1) * all) / of))];
  };
  for (let y = 0; y < h + 2; y++) {
    const [top, bottom] = span(Math.min(h - 1, Math.max(0, y - 1)), h, height);
    for (let x = 0; x < w + 2; x++) {
      const [left, right] = span(Math.min(w - 1, Math.max(0, x - 1)), w, width);
      let sum = 0;
      for (let row = top; row < bottom; row++) for (let i = row * width + left, end = row * width + right; i < end; i++) sum += plane[i];
      data[y * (w + 2) + x] = sum / (255 * (bottom - top) * (right - left));
    }
  }
  return { data, width: w + 2, height: h + 2 };
}
