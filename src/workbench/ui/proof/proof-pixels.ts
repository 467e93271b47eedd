import { packRgb, type Codes } from '../../../core/print/index.ts';
import type { ShownPlan } from '../../engine/protocol.ts';

/** Codes under the pixels of the screen, `per` × `per` of them for each pixel. */
export interface Samples {
  readonly width: number;
  readonly height: number;
  readonly per: number;
  readonly data: Uint8Array;
}

const known = new WeakMap<Uint8Array, Map<string, Samples>>();
const mostKept = 6;

/** Samples of the raster for a picture of so many pixels; remembered, so that a new palette only paints. */
export function sampleCodes(codes: Codes, width: number, height: number, per: number): Samples {
  let sizes = known.get(codes.data);
  if (!sizes) known.set(codes.data, (sizes = new Map()));
  const key = `${width} ${height} ${per}`;
  let samples = sizes.get(key);
  if (!samples) {
    samples = { width, height, per, data: pick(codes, width * per, height * per) };
    if (sizes.size >= mostKept) sizes.delete(sizes.keys().next().value!);
    sizes.set(key, samples);
  }
  return samples;
}

function pick(codes: Codes, columns: number, rows: number): Uint8Array {
  const out = new Uint8Array(columns * rows);
  const from = Int32Array.from({ length: columns }, (_, x) => Math.floor(((x + 0.5) * codes.width) / columns));
  for (let y = 0, to = 0; y < rows; y++) {
    const row = Math.floor(((y + 0.5) * codes.height) / rows) * codes.width;
    for (let x = 0; x < columns; x++) out[to++] = codes.data[row + from[x]];
  }
  return out;
}

/** Paints samples with a palette; the samples of a pixel are averaged, so edges are smooth. One word a pixel. */
export function paintSamples({ width, height, per, data }: Samples, palette: Uint32Array, out: Uint32Array): void {
  const columns = width * per;
  // Nearly all pixels lie within one overlap: their codes tell it before any colour is looked up.
  for (let y = 0, to = 0; y < height; y++) {
    for (let x = 0; x < width; x++, to++) {
      const corner = y * per * columns + x * per;
      const code = data[corner];
      let same = true;
      for (let j = 0, row = corner; same && j < per; j++, row += columns)
        for (let i = row; i < row + per; i++) if (data[i] !== code) same = false;
      out[to] = same ? palette[code] : meanOf(data, palette, corner, columns, per);
    }
  }
}

function meanOf(data: Uint8Array, palette: Uint32Array, corner: number, columns: number, per: number): number {
  const n = per * per;
  const half = n >> 1;
  let [r, g, b] = [0, 0, 0];
  for (let j = 0, row = corner; j < per; j++, row += columns) {
    for (let i = row; i < row + per; i++) {
      const word = palette[data[i]];
      r += word & 0xff;
      g += (word >>> 8) & 0xff;
      b += (word >>> 16) & 0xff;
    }
  }
  return packRgb(((r + half) / n) | 0, ((g + half) / n) | 0, ((b + half) / n) | 0);
}

/** Averages `per` × `per` pixels into one. */
export function shrink(words: Uint32Array, width: number, height: number, per: number): Uint32Array {
  if (per === 1) return words;
  const out = new Uint32Array(width * height);
  average(width, height, per, out, (i) => words[i]);
  return out;
}

function average(width: number, height: number, per: number, out: Uint32Array, at: (i: number) => number): void {
  const columns = width * per;
  const n = per * per;
  const half = n >> 1;
  for (let y = 0, to = 0; y < height; y++) {
    for (let x = 0; x < width; x++, to++) {
      const corner = y * per * columns + x * per;
      const first = at(corner);
      let same = true;
      let r = first & 0xff,
        g = (first >>> 8) & 0xff,
        b = (first >>> 16) & 0xff;
      for (let k = 1; k < n; k++) {
        const word = at(corner + ((k / per) | 0) * columns + (k % per));
        if (word !== first) same = false;
        r += word & 0xff;
        g += (word >>> 8) & 0xff;
        b += (word >>> 16) & 0xff;
      }
      out[to] = same ? first : packRgb(((r + half) / n) | 0, ((g + half) / n) | 0, ((b + half) / n) | 0);
    }
  }
}

/** A colour drawn back to a grey near the surround, so that what is left in colour stands out. */
export function dimWord(word: number): number {
  const luma = 0.2126 * (word & 0xff) + 0.7152 * ((word >>> 8) & 0xff) + 0.0722 * ((word >>> 16) & 0xff);
  const grey = Math.round(158 + (luma - 128) * 0.28);
  return packRgb(grey, grey, grey);
}

/** Bits that print on this plan: an open layer has a bit but leaves no ink. */
export function printedMask(plan: { readonly layers: readonly Pick<ShownPlan['layers'][number], 'bit' | 'inkId'>[] }): number {
  return plan.layers.reduce((mask, layer) => (layer.inkId === null ? mask : mask | (1 << layer.bit)), 0);
}

/** Keeps one overlap in colour, dims all else. */
export function dimPalette(palette: Uint32Array, mask: number, keep: number): Uint32Array {
  return palette.map((word, code) => ((code & mask) === keep ? word : dimWord(word)));
}

/** Which pixel of the codes lies at a point of the image, both 0..1. */
export function pixelAt(codes: Codes, u: number, v: number): number {
  const x = Math.min(codes.width - 1, Math.max(0, Math.floor(u * codes.width)));
  const y = Math.min(codes.height - 1, Math.max(0, Math.floor(v * codes.height)));
  return y * codes.width + x;
}
