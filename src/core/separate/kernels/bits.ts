import type { RunSource } from '../../stencil/index.ts';

/** A 0/1 mask, one bit a pixel: 32 pixels are looked at in one step. Each row begins a word; bits beyond the width are 0. */
export interface Bits {
  readonly width: number;
  readonly height: number;
  /** Words a row. */
  readonly across: number;
  readonly words: Int32Array;
}

export function emptyBits(width: number, height: number): Bits {
  const across = (width + 31) >> 5;
  return { width, height, across, words: new Int32Array(across * height) };
}

/** The pixels whose code has the layer's bit. */
export function bitsOf(codes: Uint8Array, layer: number, width: number, height: number): Bits {
  const out = emptyBits(width, height),
    { across, words } = out;
  for (let y = 0, i = 0; y < height; y++) {
    for (let w = y * across, left = width; left > 0; w++, left -= 32) {
      let word = 0;
      for (let k = 0, end = left < 32 ? left : 32; k < end; k++) word |= ((codes[i++] >> layer) & 1) << k;
      words[w] = word;
    }
  }
  return out;
}

/** One byte a pixel, 0 or 1. */
export function bytesOf(bits: Bits): Uint8Array {
  const out = new Uint8Array(bits.width * bits.height),
    runs = new BitRuns(bits, 1);
  while (runs.next()) out.fill(1, runs.from, runs.end);
  return out;
}

/** Gives the layer's bit of every code the mask's value. @returns the pixels whose code changed */
export function putBits(codes: Uint8Array, layer: number, mask: Bits): Bits {
  const { width, height, across, words } = mask;
  const changed = bitsOf(codes, layer, width, height),
    bit = 1 << layer;
  for (let w = 0; w < words.length; w++) changed.words[w] ^= words[w];
  for (let y = 0, w = 0; y < height; y++)
    for (let x = 0; x < across; x++, w++) {
      for (let left = changed.words[w]; left !== 0; left &= left - 1) codes[y * width + 32 * x + lowest(left)] ^= bit;
    }
  return changed;
}

export function inverted({ width, height, across, words }: Bits): Bits {
  const out = emptyBits(width, height),
    last = lastWord(width);
  for (let w = 0; w < words.length; w++) out.words[w] = ~words[w];
  for (let w = across - 1; w < words.length; w += across) out.words[w] &= last;
  return out;
}

/** The bits of a row's last word that lie inside the width. */
export const lastWord = (width: number): number => ((width & 31) === 0 ? -1 : (1 << (width & 31)) - 1);

/** How many pixels differ. */
export function difference(a: Bits, b: Bits): number {
  let sum = 0;
  for (let w = 0; w < a.words.length; w++) for (let left = a.words[w] ^ b.words[w]; left !== 0; left &= left - 1) sum++;
  return sum;
}

/** Pixels from..end−1, all in one row, take the value. */
export function fillBits({ width, across, words }: Bits, from: number, end: number, value: 0 | 1): void {
  const y = Math.floor(from / width),
    base = y * across;
  for (let x = from - y * width, stop = end - y * width; x < stop; ) {
    const next = Math.min(stop, (x | 31) + 1);
    const part = (next - x === 32 ? -1 : (1 << (next - x)) - 1) << (x & 31);
    if (value) words[base + (x >> 5)] |= part;
    else words[base + (x >> 5)] &= ~part;
    x = next;
  }
}

const lowest = (word: number): number => 31 - Math.clz32(word & -word);

/** The runs of one value in the rows of a mask, from the top left on; pixels are numbered row by row without gaps. */
export class BitRuns implements RunSource {
  from = 0;
  end = 0;
  private readonly bits: Bits;
  private readonly flip: number;
  private y = 0;

  constructor(bits: Bits, value: 0 | 1) {
    this.bits = bits;
    this.flip = value ? 0 : -1;
  }

  next(): boolean {
    const { width, height } = this.bits;
    let x = this.end - this.y * width;
    for (; this.y < height; this.y++, x = 0) {
      const start = this.seek(x, this.flip);
      if (start === width) continue;
      this.from = this.y * width + start;
      this.end = this.y * width + this.seek(start, ~this.flip);
      return true;
    }
    return false;
  }

  /** The first column from `x` on whose bit, turned round by `flip`, is 1; the width if there is none. */
  private seek(x: number, flip: number): number {
    const { width, across, words } = this.bits;
    if (x >= width) return width;
    const base = this.y * across;
    let w = x >> 5,
      word = (words[base + w] ^ flip) & (-1 << (x & 31));
    while (word === 0) {
      if (++w === across) return width;
      word = words[base + w] ^ flip;
    }
    return Math.min(width, 32 * w + lowest(word));
  }
}
