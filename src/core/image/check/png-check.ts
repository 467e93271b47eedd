import { crc32, deflatedLength, unpackDeflate, zlibHeadBytes } from '../../numeric/index.ts';
import { asciiAt, joined } from './bytes.ts';

/** A PNG that is whole, with only what is needed of it. */
export interface CheckedPng {
  /** Head, palette, transparency and image: what a decoder is given. */
  readonly bare: Uint8Array;
  readonly profile?: Uint8Array;
  readonly animated: boolean;
}

/** Colour profiles of displays and cameras stay under a megabyte; larger ones are for presses. */
const mostProfileBytes = 16_000_000;
/** Samples a pixel by colour type (ISO/IEC 15948, 11.2.2). */
const channelsOf: Readonly<Record<number, number | undefined>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };
const signatureBytes = 8;

/**
 * Looks a PNG through before any decoder sees it: every part's check sum, its end, and that the image unpacks to just as many bytes
 * as its size asks for (so that nothing swells, and a file cut short is told). Null where it is damaged.
 */
export function checkPng(b: Uint8Array): CheckedPng | null {
  const view = new DataView(b.buffer, b.byteOffset, b.byteLength);
  const kept: Uint8Array[] = [b.subarray(0, signatureBytes)],
    image: Uint8Array[] = [];
  let profile: Uint8Array | undefined,
    animated = false,
    ended = false,
    bytes = 0;
  for (let at = signatureBytes; !ended; ) {
    if (at + 12 > b.length) return null;
    const length = view.getUint32(at),
      kind = asciiAt(b, at + 4);
    if (at + 12 + length > b.length) return null;
    const content = b.subarray(at + 8, at + 8 + length);
    const needed = kind === 'IHDR' || kind === 'PLTE' || kind === 'tRNS' || kind === 'IDAT' || kind === 'IEND';
    const whole = crc32(b.subarray(at + 4, at + 8 + length)) === view.getUint32(at + 8 + length);
    // Remarks that were damaged cost nothing.
    if (needed && !whole) return null;
    if (needed) kept.push(b.subarray(at, at + 12 + length));
    if (kind === 'IHDR') {
      if (at !== signatureBytes || length !== 13) return null;
      bytes = imageBytes(view, at + 8);
      if (!bytes) return null;
    } else if (bytes === 0) return null;
    if (kind === 'IDAT') image.push(content);
    if (kind === 'iCCP' && whole) profile = profileIn(content);
    animated ||= kind === 'acTL';
    ended = kind === 'IEND';
    at += 12 + length;
  }
  return unpacksTo(image, bytes) ? { bare: joined(kept), animated, ...(profile ? { profile } : {}) } : null;
}

/** Rows with the byte before each that says how it was filtered; interlaced ones in seven passes (8.2). 0 where the head makes no sense. */
function imageBytes(view: DataView, at: number): number {
  const width = view.getUint32(at),
    height = view.getUint32(at + 4),
    depth = view.getUint8(at + 8),
    channels = channelsOf[view.getUint8(at + 9)],
    interlaced = view.getUint8(at + 12);
  if (!channels || ![1, 2, 4, 8, 16].includes(depth) || interlaced > 1) return 0;
  const pass = (wide: number, high: number): number => (wide === 0 ? 0 : high * (1 + Math.ceil((wide * channels * depth) / 8)));
  if (interlaced === 0) return pass(width, height);
  const passes = [
    [0, 0, 8, 8],
    [4, 0, 8, 8],
    [0, 4, 4, 8],
    [2, 0, 4, 4],
    [0, 2, 2, 4],
    [1, 0, 2, 2],
    [0, 1, 1, 2],
  ];
  return passes.reduce(
    (sum, [x, y, dx, dy]) => sum + pass(Math.max(0, Math.ceil((width - x) / dx)), Math.max(0, Math.ceil((height - y) / dy))),
    0,
  );
}

/** Whether the image unpacks to just so many bytes. */
function unpacksTo(packed: readonly Uint8Array[], bytes: number): boolean {
  try {
    return deflatedLength(withoutHead(packed), bytes) === bytes;
  } catch {
    return false;
  }
}

/** One stream lies in several parts; what zlib writes before it may do so too. */
function* withoutHead(parts: readonly Uint8Array[]): Generator<Uint8Array> {
  let skip = zlibHeadBytes;
  for (const part of parts) {
    const from = Math.min(skip, part.length);
    skip -= from;
    yield part.subarray(from);
  }
}

/** The profile's name, a nought, how it is packed, and then it (11.3.3.3). */
function profileIn(content: Uint8Array): Uint8Array | undefined {
  const name = content.indexOf(0);
  if (name < 0 || content[name + 1] !== 0) return undefined;
  const packed = content.subarray(name + 2 + zlibHeadBytes);
  try {
    // Its own first word says how long it is (ICC.1, 7.2.2).
    const head = new Uint8Array(4);
    if (unpackDeflate(packed, head) < 4) return undefined;
    const long = new DataView(head.buffer).getUint32(0);
    if (long > mostProfileBytes) return undefined;
    const profile = new Uint8Array(long);
    return unpackDeflate(packed, profile) >= long ? profile : undefined;
  } catch {
    return undefined;
  }
}
