import { unite, type Region } from '../../form/index.ts';
import { calmRings, type Stretch } from './calm.ts';
import { reversed, traceArcs } from './trace.ts';

/** Points that lie so near to the line between their neighbours go: finer than a hand cuts, and than curves are flattened elsewhere in the house. */
const flatMm = 0.02;

/**
 * Smooth outlines of every layer. Each edge between two codes is traced and calmed once, so edges that coincide between
 * layers stay coincident, and where edges meet they meet in one point.
 * @returns one region a layer, mm
 */
export function outlinesOf(codes: Uint8Array, width: number, height: number, mmPerPx: number, layers: number): Region[] {
  const fewer = new Map<Float64Array, Float64Array>();
  const thin = (points: Float64Array): Float64Array => {
    let out = fewer.get(points);
    if (!out) fewer.set(points, (out = thinned(points, flatMm / mmPerPx).map((v) => v * mmPerPx)));
    return out;
  };
  const ringOf = (stretches: readonly Stretch[]): Float64Array =>
    joined(stretches.map(({ points, forward }) => (forward ? thin(points) : reversed(thin(points))).subarray(2)));
  return calmRings(traceArcs(codes, width, height), width, height, layers).map((of) => {
    const rings = of.map(ringOf).filter((ring) => ring.length >= 6);
    return rings.length > 0 ? unite([{ rings }]) : { rings: [] };
  });
}

function joined(parts: readonly Float64Array[]): Float64Array {
  const out = new Float64Array(parts.reduce((sum, p) => sum + p.length, 0));
  let at = 0;
  for (const part of parts) {
    out.set(part, at);
    at += part.length;
  }
  return out;
}

/** Fewer points, none of the way farther than `tolerance` from before, ends kept (Ramer 1972, Douglas and Peucker 1973). */
function thinned(points: Float64Array, tolerance: number): Float64Array {
  const n = points.length / 2;
  const kept = new Uint8Array(n);
  kept[0] = kept[n - 1] = 1;
  const open: [number, number][] = [];
  // A closed way is halved first, or its line would be a point.
  const closed = points[0] === points[2 * n - 2] && points[1] === points[2 * n - 1];
  if (closed) kept[n >> 1] = 1;
  if (closed) open.push([0, n >> 1], [n >> 1, n - 1]);
  else open.push([0, n - 1]);
  for (let part = open.pop(); part; part = open.pop()) {
    const [from, to] = part;
    const ax = points[2 * from],
      ay = points[2 * from + 1],
      dx = points[2 * to] - ax,
      dy = points[2 * to + 1] - ay,
      long = Math.hypot(dx, dy);
    let far = tolerance,
      at = -1;
    for (let i = from + 1; i < to; i++) {
      const x = points[2 * i] - ax,
        y = points[2 * i + 1] - ay,
        off = long > 0 ? Math.abs(x * dy - y * dx) / long : Math.hypot(x, y);
      if (off > far) {
        far = off;
        at = i;
      }
    }
    if (at < 0) continue;
    kept[at] = 1;
    open.push([from, at], [at, to]);
  }
  return points.filter((_, i) => kept[i >> 1] === 1);
}
