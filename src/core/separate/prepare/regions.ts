import { softened } from '../kernels/blur.ts';

/** Regions are looked for on pixels about so large: a hand does not see smaller ones as areas. */
const coarseMm = 0.5;
/** A little softer, so that grain makes no regions: σ in px. */
const grainPx = 0.7;
/** A colour farther off than this counts no more: a small dark mark is not worth more than a drawing has room for. */
const stepUp = 1.35;

export interface Ground {
  readonly lab: Float32Array;
  readonly width: number;
  readonly height: number;
  readonly mmPerPx: number;
  /** Importance a pixel. */
  readonly weight?: Float32Array;
}

/**
 * A picture as flat regions: neighbours are merged where a mm of the line between them saves less than `price` (ΔE²·mm² a mm), the dearest lines
 * last, and each region takes its mean colour (region merging under the simplest energy of Mumford and Shah: G. Koepfler, C. Lopez, J.-M. Morel,
 * A multiscale algorithm for image segmentation by variational method, 1994).
 * @returns Lab, 3 a pixel
 */
export function flatRegions(ground: Ground, price: number): Float32Array {
  const small = shrunk(ground);
  const { of, count } = merged(small, price);
  const fine = refined(ground, small, of, count);
  return painted(ground, fine, count);
}

interface Small extends Required<Ground> {
  readonly factor: number;
}

function shrunk({ lab, width, height, mmPerPx, weight }: Ground): Small {
  const factor = Math.max(1, Math.round(coarseMm / mmPerPx)),
    across = Math.ceil(width / factor),
    down = Math.ceil(height / factor);
  const out = new Float32Array(across * down * 3),
    heavy = new Float32Array(across * down),
    counts = new Uint32Array(across * down);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = y * width + x,
        to = Math.floor(y / factor) * across + Math.floor(x / factor);
      for (let c = 0; c < 3; c++) out[to * 3 + c] += lab[i * 3 + c];
      heavy[to] += weight ? weight[i] : 1;
      counts[to]++;
    }
  for (let i = 0; i < counts.length; i++) {
    for (let c = 0; c < 3; c++) out[i * 3 + c] /= counts[i];
    heavy[i] /= counts[i];
  }
  return { lab: softened(out, across, down, grainPx), width: across, height: down, mmPerPx: mmPerPx * factor, weight: heavy, factor };
}

interface Regions {
  readonly of: Uint32Array;
  readonly count: number;
}

function merged({ lab, width, height, mmPerPx, weight }: Small, price: number): Regions {
  const n = width * height,
    parent = Uint32Array.from({ length: n }, (_, i) => i),
    area = Float64Array.from(weight, (w) => w * mmPerPx * mmPerPx),
    sums = Float64Array.from(lab);
  const root = (i: number): number => {
    while (parent[i] !== i) i = parent[i] = parent[parent[i]];
    return i;
  };
  /** What the line between two regions saves, ΔE²·mm² a mm of it. */
  const worth = (a: number, b: number, length: number): number => {
    let far = 0;
    for (let c = 0; c < 3; c++) far += (sums[a * 3 + c] - sums[b * 3 + c]) ** 2;
    return ((area[a] * area[b]) / (area[a] + area[b])) * (far / length);
  };
  const join = (a: number, b: number): void => {
    const whole = area[a] + area[b];
    for (let c = 0; c < 3; c++) sums[a * 3 + c] = (sums[a * 3 + c] * area[a] + sums[b * 3 + c] * area[b]) / whole;
    area[a] = whole;
    parent[b] = a;
  };
  for (let now = Math.min(price, 0.5); ; now = Math.min(price, now * stepUp)) {
    for (let again = 0; again < 3; again++) {
      const lines = linesBetween(width, height, mmPerPx, root, n);
      const cheap: { readonly a: number; readonly b: number; readonly cost: number }[] = [];
      for (const [key, length] of lines) {
        const a = Math.floor(key / n),
          b = key - a * n,
          cost = worth(a, b, length);
        if (cost < now) cheap.push({ a, b, cost });
      }
      cheap.sort((p, q) => p.cost - q.cost || p.a - q.a || p.b - q.b);
      // Each region once a pass: what it has become is looked at again in the next.
      const touched = new Uint8Array(n);
      for (const { a, b } of cheap) {
        if (touched[a] || touched[b]) continue;
        touched[a] = touched[b] = 1;
        join(a, b);
      }
      if (cheap.length === 0) break;
    }
    if (now >= price) break;
  }
  const number = new Map<number, number>();
  const of = Uint32Array.from({ length: n }, (_, i) => {
    const r = root(i);
    let at = number.get(r);
    if (at === undefined) number.set(r, (at = number.size));
    return at;
  });
  return { of, count: number.size };
}

/** Length of the line between each two regions, mm; key: the lower root × pixels + the other. */
function linesBetween(width: number, height: number, mmPerPx: number, root: (i: number) => number, n: number): Map<number, number> {
  const of = Uint32Array.from({ length: n }, (_, i) => root(i)),
    lines = new Map<number, number>();
  const add = (i: number, j: number): void => {
    const a = Math.min(of[i], of[j]),
      b = Math.max(of[i], of[j]);
    if (a !== b) lines.set(a * n + b, (lines.get(a * n + b) ?? 0) + mmPerPx);
  };
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      if (x + 1 < width) add(i, i + 1);
      if (y + 1 < height) add(i, i + width);
    }
  return lines;
}

/** The regions on the fine raster: along their lines each pixel goes to the side that it and most of its neighbours are nearer to. */
function refined({ lab, width, height }: Ground, small: Small, of: Uint32Array, count: number): Uint32Array {
  const fine = new Uint32Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) fine[y * width + x] = of[Math.floor(y / small.factor) * small.width + Math.floor(x / small.factor)];
  if (small.factor === 1) return fine;
  const mean = meansOf(lab, fine, count),
    next = fine.slice();
  for (let turn = 0; turn < 2 * small.factor; turn++) {
    for (let y = 1; y + 1 < height; y++)
      for (let x = 1; x + 1 < width; x++) {
        const i = y * width + x,
          own = fine[i];
        let best = own,
          least = Infinity;
        for (const j of [i, i - 1, i + 1, i - width, i + width]) {
          const region = fine[j];
          if (j !== i && region === own) continue;
          let far = 0,
            agree = 0;
          for (let c = 0; c < 3; c++) far += (lab[i * 3 + c] - mean[region * 3 + c]) ** 2;
          for (let v = -width; v <= width; v += width) for (let u = -1; u <= 1; u++) if (fine[i + v + u] === region) agree++;
          const cost = Math.min(900, far) + 60 * (9 - agree);
          if (cost < least) {
            least = cost;
            best = region;
          }
        }
        next[i] = best;
      }
    fine.set(next);
  }
  return fine;
}

function meansOf(lab: Float32Array, of: Uint32Array, count: number): Float64Array {
  const sums = new Float64Array(count * 3),
    counts = new Float64Array(count);
  for (let i = 0; i < of.length; i++) {
    for (let c = 0; c < 3; c++) sums[of[i] * 3 + c] += lab[i * 3 + c];
    counts[of[i]]++;
  }
  return sums.map((v, k) => v / Math.max(1, counts[Math.floor(k / 3)]));
}

function painted({ lab }: Ground, of: Uint32Array, count: number): Float32Array {
  const mean = meansOf(lab, of, count),
    out = new Float32Array(lab.length);
  for (let i = 0; i < of.length; i++) for (let c = 0; c < 3; c++) out[i * 3 + c] = mean[of[i] * 3 + c];
  return out;
}
