/** A piece of outline between two junctions, or a closed one: corners of pixels, x0, y0, x1, y1, … */
export interface Arc {
  readonly points: Int32Array;
  readonly closed: boolean;
  /** Codes on the right and on the left of the way (y down). */
  readonly right: number;
  readonly left: number;
}

/** Directions in the order in which right turns come: east, south, west, north. */
const dx = [1, 0, -1, 0],
  dy = [0, 1, 0, -1];

/**
 * All edges between different codes, cut where three or more meet, so that edges that several layers share are one arc and
 * stay one after smoothing. Outside the image nothing prints.
 */
export function traceArcs(codes: Uint8Array, width: number, height: number): Arc[] {
  const at = (x: number, y: number): number => (x < 0 || y < 0 || x >= width || y >= height ? 0 : codes[y * width + x]);
  /** Code right (+) or left of the edge that leaves corner x, y in direction d. */
  const rightOf = (x: number, y: number, d: number): number =>
    d === 0 ? at(x, y) : d === 1 ? at(x - 1, y) : d === 2 ? at(x - 1, y - 1) : at(x, y - 1);
  const leftOf = (x: number, y: number, d: number): number =>
    d === 0 ? at(x, y - 1) : d === 1 ? at(x, y) : d === 2 ? at(x - 1, y) : at(x - 1, y - 1);
  const isEdge = (x: number, y: number, d: number): boolean => rightOf(x, y, d) !== leftOf(x, y, d);
  /** Most corners lie inside one code. */
  const plain = (x: number, y: number): boolean => {
    if (x === 0 || y === 0 || x === width || y === height) return false;
    const p = y * width + x,
      code = codes[p];
    return codes[p - 1] === code && codes[p - width] === code && codes[p - width - 1] === code;
  };
  const w = width + 1;
  // Which of the four edges at each corner are walked: bit d.
  const walked = new Uint8Array(w * (height + 1));
  const junction = (x: number, y: number): boolean => {
    let count = 0;
    for (let d = 0; d < 4; d++) if (isEdge(x, y, d)) count++;
    if (count > 2) return true;
    // On the image's border an edge from inside turns sharply: keep the corner.
    const border = x === 0 || y === 0 || x === width || y === height;
    return border && count === 2 && !(isEdge(x, y, 0) && isEdge(x, y, 2)) && !(isEdge(x, y, 1) && isEdge(x, y, 3));
  };
  const arcs: Arc[] = [];
  const walk = (x0: number, y0: number, d0: number): void => {
    const points = [x0, y0];
    const right = rightOf(x0, y0, d0),
      left = leftOf(x0, y0, d0);
    let x = x0,
      y = y0,
      d = d0;
    for (;;) {
      walked[y * w + x] |= 1 << d;
      x += dx[d];
      y += dy[d];
      walked[y * w + x] |= 1 << ((d + 2) & 3);
      points.push(x, y);
      if ((x === x0 && y === y0) || junction(x, y)) break;
      d = [(d + 1) & 3, d, (d + 3) & 3].find((next) => isEdge(x, y, next))!;
    }
    const closed = x === x0 && y === y0 && !junction(x, y);
    arcs.push({ points: Int32Array.from(points), closed, right, left });
  };
  for (let pass = 0; pass < 2; pass++) {
    for (let y = 0; y <= height; y++)
      for (let x = 0; x <= width; x++) {
        if (plain(x, y) || (pass === 0 && !junction(x, y))) continue;
        for (let d = 0; d < 4; d++) if (isEdge(x, y, d) && !(walked[y * w + x] & (1 << d))) walk(x, y, d);
      }
  }
  return arcs;
}

/** An arc as it goes into a ring of a layer: which way round. */
export interface Leg {
  readonly arc: number;
  readonly forward: boolean;
  readonly from: number;
  readonly to: number;
  readonly startDirection: number;
  readonly endDirection: number;
}

/** The arcs of each closed ring of one layer in turn, ink on the right (clockwise on the screen, y down). */
export function chainsOfLayer(arcs: readonly Arc[], layer: number, width: number): Leg[][] {
  const chains: Leg[][] = [];
  const legs = new Map<number, Leg[]>();
  arcs.forEach((arc, i) => {
    const right = (arc.right >> layer) & 1,
      left = (arc.left >> layer) & 1;
    if (right === left) return;
    const leg = legOf(i, right === 1, right ? arc.points : reversed(arc.points), width);
    if (arc.closed) {
      chains.push([leg]);
      return;
    }
    const there = legs.get(leg.from);
    if (there) there.push(leg);
    else legs.set(leg.from, [leg]);
  });
  const used = new Set<Leg>();
  for (const list of legs.values())
    for (const first of list) {
      if (used.has(first)) continue;
      const chain: Leg[] = [];
      let leg = first;
      while (!used.has(leg)) {
        used.add(leg);
        chain.push(leg);
        // The sharpest right turn keeps to the same patch of ink where two patches touch at a corner.
        const onward = (legs.get(leg.to) ?? []).filter((next) => !used.has(next) || next === first);
        if (onward.length === 0) break;
        const turn = (next: Leg): number => (next.startDirection - leg.endDirection + 6) & 3;
        leg = onward.reduce((best, next) => (rank[turn(next)] < rank[turn(best)] ? next : best));
      }
      chains.push(chain);
    }
  return chains;
}

/** Turn + 2: 3 is right, 2 straight on, 1 left, 0 back. */
const rank = [3, 2, 1, 0];

function legOf(arc: number, forward: boolean, corners: Int32Array, width: number): Leg {
  const n = corners.length,
    w = width + 1;
  const direction = (x: number, y: number): number => (x > 0 ? 0 : y > 0 ? 1 : x < 0 ? 2 : 3);
  return {
    arc,
    forward,
    from: corners[1] * w + corners[0],
    to: corners[n - 1] * w + corners[n - 2],
    startDirection: direction(corners[2] - corners[0], corners[3] - corners[1]),
    endDirection: direction(corners[n - 2] - corners[n - 4], corners[n - 1] - corners[n - 3]),
  };
}

export function reversed<T extends Float64Array | Int32Array>(points: T): T {
  const out = points.slice() as T;
  for (let i = 0; i < points.length; i += 2) {
    out[i] = points[points.length - 2 - i];
    out[i + 1] = points[points.length - 1 - i];
  }
  return out;
}
