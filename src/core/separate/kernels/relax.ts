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
  /** Price of a pixel length of each layer's outline; 8 numbers. */
  readonly price: Float32Array;
  /** Importance a pixel. */
  readonly weight?: Float32Array;
  /** Bits that may not change. */
  readonly frozen: number;
  /** Open layers are window and piece of one cut, two by two: just one of a pair prints at any place. */
  readonly paired?: boolean;
  /** Read where layers sit off by themselves: what it costs that a place turns lighter than anything planned around it. */
  readonly bare?: Bare;
}

/** The same with its parts in one order, whoever put it together: engines make a kernel anew for every other order that it meets. */
export function inOrder(field: Field): Field {
  const { width, height, binOf, table, codeCount, layers, candidates, perBin, price, weight, frozen, paired, bare } = field;
  return { width, height, binOf, table, codeCount, layers, candidates, perBin, price, weight, frozen, paired, bare };
}

export interface Bare {
  /** L* of each code. */
  readonly lightness: Float32Array;
  /** L* a pixel from and up to which nothing is seen. */
  readonly least: Float32Array;
  readonly most: Float32Array;
  /** ΔE00 an L* beyond that: lighter, a slit; darker, a line. */
  readonly slitPrice: number;
  readonly linePrice: number;
}

/** Each bit of a code in a byte lane of its own, so that neighbours are counted for four layers in one addition. */
const lanesLow = Uint32Array.from({ length: 256 }, (_, code) => lanes(code & 15));
const lanesHigh = Uint32Array.from({ length: 256 }, (_, code) => lanes(code >> 4));

function lanes(bits: number): number {
  return (bits & 1) | ((bits & 2) << 7) | ((bits & 4) << 14) | ((bits & 8) << 21);
}

/**
 * Every pixel takes the code that is cheapest for itself and its eight neighbours as they are (iterated conditional modes),
 * pass after pass, until few move. Energy never goes up. From the second pass on only pixels next to a change are looked
 * at again: nowhere else could anything differ.
 * @param stopShare stops once a pass changes less than this share of the pixels
 * @param from pixels to begin with, 1 each (used up); all if left out
 */
export function relaxed(field: Field, codes: Uint8Array, turns: number, stopShare: number, from?: Uint8Array): void {
  const awake = from ?? new Uint8Array(codes.length).fill(1);
  const own = inOrder(field);
  for (let turn = 0; turn < turns; turn++) if (relaxPass(own, codes, awake) < codes.length * stopShare) return;
}

/** @param awake pixels to look at; changed: those to look at next time. @returns how many pixels changed */
function relaxPass(field: Field, codes: Uint8Array, awake: Uint8Array): number {
  const { width, height, layers, price } = field;
  const choice = choiceRoom(),
    { on } = choice;
  const speck = 0.999 * 4 * (straightWeight + diagonalWeight) * leastPrice(field);
  const four = layers > 4;
  let changed = 0;
  for (let y = 0; y < height; y++) {
    // Late passes move little: rows without anything to look at are skipped.
    const next = awake.indexOf(1, y * width);
    if (next < 0) break;
    y = Math.floor(next / width);
    // At the border the neighbour is the pixel itself: it agrees with everything and costs nothing in the difference.
    const up = y > 0 ? -width : 0,
      down = y + 1 < height ? width : 0;
    for (let x = next - y * width; x < width; x++) {
      const i = y * width + x;
      if (awake[i] === 0) continue;
      awake[i] = 0;
      const present = codes[i];
      const left = x > 0 ? -1 : 0,
        right = x + 1 < width ? 1 : 0;
      const n = codes[i + up],
        s = codes[i + down],
        w = codes[i + left],
        e = codes[i + right];
      const nw = codes[i + up + left],
        ne = codes[i + up + right],
        sw = codes[i + down + left],
        se = codes[i + down + right];
      const differs =
        (n ^ present) | (s ^ present) | (w ^ present) | (e ^ present) | (nw ^ present) | (ne ^ present) | (sw ^ present) | (se ^ present);
      const inside = up !== 0 && down !== 0 && left !== 0 && right !== 0;
      // In the middle of its own kind any other code needs a whole outline around it.
      if (differs === 0 && mostGain(field, i, present) <= (inside ? speck : 0)) continue;
      if (inside) {
        const straight = lanesLow[n] + lanesLow[s] + lanesLow[w] + lanesLow[e],
          diagonal = lanesLow[nw] + lanesLow[ne] + lanesLow[sw] + lanesLow[se];
        for (let b = 0; b < 4; b++) {
          on[b] =
            price[b] *
            (straightWeight * (4 - 2 * ((straight >>> (8 * b)) & 255)) + diagonalWeight * (4 - 2 * ((diagonal >>> (8 * b)) & 255)));
        }
        if (four) {
          const straightHigh = lanesHigh[n] + lanesHigh[s] + lanesHigh[w] + lanesHigh[e],
            diagonalHigh = lanesHigh[nw] + lanesHigh[ne] + lanesHigh[sw] + lanesHigh[se];
          for (let b = 0; b < 4; b++) {
            on[b + 4] =
              price[b + 4] *
              (straightWeight * (4 - 2 * ((straightHigh >>> (8 * b)) & 255)) +
                diagonalWeight * (4 - 2 * ((diagonalHigh >>> (8 * b)) & 255)));
          }
        }
      } else {
        for (let b = 0; b < layers; b++) {
          let sum = 0;
          if (up) sum += vote(n, b, straightWeight);
          if (down) sum += vote(s, b, straightWeight);
          if (left) sum += vote(w, b, straightWeight);
          if (right) sum += vote(e, b, straightWeight);
          if (up && left) sum += vote(nw, b, diagonalWeight);
          if (up && right) sum += vote(ne, b, diagonalWeight);
          if (down && left) sum += vote(sw, b, diagonalWeight);
          if (down && right) sum += vote(se, b, diagonalWeight);
          on[b] = sum * price[b];
        }
      }
      const best = cheapest(field, i, present, choice);
      if (best !== present) {
        codes[i] = best;
        changed++;
        awake[i + up] = awake[i + down] = awake[i + left] = awake[i + right] = 1;
        awake[i + up + left] = awake[i + up + right] = awake[i + down + left] = awake[i + down + right] = 1;
      }
    }
  }
  return changed;
}

function vote(code: number, layer: number, weight: number): number {
  return (code >> layer) & 1 ? -weight : weight;
}

/** Working memory of a choice: what each layer's ink costs on the pixel beside the picture, and its sums over bits 0..3 and 4..7. */
export interface ChoiceRoom {
  readonly on: Float32Array;
  readonly low: Float32Array;
  readonly high: Float32Array;
}

export function choiceRoom(): ChoiceRoom {
  return { on: new Float32Array(8), low: new Float32Array(16), high: new Float32Array(16) };
}

/**
 * The code that costs pixel `i` least with `on` as it is; the present one unless another is cheaper. Candidates come best first for
 * the picture: once even the best sum of `on` can't make up for that, none of those that follow is looked at.
 */
export function cheapest(field: Field, i: number, present: number, { on, low, high }: ChoiceRoom): number {
  const { table, codeCount, layers, candidates, perBin, weight, frozen } = field;
  let most = present & frozen,
    leastFlip = Infinity;
  for (let b = 0; b < layers; b++) {
    const bit = 1 << b,
      value = on[b];
    if (frozen & bit) continue;
    if (value < 0) most |= bit;
    const flip = present & bit ? -value : value;
    if (flip < leastFlip) leastFlip = flip;
  }
  // Where the knife is for the present code in every layer, another code must save more on the picture than one layer's change costs.
  if (mostGain(field, i, present) <= 0.999 * leastFlip) return present;
  subsetSums(on, layers, low, high);
  const mostLow = low[most & 15],
    mostHigh = high[most >> 4];
  const importance = weight ? weight[i] : 1,
    bin = field.binOf[i],
    row = bin * codeCount;
  let best = present,
    least = importance * table[row + present] + low[present & 15] + high[present >> 4] - 1e-6;
  for (let k = 0, at = bin * perBin; k < perBin; k++, at++) {
    const code = candidates[at],
      seen = importance * table[row + code];
    if (seen + mostLow + mostHigh >= least) break;
    if ((code ^ present) & frozen) continue;
    const cost = seen + low[code & 15] + high[code >> 4];
    if (cost < least) {
      least = cost;
      best = code;
    }
  }
  return best;
}

/** How much nearer to the picture a pixel could come, whatever it cost the knife. */
export function mostGain({ table, codeCount, candidates, perBin, binOf, weight }: Field, i: number, present: number): number {
  const bin = binOf[i],
    row = bin * codeCount,
    gain = table[row + present] - table[row + candidates[bin * perBin]];
  return weight ? weight[i] * gain : gain;
}

/** What a pixel length of outline costs in the cheapest of the layers that may change. */
export function leastPrice({ price, layers, frozen }: Field): number {
  let least = Infinity;
  for (let b = 0; b < layers; b++) if (!(frozen & (1 << b)) && price[b] < least) least = price[b];
  return least;
}

/** Sums of `on` over the bits of 0..15 (layers 0..3) and of 0..15 (layers 4..7). */
function subsetSums(on: Float32Array, layers: number, low: Float32Array, high: Float32Array): void {
  for (let b = 0; b < layers; b++) {
    const sums = b < 4 ? low : high,
      size = 1 << (b & 3),
      more = on[b];
    for (let s = 0; s < size; s++) sums[size + s] = sums[s] + more;
  }
}
