import { exp, pow } from '../../numeric/index.ts';
import type { TonePatch } from './moire-picture.ts';

/** How wide the bell is that a pixel gathers light under, in its own widths: of dots finer than two pixels a thirtieth is left. */
const bellPx = 0.8;

/**
 * A patch on a screen's own pixels. Most screens are coarser than dots, and pixels that pick or average what lies under each make bands of
 * their own with them, which no print has: so each gathers light under a bell, and what it can't show leaves no trace (Shannon 1949).
 */
export function onPixels(patch: TonePatch, pixelsPerMm: number): TonePatch {
  const { rgb, width: w, height: h } = patch;
  const step = patch.pixelsPerMm / pixelsPerMm;
  if (step <= 1) return patch;
  const columns = bells(w, step),
    rows = bells(h, step);
  const [width, height] = [columns.length, rows.length];
  const light = Float64Array.from({ length: 256 }, (_, v) => pow(v / 255, 2.2));
  const narrow = new Float64Array(width * h * 3);
  for (let y = 0, to = 0; y < h; y++)
    for (const { first, weights } of columns) {
      for (let i = 0, from = (y * w + first) * 3; i < weights.length; i++, from += 3)
        for (let c = 0; c < 3; c++) narrow[to + c] += weights[i] * light[rgb[from + c]];
      to += 3;
    }
  const out = new Uint8Array(width * height * 3);
  const sums = new Float64Array(width * 3);
  rows.forEach(({ first, weights }, y) => {
    sums.fill(0);
    weights.forEach((weight, i) => {
      const from = (first + i) * width * 3;
      for (let x = 0; x < sums.length; x++) sums[x] += weight * narrow[from + x];
    });
    for (let x = 0; x < sums.length; x++) out[y * sums.length + x] = Math.round(255 * pow(Math.max(0, sums[x]), 1 / 2.2));
  });
  return { width, height, pixelsPerMm, rgb: out };
}

/** For each of the coarser pixels: which of the finer ones it gathers, and how much of each. */
function bells(length: number, step: number): { readonly first: number; readonly weights: readonly number[] }[] {
  return Array.from({ length: Math.max(1, Math.floor(length / step)) }, (_, p) => {
    const middle = (p + 0.5) * step,
      reach = 3 * bellPx * step;
    const first = Math.max(0, Math.floor(middle - reach)),
      end = Math.min(length, Math.ceil(middle + reach));
    const raw = Array.from({ length: end - first }, (__, i) => exp(-(((first + i + 0.5 - middle) / (bellPx * step)) ** 2) / 2));
    const sum = raw.reduce((a, b) => a + b, 0);
    return { first, weights: raw.map((v) => v / sum) };
  });
}
