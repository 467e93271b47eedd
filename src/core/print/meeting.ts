import type { Region } from '../form/index.ts';

/** Shapes with more paper than this between their edges don't meet. */
const gapMm = 2;
/** Edges that overlap by more than this are no seam: no hand is so far off. */
const reachMm = 5;
/** Edges are looked at every so often. */
const stepMm = 1;

/** Edges that run along one another: within about 20°. */
const mostSine = 0.35;
/** Less edge in common than this is a crossing, not a seam. */
const leastSeamMm = 10;
/** A seam is made of stretches at least so long. */
const leastRunMm = 6;

/**
 * How far two shapes overlap along the seam where they should meet, mm. The seam: stretches of the first's edge that run
 * along the second's, with the second on the other side, over at most 2 mm of paper or 5 mm of overlap. Depth inside the second (outside counts as 0), fifth
 * percentile, so that one slip of the knife doesn't decide. null: no seam of 10 mm or more.
 * @param insideB tells whether a point lies in the second shape
 */
export function meetingOverlap(a: Region, b: Region, insideB: (x: number, y: number) => boolean): number | null {
  const nearest = edgeIndex(b);
  const depths: number[] = [];
  const without = gapMm + 0.5;
  for (const ring of a.rings) {
    let next = 0;
    let run: number[] = [];
    const endRun = (): void => {
      if (run.length * stepMm >= leastRunMm) depths.push(...run);
      run = [];
    };
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const length = Math.hypot(ring[i] - ring[j], ring[i + 1] - ring[j + 1]);
      if (length === 0) continue;
      const tx = (ring[i] - ring[j]) / length,
        ty = (ring[i + 1] - ring[j + 1]) / length;
      let s = next;
      for (; s < length; s += stepMm) {
        const x = ring[j] + tx * s,
          y = ring[j + 1] + ty * s;
        const found = nearest(x, y);
        const along = found !== null && Math.abs(tx * found.ty - ty * found.tx) <= mostSine;
        // Rings wind with the shape on the same hand throughout, holes the other way: the outside is on the left (y down).
        const overlaps = insideB(x, y);
        const near = along && (overlaps || found.distance <= gapMm);
        // The second goes on outside, and ends just past its edge inside.
        const within = overlaps && found ? found.distance + 0.5 : without;
        if (near && insideB(x + ty * without, y - tx * without) && !insideB(x - ty * within, y + tx * within))
          run.push(overlaps ? found.distance : 0);
        else endRun();
      }
      next = s - length;
    }
    endRun();
  }
  if (depths.length * stepMm < leastSeamMm) return null;
  depths.sort((p, q) => p - q);
  return depths[Math.floor(depths.length * 0.05)];
}

interface NearEdge {
  readonly distance: number;
  readonly tx: number;
  readonly ty: number;
}

/** The nearest edge of a region and its direction; null beyond `reachMm`. */
function edgeIndex(region: Region): (x: number, y: number) => NearEdge | null {
  /** Edges, in pieces no longer than the reach, by the square they can be reached from. */
  const squares = new Map<number, number[]>();
  const at = (mm: number): number => Math.floor(mm / reachMm);
  const key = (cx: number, cy: number): number => cx * 65536 + cy;
  for (const ring of region.rings) {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const [dx, dy] = [ring[i] - ring[j], ring[i + 1] - ring[j + 1]];
      const pieces = Math.ceil(Math.hypot(dx, dy) / reachMm);
      for (let s = 0; s < pieces; s++) {
        const ax = ring[j] + (dx * s) / pieces,
          ay = ring[j + 1] + (dy * s) / pieces;
        const bx = ring[j] + (dx * (s + 1)) / pieces,
          by = ring[j + 1] + (dy * (s + 1)) / pieces;
        for (let cx = at(Math.min(ax, bx) - reachMm); cx <= at(Math.max(ax, bx) + reachMm); cx++) {
          for (let cy = at(Math.min(ay, by) - reachMm); cy <= at(Math.max(ay, by) + reachMm); cy++) {
            const list = squares.get(key(cx, cy));
            if (list) list.push(ax, ay, bx, by);
            else squares.set(key(cx, cy), [ax, ay, bx, by]);
          }
        }
      }
    }
  }
  return (x, y) => {
    let nearest: NearEdge | null = null;
    const list = squares.get(key(at(x), at(y))) ?? [];
    for (let i = 0; i < list.length; i += 4) {
      const [ax, ay] = [list[i], list[i + 1]];
      const [dx, dy] = [list[i + 2] - ax, list[i + 3] - ay];
      const long = dx * dx + dy * dy;
      const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / long));
      const distance = Math.hypot(x - ax - t * dx, y - ay - t * dy);
      if (distance <= (nearest?.distance ?? reachMm)) nearest = { distance, tx: dx / Math.sqrt(long), ty: dy / Math.sqrt(long) };
    }
    return nearest;
  };
}
