/**
 * Gaussian blur of one layer's mask, in place of nothing: reads the bit, writes shares 0..1. Beyond the border the mask
 * goes on as it is at the border, so that the image's edge costs no knife.
 */
export function gaussTaps(sigmaPx: number): Float32Array {
  const radius = Math.max(1, Math.ceil(3 * sigmaPx));
  const taps = new Float32Array(2 * radius + 1);
  let sum = 0;
  for (let i = -radius; i <= radius; i++) sum += taps[i + radius] = Math.exp((-i * i) / (2 * sigmaPx * sigmaPx));
  for (let i = 0; i < taps.length; i++) taps[i] /= sum;
  return taps;
}

/** One plane blurred: rows into `scratch`, then columns into `out`. All of width × height. */
export function blurPlane(plane: Float32Array, width: number, height: number, taps: Float32Array, out: Float32Array, scratch: Float32Array): void {
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
  for (let y = 0; y < height; y++) {
    const to = y * width;
    out.fill(0, to, to + width);
    for (let t = 0; t < taps.length; t++) {
      const s = y + t - radius;
      const from = (s < 0 ? 0 : s >= height ? height - 1 : s) * width, weight = taps[t];
      for (let x = 0; x < width; x++) out[to + x] += weight * scratch[from + x];
    }
  }
}

/** The layer's bit as a plane of 0 and 1. */
export function planeOf(codes: Uint8Array, layer: number, out: Float32Array): void {
  for (let i = 0; i < codes.length; i++) out[i] = (codes[i] >> layer) & 1;
}
