/** Bytes of one number of each kind of field (TIFF 6.0, section 2): BYTE, ASCII, SHORT, LONG, RATIONAL, and those that only Exif writes. */
const sizeOf: Readonly<Record<number, 1 | 2 | 4 | 8 | undefined>> = { 1: 1, 2: 1, 3: 2, 4: 4, 5: 8, 6: 1, 7: 1, 13: 4 };
const entryBytes = 12;
/** Pictures in one file that are looked through for the first with a size. */
const mostDirectories = 64;

/** A directory of a TIFF file or of a block of Exif data. Fields are read when asked for, and only where the file holds them. */
export interface Directory {
  /** Undefined where the field is missing; `damaged` where it points out of the file or counts more than it can hold. */
  numbers(tag: number, most: number): readonly number[] | undefined | 'damaged';
  bytes(tag: number): Uint8Array | undefined;
  readonly little: boolean;
}

export function isTiff(b: Uint8Array): boolean {
  return (b[0] === 0x49 && b[1] === 0x49 && b[2] === 42 && b[3] === 0) || (b[0] === 0x4d && b[1] === 0x4d && b[2] === 0 && b[3] === 42);
}

/**
 * The directories of a file, one after the other. Our own reader, because libraries believe what a file counts: 26 bytes
 * that count four thousand million numbers took all the memory there was. Here nothing is taken that the file does not hold.
 */
export function* directoriesOf(b: Uint8Array): Generator<Directory> {
  if (!isTiff(b) || b.length < 8) return;
  const little = b[0] === 0x49;
  const view = new DataView(b.buffer, b.byteOffset, b.byteLength);
  const seen = new Set<number>();
  for (let at = view.getUint32(4, little); seen.size < mostDirectories; ) {
    if (at < 8 || at + 2 > b.length || seen.has(at)) return;
    seen.add(at);
    const count = view.getUint16(at, little);
    const end = at + 2 + count * entryBytes;
    if (count === 0 || end > b.length) return;
    yield directoryAt(view, b, at + 2, count, little);
    if (end + 4 > b.length) return;
    at = view.getUint32(end, little);
    if (at === 0) return;
  }
}

/** A directory that another one points to. */
export function directoryWithin(b: Uint8Array, at: number): Directory | undefined {
  if (at < 8 || at + 2 > b.length) return undefined;
  const little = b[0] === 0x49,
    view = new DataView(b.buffer, b.byteOffset, b.byteLength);
  const count = view.getUint16(at, little);
  return at + 2 + count * entryBytes > b.length ? undefined : directoryAt(view, b, at + 2, count, little);
}

function directoryAt(view: DataView, b: Uint8Array, from: number, count: number, little: boolean): Directory {
  const field = (tag: number): { readonly at: number; readonly count: number; readonly size: 1 | 2 | 4 | 8 } | undefined | 'damaged' => {
    for (let i = 0; i < count; i++) {
      const at = from + i * entryBytes;
      if (view.getUint16(at, little) !== tag) continue;
      const size = sizeOf[view.getUint16(at + 2, little)];
      const values = view.getUint32(at + 4, little);
      if (!size || values === 0) return 'damaged';
      // Up to four bytes stand in the entry itself.
      const place = values * size <= 4 ? at + 8 : view.getUint32(at + 8, little);
      return place + values * size > b.length ? 'damaged' : { at: place, count: values, size };
    }
    return undefined;
  };
  return {
    little,
    numbers(tag, most) {
      const found = field(tag);
      if (found === undefined || found === 'damaged') return found;
      if (found.count > most) return 'damaged';
      const { at, size } = found;
      const one = (place: number): number =>
        size === 1
          ? b[place]
          : size === 2
            ? view.getUint16(place, little)
            : size === 4
              ? view.getUint32(place, little)
              : view.getUint32(place, little) / view.getUint32(place + 4, little);
      return Array.from({ length: found.count }, (_, i) => one(at + i * size));
    },
    bytes(tag) {
      const found = field(tag);
      return found === undefined || found === 'damaged' ? undefined : b.subarray(found.at, found.at + found.count * found.size);
    },
  };
}

/** Orientation in a block of Exif data, which is a small TIFF (CIPA DC-008, tag 0112); 1 when it has none that can be read. */
export function orientationInExif(exif: Uint8Array): number {
  for (const directory of directoriesOf(exif)) return orientationOf(directory);
  return 1;
}

export function orientationOf(directory: Directory): number {
  const value = directory.numbers(274, 1);
  return typeof value === 'object' && value[0] >= 1 && value[0] <= 8 ? value[0] : 1;
}
