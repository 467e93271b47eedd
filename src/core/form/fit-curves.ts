/** Cubic Bézier curve: x and y of its start, its two handles and its end. */
export type Cubic = readonly [number, number, number, number, number, number, number, number];

/** Reparametrised so often before a run is split. */
const mostTurns = 20;
/** A curve's length is looked up in a table of so many steps. */
const lengthSteps = 10;

/**
 * As few curves as stay near a line of points; one begins where the other ends, with the same direction (Schneider 1990, An algorithm
 * for automatically fitting digitized curves). A run that one curve can't follow is split where that lies farthest off.
 * @param points x0, y0, x1, y1, …
 * @param errorSquared square of the distance the curves may keep from the points, in the points' unit; iterated only above 1
 * @returns none for fewer than two different points
 */
export function fitCurves(points: ArrayLike<number>, errorSquared: number): Cubic[] {
  const { x, y } = withoutRepeats(points);
  const last = x.length - 1;
  if (last < 1) return [];
  const run: Run = { x, y, along: new Float64Array(x.length), better: new Float64Array(x.length), errorSquared, out: [] };
  fitRun(run, 0, last, towards(x[1] - x[0], y[1] - y[0]), towards(x[last - 1] - x[last], y[last - 1] - y[last]));
  return run.out;
}

type Vector = readonly [number, number];

interface Run {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Share of the run's length at which each point lies, and the curve's parameter nearest to it. */
  readonly along: Float64Array;
  readonly better: Float64Array;
  readonly errorSquared: number;
  readonly out: Cubic[];
}

function withoutRepeats(points: ArrayLike<number>): { readonly x: Float64Array; readonly y: Float64Array } {
  const x = new Float64Array(points.length >> 1), y = new Float64Array(points.length >> 1);
  let n = 0;
  for (let i = 0; i + 1 < points.length; i += 2) {
    if (i > 0 && points[i] === points[i - 2] && points[i + 1] === points[i - 1]) continue;
    x[n] = points[i];
    y[n++] = points[i + 1];
  }
  return { x: x.subarray(0, n), y: y.subarray(0, n) };
}

const towards = (dx: number, dy: number): Vector => {
  const length = Math.hypot(dx, dy);
  return [dx / length, dy / length];
};

/** Curves for the points from..to; `start` and `end`: directions in which they leave the run's ends. */
function fitRun(run: Run, from: number, to: number, start: Vector, end: Vector): void {
  const { x, y, along, better, errorSquared, out } = run;
  if (to - from === 1) {
    out.push(handled(run, from, to, start, end, Math.hypot(x[from] - x[to], y[from] - y[to]) / 3, Math.hypot(x[from] - x[to], y[from] - y[to]) / 3));
    return;
  }
  measure(run, from, to);
  let curve = leastSquares(run, from, to, along, start, end), worst = farthest(run, from, to, curve);
  if (worst.error === 0 || worst.error < errorSquared) {
    out.push(curve);
    return;
  }
  if (worst.error < errorSquared * errorSquared) {
    better.set(along.subarray(from, to + 1), from);
    for (let turn = 0; turn < mostTurns; turn++) {
      for (let i = from; i <= to; i++) better[i] = nearer(curve, x[i], y[i], better[i]);
      const before = worst;
      curve = leastSquares(run, from, to, better, start, end);
      worst = farthest(run, from, to, curve);
      if (worst.error < errorSquared) {
        out.push(curve);
        return;
      }
      const gain = worst.error / before.error;
      if (worst.at === before.at && gain > 0.9999 && gain < 1.0001) break;
    }
  }
  const middle = worst.at;
  let dx = x[middle - 1] - x[middle + 1], dy = y[middle - 1] - y[middle + 1];
  // There and back: square to the way.
  if (dx === 0 && dy === 0) [dx, dy] = [-(y[middle - 1] - y[middle]), x[middle - 1] - x[middle]];
  const back = towards(dx, dy);
  fitRun(run, from, middle, start, back);
  fitRun(run, middle, to, [-back[0], -back[1]], end);
}

function measure({ x, y, along }: Run, from: number, to: number): void {
  along[from] = 0;
  for (let i = from + 1; i <= to; i++) along[i] = along[i - 1] + Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]);
  const length = along[to];
  for (let i = from; i <= to; i++) along[i] /= length;
}

/** The curve whose handles lie so far out along `start` and `end`. */
function handled({ x, y }: Run, from: number, to: number, start: Vector, end: Vector, out: number, back: number): Cubic {
  return [x[from], y[from], x[from] + start[0] * out, y[from] + start[1] * out, x[to] + end[0] * back, y[to] + end[1] * back, x[to], y[to]];
}

/** Lengths of the two handles by least squares, the points lying at parameters `at`. */
function leastSquares(run: Run, from: number, to: number, at: Float64Array, start: Vector, end: Vector): Cubic {
  const { x, y } = run;
  const [sx, sy] = start, [ex, ey] = end;
  const ax = x[from], ay = y[from], bx = x[to], by = y[to];
  let c00 = 0, c01 = 0, c11 = 0, x0 = 0, x1 = 0;
  for (let i = from; i <= to; i++) {
    const t = at[i], s = 1 - t;
    const k = 3 * t * (s * s), m = 3 * s * (t * t);
    const px = sx * k, py = sy * k, qx = ex * m, qy = ey * m;
    c00 += px * px + py * py;
    c01 += px * qx + py * qy;
    c11 += qx * qx + qy * qy;
    const w0 = s * s * s, w1 = 3 * s * s * t, w2 = 3 * s * t * t, w3 = t * t * t;
    const dx = x[i] - (ax * w0 + ax * w1 + (bx * w2 + bx * w3)), dy = y[i] - (ay * w0 + ay * w1 + (by * w2 + by * w3));
    x0 += px * dx + py * dy;
    x1 += qx * dx + qy * dy;
  }
  const determinant = c00 * c11 - c01 * c01;
  const out = determinant === 0 ? 0 : (x0 * c11 - x1 * c01) / determinant, back = determinant === 0 ? 0 : (c00 * x1 - c01 * x0) / determinant;
  const across = Math.hypot(ax - bx, ay - by), least = 1e-6 * across;
  // Handles that point backwards or vanish: a third of the way each (Wu and Barsky).
  return out < least || back < least ? handled(run, from, to, start, end, across / 3, across / 3) : handled(run, from, to, start, end, out, back);
}

/** The point that lies farthest from where the curve is after the same share of its length. */
function farthest({ x, y, along }: Run, from: number, to: number, curve: Cubic): { readonly error: number; readonly at: number } {
  const [ax, ay, bx, by, cx, cy, dx, dy] = curve;
  const lengths = lengthsAlong(curve);
  let error = 0, at = from + Math.floor((to - from + 1) / 2);
  for (let i = from; i <= to; i++) {
    const t = parameterAt(along[i], lengths), s = 1 - t;
    const w0 = s * s * s, w1 = 3 * s * s * t, w2 = 3 * s * t * t, w3 = t * t * t;
    const ex = ax * w0 + bx * w1 + (cx * w2 + dx * w3) - x[i], ey = ay * w0 + by * w1 + (cy * w2 + dy * w3) - y[i];
    const off = ex * ex + ey * ey;
    if (off > error) {
      error = off;
      at = i;
    }
  }
  return { error, at };
}

/** Share of the curve's length at each step of its parameter. */
function lengthsAlong([ax, ay, bx, by, cx, cy, dx, dy]: Cubic): Float64Array {
  const lengths = new Float64Array(lengthSteps + 1);
  let px = ax, py = ay;
  for (let i = 1; i <= lengthSteps; i++) {
    const t = i / lengthSteps, s = 1 - t;
    const w0 = s * s * s, w1 = 3 * s * s * t, w2 = 3 * s * t * t, w3 = t * t * t;
    const qx = ax * w0 + bx * w1 + (cx * w2 + dx * w3), qy = ay * w0 + by * w1 + (cy * w2 + dy * w3);
    lengths[i] = lengths[i - 1] + Math.hypot(qx - px, qy - py);
    px = qx;
    py = qy;
  }
  const all = lengths[lengthSteps];
  for (let i = 0; i <= lengthSteps; i++) lengths[i] /= all;
  return lengths;
}

/** NaN on a curve without length. */
function parameterAt(share: number, lengths: Float64Array): number {
  for (let i = 1; i <= lengthSteps; i++) {
    if (share <= lengths[i]) return ((share - lengths[i - 1]) / (lengths[i] - lengths[i - 1])) * (i / lengthSteps - (i - 1) / lengthSteps) + (i - 1) / lengthSteps;
  }
  return NaN;
}

/** One step of Newton's towards the parameter at which the curve is nearest to a point. */
function nearer([ax, ay, bx, by, cx, cy, dx, dy]: Cubic, px: number, py: number, t: number): number {
  const s = 1 - t;
  const w0 = s * s * s, w1 = 3 * s * s * t, w2 = 3 * s * t * t, w3 = t * t * t;
  const offX = ax * w0 + bx * w1 + (cx * w2 + dx * w3) - px, offY = ay * w0 + by * w1 + (cy * w2 + dy * w3) - py;
  const v0 = 3 * s * s, v1 = 6 * s * t, v2 = 3 * t * t;
  const goX = (bx - ax) * v0 + (cx - bx) * v1 + (dx - cx) * v2, goY = (by - ay) * v0 + (cy - by) * v1 + (dy - cy) * v2;
  const u0 = 6 * s, u1 = 6 * t;
  const bendX = (cx - bx * 2 + ax) * u0 + (dx - cx * 2 + bx) * u1, bendY = (cy - by * 2 + ay) * u0 + (dy - cy * 2 + by) * u1;
  const down = goX * goX + goY * goY + 2 * (offX * bendX + offY * bendY);
  return down === 0 ? t : t - (offX * goX + offY * goY) / down;
}
