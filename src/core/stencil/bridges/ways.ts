import { Buckets } from '../raster/buckets.ts';

/** The ground on which bridges look for their way. */
export interface Ground {
  readonly width: number;
  readonly height: number;
  /** 0: free; otherwise the broad part of paper that the pixel belongs to, 1, 2, … */
  readonly terminal: Int32Array;
  readonly terminals: number;
  /** Cost of one step into a pixel: 1..most; 0 where no bridge may go. */
  readonly step: Uint16Array;
}

/** A way from one broad part of paper to another: pixels from the last of one to the first of the other. */
export interface Way {
  readonly from: number;
  readonly to: number;
  readonly path: readonly number[];
  readonly cost: number;
  /** It lies where it is meant to lie: no shorter one beside it. */
  readonly fixed?: boolean;
}

export const mostStep = 3000;
/** Sides and diagonals of a pixel, 5 : 7 being near enough to 1 : √2 (Borgefors 1986). */
const straight = 5,
  slanted = 7;
const never = 0x7fffffff;

/** How far the search is: the cheapest known way to each free pixel, where it came from and from which part. */
class Search {
  readonly cost: Int32Array;
  readonly parent: Int32Array;
  readonly owner: Int32Array;
  readonly queue: Buckets;
  readonly ground: Ground;
  private readonly offsets: Int32Array;

  constructor(ground: Ground, owner: Int32Array) {
    const n = ground.width * ground.height;
    this.ground = ground;
    this.owner = owner;
    let most = 1;
    for (let p = 0; p < n; p++) if (ground.step[p] > most) most = ground.step[p];
    this.queue = new Buckets(most * slanted);
    const w = ground.width;
    this.cost = new Int32Array(n).fill(never);
    // Nothing leads into paper already joined, nor out over the raster's edge.
    for (let p = 0; p < n; p++) if (ground.terminal[p] !== 0) this.cost[p] = 0;
    this.cost.fill(0, 0, w).fill(0, n - w);
    for (let p = 0; p < n; p += w) this.cost[p] = this.cost[p + w - 1] = 0;
    this.parent = new Int32Array(n).fill(-1);
    this.offsets = Int32Array.of(-1, 1, -w, w, -w - 1, -w + 1, w - 1, w + 1);
  }

  start(p: number): void {
    this.queue.put(p, 0);
  }

  /** Takes the cheapest waiting pixel; calls `meets` for each neighbour that another part owns. −1 at the end. */
  advance(meets: (p: number, q: number, cost: number) => void): number {
    const { owner, cost, parent, queue, offsets } = this;
    const { step } = this.ground;
    let p = queue.take();
    while (p >= 0 && queue.cost > cost[p]) p = queue.take();
    if (p < 0) return -1;
    const at = cost[p],
      mine = owner[p];
    for (let k = 0; k < 8; k++) {
      const q = p + offsets[k];
      const known = cost[q];
      if (known <= at) {
        // Only where q's own cost and owner are final too (the later of the two sees the meeting).
        const whose = owner[q];
        if (whose !== 0 && whose !== mine) meets(p, q, at + known);
        continue;
      }
      const toll = step[q];
      if (toll === 0) continue;
      const reached = at + toll * (k < 4 ? straight : slanted);
      if (reached < known) {
        cost[q] = reached;
        parent[q] = p;
        owner[q] = mine;
        queue.put(q, reached);
      }
    }
    return at;
  }

  /** Pixels from the root to p. */
  trace(p: number): number[] {
    const path: number[] = [];
    for (let q = p; q >= 0; q = this.parent[q]) path.push(q);
    return path.reverse();
  }
}

/** Pixels of terminals with a free pixel beside them; those on the raster's own edge lead nowhere. */
function rims(ground: Ground, keep: (p: number) => boolean): number[] {
  const { terminal, width, height } = ground;
  const out: number[] = [];
  for (let y = 1; y < height - 1; y++) {
    for (let p = y * width + 1, end = (y + 1) * width - 1; p < end; p++) {
      if (terminal[p] === 0) continue;
      if (terminal[p - 1] && terminal[p + 1] && terminal[p - width] && terminal[p + width]) continue;
      if (keep(p)) out.push(p);
    }
  }
  return out;
}

interface Meeting {
  readonly a: number;
  readonly b: number;
  readonly p: number;
  readonly q: number;
  readonly cost: number;
}

/**
 * Ways that join all terminals into one at nearly least cost: shortest ways from all at once, then the cheapest
 * meetings that close no circle (Mehlhorn 1988: within twice the best; Kruskal 1956).
 */
export function joinAll(ground: Ground): Way[] {
  const { terminals } = ground;
  if (terminals < 2) return [];
  const search = new Search(ground, ground.terminal.slice());
  for (const p of rims(ground, () => true)) search.start(p);
  const best = new Map<number, Meeting>();
  let changed = false;
  const meets = (p: number, q: number, cost: number): void => {
    const u = search.owner[p],
      v = search.owner[q];
    const a = Math.min(u, v),
      b = Math.max(u, v),
      key = a * (terminals + 1) + b;
    const had = best.get(key);
    if (had && had.cost <= cost) return;
    best.set(key, u === a ? { a, b, p, q, cost } : { a, b, p: q, q: p, cost });
    changed = true;
  };
  let tree: Meeting[] = [];
  let look = 0,
    dearest = Infinity;
  for (;;) {
    const at = search.advance(meets);
    // A meeting dearer than twice the present cost may still be bettered; cheaper ones are final.
    if (at < 0 || (changed && at >= look)) {
      tree = kruskal([...best.values()], terminals);
      changed = false;
      look = at + 40;
      if (at < 0) break;
      dearest = tree.length === terminals - 1 ? Math.max(...tree.map((m) => m.cost)) : Infinity;
    }
    if (dearest <= 2 * at) break;
  }
  return tree.map((m) => wayOf(search, m));
}

function kruskal(meetings: Meeting[], terminals: number): Meeting[] {
  const parent = Int32Array.from({ length: terminals + 1 }, (_, i) => i);
  const find = (i: number): number => {
    while (parent[i] !== i) i = parent[i] = parent[parent[i]];
    return i;
  };
  meetings.sort((m, o) => m.cost - o.cost || m.a - o.a || m.b - o.b);
  const tree: Meeting[] = [];
  for (const m of meetings) {
    const a = find(m.a),
      b = find(m.b);
    if (a === b) continue;
    parent[b] = a;
    tree.push(m);
  }
  return tree;
}

function wayOf(search: Search, m: Meeting): Way {
  return { from: m.a, to: m.b, path: [...search.trace(m.p), ...search.trace(m.q).reverse()], cost: m.cost };
}

/** The cheapest way from some rim pixels of one group of terminals to any other group. `group` by terminal. */
export function oneMore(ground: Ground, group: Int32Array, mine: number, maySource: (p: number) => boolean): Way | undefined {
  const owner = new Int32Array(ground.terminal.length);
  for (let p = 0; p < owner.length; p++) {
    const t = ground.terminal[p];
    if (t !== 0) owner[p] = group[t] === mine ? 1 : 2;
  }
  const search = new Search(ground, owner);
  for (const p of rims(ground, (p) => owner[p] === 1 && maySource(p))) search.start(p);
  let found: { readonly p: number; readonly q: number; readonly cost: number } | undefined;
  const meets = (p: number, q: number, cost: number): void => {
    if (!found || cost < found.cost) found = { p, q, cost };
  };
  for (;;) {
    const at = search.advance(meets);
    if (at < 0 || (found && at >= found.cost)) break;
  }
  if (!found) return undefined;
  const path = [...search.trace(found.p), found.q];
  return { from: ground.terminal[path[0]], to: ground.terminal[found.q], path, cost: found.cost };
}
