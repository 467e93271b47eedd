import { withinReach } from '../raster/discs.ts';
import { Graph } from '../bridges/graph.ts';
import { linePixels } from '../raster/halved.ts';
import { Near } from '../bridges/near.ts';

/** A thin place of a raster shape, in pixels. */
export interface ThinPlace {
  readonly kind: 'neck' | 'thin-piece' | 'tongue';
  /** Pixels along its middle, from one broad part to the next (neck) or to the tip. */
  readonly path: readonly number[];
  /** The pixel where it is narrowest. */
  readonly at: number;
  readonly widthPx: number;
  /** Nowhere wider than a hairline, but where it meets what is broad. */
  readonly hair: boolean;
}

/** A thin point may be this many least radii long: a taper of about 10° and more stays a point, not a tongue. */
export const longestPoint = 12;
/** Longer than this many least radii it has to taper; shorter it is a corner. */
const longestStub = 4;
/** One that is nowhere wider than this share of the least width has to, where it is longer than the least radius: a slit is no corner. */
const slitShare = 0.7;
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
  hairPx = 0,
  longestTaperRadii = longestPoint,
): ThinPlace[] {
  const other = value ? 0 : 1;
  // A disc fits where nothing outside is nearer than `least`; distances are square roots of whole numbers.
  const tooNear = withinReach(mask, width, height, other, Math.ceil((radiusPx + sparePx) ** 2) - 1);
  // 1: left uncovered by the discs, not visited yet; 2: visited.
  const left = uncovered(mask, value, withinReach(tooNear, width, height, 0, (radiusPx + 1) ** 2));
  // Most shapes have few thin places or none: distances are worked out only where one has to be looked at.
  const near = new Near(mask, width, height, value, Math.min(255, Math.ceil(radiusPx) + 2));
  const thin: ThinPlace[] = [];
  let slots: Int32Array | undefined;
  for (let seed = left.indexOf(1); seed >= 0; seed = left.indexOf(1, seed + 1)) {
    const members = flood(left, seed, width, height);
    const raster = { left, mask, value, tooNear, width, height, radiusPx };
    thin.push(...judge(members, raster, near, () => (slots ??= new Int32Array(width * height)), hairPx, longestTaperRadii));
    for (const p of members) left[p] = 3;
  }
  return thin;
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

interface Raster {
  readonly left: Uint8Array;
  readonly mask: Uint8Array;
  readonly value: number;
  readonly tooNear: Uint8Array;
  readonly width: number;
  readonly height: number;
  readonly radiusPx: number;
}

function judge(
  members: readonly number[],
  { left, mask, value, tooNear, width, height, radiusPx }: Raster,
  near: Near,
  slots: () => Int32Array,
  hairPx: number,
  longestTaperRadii: number,
): ThinPlace[] {
  const arcs = contactArcs(members, left, mask, value, width, height);
  // The tip of a point may come apart into single pixels where it is finer than one: still the point.
  if (arcs.length === 0 && members.length <= crumbPx && nextToShape(members, mask, value, width, height)) return [];
  const tip = arcs.length === 0 ? members[0] : farthest(members, arcs[0][0], width);
  const reach =
    arcs.length === 0 ? 0 : Math.hypot((tip % width) - (arcs[0][0] % width), Math.floor(tip / width) - Math.floor(arcs[0][0] / width));
  if (arcs.length === 1 && reach <= radiusPx / 2) return [];
  const distance = near.around(members);
  const contacts = arcs.flat();
  const hair = isHair(members, contacts, distance, width, radiusPx, hairPx);
  const graph = new Graph(members, contacts, distance, slots(), width, height);
  // From the broad part itself: what is added there must not stand out.
  const rooted = (path: readonly number[], bothEnds: boolean): number[] => {
    const whole = [...toCore(path[0], tooNear, width, height, radiusPx).reverse(), ...path];
    return bothEnds ? [...whole, ...toCore(path[path.length - 1], tooNear, width, height, radiusPx)] : whole;
  };
  const look = (): ThinPlace[] => {
    if (arcs.length === 0) {
      const a = farthest(members, members[0], width),
        b = farthest(members, a, width);
      return [place('thin-piece', graph.paths([a], [[b]])[0], distance, hair)];
    }
    const found = graph.paths(arcs[0], arcs.slice(1)).map((path) => place('neck', path, distance, hair, rooted(path, true)));
    const tops = graph.swellings();
    if (tops.length > 0)
      found.push(
        ...graph
          .paths(
            contacts,
            tops.map((top) => [top]),
          )
          .map((path) => place('neck', path, distance, hair, rooted(path, false))),
      );
    if (found.length > 0 || reach <= radiusPx) return found;
    if (reach <= longestStub * radiusPx && members.some((p) => distance[p] > (slitShare * radiusPx) ** 2)) return found;
    const path = graph.paths(arcs[0], [[tip]])[0];
    if (reach <= longestTaperRadii * radiusPx && tapers(path, tip, distance)) return [];
    return [place('tongue', path, distance, hair, rooted(path, false))];
  };
  const found = look();
  graph.clear();
  return found;
}

/** Straight from a pixel to the nearest around which a disc of the least width fits, it left out. */
function toCore(from: number, tooNear: Uint8Array, width: number, height: number, radiusPx: number): number[] {
  const fx = from % width,
    fy = (from - fx) / width,
    reach = Math.ceil(radiusPx) + 3;
  let best = -1,
    least = Infinity;
  for (let y = Math.max(0, fy - reach); y <= Math.min(height - 1, fy + reach); y++) {
    for (let x = Math.max(0, fx - reach); x <= Math.min(width - 1, fx + reach); x++) {
      const d = (x - fx) ** 2 + (y - fy) ** 2;
      if (d >= least || tooNear[y * width + x]) continue;
      least = d;
      best = y * width + x;
    }
  }
  return best < 0 || best === from ? [] : linePixels(from, best, width).slice(1);
}

/** Nowhere wider than a hairline? Near what is broad it may be, and in a few pixels where lines meet. */
function isHair(
  members: readonly number[],
  contacts: readonly number[],
  distance: Uint16Array,
  width: number,
  radiusPx: number,
  hairPx: number,
): boolean {
  const broad2 = ((hairPx + 1) / 2) ** 2,
    near2 = (1.3 * radiusPx) ** 2;
  let wide = 0;
  const most = 0.04 * members.length;
  for (const p of members) {
    if (distance[p] <= broad2) continue;
    const x = p % width,
      y = (p - x) / width;
    if (contacts.some((c) => ((c % width) - x) ** 2 + (Math.floor(c / width) - y) ** 2 <= near2)) continue;
    if (++wide > most) return false;
  }
  return true;
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

function place(
  kind: ThinPlace['kind'],
  path: readonly number[],
  distance: Uint16Array,
  hair: boolean,
  whole: readonly number[] = path,
): ThinPlace {
  let at = path[0];
  for (const p of path) if (distance[p] < distance[at]) at = p;
  if (kind !== 'neck') for (const p of path) if (distance[p] > distance[at]) at = p;
  return { kind, path: whole, at, widthPx: Math.max(1, 2 * Math.sqrt(distance[at]) - 1), hair };
}

/** Pixels of the covered shape that touch the uncovered part, in groups farther than three pixels from one another. */
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
  const reach = 3;
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
