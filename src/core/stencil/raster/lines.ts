import type { PointMm } from '../types.ts';

/** Ramer 1972, Douglas and Peucker 1973. */
export function thinOut(points: readonly number[], tolerance: number): number[] {
  const n = points.length / 2;
  if (n < 3) return [...points];
  const keep = new Uint8Array(n);
  keep[0] = keep[n - 1] = 1;
  const stack: [number, number][] = [[0, n - 1]];
  for (let range = stack.pop(); range; range = stack.pop()) {
    const [i, j] = range;
    const ax = points[2 * i],
      ay = points[2 * i + 1],
      dx = points[2 * j] - ax,
      dy = points[2 * j + 1] - ay;
    const length2 = dx * dx + dy * dy;
    let worst = tolerance,
      at = -1;
    for (let k = i + 1; k < j; k++) {
      const t = length2 > 0 ? Math.max(0, Math.min(1, ((points[2 * k] - ax) * dx + (points[2 * k + 1] - ay) * dy) / length2)) : 0;
      const d = Math.hypot(points[2 * k] - ax - t * dx, points[2 * k + 1] - ay - t * dy);
      if (d > worst) {
        worst = d;
        at = k;
      }
    }
    if (at > 0) {
      keep[at] = 1;
      stack.push([i, at], [at, j]);
    }
  }
  const out: number[] = [];
  for (let i = 0; i < n; i++) if (keep[i]) out.push(points[2 * i], points[2 * i + 1]);
  return out;
}

/**
 * A line through pixels as a hand would draw it: each point the mean of those within `reachMm` along the line (fewer near
 * the ends, which stay), then as few points as stay near that. `x0, y0, …` in mm.
 */
export function smoothed(points: readonly number[], reachMm: number, stepMm: number): number[] {
  const n = points.length / 2;
  if (n < 3) return [...points];
  const most = Math.max(1, Math.round(reachMm / stepMm));
  const sx = new Float64Array(n + 1),
    sy = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) {
    sx[i + 1] = sx[i] + points[2 * i];
    sy[i + 1] = sy[i] + points[2 * i + 1];
  }
  const out: number[] = [];
  for (let i = 0; i < n; i++) {
    const k = Math.min(most, i, n - 1 - i);
    out.push((sx[i + k + 1] - sx[i - k]) / (2 * k + 1), (sy[i + k + 1] - sy[i - k]) / (2 * k + 1));
  }
  return thinOut(out, 0.02);
}

/** A line shorter by so much at its start and its end; its middle, where nothing would be left. */
export function trimmed(line: readonly number[], atStart: number, atEnd: number): number[] {
  const n = line.length / 2;
  const way = new Float64Array(n);
  for (let i = 1; i < n; i++) way[i] = way[i - 1] + Math.hypot(line[2 * i] - line[2 * i - 2], line[2 * i + 1] - line[2 * i - 1]);
  const whole = way[n - 1];
  let from = atStart,
    to = whole - atEnd;
  if (to - from < 0.01) {
    from = Math.max(0, Math.min(whole, (from + to) / 2));
    to = from;
  }
  const at = (s: number): [number, number] => {
    let i = 1;
    while (i < n - 1 && way[i] < s) i++;
    const part = way[i] - way[i - 1];
    const t = part > 0 ? Math.max(0, Math.min(1, (s - way[i - 1]) / part)) : 0;
    return [line[2 * i - 2] + t * (line[2 * i] - line[2 * i - 2]), line[2 * i - 1] + t * (line[2 * i + 1] - line[2 * i - 1])];
  };
  if (n < 2) return [line[0], line[1], line[0] + 0.01, line[1]];
  const out: number[] = [...at(from)];
  for (let i = 1; i < n - 1; i++) if (way[i] > from && way[i] < to) out.push(line[2 * i], line[2 * i + 1]);
  const end = at(to);
  out.push(...(to > from ? end : [end[0] + 0.01, end[1]]));
  return out;
}

/** How far a point lies from a line of straight pieces. */
export function nearLine(line: ArrayLike<number>, [x, y]: PointMm): number {
  let least = Infinity;
  for (let i = 0; i + 3 < line.length; i += 2) {
    const dx = line[i + 2] - line[i],
      dy = line[i + 3] - line[i + 1],
      l2 = dx * dx + dy * dy;
    const t = l2 > 0 ? Math.max(0, Math.min(1, ((x - line[i]) * dx + (y - line[i + 1]) * dy) / l2)) : 0;
    least = Math.min(least, Math.hypot(x - line[i] - t * dx, y - line[i + 1] - t * dy));
  }
  return least;
}
