import { pow } from '../numeric/index.ts';
import { labFromXyz, srgbFromXyz, whitePoints, xyzFromSrgb, type Xyz } from '../colour/index.ts';
import type { Picture } from './types.ts';

/** Part of the picture, in shares of its width and height. */
export interface Crop {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * A picture on the raster of the knife: averaged over each pixel's area in linear light (bilinear where the picture is
 * coarser), white and see-through parts become the paper, everything else keeps its relation to white.
 * @returns Lab (D50), 3 a pixel
 */
export function scaledLab(picture: Picture, crop: Crop, width: number, height: number, paper: Xyz): Float32Array {
  const linear = scaledLinear(picture, crop, width, height);
  const [xr, yr, zr, xg, yg, zg, xb, yb, zb] = toXyz(picture);
  const [wr, wg, wb] = whiteOf(picture);
  const xw = wr * xr + wg * xg + wb * xb,
    yw = wr * yr + wg * yg + wb * yb,
    zw = wr * zr + wg * zg + wb * zb;
  const [xp, yp, zp] = paper;
  const lab = new Float32Array(width * height * 3),
    xyz: [number, number, number] = [0, 0, 0];
  for (let i = 0; i < lab.length; i += 3) {
    const r = linear[i],
      g = linear[i + 1],
      b = linear[i + 2];
    xyz[0] = ((xr * r + xg * g + xb * b) * xp) / xw;
    xyz[1] = ((yr * r + yg * g + yb * b) * yp) / yw;
    xyz[2] = ((zr * r + zg * g + zb * b) * zp) / zw;
    const [l, a, bb] = labFromXyz(xyz);
    lab[i] = l;
    lab[i + 1] = a;
    lab[i + 2] = bb;
  }
  return lab;
}

/** Columns of the matrix from the picture's linear channels to XYZ. */
function toXyz(picture: Picture): readonly number[] {
  if (picture.pixels.kind === 'xyz16') return [1, 0, 0, 0, 1, 0, 0, 0, 1];
  return [...xyzFromSrgb([1, 0, 0]), ...xyzFromSrgb([0, 1, 0]), ...xyzFromSrgb([0, 0, 1])];
}

/** White in the picture's linear channels. */
function whiteOf(picture: Picture): readonly number[] {
  return picture.pixels.kind === 'xyz16' ? whitePoints.D50 : [1, 1, 1];
}

/** IEC 61966-2-1, by table: byte or 16-bit number → linear light. */
function linearTable(picture: Picture): Float32Array {
  const { kind } = picture.pixels;
  const n = kind === 'srgb8' ? 256 : 65536;
  return Float32Array.from({ length: n }, (_, i) => {
    if (kind === 'xyz16') return i / 32768;
    const v = i / (n - 1);
    return v <= 0.04045 ? v / 12.92 : pow((v + 0.055) / 1.055, 2.4);
  });
}

/** A picture's lines in linear light; `scale`: its own pixels to one of the picture's. */
interface Lines {
  readonly width: number;
  readonly height: number;
  readonly scale: number;
  readonly lineOf: (y: number) => Float32Array;
  /** A line's pixels added up between each two places. */
  readonly addLine: (y: number, places: Int32Array, sums: Float32Array) => void;
}

function linesOf(picture: Picture): Lines {
  const { width, height, coverage } = picture;
  const { data } = picture.pixels;
  const table = linearTable(picture),
    white = whiteOf(picture);
  // One line at a time is asked for and used up.
  const line = new Float32Array(width * 3);
  const lineOf = (y: number): Float32Array => {
    for (let x = 0, i = y * width * 3; x < line.length; x++, i++) line[x] = table[data[i]];
    if (coverage)
      for (let x = 0; x < width; x++) {
        const share = coverage[y * width + x] / 255;
        if (share < 1) for (let c = 0; c < 3; c++) line[x * 3 + c] = line[x * 3 + c] * share + white[c] * (1 - share);
      }
    return line;
  };
  const addLine: Lines['addLine'] = coverage
    ? (y, places, sums) => addUp(lineOf(y), places, sums)
    : (y, places, sums) => addLooked(data.subarray(y * width * 3, (y + 1) * width * 3), table, places, sums);
  return { width, height, scale: 1, lineOf, addLine };
}

/** A large picture is looked at several times, for the page, for what matters in it and for the stencils: once averaged, it serves them all. */
const reducedSide = 1600,
  leastReduced = 1.4;
const lastReduced = new WeakMap<Picture, Lines>();

function reducedOf(picture: Picture, factor: number): Lines {
  const known = lastReduced.get(picture);
  if (known) return known;
  const full = linesOf(picture),
    width = Math.ceil(full.width / factor),
    height = Math.ceil(full.height / factor),
    means = new Float32Array(width * height * 3);
  const across = Int32Array.from({ length: width + 1 }, (_, x) => Math.min(full.width, x * factor));
  for (let y = 0; y < full.height; y++) full.addLine(y, across, means.subarray(Math.floor(y / factor) * width * 3));
  for (let y = 0, i = 0; y < height; y++) {
    const lines = Math.min(factor, full.height - y * factor);
    for (let x = 0; x < width; x++, i += 3) {
      const n = (across[x + 1] - across[x]) * lines;
      means[i] /= n;
      means[i + 1] /= n;
      means[i + 2] /= n;
    }
  }
  const lineOf = (y: number): Float32Array => means.subarray(y * width * 3, (y + 1) * width * 3);
  const made: Lines = { width, height, scale: 1 / factor, lineOf, addLine: (y, places, sums) => addUp(lineOf(y), places, sums) };
  lastReduced.set(picture, made);
  return made;
}

function addUp(line: Float32Array, places: Int32Array, sums: Float32Array): void {
  for (let x = 0, t = 0, s = 0; x + 1 < places.length; x++, t += 3)
    for (const end = places[x + 1] * 3; s < end; s += 3) {
      sums[t] += line[s];
      sums[t + 1] += line[s + 1];
      sums[t + 2] += line[s + 2];
    }
}

/** The same with each number looked up on the way: twelve megapixels in half the time. */
function addLooked(line: Uint8Array | Uint16Array, table: Float32Array, places: Int32Array, sums: Float32Array): void {
  for (let x = 0, t = 0, s = 0; x + 1 < places.length; x++, t += 3) {
    let r = sums[t],
      g = sums[t + 1],
      b = sums[t + 2];
    for (const end = places[x + 1] * 3; s < end; s += 3) {
      r = Math.fround(r + table[line[s]]);
      g = Math.fround(g + table[line[s + 1]]);
      b = Math.fround(b + table[line[s + 2]]);
    }
    sums[t] = r;
    sums[t + 1] = g;
    sums[t + 2] = b;
  }
}

/** The averaged picture where that is still finer than what is asked for. */
function linesFor(picture: Picture, crop: Crop, width: number, height: number): Lines {
  const factor = Math.floor(Math.max(picture.width, picture.height) / reducedSide),
    finer = Math.min((crop.width * picture.width) / width, (crop.height * picture.height) / height);
  return factor >= 2 && finer >= leastReduced * factor ? reducedOf(picture, factor) : linesOf(picture);
}

/** 3 a pixel: sRGB’s light, or XYZ where the file had a profile of its own. */
export function scaledLinear(picture: Picture, crop: Crop, width: number, height: number): Float32Array {
  const { width: w, height: h, scale, lineOf } = linesFor(picture, crop, width, height);
  const across = taps(crop.x * picture.width * scale, crop.width * picture.width * scale, w, width),
    down = taps(crop.y * picture.height * scale, crop.height * picture.height * scale, h, height);
  const out = new Float32Array(width * height * 3);
  const rows = new Map<number, Float32Array>();
  const rowOf = (y: number): Float32Array => {
    const known = rows.get(y);
    if (known) return known;
    const line = lineOf(y);
    const scaled = new Float32Array(width * 3);
    for (let x = 0; x < width; x++) {
      for (let t = across.from[x]; t < across.from[x + 1]; t++) {
        const weight = across.weight[t],
          s = across.index[t] * 3;
        scaled[x * 3] += weight * line[s];
        scaled[x * 3 + 1] += weight * line[s + 1];
        scaled[x * 3 + 2] += weight * line[s + 2];
      }
    }
    rows.set(y, scaled);
    return scaled;
  };
  for (let y = 0; y < height; y++) {
    const to = y * width * 3;
    for (let t = down.from[y]; t < down.from[y + 1]; t++) {
      const row = rowOf(down.index[t]),
        weight = down.weight[t];
      for (let i = 0; i < row.length; i++) out[to + i] += weight * row[i];
    }
    const first = down.index[down.from[y]];
    for (const key of rows.keys()) if (key < first) rows.delete(key);
  }
  return out;
}

interface Taps {
  readonly from: Int32Array;
  readonly index: Int32Array;
  readonly weight: Float32Array;
}

/** For each output pixel the source pixels it covers and their shares; between two source pixels where they are larger. */
function taps(start: number, length: number, size: number, count: number): Taps {
  const from = new Int32Array(count + 1),
    index: number[] = [],
    weight: number[] = [];
  const step = length / count;
  for (let i = 0; i < count; i++) {
    from[i] = index.length;
    const a = start + i * step,
      b = a + step;
    if (step >= 1) {
      for (let s = Math.floor(a); s < b - 1e-9; s++) {
        const share = Math.min(b, s + 1) - Math.max(a, s);
        if (share > 1e-9) push(Math.min(size - 1, Math.max(0, s)), share / step);
      }
    } else {
      const centre = (a + b) / 2 - 0.5,
        s = Math.floor(centre),
        f = centre - s;
      push(Math.min(size - 1, Math.max(0, s)), 1 - f);
      if (f > 1e-9) push(Math.min(size - 1, Math.max(0, s + 1)), f);
    }
  }
  from[count] = index.length;
  return { from, index: Int32Array.from(index), weight: Float32Array.from(weight) };
  function push(s: number, share: number): void {
    index.push(s);
    weight.push(share);
  }
}

/**
 * The same as sRGB bytes, for whatever looks colours up by them; see-through parts are white, and colours beyond sRGB are drawn to its edge.
 * @returns 3 a pixel
 */
export function scaledSrgb(picture: Picture, crop: Crop, width: number, height: number): Uint8Array {
  const linear = scaledLinear(picture, crop, width, height);
  const curve = Uint8Array.from({ length: 8193 }, (_, i) => {
    const v = i / 8192;
    return Math.round(255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055));
  });
  const byte = (v: number): number => curve[Math.round(Math.min(1, Math.max(0, v)) * 8192)];
  const out = new Uint8Array(linear.length);
  if (picture.pixels.kind !== 'xyz16') for (let i = 0; i < out.length; i++) out[i] = byte(linear[i]);
  else {
    const known = new Map<number, readonly [number, number, number]>();
    for (let i = 0; i < out.length; i += 3) {
      const [x, y, z] = [Math.round(linear[i] * 1023), Math.round(linear[i + 1] * 1023), Math.round(linear[i + 2] * 1023)];
      const key = (x * 2048 + y) * 2048 + z;
      let rgb = known.get(key);
      if (rgb === undefined) known.set(key, (rgb = srgbFromXyz([x / 1023, y / 1023, z / 1023]).rgb));
      [out[i], out[i + 1], out[i + 2]] = rgb;
    }
  }
  return out;
}
