/**
 * Exact squared Euclidean distance (in pixels) from every pixel where `mask` is `inside` to the nearest one where it
 * is not; 0 on those. What lies beyond the raster counts as inside. `far` where nothing else is found.
 * Meijster, Roerdink and Hesselink 2000, in two passes.
 */
export const far = 1 << 29;

export function squaredDistance(mask: Uint8Array, width: number, height: number, inside: 0 | 1, out: Int32Array = new Int32Array(width * height)): Int32Array {
  const n = width * height;
  const most = width + height;
  for (let i = 0; i < width; i++) out[i] = mask[i] === inside ? most : 0;
  for (let i = width; i < n; i++) {
    const above = out[i - width];
    out[i] = mask[i] === inside ? (above < most ? above + 1 : most) : 0;
  }
  for (let i = n - width - 1; i >= 0; i--) {
    const below = out[i + width] + 1;
    if (below < out[i]) out[i] = below;
  }
  const column = new Int32Array(width);
  const start = new Int32Array(width);
  const g = new Int32Array(width);
  for (let row = 0; row < n; row += width) {
    let q = -1;
    let any = false, all = true;
    for (let u = 0; u < width; u++) {
      const v = out[row + u];
      g[u] = v;
      if (v < most) any = true;
      if (v !== 0) all = false;
    }
    if (all) continue;
    if (!any) {
      out.fill(far, row, row + width);
      continue;
    }
    for (let u = 0; u < width; u++) {
      const gu = g[u];
      if (gu >= most) continue;
      const gu2 = gu * gu;
      while (q >= 0) {
        const d1 = start[q] - column[q], d2 = start[q] - u, gq = g[column[q]];
        if (d1 * d1 + gq * gq > d2 * d2 + gu2) q--;
        else break;
      }
      if (q < 0) {
        q = 0;
        column[0] = u;
        start[0] = 0;
      } else {
        const i = column[q], gi = g[i];
        const w = 1 + Math.floor((u * u - i * i + gu2 - gi * gi) / (2 * (u - i)));
        if (w < width) {
          q++;
          column[q] = u;
          start[q] = w < 0 ? 0 : w;
        }
      }
    }
    for (let u = width - 1; u >= 0; u--) {
      const d = u - column[q], gq = g[column[q]];
      out[row + u] = d * d + gq * gq;
      if (u === start[q] && q > 0) q--;
    }
  }
  return out;
}
