import type { Ground, Way } from './ways.ts';

/** So much dearer a bridge may be for the sake of the drawing's own order. */
const mayCost = 1.25,
  mayCostSteps = 24;
/** Share of a drawing that may lie otherwise on its other side. */
const unlike = 0.02;

/** A raster's pixels as an axis or a half turn exchanges them; −1 beyond its border. */
type Exchange = (p: number) => number;

interface PartGround extends Ground {
  readonly mask: Uint8Array;
  readonly partOf: Int32Array;
}

/**
 * Where a drawing has an axis, a half turn or quarter turns, bridges that respect it: of those that answer one another the others
 * become the image of the first, and a single one moves onto the axis; each only if that costs little more.
 */
export function balanced(ways: readonly Way[], ground: PartGround): Way[] {
  if (ways.length === 0) return [];
  const { first, quarter } = orderOf(ground);
  const out = first ? inOrder(ways, ground, first) : [...ways];
  return quarter ? byQuarters(out, ground, quarter) : out;
}

/** By quarter turns: of four islands that answer one another each gets the bridge of the first, turned; two of one island lie opposite. */
function byQuarters(ways: readonly Way[], ground: PartGround, quarter: Exchange): Way[] {
  const out = [...ways];
  const settled = new Set<number>();
  const parts = (way: Way): string => pairKey(ground.partOf[way.from], ground.partOf[way.to]);
  const half: Exchange = (p) => turnedBy(quarter, quarter(p));
  for (let i = 0; i < out.length; i++) {
    if (settled.has(i) || ground.partOf[out[i].from] === ground.partOf[out[i].to]) continue;
    settled.add(i);
    for (const exchange of [half, quarter, (p: number) => turnedBy(quarter, half(p))]) {
      const image = imageOf(out[i], exchange, ground);
      const wanted = image && parts(image);
      // Of one island two bridges lie as its axis has them, where it has one.
      if (!image || wanted === parts(out[i])) continue;
      const other = out.findIndex((o, k) => !settled.has(k) && parts(o) === wanted);
      if (other < 0) continue;
      settled.add(other);
      if (little(image.cost, costOf(out[other].path, ground) ?? Infinity) && !same(image, out[other])) out[other] = image;
    }
  }
  return out;
}

const turnedBy = (exchange: Exchange, p: number): number => (p < 0 ? -1 : exchange(p));

function inOrder(ways: readonly Way[], ground: PartGround, { exchange, axis }: Order): Way[] {
  const out = [...ways];
  const settled = new Set<number>();
  const stepsOf = (way: Way): number => costOf(way.path, ground) ?? Infinity;
  const parts = (way: Way): string => pairKey(ground.partOf[way.from], ground.partOf[way.to]);
  for (let i = 0; i < out.length; i++) {
    if (settled.has(i)) continue;
    settled.add(i);
    const way = out[i];
    if (ground.partOf[way.from] === ground.partOf[way.to]) continue;
    const image = imageOf(way, exchange, ground);
    if (!image) continue;
    const wanted = parts(image);
    const other = out.findIndex((o, k) => !settled.has(k) && parts(o) === wanted);
    if (other >= 0) {
      settled.add(other);
      const apart = between(way, out[other], ground) / 2;
      if (wanted === parts(way) && between(way, image, ground) < apart) {
        // Side by side they would hold like one: one on the axis, the other where the axis comes out again.
        if (axis) {
          const ends = alongAxis(axis, ground.partOf[way.from], ground.partOf[way.to], ground);
          const one = ends.find((end) => little(end.cost, stepsOf(way)));
          if (one) out[i] = one;
          const two = ends.find((end) => between(end, out[i], ground) >= apart && little(end.cost, stepsOf(out[other])));
          if (one && two) out[other] = two;
        }
      } else if (little(image.cost, stepsOf(out[other])) && !same(image, way)) out[other] = image;
    } else if (wanted === parts(way) && axis) {
      const onAxis = alongAxis(axis, ground.partOf[way.from], ground.partOf[way.to], ground).at(0);
      if (onAxis && little(onAxis.cost, stepsOf(way))) out[i] = onAxis;
    }
  }
  return out;
}

const little = (cost: number, before: number): boolean => cost <= mayCost * before + mayCostSteps;
const pairKey = (a: number, b: number): string => (a < b ? `${a} ${b}` : `${b} ${a}`);
/** How far the middles of two ways lie from one another. */
function between(a: Way, b: Way, { width }: Ground): number {
  const p = a.path[a.path.length >> 1],
    q = b.path[b.path.length >> 1];
  return Math.hypot((p % width) - (q % width), Math.floor(p / width) - Math.floor(q / width));
}
const same = (a: Way, b: Way): boolean => Math.abs(a.path[a.path.length >> 1] - b.path[b.path.length >> 1]) <= 1;

interface Order {
  readonly exchange: Exchange;
  /** The pixels of its axis, from end to end. */
  readonly axis?: readonly number[];
}

interface Orders {
  readonly first?: Order;
  readonly quarter?: Exchange;
}

/** An axis upright or level, or a half turn, and quarter turns, about the middle of all openings. */
function orderOf({ mask, width, height }: PartGround): Orders {
  let x0 = width,
    y0 = height,
    x1 = -1,
    y1 = -1;
  for (let p = 0, y = 0; y < height; y++)
    for (let x = 0; x < width; x++, p++) {
      if (mask[p]) continue;
      if (x < x0) x0 = x;
      if (x > x1) x1 = x;
      if (y < y0) y0 = y;
      if (y > y1) y1 = y;
    }
  if (x1 < 0) return {};
  const at = (x: number, y: number): number => (x < 0 || y < 0 || x >= width || y >= height ? -1 : y * width + x);
  const upright: Exchange = (p) => at(x0 + x1 - (p % width), Math.floor(p / width));
  const level: Exchange = (p) => at(p % width, y0 + y1 - Math.floor(p / width));
  const turned: Exchange = (p) => at(x0 + x1 - (p % width), y0 + y1 - Math.floor(p / width));
  const holds = (exchange: Exchange): boolean => {
    let openings = 0,
      off = 0;
    for (let y = y0; y <= y1; y++)
      for (let x = x0; x <= x1; x++) {
        const p = y * width + x;
        if (mask[p]) continue;
        openings++;
        const q = exchange(p);
        // A pixel to either side is the raster's doing.
        if (mask[q] && mask[q - 1] && mask[q + 1] && mask[q - width] && mask[q + width]) off++;
      }
    return off <= unlike * openings;
  };
  const across = (x0 + x1 + y0 + y1) >> 1,
    down = (y0 + y1 - x0 - x1) >> 1;
  const byQuarter: Exchange = (p) => at(across - Math.floor(p / width), down + (p % width));
  // Only what is as wide as high can be the same after a quarter turn.
  const quarter = Math.abs(x1 - x0 - (y1 - y0)) <= 2 && holds(byQuarter) ? { quarter: byQuarter } : {};
  if (holds(upright))
    return { ...quarter, first: { exchange: upright, axis: Array.from({ length: height }, (_, y) => at((x0 + x1) >> 1, y)) } };
  if (holds(level)) return { ...quarter, first: { exchange: level, axis: Array.from({ length: width }, (_, x) => at(x, (y0 + y1) >> 1)) } };
  return holds(turned) ? { ...quarter, first: { exchange: turned } } : quarter;
}

/** The image of a way, where it is one: between broad parts, and nowhere forbidden. */
function imageOf(way: Way, exchange: Exchange, ground: PartGround): Way | undefined {
  const path = way.path.map(exchange);
  if (path.some((p) => p < 0)) return undefined;
  const from = terminalAt(path[0], ground),
    to = terminalAt(path[path.length - 1], ground);
  if (!from || !to || from === to) return undefined;
  const cost = costOf(path, ground);
  return cost === undefined ? undefined : { from, to, path, cost, ...(way.fixed ? { fixed: true } : {}) };
}

/** The broad part of a pixel or of one beside it. */
function terminalAt(p: number, { terminal, width }: Ground): number {
  for (const q of [p, p - 1, p + 1, p - width, p + width, p - width - 1, p - width + 1, p + width - 1, p + width + 1])
    if (terminal[q] > 0) return terminal[q];
  return 0;
}

function costOf(path: readonly number[], { step, terminal }: Ground): number | undefined {
  let cost = 0;
  for (const p of path) {
    if (step[p] === 0 && terminal[p] === 0) return undefined;
    if (terminal[p] === 0) cost += step[p];
  }
  return cost;
}

/** Stretches of the axis from one part to the other, the cheapest first. */
function alongAxis(axis: readonly number[], a: number, b: number, ground: PartGround): Way[] {
  const found: Way[] = [];
  let start = -1;
  for (let k = 0; k < axis.length; k++) {
    const t = ground.terminal[axis[k]];
    if (t === 0) continue;
    const part = ground.partOf[t];
    const before = start >= 0 ? ground.terminal[axis[start]] : 0;
    if (before > 0 && part !== ground.partOf[before] && [a, b].includes(part) && [a, b].includes(ground.partOf[before])) {
      const path = axis.slice(start, k + 1);
      const cost = costOf(path, ground);
      if (cost !== undefined) found.push({ from: before, to: t, path, cost, fixed: true });
    }
    start = k;
  }
  return found.sort((p, q) => p.cost - q.cost);
}
