import type { PointMm } from '../types.ts';
import { isNear, sidesNear } from './sides.ts';
import type { BoxedRing, Rest } from './windows.ts';

/** What discs leave uncovered ends at them: not farther from where their middles lie than this, beyond the radius. */
const mouthMm = 0.012;
/** Whole microns may bend a flank by so much. */
const bentMm = 0.001;

/**
 * A plain point: both its flanks lean to the middle, by `leanDeg` or more, all the way from what is broad to the tip. A disc that
 * fits anywhere in it can be moved straight towards what is broad, so worn down by less than `radiusMm` no part of it comes away;
 * and it is soon broader. `cores`: where the middles of all discs of that radius lie that fit.
 */
export function tapersPlainly({ region, box }: Rest, cores: readonly BoxedRing[], radiusMm: number, leanDeg: number): boolean {
  if (region.rings.length !== 1) return false;
  const flanks = flanksOf(region.rings[0], sidesNear(cores, box, radiusMm + mouthMm), radiusMm + mouthMm);
  if (!flanks) return false;
  const n = flanks.length,
    from = flanks[0],
    to = flanks[n - 1];
  if (Math.hypot(to[0] - from[0], to[1] - from[1]) > 2 * radiusMm + mouthMm) return false;
  const [mx, my] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const first = flanks[most(flanks, ([x, y]) => Math.hypot(x - mx, y - my))];
  const one = Math.hypot(first[0] - from[0], first[1] - from[1]),
    two = Math.hypot(first[0] - to[0], first[1] - to[1]);
  if (one === 0 || two === 0) return false;
  const sx = (first[0] - from[0]) / one + (first[0] - to[0]) / two,
    sy = (first[1] - from[1]) / one + (first[1] - to[1]) / two,
    length = Math.hypot(sx, sy);
  if (length === 0) return false;
  // Outward, and across from the first flank to the second.
  const ax = sx / length,
    ay = sy / length;
  const side = Math.sign((to[0] - from[0]) * -ay + (to[1] - from[1]) * ax) || 1;
  const [bx, by] = [-ay * side, ax * side];
  const tip = most(flanks, ([x, y]) => x * ax + y * ay);
  const lean = (leanDeg * Math.PI) / 180,
    sin = Math.sin(lean),
    cos = Math.cos(lean);
  const rises = (run: readonly PointMm[], x: number, y: number): boolean => {
    let highest = -Infinity;
    return run.every((at) => {
      const now = at[0] * x + at[1] * y;
      highest = Math.max(highest, now);
      return now >= highest - bentMm;
    });
  };
  const out = flanks.slice(0, tip + 1),
    back = flanks.slice(tip).reverse();
  return (
    rises(out, ax, ay) &&
    rises(back, ax, ay) &&
    rises(out, bx * cos - ax * sin, by * cos - ay * sin) &&
    rises(back, -bx * cos - ax * sin, -by * cos - ay * sin)
  );
}

function most(points: readonly PointMm[], measure: (at: PointMm) => number): number {
  let best = 0,
    high = -Infinity;
  points.forEach((at, i) => {
    const now = measure(at);
    if (now <= high) return;
    high = now;
    best = i;
  });
  return best;
}

/** All of a ring that is farther than `mm` from the sides, and the points before and after it; undefined where that is not one run. */
function flanksOf(ring: Float64Array, sides: readonly number[], mm: number): PointMm[] | undefined {
  const n = ring.length / 2;
  const far = Array.from({ length: n }, (_, i) => !isNear(sides, ring[2 * i], ring[2 * i + 1], mm));
  const starts = far.flatMap((is, i) => (is && !far[(i + n - 1) % n] ? [i] : []));
  if (starts.length !== 1) return undefined;
  const flanks: PointMm[] = [];
  for (let k = starts[0] + n - 1; ; k++) {
    const i = k % n;
    flanks.push([ring[2 * i], ring[2 * i + 1]]);
    if (k >= starts[0] + n && !far[i]) return flanks;
  }
}
