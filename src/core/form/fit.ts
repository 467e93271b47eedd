import fitCurve from 'fit-curve';
import { fitCubics, type Cubic } from './fit-cubic.ts';
import { tidy } from './polygons.ts';
import type { Region } from './region.ts';
import { flattenPath, identity } from './svg/path.ts';

/** One step of a closed outline: where it starts, a straight line to a point, or a cubic curve (two handles, its end). */
export interface Segment {
  readonly kind: 'move' | 'line' | 'curve';
  readonly points: readonly number[];
}

export interface FitRules {
  /** The fitted outline stays this near to the given one everywhere. */
  readonly toleranceMm: number;
  /** Sharper turns than this are corners and stay where they are. */
  readonly cornerDeg: number;
}

export const knifeFit: FitRules = { toleranceMm: 0.06, cornerDeg: 32 };

/** Straight edges longer than this, or than three times their neighbours, are meant to be straight. */
const longEdgeMm = 4;
const rounds = 4;

/** Each ring as few lines and curves, corners kept (least squares after Schneider 1990). The reader closes it. */
export function fitOutline(region: Region, rules: FitRules = knifeFit): Segment[][] {
  return region.rings.map((ring) => fitRing(ring, rules)).filter((segments) => segments.length > 2);
}

/** The `d` of an SVG path in mm, to a thousandth, curves fitted. */
export function pathData(region: Region, rules: FitRules = knifeFit): string {
  return outlineData(fitOutline(region, rules));
}

/** The same for outlines that are there already. */
export function outlineData(outlines: readonly (readonly Segment[])[]): string {
  return outlines
    .map(
      (segments) =>
        `${segments.map((s) => `${s.kind === 'move' ? 'M' : s.kind === 'line' ? 'L' : 'C'}${s.points.map(mm).join(' ')}`).join('')}Z`,
    )
    .join('');
}

/** Fitted outlines as a region again, as a cutter would follow them: curves flattened to within `flatnessMm`. */
export function flattenOutline(outlines: readonly (readonly Segment[])[], flatnessMm = 0.01): Region {
  const rings = outlines.map((segments) => {
    const out: number[] = [];
    for (const s of segments) {
      if (s.kind !== 'curve') {
        out.push(s.points[0], s.points[1]);
        continue;
      }
      out.push(...bezierPoints([out[out.length - 2], out[out.length - 1], ...s.points], flatnessMm));
    }
    const n = out.length;
    if (n >= 4 && Math.hypot(out[0] - out[n - 2], out[1] - out[n - 1]) < 1e-9) out.length = n - 2;
    return Float64Array.from(out);
  });
  return { rings: rings.filter((ring) => ring.length >= 6) };
}

/** The `d` of a path as written by `pathData` (absolute M, L, C, Z) as a region again: what a cutter will follow. */
export function readPathData(text: string, flatnessMm = 0.01): Region {
  const rings = flattenPath(text, identity, flatnessMm).map((sub) => Float64Array.from(sub.points));
  return tidy(rings, 'even-odd');
}

function mm(value: number): string {
  const text = value.toFixed(3).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

function fitRing(ring: Float64Array, rules: FitRules): Segment[] {
  const stops = stopsOf(ring, rules.cornerDeg);
  const n = ring.length / 2;
  if (stops.length === 0) stops.push(0, Math.floor(n / 3), Math.floor((2 * n) / 3));
  const first = stops[0];
  const segments: Segment[] = [{ kind: 'move', points: [ring[2 * first], ring[2 * first + 1]] }];
  stops.forEach((from, k) => {
    const to = k + 1 < stops.length ? stops[k + 1] : first + n;
    const run: number[] = [];
    for (let i = from; i <= to; i++) run.push(ring[2 * (i % n)], ring[2 * (i % n) + 1]);
    segments.push(...fitRun(run, rules.toleranceMm));
  });
  return segments;
}

/** Points where the outline must not be smoothed: corners, and both ends of long straight edges. */
function stopsOf(ring: Float64Array, cornerDeg: number): number[] {
  const n = ring.length / 2;
  const length = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n;
    length[i] = Math.hypot(ring[2 * j] - ring[2 * i], ring[2 * j + 1] - ring[2 * i + 1]);
  }
  const isStop = new Uint8Array(n);
  for (let i = 0; i < n; i++) {
    const before = (i + n - 1) % n,
      after = (i + 1) % n;
    const ax = ring[2 * i] - ring[2 * before],
      ay = ring[2 * i + 1] - ring[2 * before + 1];
    const bx = ring[2 * after] - ring[2 * i],
      by = ring[2 * after + 1] - ring[2 * i + 1];
    const turn = Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) * (180 / Math.PI);
    if (turn > cornerDeg) isStop[i] = 1;
    if (length[i] > longEdgeMm && length[i] > 3 * length[before] && length[i] > 3 * length[after]) isStop[i] = isStop[after] = 1;
  }
  const stops: number[] = [];
  for (let i = 0; i < n; i++) if (isStop[i]) stops.push(i);
  return stops;
}

/** One smooth run: curves if they stay within the tolerance with fewer points, else its own points. */
function fitRun(run: readonly number[], tolerance: number): Segment[] {
  const plain = (): Segment[] => {
    const out: Segment[] = [];
    for (let i = 2; i < run.length; i += 2) out.push({ kind: 'line', points: [run[i], run[i + 1]] });
    return out;
  };
  if (run.length <= 4 || isStraight(run, tolerance / 4)) return [{ kind: 'line', points: run.slice(-2) }];
  // The library tries one curve for all first, then for halves: fine for a few points, slow for thousands.
  const long = run.length > 2 * longRun;
  const dense = densified(run, long);
  let allowed = tolerance * 0.7;
  for (let round = 0; round < rounds; round++) {
    const curves = long ? fitCubics(dense, allowed) : fitShort(dense, allowed);
    const worst = curves.length ? deviation(curves, run) : Infinity;
    if (worst <= tolerance) {
      // A curve has six numbers, a point two.
      if (curves.length * 3 > run.length / 2 - 1 && round === 0 && run.length < 12) return plain();
      return curves.map((c, i) => ({
        kind: 'curve',
        points: [...c.slice(2, 6), ...(i === curves.length - 1 ? run.slice(-2) : c.slice(6))],
      }));
    }
    allowed /= 2;
  }
  return plain();
}

const longRun = 200;

function fitShort(dense: readonly number[], allowed: number): Cubic[] {
  const points: [number, number][] = [];
  for (let i = 0; i < dense.length; i += 2) points.push([dense[i], dense[i + 1]]);
  return fitCurve(points, allowed * allowed).map((c) => c.flat() as unknown as Cubic);
}

function isStraight(run: readonly number[], tolerance: number): boolean {
  const ax = run[0],
    ay = run[1],
    dx = run[run.length - 2] - ax,
    dy = run[run.length - 1] - ay;
  const length = Math.hypot(dx, dy);
  if (!(length > 0)) return false;
  for (let i = 2; i < run.length - 2; i += 2) {
    if (Math.abs((run[i] - ax) * dy - (run[i + 1] - ay) * dx) / length > tolerance) return false;
  }
  return true;
}

/** Between the ends of edges longer than this a curve lies a little outside: points on the edges themselves keep the area. */
const shortEdgeMm = 0.15;

/** Points no farther than a millimetre apart, so that a curve can't bulge unseen between two of them. */
function densified(run: readonly number[], long: boolean): number[] {
  const out: number[] = [run[0], run[1]];
  for (let i = 2; i < run.length; i += 2) {
    const dx = run[i] - run[i - 2],
      dy = run[i + 1] - run[i - 1];
    const length = Math.hypot(dx, dy);
    const steps = Math.max(long && length > shortEdgeMm ? 3 : 1, Math.ceil(length));
    for (let k = 1; k <= steps; k++) out.push(run[i - 2] + (dx * k) / steps, run[i - 1] + (dy * k) / steps);
  }
  return out;
}

/** The farthest that points of the curves lie from the run, going along both. */
function deviation(curves: readonly (readonly number[])[], run: readonly number[]): number {
  let worst = 0,
    at = 0;
  const last = run.length / 2 - 2;
  const distanceTo = (x: number, y: number, i: number): number => {
    const ax = run[2 * i],
      ay = run[2 * i + 1],
      dx = run[2 * i + 2] - ax,
      dy = run[2 * i + 3] - ay;
    const length2 = dx * dx + dy * dy;
    const t = length2 > 0 ? Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / length2)) : 0;
    return Math.hypot(x - ax - t * dx, y - ay - t * dy);
  };
  for (const curve of curves) {
    const points = bezierPoints(curve, 0.005, 6);
    for (let i = 0; i < points.length; i += 2) {
      let least = Infinity,
        best = at;
      // The run goes on from where the last point was: after a dozen edges that are all farther off none is nearer.
      for (let k = at, farther = 0; k <= Math.min(last, at + 40) && farther < 12; k++, farther++) {
        const d = distanceTo(points[i], points[i + 1], k);
        if (d < least) {
          farther = 0;
          least = d;
          best = k;
        }
      }
      at = best;
      if (least > worst) worst = least;
    }
  }
  return worst;
}

/** Points of a cubic curve after its first. */
function bezierPoints(c: readonly number[], flatness: number, least = 1): number[] {
  const bend =
    6 * Math.max(Math.hypot(c[0] - 2 * c[2] + c[4], c[1] - 2 * c[3] + c[5]), Math.hypot(c[2] - 2 * c[4] + c[6], c[3] - 2 * c[5] + c[7]));
  const steps = Math.min(400, Math.max(least, Math.ceil(Math.sqrt(bend / (8 * flatness)))));
  const out: number[] = [];
  for (let i = 1; i <= steps; i++) {
    const t = i / steps,
      s = 1 - t;
    const w0 = s * s * s,
      w1 = 3 * s * s * t,
      w2 = 3 * s * t * t,
      w3 = t * t * t;
    out.push(w0 * c[0] + w1 * c[2] + w2 * c[4] + w3 * c[6], w0 * c[1] + w1 * c[3] + w2 * c[5] + w3 * c[7]);
  }
  return out;
}
