/** Connected parts of a raster: `labels` 0 for background, 1..count in the order in which rows meet them. */
export interface Labels {
  readonly labels: Int32Array;
  readonly count: number;
}

/**
 * Labels the pixels of a 0/1 raster that are `value`; pixels touch by sides, or also by corners. Works on runs: each
 * row's runs are joined with those they touch in the row above (union and find), then written out once.
 */
export function labelParts(mask: Uint8Array, width: number, height: number, value: 0 | 1, corners: boolean): Labels {
  const reach = corners ? 1 : 0;
  const other = value ? 0 : 1;
  let room = 4096;
  let starts = new Int32Array(room), ends = new Int32Array(room), parent = new Int32Array(room);
  let runs = 0;
  const find = (a: number): number => {
    let root = a;
    while (parent[root] !== root) root = parent[root];
    while (parent[a] !== root) {
      const next = parent[a];
      parent[a] = root;
      a = next;
    }
    return root;
  };
  let aboveFrom = 0, aboveTo = 0;
  for (let y = 0; y < height; y++) {
    const row = y * width, rowEnd = row + width;
    const first = runs;
    let k = aboveFrom;
    for (let p = mask.indexOf(value, row); p >= 0 && p < rowEnd;) {
      let end = mask.indexOf(other, p);
      if (end < 0 || end > rowEnd) end = rowEnd;
      if (runs === room) {
        room *= 2;
        starts = grown(starts, room);
        ends = grown(ends, room);
        parent = grown(parent, room);
      }
      starts[runs] = p;
      ends[runs] = end;
      parent[runs] = runs;
      // Runs of the row above that end before this one begins touch no later one either.
      while (k < aboveTo && ends[k] + width + reach <= p) k++;
      for (let a = k; a < aboveTo && starts[a] + width < end + reach; a++) {
        const u = find(a), v = find(runs);
        if (u < v) parent[v] = u;
        else if (v < u) parent[u] = v;
      }
      runs++;
      p = end < rowEnd ? mask.indexOf(value, end) : -1;
    }
    aboveFrom = first;
    aboveTo = runs;
  }
  const labels = new Int32Array(width * height);
  const final = new Int32Array(runs);
  let count = 0;
  for (let i = 0; i < runs; i++) {
    const root = find(i);
    final[i] = root === i ? ++count : final[root];
    labels.fill(final[i], starts[i], ends[i]);
  }
  return { labels, count };
}

function grown(list: Int32Array, room: number): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(room);
  larger.set(list);
  return larger;
}
