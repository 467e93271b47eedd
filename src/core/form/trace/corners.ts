import { pow } from '../../numeric/index.ts';
import type { Point } from '../../numeric/index.ts';
import { fourSides, hullOf } from './four-sides.ts';
import { bent, findLens, straighten } from './lens.ts';
import type { Lens, Line } from './lens.ts';

/** sRGB pixels, 3 or 4 bytes each (`channels`), row by row. */
export interface Photo {
  readonly width: number;
  readonly height: number;
  readonly channels: 3 | 4;
  readonly data: Uint8Array | Uint8ClampedArray;
}

/** Stored value → light, 0..255 (IEC 61966-2-1). A pixel half on the sheet is half way in light, not in stored values. */
const light = Float32Array.from(
  { length: 256 },
  (_, i) => 255 * (i / 255 <= 0.04045 ? i / 255 / 12.92 : pow((i / 255 + 0.055) / 1.055, 2.4)),
);

/** Luminance of a pixel, 0..255. */
export function greyAt(photo: Photo, x: number, y: number): number {
  const i = (y * photo.width + x) * photo.channels;
  return 0.2126 * light[photo.data[i]] + 0.7152 * light[photo.data[i + 1]] + 0.0722 * light[photo.data[i + 2]];
}

export interface SheetFound {
  /** Top left, top right, bottom right, bottom left, as the photo shows them, in pixels. */
  readonly corners: readonly Point[];
  readonly lens: Lens;
}

/**
 * A bright sheet on a darker ground, and how the lens bends its sides; undefined when there is no such sheet. Sides are
 * found where lightness changes most, straightened together, and fitted as lines. Corners `given` by hand stay as they are.
 */
export function findSheet(photo: Photo, given?: readonly Point[], known?: Lens): SheetFound | undefined {
  const rough = given ?? roughCorners(photo);
  if (!rough) return undefined;
  const sides = sidesOf(photo, rough);
  const lens = known ?? findLens(photo.width, photo.height, sides, fitLine);
  if (given) return { corners: given, lens };
  const lines = sides.map((side) => fitLine(side.map((p) => straighten(lens, p))));
  const corners = meetings(lines)?.map((p) => bent(lens, p));
  return corners && { corners, lens };
}

/** Only the corners of `findSheet`. */
export const findCorners = (photo: Photo): readonly Point[] | undefined => findSheet(photo)?.corners;

function roughCorners(photo: Photo): Point[] | undefined {
  const step = Math.max(1, Math.ceil(Math.max(photo.width, photo.height) / 500));
  const w = Math.floor(photo.width / step),
    h = Math.floor(photo.height / step);
  if (w < 20 || h < 20) return undefined;
  const grey = new Uint8Array(w * h);
  for (let y = 0; y < h; y++) for (let x = 0; x < w; x++) grey[y * w + x] = greyAt(photo, x * step + (step >> 1), y * step + (step >> 1));
  const level = otsu(grey);
  // The largest bright part.
  const seen = new Uint8Array(w * h);
  let best: number[] = [];
  for (let start = 0; start < w * h; start++) {
    if (seen[start] || grey[start] <= level) continue;
    const part = [start];
    seen[start] = 1;
    for (let k = 0; k < part.length; k++) {
      const p = part[k],
        x = p % w;
      for (const q of [x > 0 ? p - 1 : -1, x < w - 1 ? p + 1 : -1, p - w, p + w]) {
        if (q >= 0 && q < w * h && !seen[q] && grey[q] > level) {
          seen[q] = 1;
          part.push(q);
        }
      }
    }
    if (part.length > best.length) best = part;
  }
  if (best.length < 0.08 * w * h) return undefined;
  // Only the ends of its rows can be corners of the hull.
  const left = new Int32Array(h).fill(-1),
    right = new Int32Array(h).fill(-1);
  for (const p of best) {
    const x = p % w,
      y = (p - x) / w;
    if (left[y] < 0 || x < left[y]) left[y] = x;
    if (x > right[y]) right[y] = x;
  }
  const ends: Point[] = [];
  for (let y = 0; y < h; y++) if (left[y] >= 0) ends.push([left[y], y], [right[y] + 1, y], [left[y], y + 1], [right[y] + 1, y + 1]);
  const corners = fourSides(hullOf(ends))?.map(([x, y]): Point => [x * step, y * step]);
  if (!corners) return undefined;
  const [a, b, c, d] = fromTopLeft(corners);
  const area = Math.abs((c[0] - a[0]) * (d[1] - b[1]) - (d[0] - b[0]) * (c[1] - a[1])) / 2;
  return area > 0.06 * photo.width * photo.height && best.length * step * step > 0.4 * area ? [a, b, c, d] : undefined;
}

/** Corners clockwise on screen, the one nearest to the top left first. */
function fromTopLeft(corners: readonly Point[]): Point[] {
  let turn = 0;
  corners.forEach(([x, y], i) => {
    const [u, v] = corners[(i + 1) % corners.length];
    turn += x * v - u * y;
  });
  const round = turn > 0 ? [...corners] : [...corners].reverse();
  let first = 0;
  round.forEach(([x, y], i) => {
    if (x + y < round[first][0] + round[first][1]) first = i;
  });
  return [...round.slice(first), ...round.slice(0, first)];
}

/** The level that parts a histogram best (Otsu 1979). */
function otsu(grey: Uint8Array): number {
  const counts = new Float64Array(256);
  for (const v of grey) counts[v]++;
  let total = 0;
  for (let i = 0; i < 256; i++) total += i * counts[i];
  let below = 0,
    sum = 0,
    best = -1,
    level = 127;
  for (let i = 0; i < 255; i++) {
    below += counts[i];
    sum += i * counts[i];
    const above = grey.length - below;
    if (!below || !above) continue;
    const between = below * above * (sum / below - (total - sum) / above) ** 2;
    if (between > best) {
      best = between;
      level = i;
    }
  }
  return level;
}

/** Points along each side, from the first corner to the second and so on. */
function sidesOf(photo: Photo, corners: readonly Point[]): Point[][] {
  const reach = Math.max(4, Math.round(Math.max(photo.width, photo.height) / 120));
  return corners.map((from, i) => {
    const to = corners[(i + 1) % 4];
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const ux = (to[0] - from[0]) / length,
      uy = (to[1] - from[1]) / length;
    // Corners go clockwise, so inside is to the right of each side.
    const nx = -uy,
      ny = ux;
    const found: Point[] = [];
    for (let k = 0; k < 120; k++) {
      const t = (0.06 + (0.88 * k) / 119) * length;
      const edge = edgeAlong(photo, from[0] + ux * t, from[1] + uy * t, nx, ny, reach);
      if (edge !== undefined) found.push([from[0] + ux * t + nx * edge, from[1] + uy * t + ny * edge]);
    }
    return found;
  });
}

function meetings(lines: readonly (Line | undefined)[]): Point[] | undefined {
  const out: Point[] = [];
  for (let i = 0; i < 4; i++) {
    const one = lines[(i + 3) % 4],
      two = lines[i];
    if (!one || !two) return undefined;
    const det = one.a * two.b - two.a * one.b;
    if (Math.abs(det) < 1e-6) return undefined;
    out.push([(one.c * two.b - two.c * one.b) / det, (one.a * two.c - two.a * one.c) / det]);
  }
  return out;
}

/** Where, along the normal, dark turns to bright: the middle of the steepest rise, weighed by its steepness. */
function edgeAlong(photo: Photo, x: number, y: number, nx: number, ny: number, reach: number): number | undefined {
  const values: number[] = [];
  for (let s = -reach - 1; s <= reach + 1; s++) {
    const v = bilinearGrey(photo, x + nx * s, y + ny * s);
    if (v === undefined) return undefined;
    values.push(v);
  }
  let at = -1,
    most = 8;
  for (let i = 1; i < values.length - 1; i++) {
    const rise = values[i + 1] - values[i - 1];
    if (rise > most) {
      most = rise;
      at = i;
    }
  }
  if (at < 0) return undefined;
  let sum = 0,
    weighed = 0;
  for (let i = Math.max(1, at - 3); i <= Math.min(values.length - 2, at + 3); i++) {
    const rise = Math.max(0, values[i + 1] - values[i - 1]);
    sum += rise;
    weighed += rise * (i - reach - 1);
  }
  return weighed / sum;
}

/** Grey between pixels; pixel (i, j) has its centre at (i + ½, j + ½). */
export function bilinearGrey(photo: Photo, x: number, y: number): number | undefined {
  const fx = x - 0.5,
    fy = y - 0.5,
    ix = Math.floor(fx),
    iy = Math.floor(fy);
  if (ix < 0 || iy < 0 || ix + 1 >= photo.width || iy + 1 >= photo.height) return undefined;
  const tx = fx - ix,
    ty = fy - iy;
  return (
    (greyAt(photo, ix, iy) * (1 - tx) + greyAt(photo, ix + 1, iy) * tx) * (1 - ty) +
    (greyAt(photo, ix, iy + 1) * (1 - tx) + greyAt(photo, ix + 1, iy + 1) * tx) * ty
  );
}

/** a x + b y = c through points, far ones left out in a second and third go. */
function fitLine(points: readonly Point[]): Line | undefined {
  let kept = [...points];
  let line: Line | undefined;
  for (let round = 0; round < 4; round++) {
    if (kept.length < 12) return line;
    const mx = kept.reduce((s, p) => s + p[0], 0) / kept.length,
      my = kept.reduce((s, p) => s + p[1], 0) / kept.length;
    let xx = 0,
      xy = 0,
      yy = 0;
    for (const [x, y] of kept) {
      xx += (x - mx) ** 2;
      xy += (x - mx) * (y - my);
      yy += (y - my) ** 2;
    }
    const angle = 0.5 * Math.atan2(2 * xy, xx - yy);
    const a = -Math.sin(angle),
      b = Math.cos(angle);
    const found = { a, b, c: a * mx + b * my };
    line = found;
    const off = points.map(([x, y]) => Math.abs(found.a * x + found.b * y - found.c));
    const limit = Math.max(0.7, 2.5 * [...off].sort((p, q) => p - q)[off.length >> 1]);
    kept = points.filter((_, i) => off[i] <= limit);
  }
  return line;
}
