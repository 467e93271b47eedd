import { encode } from 'fast-png';

/**
 * PNG files with their true density. fast-png writes the picture (with its palette) but no pHYs chunk, so a picture
 * of 180 mm would open at any size a program likes; the chunk is put in here, before the picture data, as the
 * PNG standard (ISO/IEC 15948, 11.3.5.3) asks.
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
  const png = encode({ width: image.width, height: image.height, data: image.data, channels: 1, depth: 8, palette: image.palette.map((c) => [...c]) });
  return withDensity(png, mmPerPx);
}

/** @param rgb three bytes a pixel. Pressed quickly: these are large, and made for every run. */
export function rgbPng(width: number, height: number, rgb: Uint8Array, mmPerPx: number): Uint8Array {
  return withDensity(encode({ width, height, data: rgb, channels: 3, depth: 8 }, { zlib: { level: 1 } }), mmPerPx);
}

/** Signature (8) and IHDR (25) come first; pHYs goes right behind them. */
const endOfHeader = 33;

/** Puts a pHYs chunk (pixels per metre) into a PNG that has none. */
export function withDensity(png: Uint8Array, mmPerPx: number): Uint8Array {
  const perMetre = Math.round(1000 / mmPerPx);
  const chunk = new Uint8Array(21);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, 9);
  chunk.set([0x70, 0x48, 0x59, 0x73], 4);
  view.setUint32(8, perMetre);
  view.setUint32(12, perMetre);
  chunk[16] = 1;
  view.setUint32(17, crc32(chunk.subarray(4, 17)));
  const out = new Uint8Array(png.length + chunk.length);
  out.set(png.subarray(0, endOfHeader));
  out.set(chunk, endOfHeader);
  out.set(png.subarray(endOfHeader), endOfHeader + chunk.length);
  return out;
}

/** CRC of ISO 3309, as PNG chunks carry it. Bit by bit: it only ever sees 13 bytes. */
function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let k = 0; k < 8; k++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}
