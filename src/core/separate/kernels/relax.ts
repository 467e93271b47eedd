import { diagonalWeight, straightWeight } from './length.ts';

/** What the kernels read: cost of every code per box of colours, the codes to choose from, and the price of knife length. */
export interface Field {
  readonly width: number;
  readonly height: number;
  readonly binOf: Uint16Array;
  /** box × code */
  readonly table: Float32Array;
  readonly codeCount: number;
  readonly layers: number;
  /** For each box the codes worth trying, best first: box × perBin. */
  readonly candidates: Uint8Array;
  readonly perBin: number;
  /** Price of a pixel length of each layer's outline. */
  readonly price: Float32Array;
  /** Importance a pixel. */
  readonly weight?: Float32Array;
  /** Bits that may not change. */
  readonly frozen: number;
}

/**
 * One pass over the image: every pixel takes the code that is cheapest for itself and its eight neighbours as they are
 * (iterated conditional modes). Energy never goes up. @returns how many pixels changed
 */
export function relax(field: Field, codes: Uint8Array): number {
  const { width, height, binOf, table, codeCount, layers, candidates, perBin, price, weight, frozen } = field;
  const low = new Float32Array(16), high = new Float32Array(16);
  const on = new Float32Array(8);
  let changed = 0;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const i = y * width + x, present = codes[i], bin = binOf[i];
      const left = x > 0, right = x + 1 < width, up = y > 0, down = y + 1 < height;
      let differs = 0;
      if (left) differs |= codes[i - 1] ^ present;
      if (right) differs |= codes[i + 1] ^ present;
      if (up) {
        differs |= codes[i - width] ^ present;
        if (left) differs |= codes[i - width - 1] ^ present;
        if (right) differs |= codes[i - width + 1] ^ present;
      }
      if (down) {
        differs |= codes[i + width] ^ present;
        if (left) differs |= codes[i + width - 1] ^ present;
        if (right) differs |= codes[i + width + 1] ^ present;
      }
      if (differs === 0 && candidates[bin * perBin] === present) continue;
      for (let b = 0; b < layers; b++) {
        let sum = 0;
        const add = (j: number, w: number): void => { sum += (codes[j] >> b) & 1 ? -w : w; };
        if (left) add(i - 1, straightWeight);
        if (right) add(i + 1, straightWeight);
        if (up) {
          add(i - width, straightWeight);
          if (left) add(i - width - 1, diagonalWeight);
          if (right) add(i - width + 1, diagonalWeight);
        }
        if (down) {
          add(i + width, straightWeight);
          if (left) add(i + width - 1, diagonalWeight);
          if (right) add(i + width + 1, diagonalWeight);
        }
        on[b] = sum * price[b];
      }
      subsetSums(on, layers, low, high);
      const w = weight ? weight[i] : 1;
      const row = bin * codeCount;
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
  }
  return changed;
}

/** Sums of `on` over the bits of 0..15 (layers 0..3) and of 0..15 (layers 4..7). */
export function subsetSums(on: Float32Array, layers: number, low: Float32Array, high: Float32Array): void {
  low[0] = high[0] = 0;
  for (let b = 0; b < 4; b++) {
    const size = 1 << b, l = b < layers ? on[b] : 0, h = b + 4 < layers ? on[b + 4] : 0;
    for (let s = 0; s < size; s++) {
      low[size + s] = low[s] + l;
      high[size + s] = high[s] + h;
    }
  }
}
