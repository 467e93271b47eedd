import type { Bins } from './bins.ts';
import { targetsOf, type Edges, type Targets, type Use } from '../search/fit-score.ts';
import { diagonalWeight, straightWeight } from '../kernels/length.ts';

/** The picture's colours boiled down to so many, for searching inks. */
export interface FewTargets {
  readonly targets: Targets;
  /** Which of the few each box belongs to. */
  readonly ofBin: Uint16Array;
}

/** Weighted k-means on the boxes, seeded by spreading (each new centre the worst-met box), so no chance is needed. */
export function fewTargets(bins: Bins, most = 160): FewTargets {
  const k = Math.min(most, bins.count);
  const centres = new Float64Array(k * 3);
  const nearest = new Float64Array(bins.count).fill(Infinity);
  const ofBin = new Uint16Array(bins.count);
  let pick = indexOfMost(
    bins.weight,
    nearest.map(() => 1),
  );
  for (let c = 0; c < k; c++) {
    centres.set(bins.lab.subarray(pick * 3, pick * 3 + 3), c * 3);
    for (let i = 0; i < bins.count; i++) {
      const d = squared(bins.lab, i, centres, c);
      if (d < nearest[i]) {
        nearest[i] = d;
        ofBin[i] = c;
      }
    }
    pick = indexOfMost(bins.weight, nearest);
  }
  for (let turn = 0; turn < 3; turn++) {
    recentre(bins, ofBin, centres, k);
    for (let i = 0; i < bins.count; i++) {
      let least = Infinity;
      for (let c = 0; c < k; c++) {
        const d = squared(bins.lab, i, centres, c);
        if (d < least) {
          least = d;
          ofBin[i] = c;
        }
      }
    }
  }
  const weight = recentre(bins, ofBin, centres, k);
  return { targets: targetsOf(centres, weight), ofBin };
}

function recentre(bins: Bins, ofBin: Uint16Array, centres: Float64Array, k: number): Float64Array {
  const sums = new Float64Array(k * 3),
    weight = new Float64Array(k);
  for (let i = 0; i < bins.count; i++) {
    weight[ofBin[i]] += bins.weight[i];
    for (let c = 0; c < 3; c++) sums[ofBin[i] * 3 + c] += bins.weight[i] * bins.lab[i * 3 + c];
  }
  for (let c = 0; c < k; c++) if (weight[c] > 0) for (let j = 0; j < 3; j++) centres[c * 3 + j] = sums[c * 3 + j] / weight[c];
  return weight;
}

function squared(a: Float64Array, i: number, b: Float64Array, j: number): number {
  const dl = a[i * 3] - b[j * 3],
    da = a[i * 3 + 1] - b[j * 3 + 1],
    db = a[i * 3 + 2] - b[j * 3 + 2];
  return dl * dl + da * da + db * db;
}

function indexOfMost(weight: Float64Array, distance: Float64Array): number {
  let best = 0,
    most = -1;
  for (let i = 0; i < weight.length; i++) {
    const score = weight[i] * distance[i];
    if (score > most) {
      most = score;
      best = i;
    }
  }
  return best;
}

/** Colour × code amounts → the pairs that matter. */
export function usePairs(counts: Float64Array, codeCount: number): Use {
  const sum = counts.reduce((a, b) => a + b, 0);
  const target: number[] = [],
    code: number[] = [],
    share: number[] = [];
  for (let at = 0; at < counts.length; at++) {
    if (counts[at] <= sum * 1e-6) continue;
    target.push(Math.floor(at / codeCount));
    code.push(at % codeCount);
    share.push(counts[at] / sum);
  }
  return { target: Uint16Array.from(target), code: Uint8Array.from(code), share: Float64Array.from(share) };
}

/**
 * Which of the few colours border on which, on a raster of a millimetre or so, where the grain of the picture is averaged out.
 * @param priceMm ΔE00·mm a mm of outline
 */
export function edgesOf(few: FewTargets, lab: Float32Array, width: number, height: number, mmPerPx: number, priceMm: number): Edges {
  const { count, lab: centres } = few.targets;
  const of = new Uint16Array(width * height);
  for (let i = 0; i < of.length; i++) {
    let least = Infinity;
    for (let c = 0; c < count; c++) {
      const dl = lab[i * 3] - centres[c * 3],
        da = lab[i * 3 + 1] - centres[c * 3 + 1],
        db = lab[i * 3 + 2] - centres[c * 3 + 2];
      const d = dl * dl + da * da + db * db;
      if (d < least) {
        least = d;
        of[i] = c;
      }
    }
  }
  const sums = new Map<number, number>();
  const add = (i: number, j: number, length: number): void => {
    const a = Math.min(of[i], of[j]),
      b = Math.max(of[i], of[j]);
    if (a !== b) sums.set(a * count + b, (sums.get(a * count + b) ?? 0) + length);
  };
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      if (x + 1 < width) add(i, i + 1, straightWeight);
      if (y + 1 < height) {
        add(i, i + width, straightWeight);
        if (x + 1 < width) add(i, i + width + 1, diagonalWeight);
        if (x > 0) add(i, i + width - 1, diagonalWeight);
      }
    }
  const pairs = [...sums].sort((p, q) => q[1] - p[1]);
  const perPx = priceMm / (mmPerPx * width * height);
  return {
    a: Uint16Array.from(pairs, ([key]) => Math.floor(key / count)),
    b: Uint16Array.from(pairs, ([key]) => key % count),
    price: Float64Array.from(pairs, ([, length]) => length * perPx),
  };
}
