import { gunzipSync } from 'fflate';
import { say } from '../../words/say.ts';
import { fail } from '../problem.ts';
import { readDxf } from './dxf-read.ts';
import { fileAt } from './file-at.ts';
import { decodeDrawing } from './svg/guard/decode.ts';
import { openSvg, type OpenDrawing } from './svg/read-svg.ts';

/** Unpacked, a drawing has no more bytes than this. */
const mostBytes = 60_000_000;

/** A drawing's file, SVG or DXF by its name, packed (gzip, as .svgz is) or not. */
export function openDrawing(bytes: Uint8Array, file: string): OpenDrawing {
  const text = decodeDrawing(unpacked(bytes, file));
  if (!/\.dxf(\.gz|z)?$/i.test(file)) return openSvg(text, file);
  const drawing = readDxf(text, file);
  return { seen: drawing.seen, guess: drawing.reading, read: () => drawing };
}

function unpacked(bytes: Uint8Array, file: string): Uint8Array {
  if (bytes[0] !== 0x1f || bytes[1] !== 0x8b) return bytes;
  // What a packed file says of its own size (RFC 1952, ISIZE) is asked before anything is unpacked.
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const size = bytes.length >= 18 ? view.getUint32(bytes.length - 4, true) : 0;
  if (size > mostBytes) fail('drawing-too-large', fileAt(file), say('form.unpacksTooLarge'), say('form.simplify'));
  try {
    return gunzipSync(bytes, { out: new Uint8Array(size) });
  } catch {
    return fail('drawing-not-unpacked', fileAt(file), say('form.packedBroken'), say('form.saveUnpacked'));
  }
}
