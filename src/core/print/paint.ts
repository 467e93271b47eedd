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

/** Paints codes with a palette into `out` (one word a pixel). The kernel behind every proof. */
export function paint(codes: Codes, palette: Palette, out: Uint32Array): void {
  const { data } = codes;
  const n = data.length;
  const end = n - (n % 4);
  let i = 0;
  for (; i < end; i += 4) {
    out[i] = palette[data[i]];
    out[i + 1] = palette[data[i + 1]];
    out[i + 2] = palette[data[i + 2]];
    out[i + 3] = palette[data[i + 3]];
  }
  for (; i < n; i++) out[i] = palette[data[i]];
}
