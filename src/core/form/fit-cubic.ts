/** A cubic curve: x and y of its start, two handles and its end. */
export type Cubic = readonly [number, number, number, number, number, number, number, number];

/** A run is cut into stretches that turn no farther than this, and have no more points: what is longer takes several curves anyhow. */
const mostTurn = (110 * Math.PI) / 180,
  mostPoints = 160;
/** So often the points are set anew on a curve that is nearly good enough. */
const mostTries = 6,
  finest = 3;

/**
 * Curves through a run of points, smooth where one meets the next, none of the points farther off than `toleranceMm`
 * (Schneider 1990, least squares with tangents at both ends). Work grows with the points, not with their square.
 */
export function fitCubics(run: ArrayLike<number>, toleranceMm: number): Cubic[] {
  const xs: number[] = [],
    ys: number[] = [];
  for (let i = 0; i < run.length; i += 2) {
    const n = xs.length;
    if (n > 0 && run[i] === xs[n - 1] && run[i + 1] === ys[n - 1]) continue;
    xs.push(run[i]);
    ys.push(run[i + 1]);
  }
  const n = xs.length;
  if (n < 2) return [];
  const fitter = new Fitter(Float64Array.from(xs), Float64Array.from(ys), toleranceMm * toleranceMm);
  let from = 0;
  while (from < n - 1) {
    const to = fitter.stretch(from);
    fitter.fit(from, to, fitter.tangent(from, 1), fitter.tangent(to, -1));
    from = to;
  }
  return fitter.found;
}

type Vector = readonly [number, number];

function unit(x: number, y: number, elseX: number, elseY: number): Vector {
  const length = Math.hypot(x, y);
  if (length > 1e-9) return [x / length, y / length];
  const other = Math.hypot(elseX, elseY) || 1;
  return [elseX / other, elseY / other];
}

class Fitter {
  readonly found: Cubic[] = [];
  private readonly xs: Float64Array;
  private readonly ys: Float64Array;
  private readonly most2: number;
  private readonly u: Float64Array;

  constructor(xs: Float64Array, ys: Float64Array, most2: number) {
    this.xs = xs;
    this.ys = ys;
    this.most2 = most2;
    this.u = new Float64Array(xs.length);
  }

  /** The last point of the stretch that begins at `from`. */
  stretch(from: number): number {
    const { xs, ys } = this;
    const n = xs.length;
    let turn = 0,
      i = from + 1;
    for (; i < n - 1 && i - from < mostPoints; i++) {
      const ax = xs[i] - xs[i - 1],
        ay = ys[i] - ys[i - 1],
        bx = xs[i + 1] - xs[i],
        by = ys[i + 1] - ys[i];
      turn += Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
      if (turn > mostTurn) break;
    }
    // No crumb is left for the end.
    return n - 1 - i < 3 ? n - 1 : i;
  }

  /** Direction of the run at a point, away from it: forwards (1) or backwards (−1). */
  tangent(i: number, way: 1 | -1): Vector {
    const { xs, ys } = this;
    const n = xs.length,
      p = i - way,
      q = i + way,
      r = i + 2 * way;
    const dx = xs[q] - xs[i],
      dy = ys[q] - ys[i],
      h = Math.hypot(dx, dy);
    if (p >= 0 && p < n) {
      // Along the parabola through the point and both its neighbours.
      const ex = xs[i] - xs[p],
        ey = ys[i] - ys[p],
        g = Math.hypot(ex, ey);
      return unit((dx * g) / h + (ex * h) / g, (dy * g) / h + (ey * h) / g, dx, dy);
    }
    if (r < 0 || r >= n) return unit(dx, dy, dx, dy);
    const fx = xs[r] - xs[q],
      fy = ys[r] - ys[q],
      k = Math.hypot(fx, fy),
      share = h / (h + k);
    return unit((dx / h) * (1 + share) - (fx / k) * share, (dy / h) * (1 + share) - (fy / k) * share, dx, dy);
  }

  fit(from: number, to: number, start: Vector, end: Vector): void {
    const { xs, ys, u } = this;
    const count = to - from;
    if (count === 1) {
      const third = Math.hypot(xs[to] - xs[from], ys[to] - ys[from]) / 3;
      this.found.push(this.curve(from, to, start, end, third, third));
      return;
    }
    u[from] = 0;
    for (let i = from + 1; i <= to; i++) u[i] = u[i - 1] + Math.hypot(xs[i] - xs[i - 1], ys[i] - ys[i - 1]);
    const whole = u[to];
    for (let i = from + 1; i <= to; i++) u[i] /= whole;
    let split = (from + to) >> 1;
    for (let k = 0; k <= mostTries; k++) {
      const curve = this.solve(from, to, start, end);
      let worst = 0;
      for (let i = from + 1; i < to; i++) {
        const d = this.offCurve(curve, i);
        if (d > worst) {
          worst = d;
          split = i;
        }
      }
      // Good enough is not yet as good as it gets: a curve that lies to one side would change the area.
      if (worst <= this.most2 && (k >= finest || worst < this.most2 / 100)) {
        this.found.push(curve);
        return;
      }
      if (worst > 25 * this.most2) break;
      for (let i = from + 1; i < to; i++) u[i] = this.nearer(curve, i);
    }
    // Split where it is farthest off, but leave both sides enough to be fitted.
    const middle = this.tangent(split, -1);
    this.fit(from, split, start, middle);
    this.fit(split, to, [-middle[0], -middle[1]], end);
  }

  private curve(from: number, to: number, start: Vector, end: Vector, a: number, b: number): Cubic {
    const { xs, ys } = this;
    return [xs[from], ys[from], xs[from] + start[0] * a, ys[from] + start[1] * a, xs[to] + end[0] * b, ys[to] + end[1] * b, xs[to], ys[to]];
  }

  /** Lengths of both handles by least squares. */
  private solve(from: number, to: number, start: Vector, end: Vector): Cubic {
    const { xs, ys, u } = this;
    const x0 = xs[from],
      y0 = ys[from],
      x1 = xs[to],
      y1 = ys[to];
    let c00 = 0,
      c01 = 0,
      c11 = 0,
      r0 = 0,
      r1 = 0;
    const across = start[0] * end[0] + start[1] * end[1];
    for (let i = from; i <= to; i++) {
      const t = u[i],
        s = 1 - t;
      const b0 = s * s * s,
        b1 = 3 * s * s * t,
        b2 = 3 * s * t * t,
        b3 = t * t * t;
      const dx = xs[i] - x0 * (b0 + b1) - x1 * (b2 + b3),
        dy = ys[i] - y0 * (b0 + b1) - y1 * (b2 + b3);
      c00 += b1 * b1;
      c01 += b1 * b2 * across;
      c11 += b2 * b2;
      r0 += b1 * (start[0] * dx + start[1] * dy);
      r1 += b2 * (end[0] * dx + end[1] * dy);
    }
    const det = c00 * c11 - c01 * c01;
    const chord = Math.hypot(x1 - x0, y1 - y0);
    let a = det > 1e-12 ? (r0 * c11 - r1 * c01) / det : 0,
      b = det > 1e-12 ? (c00 * r1 - c01 * r0) / det : 0;
    if (!(a > 1e-6 * chord) || !(b > 1e-6 * chord) || a > 3 * chord + 1 || b > 3 * chord + 1) a = b = chord / 3;
    return this.curve(from, to, start, end, a, b);
  }

  private offCurve(c: Cubic, i: number): number {
    const t = this.u[i],
      s = 1 - t;
    const x = s * s * s * c[0] + 3 * s * s * t * c[2] + 3 * s * t * t * c[4] + t * t * t * c[6];
    const y = s * s * s * c[1] + 3 * s * s * t * c[3] + 3 * s * t * t * c[5] + t * t * t * c[7];
    return (x - this.xs[i]) ** 2 + (y - this.ys[i]) ** 2;
  }

  /** One step of Newton's towards the place of the curve that is nearest to the point. */
  private nearer(c: Cubic, i: number): number {
    const t = this.u[i],
      s = 1 - t;
    const at = (k: 0 | 1): [number, number, number] => {
      const [p0, p1, p2, p3] = [c[k], c[k + 2], c[k + 4], c[k + 6]];
      return [
        s * s * s * p0 + 3 * s * s * t * p1 + 3 * s * t * t * p2 + t * t * t * p3,
        3 * (s * s * (p1 - p0) + 2 * s * t * (p2 - p1) + t * t * (p3 - p2)),
        6 * (s * (p2 - 2 * p1 + p0) + t * (p3 - 2 * p2 + p1)),
      ];
    };
    const [x, dx, ddx] = at(0),
      [y, dy, ddy] = at(1);
    const ex = x - this.xs[i],
      ey = y - this.ys[i];
    const slope = dx * dx + dy * dy + ex * ddx + ey * ddy;
    const next = slope !== 0 ? t - (ex * dx + ey * dy) / slope : t;
    return next > 0 && next < 1 ? next : t;
  }
}
