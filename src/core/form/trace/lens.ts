import type { Point } from '../../numeric/index.ts';

/**
 * How a lens bends straight lines: a point seen at distance r (in half diagonals) from the middle of the picture belongs at
 * r (1 + bend r² + more r⁴) (Brown 1966, first two terms). 0: not at all; above 0: barrel, as wide lenses have it.
 */
export interface Lens {
  readonly middle: Point;
  readonly radius: number;
  readonly bend: number;
  /** Second term; one photograph's sides don't tell it, a checked board does. */
  readonly more?: number;
}

interface Pixels {
  readonly width: number;
  readonly height: number;
}

/** A lens as it is kept: in shares of the photograph, so that it holds for one of another size from the same camera. */
export interface KeptLens {
  readonly middle: readonly [number, number];
  readonly radius: number;
  readonly bend: number;
  readonly more: number;
}

export const lensInShares = ({ middle, radius, bend, more = 0 }: Lens, { width, height }: Pixels): KeptLens => ({
  middle: [middle[0] / width, middle[1] / height],
  radius: radius / Math.hypot(width, height),
  bend,
  more,
});

/** The way back; undefined for what keeps no lens. */
export function lensOfShares(kept: unknown, { width, height }: Pixels): Lens | undefined {
  const { middle, radius, bend, more } = (kept ?? {}) as Partial<KeptLens>;
  if (!Array.isArray(middle) || middle.length !== 2) return undefined;
  const numbers = [...(middle as unknown[]), radius, bend, more];
  if (!numbers.every((v) => typeof v === 'number' && Number.isFinite(v)) || !(radius! > 0)) return undefined;
  return { middle: [middle[0] * width, middle[1] * height], radius: radius! * Math.hypot(width, height), bend: bend!, more: more! };
}

/** A straight line a x + b y = c through points, outliers left out. */
export interface Line {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

const leastBend = -0.08,
  mostBend = 0.2;

/** Where a point of the photograph belongs when the lens is taken out. */
export function straighten({ middle: [cx, cy], radius, bend, more = 0 }: Lens, [x, y]: Point): Point {
  const dx = x - cx,
    dy = y - cy;
  const r2 = (dx * dx + dy * dy) / (radius * radius);
  const s = 1 + bend * r2 + more * r2 * r2;
  return [cx + dx * s, cy + dy * s];
}

/** The way back: where the lens shows a straightened point. */
export function bent({ middle: [cx, cy], radius, bend, more = 0 }: Lens, [x, y]: Point): Point {
  const dx = x - cx,
    dy = y - cy;
  const wanted = Math.hypot(dx, dy) / radius;
  if ((bend === 0 && more === 0) || wanted === 0) return [x, y];
  // r (1 + bend r² + more r⁴) = wanted, by Newton.
  let r = wanted;
  for (let i = 0; i < 8; i++) {
    const r2 = r * r;
    const off = (r * (1 + bend * r2 + more * r2 * r2) - wanted) / (1 + 3 * bend * r2 + 5 * more * r2 * r2);
    r -= off;
    if (Math.abs(off) < 1e-9) break;
  }
  return [cx + (dx * r) / wanted, cy + (dy * r) / wanted];
}

/** A lens both ways, the way into the photograph by a table: every pixel of a picture asks for it. */
export function lensMap(lens: Lens): { readonly straighten: (at: Point) => Point; readonly bend: (at: Point) => Point } {
  const { middle, radius } = lens;
  const [cx, cy] = middle;
  // By the square of the distance, out to one and a half half-diagonals: a sheet that is cut off by the frame goes on outside it.
  const steps = 4096,
    most = 2.25;
  const share = Float64Array.from({ length: steps + 2 }, (_, i) => {
    const r = radius * Math.sqrt((Math.max(i, 1e-3) * most) / steps);
    return (bent(lens, [cx + r, cy])[0] - cx) / r;
  });
  return {
    straighten: (at) => straighten(lens, at),
    bend: ([x, y]) => {
      const dx = x - cx,
        dy = y - cy;
      const at = Math.min(steps, ((dx * dx + dy * dy) / (radius * radius) / most) * steps);
      const i = Math.floor(at);
      const s = share[i] + (share[i + 1] - share[i]) * (at - i);
      return [cx + dx * s, cy + dy * s];
    },
  };
}

/**
 * The lens from the sides of a sheet, which are straight: the bend that makes the points found along all four lie in lines
 * best. 0 unless that is clearly better than none (a curled sheet is no lens).
 */
export function findLens(
  width: number,
  height: number,
  sides: readonly (readonly Point[])[],
  fitLine: (points: readonly Point[]) => Line | undefined,
): Lens {
  const flat: Lens = { middle: [width / 2, height / 2], radius: Math.hypot(width, height) / 2, bend: 0 };
  if (sides.length < 4 || sides.some((side) => side.length < 40)) return flat;
  const off = (bend: number): number => {
    let sum = 0,
      count = 0;
    for (const side of sides) {
      const points = side.map((p) => straighten({ ...flat, bend }, p));
      const line = fitLine(points);
      if (!line) continue;
      const distances = points.map(([x, y]) => Math.abs(line.a * x + line.b * y - line.c)).sort((a, b) => a - b);
      // A tenth may be something else: a thumb, a clip, a shadow.
      const kept = distances.slice(0, Math.floor(distances.length * 0.9));
      for (const d of kept) sum += d * d;
      count += kept.length;
    }
    return Math.sqrt(sum / Math.max(1, count));
  };
  let best = 0,
    least = off(0);
  const none = least;
  for (let bend = leastBend; bend <= mostBend + 1e-9; bend += 0.01) {
    const now = off(bend);
    if (now < least) {
      least = now;
      best = bend;
    }
  }
  let low = best - 0.01,
    high = best + 0.01;
  for (let i = 0; i < 18; i++) {
    const a = low + (high - low) * 0.382,
      b = low + (high - low) * 0.618;
    if (off(a) < off(b)) high = b;
    else low = a;
  }
  const bend = (low + high) / 2;
  return none > 0.35 && off(bend) < 0.6 * none ? { ...flat, bend } : flat;
}
