import { crc32, unpackDeflate } from '../../numeric/index.ts';

/** Why a zip is not read. */
export type ZipFault = 'not-a-zip' | 'damaged' | 'locked' | 'too-large';

const endBytes = 22,
  centralBytes = 46,
  localBytes = 30;

interface Entry {
  readonly path: string;
  readonly flags: number;
  readonly method: number;
  readonly crc: number;
  readonly packedBytes: number;
  readonly bytes: number;
  readonly from: number;
}

/**
 * The files in a zip by path (APPNOTE 6.3.9, without its later additions), or why they can't be had. Every entry is held against its check sum, its two
 * headers against one another and its declared size against the real one; libraries that unpack leave that to their callers.
 * @param mostBytes unpacked, all together
 */
export function readZip(b: Uint8Array, mostBytes: number): Map<string, Uint8Array> | ZipFault {
  const view = new DataView(b.buffer, b.byteOffset, b.byteLength);
  const isZip = b.length >= 4 && view.getUint32(0, true) === 0x04034b50;
  const entries = listed(b, view);
  if (!entries) return isZip ? 'damaged' : 'not-a-zip';
  if (entries.some((e) => e.flags & 1)) return 'locked';
  if (entries.reduce((sum, e) => sum + e.bytes, 0) > mostBytes) return 'too-large';
  const files = new Map<string, Uint8Array>();
  for (const entry of entries) {
    const packed = packedOf(entry, b, view);
    if (!packed || files.has(entry.path)) return 'damaged';
    const whole = unpacked(entry, packed);
    if (!whole) return 'damaged';
    if (!entry.path.endsWith('/')) files.set(entry.path, whole);
  }
  return files;
}

/** What the list at the end of the file says; null where it is damaged. */
function listed(b: Uint8Array, view: DataView): Entry[] | null {
  // The end record is last but for a remark, whose length it tells.
  let end = b.length - endBytes;
  while (end >= 0 && !(view.getUint32(end, true) === 0x06054b50 && end + endBytes + view.getUint16(end + 20, true) === b.length)) {
    if (b.length - endBytes - end > 0xffff) return null;
    end--;
  }
  if (end < 0) return null;
  const count = view.getUint16(end + 10, true),
    size = view.getUint32(end + 12, true),
    start = view.getUint32(end + 16, true);
  // On one disk, and the list lies right before its end.
  if (view.getUint32(end + 4, true) !== 0 || view.getUint16(end + 8, true) !== count || start + size !== end) return null;
  const entries: Entry[] = [];
  let at = start;
  for (let i = 0; i < count; i++) {
    if (at + centralBytes > end || view.getUint32(at, true) !== 0x02014b50) return null;
    const nameBytes = view.getUint16(at + 28, true);
    const next = at + centralBytes + nameBytes + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    const path = textOf(b.subarray(at + centralBytes, at + centralBytes + nameBytes));
    if (next > end || path === null) return null;
    entries.push({
      path,
      flags: view.getUint16(at + 8, true),
      method: view.getUint16(at + 10, true),
      crc: view.getUint32(at + 16, true),
      packedBytes: view.getUint32(at + 20, true),
      bytes: view.getUint32(at + 24, true),
      from: view.getUint32(at + 42, true),
    });
    at = next;
  }
  return at === end && apart(entries, start) ? entries : null;
}

/** Entries that share bytes are how a small file swells to a huge one. */
function apart(entries: readonly Entry[], end: number): boolean {
  let free = 0;
  for (const e of [...entries].sort((x, y) => x.from - y.from)) {
    if (e.from < free) return false;
    free = e.from + localBytes + e.packedBytes;
  }
  return free <= end;
}

function packedOf(entry: Entry, b: Uint8Array, view: DataView): Uint8Array | null {
  const { from } = entry;
  if (from + localBytes > b.length || view.getUint32(from, true) !== 0x04034b50) return null;
  const nameBytes = view.getUint16(from + 26, true),
    start = from + localBytes + nameBytes + view.getUint16(from + 28, true);
  if (start + entry.packedBytes > b.length) return null;
  const later = (entry.flags & 8) !== 0;
  const agrees =
    view.getUint16(from + 6, true) === entry.flags &&
    view.getUint16(from + 8, true) === entry.method &&
    // Written before the sizes were known: they stand after the data, and in the list.
    (later ||
      (view.getUint32(from + 14, true) === entry.crc &&
        view.getUint32(from + 18, true) === entry.packedBytes &&
        view.getUint32(from + 22, true) === entry.bytes)) &&
    textOf(b.subarray(from + localBytes, from + localBytes + nameBytes)) === entry.path;
  return agrees ? b.subarray(start, start + entry.packedBytes) : null;
}

function unpacked(entry: Entry, packed: Uint8Array): Uint8Array | null {
  if (entry.method !== 0 && entry.method !== 8) return null;
  // A byte says a thousand and thirty-two at most.
  if (entry.method === 0 ? entry.bytes !== packed.length : entry.bytes > packed.length * 1040) return null;
  const whole = entry.method === 0 ? packed.slice() : new Uint8Array(entry.bytes);
  if (entry.method === 8) {
    try {
      if (unpackDeflate(packed, whole) !== entry.bytes) return null;
    } catch {
      return null;
    }
  }
  return crc32(whole) === entry.crc ? whole : null;
}

function textOf(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}
