import type { PointMm } from '../types.ts';
import { thinOut } from './lines.ts';

/** Points along a line that moves lie so far apart; what has moved is drawn calm over so many of them to either side. */
const everyMm = 0.25,
  calm = 3;
/** Nearer than this to a line there is no telling which side is away from it. */
const blindMm = 0.02;
const rounds = 4;

/**
 * A line moved aside where it comes nearer than `apartMm` to one of `others`: away from it, and no farther than that. Where
 * others lie on both sides of it so that there is no room between them it stays as it was.
 */
export function aside(line: readonly number[], others: readonly (readonly number[])[], apartMm: number): number[] {
  const near = others.filter((other) => boxesWithin(line, other, 2 * apartMm));
  if (near.length === 0 || line.length < 4) return [...line];
  const points = walked(line, everyMm);
  const n = points.length / 2;
  const moved = new Float64Array(2 * n);
  let any = false;
  for (let i = 0; i < n; i++) {
    const at: PointMm = [points[2 * i], points[2 * i + 1]];
    const to = clearPlace(at, near, apartMm);
    moved[2 * i] = to[0] - at[0];
    moved[2 * i + 1] = to[1] - at[1];
    any ||= to !== at;
  }
  if (!any) return [...line];
  const out: number[] = [];
  for (let i = 0; i < n; i++) {
    let x = 0,
      y = 0,
      count = 0;
    for (let k = Math.max(0, i - calm); k <= Math.min(n - 1, i + calm); k++) {
      x += moved[2 * k];
      y += moved[2 * k + 1];
      count++;
    }
    out.push(points[2 * i] + x / count, points[2 * i + 1] + y / count);
  }
  return thinOut(out, 0.01);
}

function clearPlace(at: PointMm, others: readonly (readonly number[])[], apartMm: number): PointMm {
  let [x, y] = at;
  for (let round = 0; round < rounds; round++) {
    let least = apartMm - 0.005,
      from: PointMm | undefined;
    for (const other of others) {
      const q = nearestOn(other, x, y);
      const d = Math.hypot(x - q[0], y - q[1]);
      if (d >= least) continue;
      least = d;
      from = q;
    }
    if (!from) return round === 0 ? at : [x, y];
    if (least < blindMm) return at;
    x = from[0] + ((x - from[0]) * apartMm) / least;
    y = from[1] + ((y - from[1]) * apartMm) / least;
  }
  return at;
}

function nearestOn(line: readonly number[], x: number, y: number): PointMm {
  let best: PointMm = [line[0], line[1]],
    least = Infinity;
  for (let i = 0; i + 3 < line.length; i += 2) {
    const dx = line[i + 2] - line[i],
      dy = line[i + 3] - line[i + 1],
      l2 = dx * dx + dy * dy;
    const t = l2 > 0 ? Math.max(0, Math.min(1, ((x - line[i]) * dx + (y - line[i + 1]) * dy) / l2)) : 0;
    const u = line[i] + t * dx,
      v = line[i + 1] + t * dy,
      d = Math.hypot(x - u, y - v);
    if (d >= least) continue;
    least = d;
    best = [u, v];
  }
  return best;
}

/** A line with a point at least every so many mm. */
function walked(line: readonly number[], mm: number): number[] {
  const out = [line[0], line[1]];
  for (let i = 0; i + 3 < line.length; i += 2) {
    const dx = line[i + 2] - line[i],
      dy = line[i + 3] - line[i + 1];
    const steps = Math.max(1, Math.ceil(Math.hypot(dx, dy) / mm));
    for (let k = 1; k <= steps; k++) out.push(line[i] + (dx * k) / steps, line[i + 1] + (dy * k) / steps);
  }
  return out;
}

function boxesWithin(a: readonly number[], b: readonly number[], mm: number): boolean {
  for (const o of [0, 1]) {
    let a0 = Infinity,
      a1 = -Infinity,
      b0 = Infinity,
      b1 = -Infinity;
    for (let i = o; i < a.length; i += 2) {
      if (a[i] < a0) a0 = a[i];
      if (a[i] > a1) a1 = a[i];
    }
    for (let i = o; i < b.length; i += 2) {
      if (b[i] < b0) b0 = b[i];
      if (b[i] > b1) b1 = b[i];
    }
    if (a0 - mm > b1 || b0 - mm > a1) return false;
  }
  return true;
}
