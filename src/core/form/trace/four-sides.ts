import type { Point } from '../../numeric/index.ts';

/** The convex hull, clockwise on screen from the left (Andrew 1979). */
export function hullOf(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  if (sorted.length < 3) return sorted;
  const half = (list: readonly Point[]): Point[] => {
    const chain: Point[] = [];
    for (const p of list) {
      while (chain.length > 1 && cross(chain[chain.length - 2], chain[chain.length - 1], p) <= 0) chain.pop();
      chain.push(p);
    }
    chain.pop();
    return chain;
  };
  return [...half(sorted), ...half([...sorted].reverse())];
}

const cross = (a: Point, b: Point, c: Point): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/**
 * The four sides around a convex outline: its edges leave one by one, always the one whose neighbours, drawn on until they
 * meet, add the least. So a corner that is cut, bent or covered comes back where its sides would meet. Corners in order.
 */
export function fourSides(hull: readonly Point[]): Point[] | undefined {
  const corners = [...hull];
  while (corners.length > 4) {
    const n = corners.length;
    let least = Infinity,
      at = -1,
      meeting: Point = corners[0];
    for (let i = 0; i < n; i++) {
      // Without the edge from i to i + 1.
      const a = corners[(i + n - 1) % n],
        b = corners[i],
        c = corners[(i + 1) % n],
        d = corners[(i + 2) % n];
      const met = beyond(a, b, c, d);
      if (!met) continue;
      const added = Math.abs(cross(b, met, c)) / 2;
      if (added < least) {
        least = added;
        at = i;
        meeting = met;
      }
    }
    if (at < 0) return undefined;
    corners[at] = meeting;
    corners.splice((at + 1) % n, 1);
  }
  return corners.length === 4 ? corners : undefined;
}

/** Where the way from a past b meets the way from d past c. */
function beyond(a: Point, b: Point, c: Point, d: Point): Point | undefined {
  const ux = b[0] - a[0],
    uy = b[1] - a[1],
    vx = c[0] - d[0],
    vy = c[1] - d[1];
  const det = ux * vy - uy * vx;
  if (Math.abs(det) < 1e-9) return undefined;
  const s = ((c[0] - b[0]) * vy - (c[1] - b[1]) * vx) / det,
    t = ((c[0] - b[0]) * uy - (c[1] - b[1]) * ux) / det;
  return s >= 0 && t >= 0 ? [b[0] + s * ux, b[1] + s * uy] : undefined;
}
