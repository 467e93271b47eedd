/** A place is broader than the way to it when it is by so many pixels (of half a width): less is the raster's doing. */
const swellPx = 1;

/** The pixels of one thin place and those of the broad parts that it touches, each with its neighbours. */
export class Graph {
  private readonly nodes: readonly number[];
  private readonly memberCount: number;
  private readonly distance: Uint16Array;
  private readonly slots: Int32Array;
  private readonly width: number;
  private readonly height: number;

  constructor(
    members: readonly number[],
    contacts: readonly number[],
    distance: Uint16Array,
    slots: Int32Array,
    width: number,
    height: number,
  ) {
    this.nodes = [...members, ...contacts];
    this.memberCount = members.length;
    this.distance = distance;
    this.slots = slots;
    this.width = width;
    this.height = height;
    this.nodes.forEach((p, i) => {
      slots[p] = i + 1;
    });
  }

  /** Others use the slots after this. */
  clear(): void {
    for (const p of this.nodes) this.slots[p] = 0;
  }

  private neighbours(p: number, out: Int32Array): number {
    const { width, height, slots } = this;
    const x = p % width,
      y = (p - x) / width;
    let n = 0;
    for (let dy = -1; dy <= 1; dy++) {
      if (y + dy < 0 || y + dy >= height) continue;
      for (let dx = -1; dx <= 1; dx++) {
        if (x + dx < 0 || x + dx >= width) continue;
        const slot = slots[p + dy * width + dx];
        if (slot > 0) out[n++] = slot - 1;
      }
    }
    return n;
  }

  /** From `from` to each of `ends` the path whose narrowest place is as wide as can be; one that can't be reached is a single pixel. */
  paths(from: readonly number[], ends: readonly (readonly number[])[]): number[][] {
    const { nodes, distance, slots } = this;
    const parent = new Int32Array(nodes.length).fill(-2);
    const goal = new Int32Array(nodes.length).fill(-1);
    ends.forEach((end, k) => {
      for (const p of end) if (slots[p] > 0) goal[slots[p] - 1] = k;
    });
    const found: number[][] = ends.map((end) => [end[0]]);
    let missing = ends.length;
    const done = new Uint8Array(ends.length);
    // Buckets by squared distance, widest first: the widest front pixel is always taken next.
    const buckets: number[][] = [];
    const heads: number[] = [];
    let top = 0;
    const push = (i: number, limit: number): void => {
      const key = Math.min(distance[nodes[i]], limit);
      (buckets[key] ??= []).push(i);
      heads[key] ??= 0;
      if (key > top) top = key;
    };
    for (const p of from) {
      const i = slots[p] - 1;
      if (i < 0) continue;
      parent[i] = -1;
      push(i, 0xffff);
    }
    const beside = new Int32Array(9);
    while (top >= 0 && missing > 0) {
      const bucket = buckets[top];
      if (!bucket || heads[top] >= bucket.length) {
        top--;
        continue;
      }
      const i = bucket[heads[top]++];
      const k = goal[i];
      if (k >= 0 && !done[k]) {
        done[k] = 1;
        missing--;
        const path: number[] = [];
        for (let q = i; q >= 0; q = parent[q]) path.push(nodes[q]);
        found[k] = path.reverse();
      }
      const level = top,
        n = this.neighbours(nodes[i], beside);
      for (let b = 0; b < n; b++) {
        const q = beside[b];
        if (parent[q] !== -2) continue;
        parent[q] = i;
        push(q, level);
      }
    }
    return found;
  }

  /**
   * Places broader than every way to them from what is broad: the tops of islands that show as the level falls (a tree of
   * components, Najman and Couprie 2006). One pixel each, broadest first.
   */
  swellings(): number[] {
    const { nodes, distance, memberCount: n } = this;
    const order = broadestFirst(nodes, n, distance);
    const rank = new Int32Array(n);
    for (let k = 0; k < n; k++) rank[order[k]] = k;
    const root = n;
    const parent = new Int32Array(n + 1).fill(-1);
    parent[root] = root;
    const find = (i: number): number => {
      while (parent[i] !== i) i = parent[i] = parent[parent[i]];
      return i;
    };
    const tops: number[] = [];
    const beside = new Int32Array(9);
    for (let k = 0; k < n; k++) {
      const p = nodes[order[k]];
      parent[k] = k;
      const count = this.neighbours(p, beside);
      for (let j = 0; j < count; j++) {
        const other = beside[j] >= n ? root : rank[beside[j]];
        if (parent[other] < 0) continue;
        let a = find(k),
          b = find(other);
        if (a === b) continue;
        // The root, then what is broader, takes in the other.
        if (b === root || (a !== root && b < a)) [a, b] = [b, a];
        const top = nodes[order[b]];
        if (Math.sqrt(distance[top]) - Math.sqrt(distance[p]) > swellPx) tops.push(top);
        parent[b] = a;
      }
    }
    return tops.sort((a, b) => distance[b] - distance[a] || a - b);
  }
}

/** The first `n` of these pixels by their squared distance, those alike in the order given. */
function broadestFirst(nodes: readonly number[], n: number, distance: Uint16Array): Int32Array {
  let most = 0;
  for (let i = 0; i < n; i++) most = Math.max(most, distance[nodes[i]]);
  const start = new Int32Array(most + 2);
  for (let i = 0; i < n; i++) start[most - distance[nodes[i]] + 1]++;
  for (let d = 0; d <= most; d++) start[d + 1] += start[d];
  const order = new Int32Array(n);
  for (let i = 0; i < n; i++) order[start[most - distance[nodes[i]]]++] = i;
  return order;
}
