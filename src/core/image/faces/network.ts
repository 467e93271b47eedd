/** Planes of numbers on a raster, all planes of a pixel together. */
export interface Planes {
  readonly width: number;
  readonly height: number;
  readonly depth: number;
  readonly values: Float32Array;
}

export type Numbers = readonly Float32Array[];

/** How far the outermost filter reaches over the border: on the left and top, and how many pixels there are then. */
interface Room {
  readonly before: number;
  readonly width: number;
  readonly height: number;
}

/** As many pixels as before, or half of them. Filters of 3 × 3 with a stride of 2 reach over the right and lower border only. */
const sameRoom = ({ width, height }: Planes, stride: number): Room =>
  stride === 1 ? { before: 1, width, height } : { before: 0, width: Math.ceil(width / 2), height: Math.ceil(height / 2) };

/** Every plane filtered by every filter of 3 × 3. @param inside no filter reaches over the border: the raster loses a pixel all round */
export function filtered(planes: Planes, filters: Float32Array, bias: Float32Array, stride: number, inside = false): Planes {
  const { depth, values } = planes,
    many = bias.length,
    room = inside ? { before: 0, width: planes.width - 2, height: planes.height - 2 } : sameRoom(planes, stride);
  const out = new Float32Array(room.width * room.height * many),
    sums = new Float64Array(many),
    seen = new Float32Array(9 * depth);
  for (let y = 0, to = 0; y < room.height; y++)
    for (let x = 0; x < room.width; x++, to += many) {
      for (let v = 0, at = 0; v < 3; v++)
        for (let u = 0; u < 3; u++, at += depth) {
          const sy = y * stride + v - room.before,
            sx = x * stride + u - room.before,
            from = (sy * planes.width + sx) * depth,
            beyond = sy < 0 || sy >= planes.height || sx < 0 || sx >= planes.width;
          for (let c = 0; c < depth; c++) seen[at + c] = beyond ? 0 : values[from + c];
        }
      sums.set(bias);
      mixInto(sums, seen, 0, 9 * depth, filters);
      out.set(sums, to);
    }
  return { width: room.width, height: room.height, depth: many, values: out };
}

/** Each sum more by all values, by its own filter. Four values at a time: a sum is fetched and put back a quarter as often. */
function mixInto(sums: Float64Array, values: Float32Array, at: number, depth: number, filters: Float32Array): void {
  const many = sums.length;
  let c = 0,
    k = 0;
  for (; c + 3 < depth; c += 4, k += 3 * many) {
    const v0 = values[at + c],
      v1 = values[at + c + 1],
      v2 = values[at + c + 2],
      v3 = values[at + c + 3];
    for (let o = 0; o < many; o++, k++)
      sums[o] += v0 * filters[k] + v1 * filters[k + many] + v2 * filters[k + 2 * many] + v3 * filters[k + 3 * many];
  }
  for (; c < depth; c++) for (let o = 0; o < many; o++, k++) sums[o] += values[at + c] * filters[k];
}

/** Every plane filtered by a filter of its own, then all mixed. */
export function filteredApart(planes: Planes, apart: Float32Array, mix: Float32Array, bias: Float32Array, stride = 1): Planes {
  const { depth, values } = planes,
    many = bias.length,
    room = sameRoom(planes, stride);
  const out = new Float32Array(room.width * room.height * many),
    sums = new Float64Array(many),
    own = new Float32Array(depth);
  for (let y = 0, to = 0; y < room.height; y++)
    for (let x = 0; x < room.width; x++, to += many) {
      own.fill(0);
      for (let v = 0; v < 3; v++) {
        const sy = y * stride + v - room.before;
        if (sy < 0 || sy >= planes.height) continue;
        for (let u = 0; u < 3; u++) {
          const sx = x * stride + u - room.before;
          if (sx < 0 || sx >= planes.width) continue;
          const at = (sy * planes.width + sx) * depth,
            from = (v * 3 + u) * depth;
          for (let c = 0; c < depth; c++) own[c] += values[at + c] * apart[from + c];
        }
      }
      sums.set(bias);
      mixInto(sums, own, 0, depth, mix);
      out.set(sums, to);
    }
  return { width: room.width, height: room.height, depth: many, values: out };
}

/** All planes of each pixel mixed. */
export function mixed(planes: Planes, mix: Float32Array, bias: Float32Array): Planes {
  const { width, height, depth, values } = planes,
    many = bias.length,
    out = new Float32Array(width * height * many),
    sums = new Float64Array(many);
  for (let i = 0; i < width * height; i++) {
    sums.set(bias);
    mixInto(sums, values, i * depth, depth, mix);
    out.set(sums, i * many);
  }
  return { width, height, depth: many, values: out };
}

/** The most of each square of 2 × 2. @param stride 1: as many pixels as before */
export function mostOf(planes: Planes, stride: 1 | 2): Planes {
  const { depth, values } = planes,
    width = Math.ceil(planes.width / stride),
    height = Math.ceil(planes.height / stride),
    out = new Float32Array(width * height * depth).fill(-Infinity);
  for (let y = 0, to = 0; y < height; y++)
    for (let x = 0; x < width; x++, to += depth)
      for (let v = y * stride; v < Math.min(planes.height, y * stride + 2); v++)
        for (let u = x * stride; u < Math.min(planes.width, x * stride + 2); u++)
          for (let c = 0, at = (v * planes.width + u) * depth; c < depth; c++, at++) if (values[at] > out[to + c]) out[to + c] = values[at];
  return { width, height, depth, values: out };
}

/** What is below nothing counts so much of it. */
export function leaky(planes: Planes, share: number): Planes {
  const { values } = planes;
  for (let i = 0; i < values.length; i++) if (values[i] < 0) values[i] *= share;
  return planes;
}

export function added(one: Planes, ...others: readonly Planes[]): Planes {
  return { ...one, values: one.values.map((v, i) => others.reduce((sum, other) => sum + other.values[i], v)) };
}
