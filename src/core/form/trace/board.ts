import { exp, homography, mapPoint, solveDamped, type Homography, type Point } from '../../numeric/index.ts';
import { bilinearGrey, greyAt, type Photo } from './corners.ts';
import { straighten, type Lens } from './lens.ts';

/** A place where four squares of a checked board meet: column and row on the board, and where the photograph shows it. */
export interface BoardCorner {
  readonly column: number;
  readonly row: number;
  readonly at: Point;
}

/** All corners of a checked board that the photograph shows, on one grid; fewer than this are no board. */
export const leastCorners = 16;

/** Finds a checked board: saddles of lightness, and the grid that they lie on. Columns and rows begin at 0. */
export function findBoard(photo: Photo): readonly BoardCorner[] {
  const saddles = findSaddles(photo);
  let best: BoardCorner[] = [];
  const tried = new Set<number>();
  for (let start = 0; start < saddles.length && start < 60; start++) {
    if (tried.has(start)) continue;
    const grid = growGrid(saddles, start);
    for (const { index } of grid) tried.add(index);
    if (grid.length > best.length) best = grid.map(({ column, row, index }) => ({ column, row, at: saddles[index].at }));
    if (best.length > saddles.length / 2) break;
  }
  best = wholeLines(best);
  if (best.length < leastCorners) return [];
  const left = Math.min(...best.map((c) => c.column)),
    top = Math.min(...best.map((c) => c.row));
  return best.map((c) => ({ column: c.column - left, row: c.row - top, at: c.at }));
}

/** Without columns and rows of which less than half is there: at the board's rim a cut square looks like a corner now and then. */
function wholeLines(corners: readonly BoardCorner[]): BoardCorner[] {
  let kept = [...corners];
  for (let round = 0; round < 4; round++) {
    const count = (pick: (c: BoardCorner) => number): Map<number, number> => {
      const counts = new Map<number, number>();
      for (const c of kept) counts.set(pick(c), (counts.get(pick(c)) ?? 0) + 1);
      return counts;
    };
    const columns = count((c) => c.column),
      rows = count((c) => c.row);
    const mostInColumn = Math.max(...columns.values()),
      mostInRow = Math.max(...rows.values());
    const next = kept.filter((c) => columns.get(c.column)! >= 0.6 * mostInColumn && rows.get(c.row)! >= 0.6 * mostInRow);
    if (next.length === kept.length) break;
    kept = next;
  }
  return kept;
}

/** A checked board in a photograph as it is kept; undefined where there is none. */
export function boardSeen(
  photo: Photo,
): { readonly width: number; readonly height: number; readonly corners: readonly BoardCorner[] } | undefined {
  const corners = findBoard(photo);
  return corners.length > 0 ? { width: photo.width, height: photo.height, corners } : undefined;
}

interface Saddle {
  readonly at: Point;
  readonly strength: number;
}

/** Where lightness is a saddle: it curves up one way and down the other (Chen and Zhang 2005), four times dark and light around. */
function findSaddles(photo: Photo): Saddle[] {
  const { width, height } = photo;
  const grey = blurred(photo);
  const response = new Float32Array(width * height);
  const at = (x: number, y: number): number => grey[y * width + x];
  for (let y = 3; y < height - 3; y++) {
    for (let x = 3; x < width - 3; x++) {
      const xx = at(x + 1, y) - 2 * at(x, y) + at(x - 1, y),
        yy = at(x, y + 1) - 2 * at(x, y) + at(x, y - 1),
        xy = (at(x + 1, y + 1) - at(x - 1, y + 1) - at(x + 1, y - 1) + at(x - 1, y - 1)) / 4;
      response[y * width + x] = xy * xy - xx * yy;
    }
  }
  const most = response.reduce((a, b) => Math.max(a, b), 0);
  const found: Saddle[] = [];
  const reach = 4;
  for (let y = 8; y < height - 8; y++) {
    for (let x = 8; x < width - 8; x++) {
      const strength = response[y * width + x];
      if (strength < 0.02 * most) continue;
      let peak = true;
      for (let dy = -reach; dy <= reach && peak; dy++)
        for (let dx = -reach; dx <= reach && peak; dx++) if (response[(y + dy) * width + x + dx] > strength) peak = false;
      if (!peak) continue;
      const place = refined(grey, width, x, y);
      if (place && isChecked(photo, place)) found.push({ at: place, strength });
    }
  }
  return found.sort((a, b) => b.strength - a.strength);
}

/** Stored lightness under a small bell: in light itself the dark squares would have no shape. */
function blurred(photo: Photo): Float32Array {
  const { width, height } = photo;
  const raw = new Float32Array(width * height),
    once = new Float32Array(width * height),
    out = new Float32Array(width * height);
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) raw[y * width + x] = Math.sqrt(greyAt(photo, x, y));
  const bell = [0.06, 0.24, 0.4, 0.24, 0.06];
  const pass = (from: Float32Array, to: Float32Array, step: number): void => {
    for (let y = 2; y < height - 2; y++)
      for (let x = 2; x < width - 2; x++) {
        const p = y * width + x;
        let sum = 0;
        for (let k = -2; k <= 2; k++) sum += bell[k + 2] * from[p + k * step];
        to[p] = sum;
      }
  };
  pass(raw, once, 1);
  pass(once, out, width);
  return out;
}

/** The saddle of the surface of the second degree that fits the lightness around best. Centre of pixel (i, j) at (i + ½, j + ½). */
function refined(grey: Float32Array, width: number, x: number, y: number): Point | undefined {
  const reach = 3;
  let cx = x,
    cy = y;
  for (let round = 0; round < 4; round++) {
    // f = a + b u + c v + d u² + e u v + g v², weighed towards the middle.
    const A = new Float64Array(36),
      b = new Float64Array(6);
    const px = Math.round(cx),
      py = Math.round(cy);
    for (let dy = -reach; dy <= reach; dy++) {
      for (let dx = -reach; dx <= reach; dx++) {
        const u = px + dx - cx,
          v = py + dy - cy,
          w = exp(-(u * u + v * v) / 8);
        const row = [1, u, v, u * u, u * v, v * v];
        const value = grey[(py + dy) * width + px + dx];
        for (let i = 0; i < 6; i++) {
          b[i] += w * row[i] * value;
          for (let j = 0; j < 6; j++) A[i * 6 + j] += w * row[i] * row[j];
        }
      }
    }
    const [, s, t, d, e, g] = solveDamped(A, b, 0);
    const det = 4 * d * g - e * e;
    if (!(det < 0)) return undefined;
    const u = (-2 * g * s + e * t) / det,
      v = (-2 * d * t + e * s) / det;
    if (!(Math.abs(u) < 2 && Math.abs(v) < 2)) return undefined;
    cx += u;
    cy += v;
    if (Math.hypot(cx - x, cy - y) > 3) return undefined;
  }
  return [cx + 0.5, cy + 0.5];
}

/** Round a meeting of four squares it is dark and light by turns, twice each. */
function isChecked(photo: Photo, [x, y]: Point): boolean {
  const n = 24,
    r = 5;
  const ring: number[] = [];
  for (let i = 0; i < n; i++) {
    const v = bilinearGrey(photo, x + r * Math.cos((2 * Math.PI * i) / n), y + r * Math.sin((2 * Math.PI * i) / n));
    if (v === undefined) return false;
    ring.push(Math.sqrt(v));
  }
  const middle = (Math.max(...ring) + Math.min(...ring)) / 2;
  if (Math.max(...ring) - Math.min(...ring) < 1.2) return false;
  let turns = 0;
  for (let i = 0; i < n; i++) if (ring[i] > middle !== ring[(i + 1) % n] > middle) turns++;
  return turns === 4;
}

interface OnGrid {
  readonly column: number;
  readonly row: number;
  readonly index: number;
}

/** A step on the grid differs from the one before by less than this share, in any perspective that can be traced. */
const mostChange = 0.18;

/** From one saddle on, the neighbours on a grid whose steps change little from place to place. */
function growGrid(saddles: readonly Saddle[], start: number): OnGrid[] {
  const p = saddles.map((s) => s.at);
  const nearest = p
    .map((q, index) => ({ index, dx: q[0] - p[start][0], dy: q[1] - p[start][1] }))
    .filter((q) => q.index !== start)
    .map((q) => ({ ...q, d: Math.hypot(q.dx, q.dy) }))
    .sort((a, b) => a.d - b.d)
    .slice(0, 8);
  if (nearest.length < 4) return [];
  const u = nearest[0];
  const v = nearest.find((q) => Math.abs(q.dx * u.dy - q.dy * u.dx) > 0.6 * q.d * u.d && q.d < 2 * u.d);
  if (!v) return [];
  const taken = new Map<string, OnGrid>();
  const used = new Set<number>();
  interface Step {
    readonly place: OnGrid;
    readonly u: Point;
    readonly v: Point;
  }
  const first: Step = { place: { column: 0, row: 0, index: start }, u: [u.dx, u.dy], v: [v.dx, v.dy] };
  taken.set('0,0', first.place);
  used.add(start);
  const queue: Step[] = [first];
  for (let k = 0; k < queue.length; k++) {
    const { place, u: ux, v: vx } = queue[k];
    const from = p[place.index];
    for (const [dc, dr, way] of [
      [1, 0, ux],
      [-1, 0, [-ux[0], -ux[1]] as Point],
      [0, 1, vx],
      [0, -1, [-vx[0], -vx[1]] as Point],
    ] as const) {
      const key = `${place.column + dc},${place.row + dr}`;
      if (taken.has(key)) continue;
      const length = Math.hypot(...way);
      let best = -1,
        least = mostChange * length;
      p.forEach((q, i) => {
        if (used.has(i)) return;
        const d = Math.hypot(q[0] - from[0] - way[0], q[1] - from[1] - way[1]);
        if (d < least) {
          least = d;
          best = i;
        }
      });
      if (best < 0) continue;
      const next: OnGrid = { column: place.column + dc, row: place.row + dr, index: best };
      taken.set(key, next);
      used.add(best);
      const sign = dc + dr;
      const now: Point = [sign * (p[best][0] - from[0]), sign * (p[best][1] - from[1])];
      queue.push({ place: next, u: dc !== 0 ? now : ux, v: dr !== 0 ? now : vx });
    }
  }
  return [...taken.values()];
}

export interface BoardFit {
  readonly lens: Lens;
  /** From squares of the board to the straightened photograph. */
  readonly toPhoto: Homography;
  /** Those that it rests on. */
  readonly corners: readonly BoardCorner[];
  /** Root of the mean square by which corners lie off, pixels. */
  readonly offPx: number;
}

/**
 * The lens and the board's place from its corners, by least squares (Levenberg and Marquardt) on where straightened corners lie.
 * A `lens` that is known already stays as it is.
 */
export function fitBoard(
  photo: { readonly width: number; readonly height: number },
  corners: readonly BoardCorner[],
  lens?: Lens,
): BoardFit | undefined {
  const fit = fitAll(photo, corners, lens);
  if (!fit) return undefined;
  // A thumb over a corner, a reflection: what lies far off is left out, once.
  const off = ({ column, row, at }: BoardCorner): number => {
    const [x, y] = mapPoint(fit.toPhoto, column, row),
      [sx, sy] = straighten(fit.lens, at);
    return Math.hypot(x - sx, y - sy);
  };
  const sorted = corners.map(off).sort((a, b) => a - b);
  const limit = Math.max(0.5, 4 * sorted[sorted.length >> 1]);
  const kept = corners.filter((c) => off(c) <= limit);
  return kept.length < corners.length ? (fitAll(photo, kept, lens) ?? fit) : fit;
}

export function fitAll(
  photo: { readonly width: number; readonly height: number },
  corners: readonly BoardCorner[],
  lens: Lens | undefined,
): BoardFit | undefined {
  if (corners.length < leastCorners) return undefined;
  const radius = Math.hypot(photo.width, photo.height) / 2;
  const flat: Lens = { middle: [photo.width / 2, photo.height / 2], radius, bend: 0, more: 0 };
  const begin = startOf(corners, lens ?? flat);
  if (!begin) return undefined;
  const lensOf = (v: Float64Array): Lens =>
    lens ?? { middle: [photo.width / 2 + v[10] * radius, photo.height / 2 + v[11] * radius], radius, bend: v[8], more: v[9] };
  // Fifteen corners and more tell the lens's middle too; held back by a tenth of the picture's half diagonal.
  const free = lens ? 8 : 12;
  const values = new Float64Array(12);
  begin.slice(0, 8).forEach((v, i) => {
    values[i] = v;
  });
  const residuals = (v: Float64Array): Float64Array => {
    const out = new Float64Array(2 * corners.length + (lens ? 0 : 2));
    const own = lensOf(v);
    const h: Homography = [...v.slice(0, 8), 1] as unknown as Homography;
    corners.forEach(({ column, row, at }, i) => {
      const [x, y] = mapPoint(h, column, row),
        [sx, sy] = straighten(own, at);
      out[2 * i] = x - sx;
      out[2 * i + 1] = y - sy;
    });
    if (!lens) {
      out[2 * corners.length] = v[10] * 3;
      out[2 * corners.length + 1] = v[11] * 3;
    }
    return out;
  };
  const sum = (r: Float64Array): number => r.reduce((s, v) => s + v * v, 0);
  let now = residuals(values),
    cost = sum(now),
    damping = 1e-3;
  for (let round = 0; round < 80; round++) {
    const J = Array.from({ length: free }, (_, k) => {
      const moved = values.slice();
      const step = Math.max(1e-7, Math.abs(values[k]) * 1e-6);
      moved[k] += step;
      return residuals(moved).map((v, i) => (v - now[i]) / step);
    });
    const A = new Float64Array(free * free),
      b = new Float64Array(free);
    for (let i = 0; i < free; i++) {
      for (let j = 0; j < free; j++) for (let k = 0; k < now.length; k++) A[i * free + j] += J[i][k] * J[j][k];
      for (let k = 0; k < now.length; k++) b[i] -= J[i][k] * now[k];
    }
    const step = solveDamped(A, b, damping);
    const next = values.map((v, i) => v + (i < free ? step[i] : 0));
    const after = residuals(next),
      less = sum(after);
    if (less < cost) {
      const settled = cost - less < 1e-9 * cost;
      values.set(next);
      now = after;
      cost = less;
      damping = Math.max(1e-9, damping / 5);
      if (settled) break;
    } else {
      damping *= 6;
      if (damping > 1e8) break;
    }
  }
  return {
    lens: lensOf(values),
    corners,
    toPhoto: [...values.slice(0, 8), 1] as unknown as Homography,
    offPx: Math.sqrt(cost / corners.length / 2),
  };
}

/** The homography of four corners far apart. */
function startOf(corners: readonly BoardCorner[], lens: Lens): readonly number[] | undefined {
  const most = (score: (c: BoardCorner) => number): BoardCorner => corners.reduce((a, c) => (score(c) > score(a) ? c : a));
  const four = [
    most((c) => -c.column - c.row),
    most((c) => c.column - c.row),
    most((c) => c.column + c.row),
    most((c) => c.row - c.column),
  ];
  return (
    homography(
      four.map((c): Point => [c.column, c.row]),
      four.map((c) => straighten(lens, c.at)),
    ) ?? undefined
  );
}
