import { blurMask, gaussTaps } from './blur.ts';
import { cheapest, choiceRoom, inOrder, leastPrice, mostGain, type Field } from './relax.ts';

/** Blurred masks nearer to 0 or 1 than this are even. */
const evenShare = 0.02;

/**
 * Threshold dynamics (Merriman, Bence, Osher; many layers as Esedoḡlu and Otto): each layer's mask is blurred, then every
 * pixel takes the code with the least picture cost plus Σ over its layers of (√(2π) price / σ)(1 − 2 blurred). Reaches over
 * several pixels where `relax` sees one. @returns how many pixels changed
 */
export function thresholdSweep(of: Field, codes: Uint8Array, sigmaPx: number, room: ThresholdRoom): number {
  const field = inOrder(of),
    { width, height, layers, price } = field;
  const { blurred } = room;
  const taps = gaussTaps(sigmaPx);
  for (let b = 0; b < layers; b++) blurMask(codes, b, width, height, taps, blurred[b]);
  const strength = Math.sqrt(2 * Math.PI) / sigmaPx;
  const choice = choiceRoom(),
    { on } = choice;
  // What another code costs at least where all layers lie around a pixel as they lie on it.
  const speck = strength * (1 - 2 * evenShare) * 0.999 * leastPrice(field);
  let changed = 0;
  for (let i = 0; i < codes.length; i++) {
    const present = codes[i];
    if (mostGain(field, i, present) <= speck && evenAround(blurred, layers, i, present)) continue;
    for (let b = 0; b < layers; b++) on[b] = strength * price[b] * (1 - 2 * blurred[b][i]);
    const best = cheapest(field, i, present, choice);
    if (best !== present) {
      codes[i] = best;
      changed++;
    }
  }
  return changed;
}

/** Do all layers lie around a pixel as they lie on it? */
function evenAround(blurred: readonly Float32Array[], layers: number, i: number, present: number): boolean {
  for (let b = 0; b < layers; b++) if (Math.abs(blurred[b][i] - ((present >> b) & 1)) >= evenShare) return false;
  return true;
}

/** Working memory, made once per raster. */
export interface ThresholdRoom {
  readonly blurred: readonly Float32Array[];
}

export function thresholdRoom(pixels: number, layers: number): ThresholdRoom {
  return {
    blurred: Array.from({ length: layers }, () => new Float32Array(pixels)),
  };
}
