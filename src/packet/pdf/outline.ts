import type { Region, Segment } from '../../core/form/index.ts';

/** Points nearer to a straight line than this are left out: no printer or knife shows 5 µm. */
const straightMm = 0.005;

/** Each ring as straight segments, for pictures; closed by its reader. Cut lines are fitted with curves instead: `core/cutfile`. */
export function outline(region: Region, toleranceMm = straightMm): Segment[][] {
  return region.rings.map((ring) => {
    const kept = withoutStraightPoints(ring, toleranceMm);
    const segments: Segment[] = [];
    for (let i = 0; i < kept.length; i += 2) segments.push({ kind: i === 0 ? 'move' : 'line', points: [kept[i], kept[i + 1]] });
    return segments;
  });
}

/** Leaves out points that lie on the line between their neighbours (Douglas–Peucker, from two far points of the ring). */
function withoutStraightPoints(ring: Float64Array, tolerance: number): number[] {
  const n = ring.length / 2;
  if (n < 4) return [...ring];
  let far = 0,
    farthest = -1;
  for (let i = 1; i < n; i++) {
    const d = (ring[i * 2] - ring[0]) ** 2 + (ring[i * 2 + 1] - ring[1]) ** 2;
    if (d > farthest) [far, farthest] = [i, d];
  }
  const keep = new Uint8Array(n + 1);
  keep[0] = keep[far] = keep[n] = 1;
  const stack: [number, number][] = [
    [0, far],
    [far, n],
  ];
  while (stack.length > 0) {
    const [a, b] = stack.pop()!;
    const ax = ring[a * 2],
      ay = ring[a * 2 + 1],
      bx = ring[(b % n) * 2],
      by = ring[(b % n) * 2 + 1];
    const length = Math.hypot(bx - ax, by - ay) || 1e-12;
    let worst = tolerance,
      at = -1;
    for (let i = a + 1; i < b; i++) {
      const d = Math.abs((ring[i * 2] - ax) * (by - ay) - (ring[i * 2 + 1] - ay) * (bx - ax)) / length;
      if (d > worst) [at, worst] = [i, d];
    }
    if (at >= 0) {
      keep[at] = 1;
      stack.push([a, at], [at, b]);
    }
  }
  const out: number[] = [];
  for (let i = 0; i < n; i++) if (keep[i]) out.push(ring[i * 2], ring[i * 2 + 1]);
  return out;
}
