import type { Field } from '../../kernels/relax.ts';
import type { DrawnLines } from '../../prepare/drawn/drawing.ts';

/** ΔE00 that every layer more costs which begins and ends at both sides of a line: each sits off by itself, and a line's two edges are close together. */
const layerMore = 3;

/**
 * Lines and dots of a drawing in one overlap along their whole length, the same wherever that colour lies on that ground; a line that is not worth its
 * knife is not drawn at all. `codes` is changed in place.
 * @param allowed codes that may be printed at all
 */
export function steadyLines({ lineOf, of, colours, parts }: DrawnLines, field: Field, codes: Uint8Array, allowed: readonly number[]): void {
  const { codeCount, frozen } = field,
    grounds = mostPrinted(codes, of, lineOf, colours, codeCount),
    keyOf = (i: number): number => (lineOf[i] - 1) * colours + of[i];
  const alike = new Map<number, DrawnLines['parts'][number][]>();
  for (const part of parts) {
    const key = keyOf(part.pixels[0]),
      there = alike.get(key);
    if (there) there.push(part);
    else alike.set(key, [part]);
  }
  const best = new Map([...alike].map(([key, lines]) => [key, codeFor(lines, grounds[Math.floor(key / colours)], field, allowed)]));
  for (const { pixels, outlinePx } of parts) {
    const code = best.get(keyOf(pixels[0]))!,
      below = grounds[lineOf[pixels[0]] - 1],
      worth = costOf(below, pixels, field) - costOf(code, pixels, field) > outlinePx * priceOf(code ^ below, field);
    for (const i of pixels) codes[i] = ((worth ? code : below) & ~frozen) | (codes[i] & frozen);
  }
}

/** The overlap for lines of one colour on one ground: the dearer the knife, the fewer layers they are cut in. */
function codeFor(lines: DrawnLines['parts'], below: number, field: Field, allowed: readonly number[]): number {
  const pixels = lines.reduce((sum, line) => sum + line.pixels.length, 0),
    outlinePx = lines.reduce((sum, line) => sum + line.outlinePx, 0);
  let best = below,
    least = Infinity;
  for (const code of allowed) {
    const changed = code ^ below;
    // What lies there already is the same in line and ground, wherever it lies; and a line is no line in the colour of its ground.
    if (changed === 0 || changed & field.frozen) continue;
    const more = layerMore * (layersIn(changed) - 1) * pixels + outlinePx * priceOf(changed, field),
      cost = lines.reduce((sum, line) => sum + costOf(code, line.pixels, field), more);
    if (cost < least) {
      least = cost;
      best = code;
    }
  }
  return best;
}

function costOf(code: number, pixels: Int32Array, { table, codeCount, binOf, weight }: Field): number {
  let sum = 0;
  for (const i of pixels) sum += table[binOf[i] * codeCount + code] * (weight ? weight[i] : 1);
  return sum;
}

function priceOf(changed: number, { price, layers }: Field): number {
  let sum = 0;
  for (let layer = 0; layer < layers; layer++) if (changed & (1 << layer)) sum += price[layer];
  return sum;
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
