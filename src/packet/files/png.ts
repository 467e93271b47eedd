import { zlibSync } from 'fflate';
import { crc32 } from '../../core/numeric/index.ts';

/**
 * PNG files (ISO/IEC 15948) with their true density: a picture of 180 mm must open at 180 mm, so a pHYs chunk is written,
 * which general PNG libraries leave out. Written here over fflate also because a proof is millions of pixels and there are
 * many of them: palettes of up to 16 colours take half a byte a pixel, and no byte is copied one by one. What other programs
 * read from these files is tested with theirs.
 */
export interface Indexed {
  readonly width: number;
  readonly height: number;
  /** One byte a pixel: its place in the palette. */
  readonly data: Uint8Array;
  /** Up to 256 colours, r g b each 0..255. */
  readonly palette: readonly (readonly [number, number, number])[];
}

export function indexedPng(image: Indexed, mmPerPx: number): Uint8Array {
  const { width, height, data, palette } = image;
  const half = palette.length <= 16;
  const line = half ? Math.ceil(width / 2) : width;
  const lines = new Uint8Array((line + 1) * height);
  for (let y = 0; y < height; y++) {
    const from = y * width,
      to = y * (line + 1) + 1;
    if (!half) lines.set(data.subarray(from, from + width), to);
    // The left pixel is in the high bits (7.2); an odd last one has nothing beside it.
    else for (let x = 0; x < line; x++) lines[to + x] = (data[from + 2 * x] << 4) | (2 * x + 1 < width ? data[from + 2 * x + 1] : 0);
  }
  return pngFile(width, height, half ? 4 : 8, 3, Uint8Array.from(palette.flat()), zlibSync(lines, { level: 3 }), mmPerPx);
}

/** @param rgb three bytes a pixel. Pressed quickly: these are large, and made for every run. */
export function rgbPng(width: number, height: number, rgb: Uint8Array, mmPerPx: number): Uint8Array {
  const line = width * 3;
  const lines = new Uint8Array((line + 1) * height);
  for (let y = 0; y < height; y++) lines.set(rgb.subarray(y * line, (y + 1) * line), y * (line + 1) + 1);
  return pngFile(width, height, 8, 2, null, zlibSync(lines, { level: 1, mem: 4 }), mmPerPx);
}

const signature = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/** @param colourType 0: grey; 2: RGB; 3: palette (11.2.2) */
function pngFile(
  width: number,
  height: number,
  depth: number,
  colourType: 0 | 2 | 3,
  palette: Uint8Array | null,
  pressed: Uint8Array,
  mmPerPx: number,
): Uint8Array {
  const perMetre = Math.round(1000 / mmPerPx);
  const chunks = [
    chunk('IHDR', [...word(width), ...word(height), depth, colourType, 0, 0, 0]),
    // Pixels per metre across and down; 1: the unit is the metre (11.3.5.3).
    chunk('pHYs', [...word(perMetre), ...word(perMetre), 1]),
    ...(palette ? [chunk('PLTE', palette)] : []),
    chunk('IDAT', pressed),
    chunk('IEND', []),
  ];
  const out = new Uint8Array(signature.length + chunks.reduce((sum, c) => sum + c.length, 0));
  out.set(signature);
  let at = signature.length;
  for (const one of chunks) {
    out.set(one, at);
    at += one.length;
  }
  return out;
}

function word(value: number): number[] {
  return [(value >>> 24) & 255, (value >>> 16) & 255, (value >>> 8) & 255, value & 255];
}

function chunk(name: string, bytes: ArrayLike<number>): Uint8Array {
  const out = new Uint8Array(bytes.length + 12);
  out.set(word(bytes.length));
  out.set(
    [...name].map((c) => c.charCodeAt(0)),
    4,
  );
  out.set(bytes, 8);
  out.set(word(crc32(out.subarray(4, bytes.length + 8))), bytes.length + 8);
  return out;
}

/** A grey picture of a film: what it covers, 0..255, black where it is solid. */
export function greyPng(width: number, height: number, covers: Uint8Array, mmPerPx: number): Uint8Array {
  const lines = new Uint8Array((width + 1) * height);
  for (let y = 0; y < height; y++) {
    const from = y * width,
      to = y * (width + 1) + 1;
    for (let x = 0; x < width; x++) lines[to + x] = 255 - covers[from + x];
  }
  return pngFile(width, height, 8, 0, null, zlibSync(lines, { level: 3 }), mmPerPx);
}
