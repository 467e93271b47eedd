/** The outlines of a TrueType font (ISO/IEC 14496-22, tables head, maxp, hhea, hmtx, cmap, loca, glyf). */
export interface Font {
  readonly unitsPerEm: number;
  /** Height of a flat capital letter. */
  readonly capHeight: number;
  /** Closed outlines of a character in font units, y upwards, and how far the next one stands; undefined where the font has none. */
  readonly glyph: (character: string) => Glyph | undefined;
}

export interface Glyph {
  readonly advance: number;
  readonly rings: readonly Float64Array[];
}

interface Point {
  readonly x: number;
  readonly y: number;
  readonly on: boolean;
}

const stepsPerCurve = 12,
  deepestParts = 6;

export function readFont(bytes: Uint8Array): Font {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const tables = new Map<string, number>();
  for (let i = 0, n = view.getUint16(4); i < n; i++) {
    const at = 12 + 16 * i;
    tables.set(String.fromCharCode(bytes[at], bytes[at + 1], bytes[at + 2], bytes[at + 3]), view.getUint32(at + 8));
  }
  const table = (name: string): number => {
    const at = tables.get(name);
    if (at === undefined) throw new Error(`The font has no table ${name}`);
    return at;
  };
  const head = table('head'),
    glyf = table('glyf'),
    loca = table('loca'),
    hmtx = table('hmtx');
  const longOffsets = view.getInt16(head + 50) === 1,
    count = view.getUint16(table('maxp') + 4),
    widths = view.getUint16(table('hhea') + 34);
  const offsetOf = (i: number): number => glyf + (longOffsets ? view.getUint32(loca + 4 * i) : 2 * view.getUint16(loca + 2 * i));
  const indexOf = characterMap(view, table('cmap'));

  const contoursOf = (index: number, depth: number): Point[][] => {
    if (index >= count || depth > deepestParts) return [];
    const at = offsetOf(index);
    if (offsetOf(index + 1) === at) return [];
    const n = view.getInt16(at);
    return n >= 0 ? simple(view, at, n) : composed(view, at + 10, (part) => contoursOf(part, depth + 1));
  };
  const glyph = (character: string): Glyph | undefined => {
    const index = indexOf(character.codePointAt(0) ?? 0);
    if (index === 0) return undefined;
    const advance = view.getUint16(hmtx + 4 * Math.min(index, widths - 1));
    return {
      advance,
      rings: contoursOf(index, 0)
        .map(flattened)
        .filter((ring) => ring.length >= 6),
    };
  };
  const unitsPerEm = view.getUint16(head + 18);
  const tall = glyph('H')?.rings[0];
  return { unitsPerEm, capHeight: tall ? Math.max(...tall.filter((_, i) => i % 2 === 1)) : 0.7 * unitsPerEm, glyph };
}

function characterMap(view: DataView, cmap: number): (code: number) => number {
  let best = -1;
  for (let i = 0, n = view.getUint16(cmap + 2); i < n; i++) {
    const at = cmap + view.getUint32(cmap + 8 + 8 * i);
    if (view.getUint16(at) === 4) best = at;
  }
  if (best < 0) return () => 0;
  const segments = view.getUint16(best + 6) / 2;
  const ends = best + 14,
    starts = ends + 2 * segments + 2,
    deltas = starts + 2 * segments,
    ranges = deltas + 2 * segments;
  return (code) => {
    for (let i = 0; i < segments; i++) {
      if (code > view.getUint16(ends + 2 * i)) continue;
      const start = view.getUint16(starts + 2 * i);
      if (code < start) return 0;
      const range = view.getUint16(ranges + 2 * i),
        delta = view.getUint16(deltas + 2 * i);
      if (range === 0) return (code + delta) & 0xffff;
      const found = view.getUint16(ranges + 2 * i + range + 2 * (code - start));
      return found === 0 ? 0 : (found + delta) & 0xffff;
    }
    return 0;
  };
}

function simple(view: DataView, at: number, contours: number): Point[][] {
  const ends = Array.from({ length: contours }, (_, i) => view.getUint16(at + 10 + 2 * i));
  const n = contours === 0 ? 0 : ends[contours - 1] + 1;
  let p = at + 10 + 2 * contours;
  p += 2 + view.getUint16(p);
  const flags: number[] = [];
  while (flags.length < n) {
    const flag = view.getUint8(p++);
    flags.push(flag);
    if (flag & 8) for (let k = view.getUint8(p++); k > 0; k--) flags.push(flag);
  }
  const read = (short: number, same: number): number[] => {
    let v = 0;
    return flags.map((flag) => {
      if (flag & short) v += flag & same ? view.getUint8(p++) : -view.getUint8(p++);
      else if (!(flag & same)) {
        v += view.getInt16(p);
        p += 2;
      }
      return v;
    });
  };
  const xs = read(2, 16),
    ys = read(4, 32);
  return ends.map((end, c) => {
    const from = c === 0 ? 0 : ends[c - 1] + 1;
    return xs.slice(from, end + 1).map((x, i) => ({ x, y: ys[from + i], on: (flags[from + i] & 1) === 1 }));
  });
}

function composed(view: DataView, start: number, part: (index: number) => Point[][]): Point[][] {
  const out: Point[][] = [];
  for (let p = start, more = true; more; ) {
    const flags = view.getUint16(p),
      index = view.getUint16(p + 2);
    p += 4;
    const wide = (flags & 1) !== 0;
    const dx = (flags & 2) === 0 ? 0 : wide ? view.getInt16(p) : view.getInt8(p),
      dy = (flags & 2) === 0 ? 0 : wide ? view.getInt16(p + 2) : view.getInt8(p + 1);
    p += wide ? 4 : 2;
    const share = (): number => {
      const v = view.getInt16(p) / 16384;
      p += 2;
      return v;
    };
    let [a, b, c, d] = [1, 0, 0, 1];
    if (flags & 8) a = d = share();
    else if (flags & 64) {
      a = share();
      d = share();
    } else if (flags & 128) {
      a = share();
      b = share();
      c = share();
      d = share();
    }
    for (const contour of part(index)) out.push(contour.map(({ x, y, on }) => ({ x: a * x + c * y + dx, y: b * x + d * y + dy, on })));
    more = (flags & 32) !== 0;
  }
  return out;
}

/** Curves of the second degree, with the points between two that are off the curve put in. */
function flattened(contour: readonly Point[]): Float64Array {
  const n = contour.length;
  if (n < 3) return new Float64Array(0);
  const middle = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, on: true });
  const all: Point[] = [];
  contour.forEach((point, i) => {
    const before = contour[(i + n - 1) % n];
    if (!point.on && !before.on) all.push(middle(before, point));
    all.push(point);
  });
  const first = all.findIndex((point) => point.on);
  const turned = [...all.slice(first), ...all.slice(0, first)];
  const out: number[] = [];
  for (let i = 0; i < turned.length; i++) {
    const point = turned[i];
    if (point.on) {
      out.push(point.x, point.y);
      continue;
    }
    const from = turned[i - 1],
      to = turned[(i + 1) % turned.length];
    for (let k = 1; k < stepsPerCurve; k++) {
      const t = k / stepsPerCurve,
        s = 1 - t;
      out.push(s * s * from.x + 2 * s * t * point.x + t * t * to.x, s * s * from.y + 2 * s * t * point.y + t * t * to.y);
    }
  }
  return Float64Array.from(out);
}
