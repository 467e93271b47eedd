import { Runs, type RunSource } from './runs.ts';

/** Connected parts of a raster: `labels` 0 for background, 1..count in the order in which rows meet them. */
export interface Labels {
  readonly labels: Int32Array;
  readonly count: number;
  /** The first pixel of each part, by its label − 1. */
  readonly firsts: readonly number[];
}

/** Runs of a raster and which of them hang together. */
export interface JoinedRuns {
  readonly count: number;
  /** First pixel of each run, and the one after its last. */
  readonly starts: Int32Array;
  readonly ends: Int32Array;
  /** For each run the first run of its connected part. */
  readonly roots: Int32Array;
}

/** Joins each row's runs with those they touch in the row above, by sides or also by corners (union and find). */
export function joinRuns(found: RunSource, width: number, corners: boolean): JoinedRuns {
  const reach = corners ? 1 : 0;
  let room = 4096;
  let starts = new Int32Array(room),
    ends = new Int32Array(room),
    parent = new Int32Array(room);
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
  let first = 0,
    k = 0,
    y = -1;
  while (found.next()) {
    const p = found.from,
      end = found.end;
    const row = Math.floor(p / width);
    if (row !== y) {
      // Runs of the row just above are those since `first`; after an empty row there are none.
      k = row === y + 1 ? first : runs;
      first = runs;
      y = row;
    }
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
    while (k < first && ends[k] + width + reach <= p) k++;
    for (let a = k; a < first && starts[a] + width < end + reach; a++) {
      const u = find(a),
        v = find(runs);
      if (u < v) parent[v] = u;
      else if (v < u) parent[u] = v;
    }
    runs++;
  }
  for (let i = 0; i < runs; i++) parent[i] = find(i);
  return { count: runs, starts, ends, roots: parent };
}

/** Labels the pixels of a 0/1 raster that are `value`; pixels touch by sides, or also by corners. */
export function labelParts(mask: Uint8Array, width: number, height: number, value: 0 | 1, corners: boolean): Labels {
  const { count, starts, ends, roots } = joinRuns(new Runs(mask, width, value), width, corners);
  const labels = new Int32Array(width * height);
  const final = new Int32Array(count);
  const firsts: number[] = [];
  for (let i = 0; i < count; i++) {
    final[i] = roots[i] === i ? firsts.push(starts[i]) : final[roots[i]];
    labels.fill(final[i], starts[i], ends[i]);
  }
  return { labels, count: firsts.length, firsts };
}

function grown(list: Int32Array, room: number): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(room);
  larger.set(list);
  return larger;
}
