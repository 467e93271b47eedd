import UTIF from 'utif2';
import { unpackDeflate, zlibHeadBytes } from '../../numeric/index.ts';
import { checkJpeg } from '../check/jpeg-check.ts';
import type { Directory } from './tags.ts';
import { unpackBits, unpackLzw } from './unpack.ts';

/** How a TIFF's samples lie: as its fields say, checked by whoever made this. */
export interface Layout {
  readonly width: number;
  readonly height: number;
  readonly bits: number;
  readonly channels: number;
  /** Field 259. */
  readonly packing: number;
  /** Field 317: 2 where a sample is written as its difference from the one before. */
  readonly predictor: number;
  /** Each channel apart (field 284). */
  readonly apart: boolean;
  readonly photometric: number;
}

interface Block {
  readonly packed: Uint8Array;
  readonly width: number;
  readonly rows: number;
}

/** A strip or tile each; a file of ten thousand by ten thousand pixels in tiles of sixteen has as many. */
const mostBlocks = 1 << 19;

/**
 * All samples of a picture, row by row, each row from a whole byte on. `packing` where the file is damaged, cut short, or
 * packed in a way that isn't read. Every block is unpacked into a room of its own size, so nothing swells.
 */
export function samplesOf(bytes: Uint8Array, directory: Directory, layout: Layout): Uint8Array | 'packing' {
  const { width, height, bits, channels } = layout;
  const line = Math.ceil((width * channels * bits) / 8);
  const tileWide = directory.numbers(322, 1),
    tileHigh = directory.numbers(323, 1),
    rowsPerStrip = directory.numbers(278, 1);
  if (tileWide === 'damaged' || tileHigh === 'damaged' || rowsPerStrip === 'damaged') return 'packing';
  const tiled = tileWide !== undefined;
  const wide = tileWide?.[0] ?? width,
    rows = tiled ? (tileHigh?.[0] ?? 0) : Math.min(height, rowsPerStrip?.[0] ?? height);
  if (!(wide > 0 && rows > 0) || (tiled && (wide % 16 !== 0 || wide > width + 4096 || rows > height + 4096))) return 'packing';
  const across = Math.ceil(width / wide),
    down = Math.ceil(height / rows);
  if (across * down > mostBlocks) return 'packing';
  const offsets = directory.numbers(tiled ? 324 : 273, mostBlocks),
    sizes = directory.numbers(tiled ? 325 : 279, mostBlocks);
  if (typeof offsets !== 'object' || sizes === 'damaged' || offsets.length < across * down) return 'packing';
  // Old writers leave the size of one plain strip out.
  if (!sizes && (layout.packing !== 1 || across * down > 1)) return 'packing';
  const blockLine = Math.ceil((wide * channels * bits) / 8);
  const out = new Uint8Array(line * height);
  const room = tiled ? new Uint8Array(blockLine * rows) : null;
  for (let k = 0; k < across * down; k++) {
    const y = Math.floor(k / across) * rows,
      count = tiled ? rows : Math.min(rows, height - y),
      size = sizes ? sizes[k] : line * height;
    if (!(size >= 0) || offsets[k] + size > bytes.length) return 'packing';
    const into = room ?? out.subarray(y * line, (y + count) * line);
    const block = { packed: bytes.subarray(offsets[k], offsets[k] + size), width: wide, rows: count };
    if (!unpack(block, layout, directory, into)) return 'packing';
    if (layout.predictor === 2) addUp(into, blockLine, count, layout, directory.little);
    if (room) {
      const from = (((k % across) * wide * channels * bits) / 8) | 0,
        share = Math.min(blockLine, line - from);
      for (let r = 0; r < Math.min(rows, height - y); r++) {
        out.set(room.subarray(r * blockLine, r * blockLine + share), (y + r) * line + from);
      }
    }
  }
  return out;
}

/** False where the block is not whole. */
function unpack(block: Block, layout: Layout, directory: Directory, room: Uint8Array): boolean {
  const { packed } = block;
  try {
    switch (layout.packing) {
      case 1:
        room.set(packed.subarray(0, room.length));
        return packed.length >= room.length;
      case 5:
        return unpackLzw(packed, room) >= room.length;
      case 8:
      case 32946:
        return unpackDeflate(packed.subarray(zlibHeadBytes), room) >= room.length;
      case 32773:
        return unpackBits(packed, room) >= room.length;
      case 3:
      case 4:
        return layout.bits === 1 && layout.channels === 1 && unpackFax(block, layout, directory, room);
      case 7:
        return unpackJpeg(block, layout, directory, room);
      default:
        return false;
    }
  } catch {
    return false;
  }
}

/** Differences → samples (TIFF 6.0, section 14). */
function addUp(room: Uint8Array, line: number, rows: number, { bits, channels }: Layout, little: boolean): void {
  if (bits !== 8 && bits !== 16) return;
  const low = little ? 0 : 1,
    high = 1 - low;
  for (let y = 0; y < rows; y++) {
    const row = room.subarray(y * line, (y + 1) * line);
    if (bits === 8) for (let i = channels; i < line; i++) row[i] += row[i - channels];
    else {
      for (let i = 2 * channels; i + 1 < line; i += 2) {
        const k = i - 2 * channels;
        const sum = (row[i + low] | (row[i + high] << 8)) + (row[k + low] | (row[k + high] << 8));
        row[i + low] = sum & 255;
        row[i + high] = (sum >> 8) & 255;
      }
    }
  }
}

type Inner = Record<string, (...values: unknown[]) => unknown>;
interface JpegInTiff {
  parse(bytes: Uint8Array): void;
  getData(wishes: { width: number; height: number; forceRGB: boolean; isSourcePDF: boolean }): Uint8Array;
}
const { JpegDecoder } = UTIF as unknown as { readonly JpegDecoder: new () => JpegInTiff };
const inner = (UTIF as unknown as { readonly decode: Inner }).decode;

/** Rows of a fax, black and white (TIFF 6.0, sections 10 and 11). The library's rows may not grow beyond their width. */
function unpackFax({ packed, width }: Block, layout: Layout, directory: Directory, room: Uint8Array): boolean {
  inner['_addNtimes'] = (row: unknown, times: unknown, value: unknown): void => {
    const list = row as number[];
    if (!((times as number) >= 0) || list.length + (times as number) > width) throw new Error('a row beyond its width');
    for (let i = 0; i < (times as number); i++) list.push(value as number);
  };
  const order = directory.numbers(266, 1),
    options = directory.numbers(292, 1);
  const fill = typeof order === 'object' && order[0] === 2 ? 2 : 1;
  const data = packed.slice();
  if (layout.packing === 4) inner['_decodeG4'](data, 0, data.length, room, 0, width, fill);
  else inner['_decodeG3'](data, 0, data.length, room, 0, width, fill, typeof options === 'object' && (options[0] & 1) === 1);
  return true;
}

/** A JPEG of just the block's size. */
function unpackJpeg({ packed, width, rows }: Block, layout: Layout, directory: Directory, room: Uint8Array): boolean {
  const tables = directory.bytes(347);
  const head = tables ? tables.subarray(0, Math.max(2, tables.length - 2)) : new Uint8Array(0);
  const whole = tables ? Uint8Array.from([...head, ...packed.subarray(2)]) : packed.slice();
  const found = checkJpeg(whole);
  if (found === 'damaged' || found.width !== width || found.height !== rows || found.channels !== layout.channels) return false;
  const decoder = new JpegDecoder();
  decoder.parse(whole);
  room.set(decoder.getData({ width, height: rows, forceRGB: layout.channels === 3, isSourcePDF: false }).subarray(0, room.length));
  return true;
}
