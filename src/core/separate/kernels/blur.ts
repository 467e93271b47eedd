import { exp } from '../../numeric/index.ts';
/**
 * Gaussian blur of one layer's mask, in place of nothing: reads the bit, writes shares 0..1. Beyond the border the mask
 * goes on as it is at the border, so that the image's edge costs no knife.
 */
export function gaussTaps(sigmaPx: number): Float32Array {
  const radius = Math.max(1, Math.ceil(3 * sigmaPx));
  const taps = new Float32Array(2 * radius + 1);
  let sum = 0;
  for (let i = -radius; i <= radius; i++) sum += taps[i + radius] = exp((-i * i) / (2 * sigmaPx * sigmaPx));
  for (let i = 0; i < taps.length; i++) taps[i] /= sum;
  return taps;
}

/** One plane blurred: rows into `scratch`, then columns into `out`. All of width × height. */
export function blurPlane(
  plane: Float32Array,
  width: number,
  height: number,
  taps: Float32Array,
  out: Float32Array,
  scratch: Float32Array,
): void {
  const radius = taps.length >> 1;
  for (let y = 0; y < height; y++) {
    const row = y * width;
    for (let x = 0; x < width; x++) {
      let sum = 0;
      if (x >= radius && x + radius < width) {
        for (let t = 0, s = row + x - radius; t < taps.length; t++, s++) sum += taps[t] * plane[s];
      } else {
        for (let t = 0; t < taps.length; t++) {
          const s = x + t - radius;
          sum += taps[t] * plane[row + (s < 0 ? 0 : s >= width ? width - 1 : s)];
        }
      }
      scratch[row + x] = sum;
    }
  }
  blurColumns(scratch, width, height, taps, out);
}

/**
 * The same of one layer's mask, without a plane of it: along a row a mask is but a few edges, and each changes only what lies within
 * reach of it.
 */
export function blurMask(
  codes: Uint8Array,
  layer: number,
  width: number,
  height: number,
  taps: Float32Array,
  out: Float32Array,
  scratch: Float32Array,
): void {
  const radius = taps.length >> 1;
  // Sums of the taps up to each: what a pixel sees of ink that begins so far to its right.
  const sums = new Float64Array(taps.length + 1),
    line = new Float64Array(width);
  for (let t = 0; t < taps.length; t++) sums[t + 1] = sums[t] + taps[t];
  const all = sums[taps.length];
  for (let y = 0; y < height; y++) {
    const row = y * width;
    let value = (codes[row] >> layer) & 1,
      done = 0;
    line.fill(0);
    for (let edge = 1; edge < width; edge++) {
      if (((codes[row + edge] >> layer) & 1) === value) continue;
      // Up to here all is seen of what came before; from here on of what comes now.
      const first = edge - radius < 0 ? 0 : edge - radius,
        end = edge + radius < width ? edge + radius : width;
      if (value) for (; done < edge; done++) line[done] += all;
      else done = edge;
      value ^= 1;
      const step = value ? 1 : -1;
      for (let x = first; x < edge; x++) line[x] += step * (all - sums[edge - x + radius]);
      for (let x = edge; x < end; x++) line[x] -= step * sums[edge - x + radius];
    }
    if (value) for (; done < width; done++) line[done] += all;
    scratch.set(line, row);
  }
  blurColumns(scratch, width, height, taps, out);
}

/** Taps are the same above and below; three pairs of rows at a time, so that the sums are fetched and put back less often. */
function blurColumns(plane: Float32Array, width: number, height: number, taps: Float32Array, out: Float32Array): void {
  const radius = taps.length >> 1,
    line = new Float64Array(width);
  const weight = (t: number): number => (t <= radius ? taps[radius + t] : 0);
  for (let y = 0; y < height; y++) {
    const here = y * width,
      middle = taps[radius];
    const above = (t: number): number => Math.max(0, y - t) * width,
      below = (t: number): number => Math.min(height - 1, y + t) * width;
    for (let x = 0; x < width; x++) line[x] = middle * plane[here + x];
    for (let t = 1; t <= radius; t += 3) {
      const a = above(t),
        b = below(t),
        c = above(t + 1),
        d = below(t + 1),
        e = above(t + 2),
        f = below(t + 2);
      const one = weight(t),
        two = weight(t + 1),
        three = weight(t + 2);
      for (let x = 0; x < width; x++) {
        line[x] += one * (plane[a + x] + plane[b + x]) + two * (plane[c + x] + plane[d + x]) + three * (plane[e + x] + plane[f + x]);
      }
    }
    out.set(line, here);
  }
}
