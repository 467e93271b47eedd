/**
 * Does a ring turn one way only, and round once? Then it crosses nothing of its own, and needs no tidying. Winds so that its
 * area is positive; anything doubtful counts as not convex.
 */
export function isConvex(ring: Float64Array): boolean {
  const n = ring.length;
  if (n < 6) return false;
  let turned = 0;
  for (let i = 0; i < n; i += 2) {
    const j = (i + 2) % n,
      k = (i + 4) % n;
    const ax = ring[j] - ring[i],
      ay = ring[j + 1] - ring[i + 1],
      bx = ring[k] - ring[j],
      by = ring[k + 1] - ring[j + 1];
    const cross = ax * by - ay * bx;
    if (!(cross > 1e-6)) return false;
    turned += Math.atan2(cross, ax * bx + ay * by);
  }
  return turned < 2 * Math.PI + 0.01;
}
