import decodeJpeg, { init as initJpeg } from '@jsquash/jpeg/decode.js';
import decodeWebp, { init as initWebp } from '@jsquash/webp/decode.js';
import { name as asName, say } from '../../../words/say.ts';
import { fail } from '../../problem.ts';
import { asciiAt, joined } from '../check/bytes.ts';
import { jpegSegments } from '../check/head.ts';
import { checkJpeg } from '../check/jpeg-check.ts';
import { fileAt, resave } from '../check/refuse.ts';
import { orientationInExif } from './tags.ts';
import { checkWebp } from '../check/webp-check.ts';
import type { Decoded } from '../types.ts';

/** A compiled decoder, and how it is made ready. */
interface Decoder {
  readonly module: WebAssembly.Module;
  readonly init: (module: never) => Promise<void>;
}

const decoders: { jpeg?: Decoder; webp?: Decoder } = {};

/** Hands in the compiled decoders; see `preparePictures`. */
export async function prepareDecoders(jpeg: WebAssembly.Module, webp: WebAssembly.Module): Promise<void> {
  decoders.jpeg = { module: jpeg, init: initJpeg };
  decoders.webp = { module: webp, init: initWebp };
  for (const one of [decoders.jpeg, decoders.webp]) await ready(one);
}

const ready = (one: Decoder): Promise<void> => one.init(one.module as never);

/** A decoder's memory never shrinks by itself: after a picture of so many pixels it begins anew. */
const largePixels = 8e6;

export async function readJpeg(bytes: Uint8Array, file: string): Promise<Decoded> {
  const frame = checkJpeg(bytes);
  if (frame === 'damaged') fail('picture-damaged', fileAt(file), say('image.cutShort', { format: asName('JPEG') }), resave);
  if (frame.channels === 4) fail('picture-cmyk', fileAt(file), say('image.cmyk'), say('image.saveAsRgb'));
  if (frame.bits !== 8 || (frame.channels !== 1 && frame.channels !== 3))
    fail('picture-kind', fileAt(file), say('image.jpegKind'), say('image.saveAsRgb'));
  let orientation = 1;
  const profileParts: Uint8Array[] = [];
  for (const { marker, from, to } of jpegSegments(bytes)) {
    if (marker === 0xe1 && asciiAt(bytes, from) === 'Exif') orientation = orientationInExif(bytes.subarray(from + 6, to));
    // ICC.1:2010 annex B.4: 'ICC_PROFILE', 0, part, parts, then the part.
    if (marker === 0xe2 && asciiAt(bytes, from) + asciiAt(bytes, from + 4) + asciiAt(bytes, from + 8) === 'ICC_PROFILE\0') {
      profileParts[bytes[from + 12]] = bytes.subarray(from + 14, to);
    }
  }
  const image = await decoded(decoders.jpeg, () => decodeJpeg(bytes.slice().buffer), frame, file, 'JPEG');
  const parts = profileParts.filter(Boolean);
  return { ...image, orientation, ...(parts.length > 0 ? { profile: joined(parts) } : {}) };
}

export async function readWebp(bytes: Uint8Array, file: string): Promise<Decoded> {
  const frame = checkWebp(bytes);
  if (frame === 'damaged') fail('picture-damaged', fileAt(file), say('image.cutShort', { format: asName('WebP') }), resave);
  if (frame.animated) fail('picture-animated', fileAt(file), say('image.animated'), say('image.saveOnePicture'));
  const image = await decoded(decoders.webp, () => decodeWebp(bytes.slice().buffer), frame, file, 'WebP');
  let profile: Uint8Array | undefined,
    orientation = 1;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 12; at + 8 <= bytes.length; ) {
    const size = view.getUint32(at + 4, true),
      kind = asciiAt(bytes, at);
    const content = bytes.subarray(at + 8, at + 8 + size);
    if (kind === 'ICCP') profile = content;
    if (kind === 'EXIF') orientation = orientationInExif(asciiAt(content, 0) === 'Exif' ? content.subarray(6) : content);
    at += 8 + size + (size & 1);
  }
  return { ...image, profile, orientation };
}

interface Size {
  readonly width: number;
  readonly height: number;
}

async function decoded(
  decoder: Decoder | undefined,
  work: () => Promise<ImageData>,
  size: Size,
  file: string,
  format: string,
): Promise<Omit<Decoded, 'orientation'>> {
  if (!decoder) fail('reader-not-loaded', fileAt(file), say('image.readerNotLoaded', { format: asName(format) }), say('image.loadAgain'));
  let image: ImageData | undefined;
  try {
    image = await work();
  } catch {
    image = undefined;
  }
  // After a fault its memory is in no state that may be relied on.
  if (!image || size.width * size.height > largePixels) await ready(decoder);
  if (!image || image.width !== size.width || image.height !== size.height) {
    fail('picture-damaged', fileAt(file), say('image.cutShort', { format: asName(format) }), resave);
  }
  return withoutCoverage(image);
}

/** Three bytes a pixel, moved together in the room where four were: a large picture is not held twice. */
function withoutCoverage({ width, height, data }: ImageData): Omit<Decoded, 'orientation'> {
  const n = width * height;
  let see = false;
  for (let j = 3; j < n * 4 && !see; j += 4) see = data[j] < 255;
  const coverage = see ? Uint8Array.from({ length: n }, (_, i) => data[i * 4 + 3]) : undefined;
  const rgb = new Uint8Array(data.buffer, data.byteOffset, n * 3);
  let i = 0;
  if (data.byteOffset % 4 === 0) {
    // Four pixels at once, as words with the first byte lowest: every machine that runs an engine today keeps them so.
    const words = new Uint32Array(data.buffer, data.byteOffset, n);
    for (let to = 0; i + 4 <= n; i += 4, to += 3) {
      const a = words[i],
        b = words[i + 1],
        c = words[i + 2],
        d = words[i + 3];
      words[to] = (a & 0xffffff) | (b << 24);
      words[to + 1] = ((b >>> 8) & 0xffff) | (c << 16);
      words[to + 2] = ((c >>> 16) & 0xff) | (d << 8);
    }
  }
  for (let j = i * 4, k = i * 3; i < n; i++, j += 4, k += 3) {
    rgb[k] = data[j];
    rgb[k + 1] = data[j + 1];
    rgb[k + 2] = data[j + 2];
  }
  return { width, height, rgb, ...(coverage ? { coverage } : {}) };
}
