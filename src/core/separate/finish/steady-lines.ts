import type { Field } from '../kernels/relax.ts';
import type { DrawnLines } from '../prepare/drawn/drawing.ts';

/** ΔE00 that every layer more costs which begins or ends at both sides of a line: each sits off by itself, and a line has two edges close together. */
const layerMore = 3;

/**
 * Lines and dots of a drawing in one overlap along their whole length, the same wherever that colour lies on that ground: `codes` is changed in place.
 * @param allowed codes that may be printed at all
 */
export function steadyLines(
  { lineOf, of, colours }: DrawnLines,
  { table, codeCount, binOf, frozen, weight }: Field,
  codes: Uint8Array,
  allowed: readonly number[],
): void {
  const pairs = new Map<number, { readonly pixels: number[]; readonly ground: number }>(),
    grounds = mostPrinted(codes, of, lineOf, colours, codeCount);
  for (let i = 0; i < codes.length; i++) {
    if (lineOf[i] === 0) continue;
    const ground = lineOf[i] - 1,
      key = ground * 256 + of[i];
    let pair = pairs.get(key);
    if (!pair) pairs.set(key, (pair = { pixels: [], ground }));
    pair.pixels.push(i);
  }
  for (const { pixels, ground } of pairs.values()) {
    const below = grounds[ground],
      bins = new Map<number, number>();
    for (const i of pixels) bins.set(binOf[i], (bins.get(binOf[i]) ?? 0) + (weight?.[i] ?? 1));
    let all = 0;
    for (const count of bins.values()) all += count;
    let best = -1,
      least = Infinity;
    for (const code of allowed) {
      // What lies there already is the same in line and ground, wherever it lies.
      if ((code ^ below) & frozen) continue;
      let cost = layerMore * Math.max(0, layersIn(code ^ below) - 1) * all;
      for (const [bin, count] of bins) cost += count * table[bin * codeCount + code];
      if (cost < least) {
        least = cost;
        best = code;
      }
    }
    if (best >= 0) for (const i of pixels) codes[i] = (best & ~frozen) | (codes[i] & frozen);
  }
}

/** The overlap that most of each colour's area is printed in. */
function mostPrinted(codes: Uint8Array, of: Uint8Array, lineOf: Uint8Array, colours: number, codeCount: number): Uint8Array {
  const votes = new Uint32Array(colours * codeCount);
  for (let i = 0; i < codes.length; i++) if (lineOf[i] === 0) votes[of[i] * codeCount + codes[i]]++;
  return Uint8Array.from({ length: colours }, (_, k) => {
    const own = votes.subarray(k * codeCount, (k + 1) * codeCount);
    return own.indexOf(Math.max(...own));
  });
}

function layersIn(code: number): number {
  let count = 0;
  for (let left = code; left !== 0; left &= left - 1) count++;
  return count;
}
