import type { Bins } from './bins.ts';
import { targetsOf, type Targets, type Use } from './fit-score.ts';

/** The picture's colours boiled down to so many, for searching inks. */
export interface FewTargets {
  readonly targets: Targets;
  /** Which of the few each box belongs to. */
  readonly ofBin: Uint16Array;
}

/** Weighted k-means on the boxes, seeded by spreading (each new centre the worst-met box), so no chance is needed. */
export function fewTargets(bins: Bins, most = 260): FewTargets {
  const k = Math.min(most, bins.count);
  const centres = new Float64Array(k * 3);
  const nearest = new Float64Array(bins.count).fill(Infinity);
  const ofBin = new Uint16Array(bins.count);
  let pick = indexOfMost(bins.weight, nearest.map(() => 1));
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
  const sums = new Float64Array(k * 3), weight = new Float64Array(k);
  for (let i = 0; i < bins.count; i++) {
    weight[ofBin[i]] += bins.weight[i];
    for (let c = 0; c < 3; c++) sums[ofBin[i] * 3 + c] += bins.weight[i] * bins.lab[i * 3 + c];
  }
  for (let c = 0; c < k; c++) if (weight[c] > 0) for (let j = 0; j < 3; j++) centres[c * 3 + j] = sums[c * 3 + j] / weight[c];
  return weight;
}

function squared(a: Float64Array, i: number, b: Float64Array, j: number): number {
  const dl = a[i * 3] - b[j * 3], da = a[i * 3 + 1] - b[j * 3 + 1], db = a[i * 3 + 2] - b[j * 3 + 2];
  return dl * dl + da * da + db * db;
}

function indexOfMost(weight: Float64Array, distance: Float64Array): number {
  let best = 0, most = -1;
  for (let i = 0; i < weight.length; i++) {
    const score = weight[i] * distance[i];
    if (score > most) {
      most = score;
      best = i;
    }
  }
  return best;
}

/** How much of each of the few colours each code prints. */
export function useOf(few: FewTargets, binOf: Uint16Array, codes: Uint8Array, codeCount: number, weight?: Float32Array): Use {
  const counts = new Float64Array(few.targets.count * codeCount);
  let sum = 0;
  for (let i = 0; i < codes.length; i++) {
    const w = weight ? weight[i] : 1;
    counts[few.ofBin[binOf[i]] * codeCount + codes[i]] += w;
    sum += w;
  }
  const target: number[] = [], code: number[] = [], share: number[] = [];
  for (let at = 0; at < counts.length; at++) {
    if (counts[at] === 0) continue;
    target.push(Math.floor(at / codeCount));
    code.push(at % codeCount);
    share.push(counts[at] / sum);
  }
  return { target: Uint16Array.from(target), code: Uint8Array.from(code), share: Float64Array.from(share) };
}
