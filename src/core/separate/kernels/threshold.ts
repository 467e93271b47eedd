import { blurPlane, gaussTaps, planeOf } from './blur.ts';
import { subsetSums, type Field } from './relax.ts';

/**
 * Threshold dynamics (Merriman, Bence, Osher; many layers as Esedoḡlu and Otto): each layer's mask is blurred, then every
 * pixel takes the code with the least picture cost plus Σ over its layers of (√(2π) price / σ)(1 − 2 blurred). Reaches over
 * several pixels where `relax` sees one. @returns how many pixels changed
 */
export function thresholdSweep(field: Field, codes: Uint8Array, sigmaPx: number, room: ThresholdRoom): number {
  const { width, height, binOf, table, codeCount, layers, candidates, perBin, price, weight, frozen } = field;
  const { blurred } = room;
  const taps = gaussTaps(sigmaPx);
  for (let b = 0; b < layers; b++) {
    planeOf(codes, b, room.plane);
    blurPlane(room.plane, width, height, taps, blurred[b], room.scratch);
  }
  const strength = Math.sqrt(2 * Math.PI) / sigmaPx;
  const on = new Float32Array(8), low = new Float32Array(16), high = new Float32Array(16);
  let changed = 0;
  for (let i = 0; i < codes.length; i++) {
    const bin = binOf[i], present = codes[i];
    let even = candidates[bin * perBin] === present;
    for (let b = 0; b < layers; b++) {
      const share = blurred[b][i];
      on[b] = strength * price[b] * (1 - 2 * share);
      even &&= Math.abs(share - ((present >> b) & 1)) < 0.02;
    }
    // Its own best code, and so are all around: nothing to gain here.
    if (even) continue;
    subsetSums(on, layers, low, high);
    const w = weight ? weight[i] : 1, row = bin * codeCount;
    let best = present, least = w * table[row + present] + low[present & 15] + high[present >> 4] - 1e-6;
    for (let k = 0, at = bin * perBin; k < perBin; k++, at++) {
      const code = candidates[at];
      if ((code ^ present) & frozen) continue;
      const cost = w * table[row + code] + low[code & 15] + high[code >> 4];
      if (cost < least) {
        least = cost;
        best = code;
      }
    }
    if (best !== present) {
      codes[i] = best;
      changed++;
    }
  }
  return changed;
}

/** Working memory, made once per raster. */
export interface ThresholdRoom {
  readonly plane: Float32Array;
  readonly scratch: Float32Array;
  readonly blurred: readonly Float32Array[];
}

export function thresholdRoom(pixels: number, layers: number): ThresholdRoom {
  return {
    plane: new Float32Array(pixels), scratch: new Float32Array(pixels),
    blurred: Array.from({ length: layers }, () => new Float32Array(pixels)),
  };
}
