import type { Ground, Way } from '../bridges/ways.ts';

/** A ground of half as many pixels each way, and how to get back. */
export interface Halved {
  readonly ground: Ground;
  /** The first of the four pixels of the full ground that one of the halved stands for. */
  readonly fullPixel: (pixel: number) => number;
  /** A way on the halved ground as one on the full ground: its ends belong to the same parts. */
  readonly fullWay: (way: Way) => Way;
}

/**
 * The same ground at half the resolution, for a search where all costs are even: its ends are then moved to the nearest
 * pixels at full resolution anyhow. Undefined where a part is so small that it would be lost.
 */
export function halved(full: Ground): Halved | undefined {
  const { width, height, terminal, step } = full;
  const w = (width + 1) >> 1,
    h = (height + 1) >> 1;
  const small = new Int32Array(w * h),
    toll = new Uint16Array(w * h);
  const seen = new Uint8Array(full.terminals + 1);
  let missing = full.terminals;
  for (let y = 0, p = 0; y < h; y++) {
    const upper = 2 * y * width,
      lower = 2 * y + 1 < height ? upper + width : upper;
    for (let x = 0; x < w; x++, p++) {
      const left = 2 * x,
        right = left + 1 < width ? left + 1 : left;
      const t = terminal[upper + left] || terminal[upper + right] || terminal[lower + left] || terminal[lower + right];
      const a = step[upper + left],
        b = step[upper + right],
        c = step[lower + left],
        d = step[lower + right];
      small[p] = t;
      // The mean would do; the sum keeps it whole. Where a bridge may not go, it may not go near.
      toll[p] = a && b && c && d ? a + b + c + d : 0;
      if (t && !seen[t]) {
        seen[t] = 1;
        missing--;
      }
    }
  }
  if (missing > 0) return undefined;
  const pixelWith = (p: number, wanted: number): number => {
    const x = 2 * (p % w),
      y = 2 * Math.floor(p / w);
    let found = y * width + x;
    for (let k = 3; k >= 0; k--) {
      const u = x + (k & 1),
        v = y + (k >> 1);
      if (u < width && v < height && terminal[v * width + u] === wanted) found = v * width + u;
    }
    return found;
  };
  return {
    ground: { width: w, height: h, terminal: small, terminals: full.terminals, step: toll },
    fullPixel: (p) => 2 * (Math.floor(p / w) * width + (p % w)),
    fullWay: (way) => ({
      ...way,
      path: joined(
        way.path.map((p, i) => pixelWith(p, i === 0 ? way.from : i === way.path.length - 1 ? way.to : 0)),
        width,
      ),
    }),
  };
}

/** Fills in the pixels between those given. */
function joined(path: readonly number[], width: number): number[] {
  const out: number[] = [];
  path.forEach((p, i) => {
    if (i > 0) out.push(...linePixels(path[i - 1], p, width).slice(1));
    else out.push(p);
  });
  return out;
}

/** Pixels on the straight line from a to b, both included. */
export function linePixels(a: number, b: number, width: number): number[] {
  const ax = a % width,
    ay = Math.floor(a / width),
    bx = b % width,
    by = Math.floor(b / width);
  const steps = Math.max(Math.abs(bx - ax), Math.abs(by - ay), 1);
  return Array.from(
    { length: steps + 1 },
    (_, i) => Math.round(ay + ((by - ay) * i) / steps) * width + Math.round(ax + ((bx - ax) * i) / steps),
  );
}
