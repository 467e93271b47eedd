import { name as asName, say } from '../../../words/say.ts';
import { fail } from '../../problem.ts';
import { fileAt, resave } from './refuse.ts';
import { asciiAt } from './bytes.ts';
import { isFrame } from './jpeg-check.ts';
import { tiffHead } from '../tiff/tiff.ts';
import type { Head } from '../types.ts';

/** More pixels than this are refused before decoding: no stencil shows them, and they fill the memory. */
export const mostMegapixels = 100;

/** Tells the formats apart by their first bytes and reads the size, without decoding. `file`: its name, for messages. */
export function readHead(bytes: Uint8Array, file: string): Head {
  if (bytes.length === 0) fail('picture-empty', fileAt(file), say('image.fileEmpty'), say('image.chooseAnother'));
  const head = jpegHead(bytes) ?? pngHead(bytes) ?? webpHead(bytes) ?? tiffHead(bytes);
  if (!head) {
    fail('not-a-picture', fileAt(file), say('image.notPicture'), say('image.formatsRead'));
  }
  if (!(head.width > 0 && head.height > 0)) {
    fail('picture-damaged', fileAt(file), say('image.sizeMissing', { format: asName(head.format) }), resave);
  }
  if (head.width * head.height > mostMegapixels * 1e6) {
    fail(
      'picture-too-large',
      fileAt(file),
      say('image.tooManyPixels', { megapixels: Math.round((head.width * head.height) / 1e6), most: mostMegapixels }),
      say('image.scaleDown'),
    );
  }
  return head;
}

function jpegHead(b: Uint8Array): Head | undefined {
  if (b[0] !== 0xff || b[1] !== 0xd8) return undefined;
  for (const { marker, from, to } of jpegSegments(b)) {
    if (isFrame(marker) && to - from >= 6) {
      return { format: 'JPEG', height: (b[from + 1] << 8) | b[from + 2], width: (b[from + 3] << 8) | b[from + 4] };
    }
  }
  return { format: 'JPEG', width: 0, height: 0 };
}

/** Marker segments before the coded image: contents from..to. */
export function* jpegSegments(b: Uint8Array): Generator<{ readonly marker: number; readonly from: number; readonly to: number }> {
  let at = 2;
  while (at + 4 <= b.length) {
    if (b[at] !== 0xff) return;
    const marker = b[at + 1];
    if (marker === 0xff) {
      at++;
      continue;
    }
    if (marker === 0xda || marker === 0xd9) return;
    if (marker === 0x01 || (marker >= 0xd0 && marker <= 0xd7)) {
      at += 2;
      continue;
    }
    const length = (b[at + 2] << 8) | b[at + 3];
    if (length < 2) return;
    yield { marker, from: at + 4, to: Math.min(b.length, at + 2 + length) };
    at += 2 + length;
  }
}

function pngHead(b: Uint8Array): Head | undefined {
  const signature = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
  if (b.length < 8 || signature.some((v, i) => b[i] !== v)) return undefined;
  const view = new DataView(b.buffer, b.byteOffset, b.byteLength);
  return b.length < 24 ? { format: 'PNG', width: 0, height: 0 } : { format: 'PNG', width: view.getUint32(16), height: view.getUint32(20) };
}

/** RFC 9649: RIFF container with a VP8, VP8L or VP8X chunk first. */
function webpHead(b: Uint8Array): Head | undefined {
  if (b.length < 12 || asciiAt(b, 0) !== 'RIFF' || asciiAt(b, 8) !== 'WEBP') return undefined;
  const view = new DataView(b.buffer, b.byteOffset, b.byteLength);
  const none: Head = { format: 'WebP', width: 0, height: 0 };
  if (b.length < 30) return none;
  const kind = asciiAt(b, 12);
  if (kind === 'VP8X') return { format: 'WebP', width: 1 + u24(b, 24), height: 1 + u24(b, 27) };
  if (kind === 'VP8 ') return { format: 'WebP', width: view.getUint16(26, true) & 0x3fff, height: view.getUint16(28, true) & 0x3fff };
  if (kind === 'VP8L') {
    const bits = view.getUint32(21, true);
    return { format: 'WebP', width: 1 + (bits & 0x3fff), height: 1 + ((bits >>> 14) & 0x3fff) };
  }
  return none;
}

function u24(b: Uint8Array, at: number): number {
  return b[at] | (b[at + 1] << 8) | (b[at + 2] << 16);
}
