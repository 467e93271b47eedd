/**
 * Rings cut to the square −reach..2·reach (Sutherland and Hodgman 1974), so that coordinates of a thousand million do
 * no harm later. Border edges may double back; the winding inside stays right.
 */
export function clipRings(rings: readonly Float64Array[], reach: number): Float64Array[] {
  const low = -reach,
    high = 2 * reach;
  const out: Float64Array[] = [];
  for (const ring of rings) {
    let inside = true;
    for (let i = 0; i < ring.length; i++) if (!(ring[i] >= low && ring[i] <= high)) inside = false;
    if (inside) {
      out.push(ring);
      continue;
    }
    let points: number[] = Array.from(ring);
    if (points.some((v) => !Number.isFinite(v))) continue;
    for (const [axis, limit, sign] of [
      [0, low, 1],
      [0, high, -1],
      [1, low, 1],
      [1, high, -1],
    ] as const)
      points = cutHalf(points, axis, limit, sign);
    if (points.length >= 6) out.push(Float64Array.from(points));
  }
  return out;
}

function cutHalf(points: readonly number[], axis: 0 | 1, limit: number, sign: 1 | -1): number[] {
  const out: number[] = [];
  const n = points.length;
  for (let i = 0, j = n - 2; i < n; j = i, i += 2) {
    const before = (points[j + axis] - limit) * sign;
    const now = (points[i + axis] - limit) * sign;
    if (before < 0 !== now < 0) {
      const t = before / (before - now);
      const x = points[j] + (points[i] - points[j]) * t;
      const y = points[j + 1] + (points[i + 1] - points[j + 1]) * t;
      out.push(axis === 0 ? limit : x, axis === 1 ? limit : y);
    }
    if (now >= 0) out.push(points[i], points[i + 1]);
  }
  return out;
}
