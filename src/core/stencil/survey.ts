import { withinReach } from './discs.ts';
import { nearDistance } from './edt.ts';
import { labelParts } from './label.ts';
import type { Labels } from './label.ts';

/** A thin place of a raster shape, in pixels. */
export interface ThinPlace {
  readonly kind: 'neck' | 'thin-piece' | 'tongue';
  /** Pixels along its middle, from one broad part to the next (neck) or to the tip. */
  readonly path: readonly number[];
  /** The pixel where it is narrowest. */
  readonly at: number;
  readonly widthPx: number;
}

export interface Survey {
  /** Broad parts: connected places around which a disc of the least width fits. Found when first asked for. */
  readonly cores: () => Labels;
  /** Squared distance of a pixel to the nearest one outside the shape, up to a little over the least radius. */
  readonly distance2: (pixel: number) => number;
  readonly thin: readonly ThinPlace[];
}

/** A thin point may be this many least radii long: a taper of about 10° and more stays a point, not a tongue. */
const longestPoint = 12;
/** In an opening a knife cuts a point as long as this when it tapers: two cuts that meet. Paper so slender would bend. */
export const longestTaper = 24;
/** So few pixels, so near to more of the same, are what the raster broke off a point. */
const crumbPx = 4,
  crumbReach = 3;
/** A point tapers when its outer half is on average narrower than this share of its inner half; else it is a slit. */
const taperShare = 0.75;

/**
 * Where is the shape (pixels of `mask` that are `value`) narrower than 2 · radiusPx? Discs of that width that fit are
 * laid into it (its opening); what they leave uncovered is a point (harmless), a tongue (a long thin point), a neck
 * (joins broad parts), or a thin piece. A shape that passes is at least 2 · radiusPx wide, measured to be on the safe side.
 */
export function surveyWidths(
  mask: Uint8Array,
  value: 0 | 1,
  width: number,
  height: number,
  radiusPx: number,
  sparePx: number,
  longestTaperRadii = longestPoint,
): Survey {
  const other = value ? 0 : 1;
  // A disc fits where nothing outside is nearer than `least`; distances are square roots of whole numbers.
  const tooNear = withinReach(mask, width, height, other, Math.ceil((radiusPx + sparePx) ** 2) - 1);
  // 1: left uncovered by the discs, not visited yet; 2: visited.
  const left = uncovered(mask, value, withinReach(tooNear, width, height, 0, (radiusPx + 1) ** 2));
  // Most shapes have few thin places or none: distances are worked out only where one has to be looked at.
  const distance = once(() => nearDistance(mask, width, height, value, Math.min(255, Math.ceil(radiusPx) + 2)));
  const thin: ThinPlace[] = [];
  for (let seed = left.indexOf(1); seed >= 0; seed = left.indexOf(1, seed + 1)) {
    const members = flood(left, seed, width, height);
    thin.push(...judge(members, left, mask, value, distance, width, height, radiusPx, longestTaperRadii));
    for (const p of members) left[p] = 3;
  }
  return { cores: once(() => labelParts(tooNear, width, height, 0, true)), distance2: (p) => distance()[p], thin };
}

/** 1 where the mask is `value` and nothing covers it; written over `covered`, four pixels at a time. */
function uncovered(mask: Uint8Array, value: number, covered: Uint8Array): Uint8Array {
  const n = mask.length,
    whole = mask.byteOffset % 4 === 0 ? n >> 2 : 0;
  const m = new Int32Array(mask.buffer, whole ? mask.byteOffset : 0, whole),
    c = new Int32Array(covered.buffer, 0, whole);
  if (value) for (let i = 0; i < whole; i++) c[i] = m[i] & ~c[i];
  else for (let i = 0; i < whole; i++) c[i] = ~(m[i] | c[i]) & 0x01010101;
  for (let p = 4 * whole; p < n; p++) covered[p] = mask[p] === value && covered[p] === 0 ? 1 : 0;
  return covered;
}

function once<T>(work: () => T): () => T {
  let done: { readonly value: T } | undefined;
  return () => (done ??= { value: work() }).value;
}

/** All uncovered pixels joined with `seed` by sides or corners; marks them 2. */
function flood(left: Uint8Array, seed: number, width: number, height: number): number[] {
  const members = [seed];
  left[seed] = 2;
  for (let k = 0; k < members.length; k++) {
    const p = members[k],
      x = p % width,
      y = (p - x) / width;
    for (let dy = -1; dy <= 1; dy++) {
      for (let dx = -1; dx <= 1; dx++) {
        if (x + dx < 0 || x + dx >= width || y + dy < 0 || y + dy >= height) continue;
        const q = p + dy * width + dx;
        if (left[q] === 1) {
          left[q] = 2;
          members.push(q);
        }
      }
    }
  }
  return members;
}

function judge(
  members: readonly number[],
  left: Uint8Array,
  mask: Uint8Array,
  value: number,
  distances: () => Uint16Array,
  width: number,
  height: number,
  radiusPx: number,
  longestTaperRadii: number,
): ThinPlace[] {
  const arcs = contactArcs(members, left, mask, value, width, height);
  if (arcs.length === 0) {
    // The tip of a point may come apart into single pixels where it is finer than one: still the point.
    if (members.length <= crumbPx && nextToShape(members, mask, value, width, height)) return [];
    const distance = distances();
    const a = farthest(members, members[0], width),
      b = farthest(members, a, width);
    return [place('thin-piece', widestPath(members, [a], new Set([b]), distance, width), distance)];
  }
  if (arcs.length > 1) {
    const distance = distances();
    return arcs.slice(1).map((arc) => place('neck', widestPath(members, arcs[0], new Set(arc), distance, width), distance));
  }
  const tip = farthest(members, arcs[0][0], width);
  const reach = Math.hypot((tip % width) - (arcs[0][0] % width), Math.floor(tip / width) - Math.floor(arcs[0][0] / width));
  if (reach <= longestPoint * radiusPx) return [];
  const distance = distances();
  const path = widestPath(members, arcs[0], new Set([tip]), distance, width);
  if (reach <= longestTaperRadii * radiusPx && tapers(path, tip, distance)) return [];
  return [place('tongue', path, distance)];
}

function nextToShape(members: readonly number[], mask: Uint8Array, value: number, width: number, height: number): boolean {
  const own = new Set(members);
  return members.some((p) => {
    const x = p % width,
      y = (p - x) / width;
    for (let dy = -crumbReach; dy <= crumbReach; dy++) {
      for (let dx = -crumbReach; dx <= crumbReach; dx++) {
        const u = x + dx,
          v = y + dy;
        if (u >= 0 && v >= 0 && u < width && v < height && mask[v * width + u] === value && !own.has(v * width + u)) return true;
      }
    }
    return false;
  });
}

/** Is the half of the path towards the tip clearly narrower than the half towards the broad part? */
function tapers(path: readonly number[], tip: number, distance: Uint16Array): boolean {
  const half = path.length >> 1;
  const mean = (pixels: readonly number[]): number =>
    pixels.reduce((sum, p) => sum + Math.sqrt(distance[p]), 0) / Math.max(1, pixels.length);
  const [head, tail] = [mean(path.slice(0, half)), mean(path.slice(half))];
  return path[0] === tip ? head < taperShare * tail : tail < taperShare * head;
}

function place(kind: ThinPlace['kind'], path: readonly number[], distance: Uint16Array): ThinPlace {
  let at = path[0];
  for (const p of path) if (distance[p] < distance[at]) at = p;
  if (kind !== 'neck') for (const p of path) if (distance[p] > distance[at]) at = p;
  return { kind, path, at, widthPx: Math.max(1, 2 * Math.sqrt(distance[at]) - 1) };
}

/** Pixels of the covered shape that touch the uncovered part, in groups no nearer than three pixels to one another. */
function contactArcs(
  members: readonly number[],
  left: Uint8Array,
  mask: Uint8Array,
  value: number,
  width: number,
  height: number,
): number[][] {
  const contacts = new Set<number>();
  for (const p of members) {
    const x = p % width,
      y = (p - x) / width;
    for (let dy = -1; dy <= 1; dy++) {
      for (let dx = -1; dx <= 1; dx++) {
        if (x + dx < 0 || x + dx >= width || y + dy < 0 || y + dy >= height) continue;
        const q = p + dy * width + dx;
        if (mask[q] === value && left[q] === 0) contacts.add(q);
      }
    }
  }
  const arcs: number[][] = [];
  const reach = 2;
  for (const first of contacts) {
    contacts.delete(first);
    const arc = [first];
    for (let k = 0; k < arc.length; k++) {
      const p = arc[k],
        x = p % width;
      for (let dy = -reach; dy <= reach; dy++) {
        for (let dx = -reach; dx <= reach; dx++) {
          if (x + dx < 0 || x + dx >= width) continue;
          const q = p + dy * width + dx;
          if (contacts.delete(q)) arc.push(q);
        }
      }
    }
    arcs.push(arc);
  }
  return arcs;
}

function farthest(members: readonly number[], from: number, width: number): number {
  const fx = from % width,
    fy = Math.floor(from / width);
  let best = members[0],
    most = -1;
  for (const p of members) {
    const dx = (p % width) - fx,
      dy = Math.floor(p / width) - fy,
      d = dx * dx + dy * dy;
    if (d > most) {
      most = d;
      best = p;
    }
  }
  return best;
}

/** The path through `members` (and the end pixels) whose narrowest place is as wide as can be; shorter among equals. */
export function widestPath(
  members: readonly number[],
  from: readonly number[],
  to: ReadonlySet<number>,
  distance: Uint16Array,
  width: number,
): number[] {
  const allowed = new Set(members);
  for (const p of to) allowed.add(p);
  const parent = new Map<number, number>();
  // Buckets by squared distance, widest first: the widest front pixel is always taken next.
  const buckets: number[][] = [];
  let top = 0;
  const push = (p: number, limit: number): void => {
    const key = Math.min(distance[p], limit);
    (buckets[key] ??= []).push(p);
    if (key > top) top = key;
  };
  for (const p of from) {
    parent.set(p, -1);
    push(p, distance[p]);
  }
  let heads: number[] = [];
  while (top >= 0) {
    const bucket = buckets[top];
    const head = heads[top] ?? 0;
    if (!bucket || head >= bucket.length) {
      top--;
      continue;
    }
    heads[top] = head + 1;
    const p = bucket[head];
    if (to.has(p)) {
      const path: number[] = [];
      for (let q = p; q !== -1; q = parent.get(q) ?? -1) path.push(q);
      heads = [];
      return path.reverse();
    }
    const x = p % width,
      level = top;
    for (let dy = -1; dy <= 1; dy++) {
      for (let dx = -1; dx <= 1; dx++) {
        if (x + dx < 0 || x + dx >= width) continue;
        const q = p + dy * width + dx;
        if (!allowed.has(q) || parent.has(q)) continue;
        parent.set(q, p);
        push(q, level);
      }
    }
  }
  return [...from.slice(0, 1)];
}
