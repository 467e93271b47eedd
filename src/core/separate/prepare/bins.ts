import { deltaE00Of } from '../../colour/index.ts';

/** The picture's colours in boxes, so that differences are worked out per box and not per pixel. */
export interface Bins {
  /** Box of each pixel. */
  readonly of: Uint16Array;
  /** Mean Lab of each box, 3 a box. */
  readonly lab: Float64Array;
  /** Pixels in each box, counted by their importance. */
  readonly weight: Float64Array;
  readonly count: number;
}

const mostBins = 5000;
/** How long a box is, Lab: no eye tells two colours of one apart; for a sketch twice that will do. */
const boxStep = 1.6;
export const sketchStep = 3.2;

/**
 * @param lab 3 a pixel
 * @param weight importance a pixel, 1 everywhere if left out
 */
export function binColours(lab: Float32Array, weight?: Float32Array, least = boxStep): Bins {
  for (let step = least; ; step *= 1.22) {
    const bins = boxed(lab, step, weight);
    if (bins) return bins;
  }
}

function boxed(lab: Float32Array, step: number, weight?: Float32Array): Bins | undefined {
  const n = lab.length / 3;
  const across = Math.ceil(320 / step),
    deep = Math.ceil(130 / step);
  // Box of each cell, counted from 1; 0 is none yet.
  const cell = new Uint16Array(across * across * deep);
  const of = new Uint16Array(n);
  const sums = new Float64Array(mostBins * 3),
    weights = new Float64Array(mostBins),
    counts = new Float64Array(mostBins);
  let count = 0;
  for (let i = 0; i < n; i++) {
    const l = lab[i * 3],
      a = lab[i * 3 + 1],
      b = lab[i * 3 + 2];
    const at =
      (clampCell((l + 5) / step, deep) * across + clampCell((a + 160) / step, across)) * across + clampCell((b + 160) / step, across);
    let bin = cell[at] - 1;
    if (bin < 0) {
      if (count === mostBins) return undefined;
      bin = count++;
      cell[at] = count;
    }
    of[i] = bin;
    sums[bin * 3] += l;
    sums[bin * 3 + 1] += a;
    sums[bin * 3 + 2] += b;
    counts[bin]++;
    weights[bin] += weight ? weight[i] : 1;
  }
  for (let bin = 0; bin < count; bin++) for (let c = 0; c < 3; c++) sums[bin * 3 + c] /= counts[bin];
  return { of, lab: sums.slice(0, count * 3), weight: weights.slice(0, count), count };
}

function clampCell(v: number, size: number): number {
  return v < 0 ? 0 : v >= size ? size - 1 : v | 0;
}

/**
 * ΔE00 of every box against every overlap.
 * @param overlapLab 3 a code
 * @param blacksAlike near-blacks differ by little: no outline is cut in many layers to win a few L* in them
 * @returns box × code
 */
export function costTable(bins: Bins, overlapLab: Float64Array, blacksAlike = false): Float32Array {
  const codes = overlapLab.length / 3;
  const same = firstAlike(overlapLab);
  const seen = blacksAlike ? asSeen : <T extends Float64Array | Float32Array>(lab: T): T => lab;
  const picture = seen(bins.lab),
    print = seen(overlapLab);
  const out = new Float32Array(bins.count * codes);
  for (let bin = 0, row = 0; bin < bins.count; bin++, row += codes) {
    const l = picture[bin * 3],
      a = picture[bin * 3 + 1],
      b = picture[bin * 3 + 2];
    for (let code = 0; code < codes; code++) {
      const first = same[code];
      out[row + code] = first < code ? out[row + first] : deltaE00Of(l, a, b, print[code * 3], print[code * 3 + 1], print[code * 3 + 2]);
    }
  }
  return out;
}

/** Darker than this all is black to whoever looks at a print on a wall: of what lies below only so much is seen. common practice */
const blackL = 24,
  seenOfBlack = 0.25;

/** Lab with what is darker than `black` (L*) nearer to it: a share `seen` of the way is left. */
export function asSeen<T extends Float64Array | Float32Array>(lab: T, black = blackL, seen = seenOfBlack): T {
  const out = lab.slice() as T;
  for (let i = 0; i < out.length; i += 3) {
    if (out[i] >= black) continue;
    const share = seen + (1 - seen) * Math.max(0, out[i] / black);
    out[i] = black - seen * (black - out[i]);
    out[i + 1] *= share;
    out[i + 2] *= share;
  }
  return out;
}

/** For each code the first of the same colour: opaque inks look alike whatever lies under them. */
function firstAlike(overlapLab: Float64Array): Uint8Array {
  const seen = new Map<string, number>();
  return Uint8Array.from({ length: overlapLab.length / 3 }, (_, code) => {
    const colour = overlapLab.subarray(code * 3, code * 3 + 3).join();
    if (!seen.has(colour)) seen.set(colour, code);
    return seen.get(colour)!;
  });
}
