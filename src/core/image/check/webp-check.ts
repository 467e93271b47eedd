import { asciiAt } from './bytes.ts';

export interface WebpFrame {
  readonly width: number;
  readonly height: number;
  readonly animated: boolean;
}

/** A flat poster packs to a byte for some thousand pixels; beyond this, and this large, what is claimed is not there. */
const mostPixelsPerByte = 4000,
  smallPixels = 4e6;

/**
 * Looks through the parts of a WebP (RFC 9649) without decoding: `damaged` where they reach beyond the file's end or hold no picture,
 * or where a few bytes claim to be a large one.
 */
export function checkWebp(b: Uint8Array): WebpFrame | 'damaged' {
  if (b.length < 20 || asciiAt(b, 0) !== 'RIFF' || asciiAt(b, 8) !== 'WEBP') return 'damaged';
  const view = new DataView(b.buffer, b.byteOffset, b.byteLength);
  const end = 8 + view.getUint32(4, true);
  if (end > b.length) return 'damaged';
  let animated = false,
    packed = 0,
    canvas: readonly [number, number] | undefined,
    own: readonly [number, number] | undefined;
  for (let at = 12; at + 8 <= end; ) {
    const size = view.getUint32(at + 4, true),
      kind = asciiAt(b, at),
      from = at + 8;
    if (from + size > end) return 'damaged';
    if (kind === 'VP8X' && size >= 10) {
      animated = (b[from] & 0x02) !== 0;
      canvas = [1 + u24(b, from + 4), 1 + u24(b, from + 7)];
    }
    if (kind === 'ANIM' || kind === 'ANMF') animated = true;
    if ((kind === 'VP8 ' || kind === 'VP8L') && size >= 10) {
      packed = size;
      own = kind === 'VP8 ' ? lossySize(view, from) : losslessSize(view, from);
    }
    at = from + size + (size & 1);
  }
  if (animated) return { width: canvas?.[0] ?? 0, height: canvas?.[1] ?? 0, animated };
  if (!own || (canvas && (canvas[0] !== own[0] || canvas[1] !== own[1]))) return 'damaged';
  const [width, height] = own;
  if (!(width > 0 && height > 0)) return 'damaged';
  if (width * height > smallPixels && width * height > packed * mostPixelsPerByte) return 'damaged';
  return { width, height, animated };
}

/** Key frames only, with their start code (RFC 6386, 9.1). */
function lossySize(view: DataView, at: number): readonly [number, number] | undefined {
  if ((view.getUint8(at) & 1) !== 0 || view.getUint16(at + 3) !== 0x9d01 || view.getUint8(at + 5) !== 0x2a) return undefined;
  return [view.getUint16(at + 6, true) & 0x3fff, view.getUint16(at + 8, true) & 0x3fff];
}

function losslessSize(view: DataView, at: number): readonly [number, number] | undefined {
  if (view.getUint8(at) !== 0x2f) return undefined;
  const bits = view.getUint32(at + 1, true);
  return [1 + (bits & 0x3fff), 1 + ((bits >>> 14) & 0x3fff)];
}

function u24(b: Uint8Array, at: number): number {
  return b[at] | (b[at + 1] << 8) | (b[at + 2] << 16);
}
