import type { Codes } from './codes.ts';

/** 256 codes → pixels as a canvas takes them (RGBA bytes, little-endian word). */
export type Palette = Uint32Array;

export function packRgb(r: number, g: number, b: number): number {
  return (0xff000000 | (b << 16) | (g << 8) | r) >>> 0;
}

/**
 * Palette for `codes` from the colours of all overlaps in laydown order.
 * @param rgb bytes, three per overlap index; bit i of the index = i-th printed layer from the bottom
 * @param bits bit in `codes` of the i-th printed layer
 * @param runs how many of them are printed so far (all by default): a progressive proof
 */
export function paletteOf(rgb: Uint8Array, bits: readonly number[], runs = bits.length): Palette {
  const palette = new Uint32Array(256);
  for (let code = 0; code < 256; code++) {
    const index = overlapIndex(code, bits, runs);
    palette[code] = packRgb(rgb[index * 3], rgb[index * 3 + 1], rgb[index * 3 + 2]);
  }
  return palette;
}

/** Code of a pixel → index of the overlap in laydown order; later runs and open layers left out. */
export function overlapIndex(code: number, bits: readonly number[], runs = bits.length): number {
  let index = 0;
  for (let i = 0; i < runs; i++) if (code & (1 << bits[i])) index |= 1 << i;
  return index;
}

/** Stretches of pixels with one code, row after row: what cut shapes are made of. Found once for given codes. */
interface Runs {
  /** Where each begins; one more at the end. */
  readonly starts: Uint32Array;
  readonly codes: Uint8Array;
}

const knownRuns = new WeakMap<Uint8Array, Runs | null>();

/** null where stretches are so short (dots) that pixel by pixel is quicker. */
function runsOf(data: Uint8Array): Runs | null {
  const known = knownRuns.get(data);
  if (known !== undefined) return known;
  let count = data.length > 0 ? 1 : 0;
  for (let i = 1; i < data.length; i++) if (data[i] !== data[i - 1]) count++;
  let runs: Runs | null = null;
  if (count * 8 < data.length) {
    const starts = new Uint32Array(count + 1),
      codes = new Uint8Array(count);
    for (let i = 0, r = 0; i < data.length; i++) {
      if (i > 0 && data[i] === data[i - 1]) continue;
      starts[r] = i;
      codes[r++] = data[i];
    }
    starts[count] = data.length;
    runs = { starts, codes };
  }
  knownRuns.set(data, runs);
  return runs;
}

/** Shorter stretches are written pixel by pixel. */
const worthFilling = 16;

/**
 * Paints codes with a palette into `out` (one word a pixel). The kernel behind every proof: stretches of one code are
 * filled at the speed of memory. `codes.data` must not be changed after it was painted once; make new codes instead.
 */
export function paint(codes: Codes, palette: Palette, out: Uint32Array): void {
  const { data } = codes;
  const runs = runsOf(data);
  if (!runs) {
    for (let i = 0; i < data.length; i++) out[i] = palette[data[i]];
    return;
  }
  const { starts } = runs;
  for (let r = 0; r < runs.codes.length; r++) {
    const colour = palette[runs.codes[r]],
      from = starts[r],
      to = starts[r + 1];
    if (to - from >= worthFilling) out.fill(colour, from, to);
    else for (let i = from; i < to; i++) out[i] = colour;
  }
}
