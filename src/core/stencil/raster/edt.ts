/**
 * Exact squared Euclidean distance in pixels from every pixel where `mask` is `inside` to the nearest one where it is
 * not (0 on those), for distances below `cap` (at most 255); cap² farther in. Beyond the raster all counts as inside.
 *
 * Columns first, then rows (Meijster, Roerdink, Hesselink 2000); as only near distances are wanted, each pixel near the
 * edge writes to its neighbours in the row instead of searching an envelope, and the wide inside costs nothing.
 */
export function nearDistance(mask: Uint8Array, width: number, height: number, inside: 0 | 1, cap: number): Uint16Array {
  const n = width * height;
  const g = new Uint8Array(n);
  for (let i = 0; i < width; i++) g[i] = mask[i] === inside ? cap : 0;
  for (let i = width; i < n; i++) {
    const above = g[i - width];
    g[i] = mask[i] === inside ? (above < cap ? above + 1 : cap) : 0;
  }
  for (let i = n - width - 1; i >= 0; i--) {
    const below = g[i + width] + 1;
    if (below < g[i]) g[i] = below;
  }
  const out = new Uint16Array(n);
  for (let i = 0; i < n; i++) {
    const d = g[i];
    out[i] = d * d;
  }
  // A pixel helps only towards the side that rises from it, and no farther than where another, nearer to what lies beyond, does
  // as well: two parabolas cross once.
  const reach = cap - 1;
  for (let row = 0; row < n; row += width) {
    const end = row + width;
    for (let p = row + 1; p < end; p++) {
      const d = g[p];
      if (d >= g[p - 1]) continue;
      const d2 = d * d,
        lo = Math.max(row, p - reach);
      for (let q = p - 1; q >= lo; q--) {
        const v = d2 + (p - q) * (p - q);
        if (v >= out[q]) break;
        out[q] = v;
      }
    }
    for (let p = end - 2; p >= row; p--) {
      const d = g[p];
      if (d >= g[p + 1]) continue;
      const d2 = d * d,
        hi = Math.min(end - 1, p + reach);
      for (let q = p + 1; q <= hi; q++) {
        const v = d2 + (q - p) * (q - p);
        if (v >= out[q]) break;
        out[q] = v;
      }
    }
  }
  return out;
}
