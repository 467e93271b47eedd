import decodeJpeg, { init as initJpeg } from '@jsquash/jpeg/decode.js';
import decodeWebp, { init as initWebp } from '@jsquash/webp/decode.js';
import { name as asName, say } from '../../words/say.ts';
import { fail } from '../problem.ts';
import { asciiAt, jpegSegments } from './head.ts';
import { fileAt, resave } from './refuse.ts';
import { orientationInExif } from './tiff.ts';
import type { Decoded } from './types.ts';

const ready = { jpeg: false, webp: false };

/** Hands in the compiled decoders; see `preparePictures`. */
export async function prepareDecoders(jpeg: WebAssembly.Module, webp: WebAssembly.Module): Promise<void> {
  await initJpeg(jpeg as never);
  await initWebp(webp as never);
  ready.jpeg = ready.webp = true;
}

export async function readJpeg(bytes: Uint8Array, file: string): Promise<Decoded> {
  let orientation = 1,
    channels = 3;
  const profileParts: Uint8Array[] = [];
  for (const { marker, from, to } of jpegSegments(bytes)) {
    if (marker === 0xe1 && asciiAt(bytes, from) === 'Exif') orientation = orientationInExif(bytes.subarray(from + 6, to));
    // ICC.1:2010 annex B.4: 'ICC_PROFILE', 0, part, parts, then the part.
    if (marker === 0xe2 && asciiAt(bytes, from) + asciiAt(bytes, from + 4) + asciiAt(bytes, from + 8) === 'ICC_PROFILE\0') {
      profileParts[bytes[from + 12]] = bytes.subarray(from + 14, to);
    }
    if (marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc) channels = bytes[from + 5];
  }
  if (channels === 4) {
    fail('picture-cmyk', fileAt(file), say('image.cmyk'), say('image.saveAsRgb'));
  }
  needs(ready.jpeg, file, 'JPEG');
  const image = await decoded(() => decodeJpeg(bytes.slice().buffer), file, 'JPEG');
  const parts = profileParts.filter(Boolean);
  return { ...image, orientation, ...(parts.length > 0 ? { profile: joined(parts) } : {}) };
}

export async function readWebp(bytes: Uint8Array, file: string): Promise<Decoded> {
  needs(ready.webp, file, 'WebP');
  const image = await decoded(() => decodeWebp(bytes.slice().buffer), file, 'WebP');
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

function needs(isReady: boolean, file: string, format: string): void {
  if (!isReady) {
    fail('reader-not-loaded', fileAt(file), say('image.readerNotLoaded', { format: asName(format) }), say('image.loadAgain'));
  }
}

async function decoded(work: () => Promise<ImageData>, file: string, format: string): Promise<Omit<Decoded, 'orientation'>> {
  let image: ImageData | undefined;
  try {
    image = await work();
  } catch {
    image = undefined;
  }
  if (!image || image.width === 0) {
    fail('picture-damaged', fileAt(file), say('image.cutShort', { format: asName(format) }), resave);
  }
  const { width, height, data } = image;
  const n = width * height;
  const rgb = new Uint8Array(n * 3),
    coverage = new Uint8Array(n);
  let see = false;
  for (let i = 0, j = 0, k = 0; i < n; i++, j += 4, k += 3) {
    rgb[k] = data[j];
    rgb[k + 1] = data[j + 1];
    rgb[k + 2] = data[j + 2];
    coverage[i] = data[j + 3];
    see ||= data[j + 3] < 255;
  }
  return { width, height, rgb, ...(see ? { coverage } : {}) };
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const out = new Uint8Array(parts.reduce((sum, p) => sum + p.length, 0));
  let at = 0;
  for (const part of parts) {
    out.set(part, at);
    at += part.length;
  }
  return out;
}
