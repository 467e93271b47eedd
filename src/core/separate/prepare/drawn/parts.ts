import { bitsOf, bytesOf } from '../../kernels/bits.ts';
import { dilated, opened } from '../../kernels/morph.ts';

/** Connected parts (by edges) of one colour. */
export interface Parts {
  readonly of: Int32Array;
  readonly pixels: readonly Int32Array[];
}

/** @param among only these pixels, 1 each */
export function partsOf(colour: Uint8Array, width: number, height: number, among?: Uint8Array): Parts {
  const of = new Int32Array(colour.length).fill(-1),
    pixels: Int32Array[] = [],
    open = new Int32Array(colour.length);
  let count = 0;
  const reach = (j: number, own: number): void => {
    if (of[j] >= 0 || colour[j] !== own || (among && !among[j])) return;
    of[j] = pixels.length;
    open[count++] = j;
  };
  for (let start = 0; start < colour.length; start++) {
    if (of[start] >= 0 || (among && !among[start])) continue;
    const own = colour[start];
    count = 0;
    reach(start, own);
    for (let at = 0; at < count; at++) {
      const i = open[at],
        x = i % width;
      if (x > 0) reach(i - 1, own);
      if (x + 1 < width) reach(i + 1, own);
      if (i >= width) reach(i - width, own);
      if (i + width < width * height) reach(i + width, own);
    }
    pixels.push(open.slice(0, count));
  }
  return { of, pixels };
}

/** How long a part of one colour borders on each other colour, px. */
export function bordersOf(pixels: Int32Array, of: Uint8Array, width: number, height: number): Uint32Array {
  const votes = new Uint32Array(256),
    own = of[pixels[0]];
  for (const i of pixels) {
    const x = i % width;
    if (x > 0 && of[i - 1] !== own) votes[of[i - 1]]++;
    if (x + 1 < width && of[i + 1] !== own) votes[of[i + 1]]++;
    if (i >= width && of[i - width] !== own) votes[of[i - width]]++;
    if (i + width < width * height && of[i + width] !== own) votes[of[i + width]]++;
  }
  return votes;
}

/** Pixels that belong to something of their colour that is as broad as this, 1 each. */
export function broadParts(of: Uint8Array, width: number, height: number, count: number, widthPx: number): Uint8Array {
  const out = new Uint8Array(of.length),
    here = new Uint8Array(of.length);
  for (let colour = 0; colour < count; colour++) {
    let any = 0;
    for (let i = 0; i < of.length; i++) any |= here[i] = of[i] === colour ? 1 : 0;
    if (any === 0) continue;
    // Corners that a disc doesn't reach are of the area that they end.
    const kept = bytesOf(dilated(opened(bitsOf(here, 0, width, height), widthPx / 2), 1.5));
    for (let i = 0; i < out.length; i++) if (here[i] && kept[i]) out[i] = 1;
  }
  return out;
}

/** How much of each colour is not. */
export function thinShares(of: Uint8Array, broad: Uint8Array, count: number): Float64Array {
  const all = new Float64Array(count),
    thin = new Float64Array(count);
  for (let i = 0; i < of.length; i++) {
    all[of[i]]++;
    if (!broad[i]) thin[of[i]]++;
  }
  return thin.map((v, k) => v / Math.max(1, all[k]));
}
