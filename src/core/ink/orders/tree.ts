import { log } from '../../numeric/index.ts';
import { BANDS, chromaOf, deltaE00, labFromXyz, xyzAt, type Lab, type Spectrum } from '../../colour/index.ts';
import { thinned } from '../film/film.ts';
import { internal } from '../film/surface.ts';
import type { Film, Surface } from '../types.ts';

/**
 * Every stack that any order can make, each worked out once from the stack below it: for N layers Σ N!/k! of them
 * (109,601 for 8) instead of N! · 2^N.
 */
export interface StackTree {
  readonly layers: number;
  readonly nodes: number;
  /** child[node · layers + layer]: the stack with that layer on top; −1 where it is already in. */
  readonly child: Int32Array;
  /** Which layers are in, one bit each. */
  readonly mask: Uint8Array;
  readonly lab: Float64Array;
  readonly chroma: Float64Array;
  /** Mean ΔE00 when the films come out heavier or lighter. */
  readonly sensitivity: Float64Array;
  /** Cell of about ΔE00 2 on a side that the colour lies in. */
  readonly cell: Int32Array;
  readonly cells: number;
}

/** @param perturbed for each pattern of deposits, one film per layer */
export function growTree(paper: Spectrum, films: readonly Film[], perturbed: readonly (readonly Film[])[], surface: Surface): StackTree {
  const n = films.length;
  const nodes = countStacks(n);
  const child = new Int32Array(nodes * Math.max(1, n)).fill(-1);
  const mask = new Uint8Array(nodes);
  const lab = new Float64Array(nodes * 3);
  const chroma = new Float64Array(nodes),
    sensitivity = new Float64Array(nodes);
  const cell = new Int32Array(nodes);
  const cellNumbers = new Map<string, number>();
  const sets = [films, ...perturbed];
  const onInk = sets.map((set) => set.map((film) => thinned(film, surface.trapping ?? 1)));
  // One column of stacks per depth and per set of films: the way down to the present node.
  const column = Array.from({ length: n + 1 }, () => sets.map(() => new Float64Array(BANDS)));
  const ground = internal(paper, surface);
  for (const stack of column[0]) stack.set(ground);
  const seen = new Float64Array(BANDS);
  const { ks, k1, k2 } = surface;
  const through = (1 - k1) * (1 - k2);
  const colourOf = (stack: Float64Array): Lab => {
    for (let i = 0; i < BANDS; i++) seen[i] = ks + (through * stack[i]) / (1 - k2 * stack[i]);
    return labFromXyz(xyzAt(seen, 0));
  };
  let next = 0;
  const grow = (depth: number, present: number): number => {
    const node = next++;
    mask[node] = present;
    const colour = colourOf(column[depth][0]);
    lab.set(colour, node * 3);
    chroma[node] = chromaOf(colour);
    let off = 0;
    for (let set = 1; set < sets.length; set++) off += deltaE00(colour, colourOf(column[depth][set]));
    sensitivity[node] = sets.length > 1 ? off / (sets.length - 1) : 0;
    const name = cellName(colour);
    let number = cellNumbers.get(name);
    if (number === undefined) {
      number = cellNumbers.size;
      cellNumbers.set(name, number);
    }
    cell[node] = number;
    for (let layer = 0; layer < n; layer++) {
      if (present & (1 << layer)) continue;
      for (let set = 0; set < sets.length; set++) {
        const { r0, t2 } = (depth === 0 ? sets : onInk)[set][layer];
        const below = column[depth][set],
          above = column[depth + 1][set];
        for (let i = 0; i < BANDS; i++) above[i] = r0[i] + (t2[i] * below[i]) / (1 - r0[i] * below[i]);
      }
      child[node * n + layer] = grow(depth + 1, present | (1 << layer));
    }
    return node;
  };
  grow(0, 0);
  return { layers: n, nodes, child, mask, lab, chroma, sensitivity, cell, cells: cellNumbers.size };
}

function countStacks(n: number): number {
  let sum = 0,
    ways = 1;
  for (let k = 0; k <= n; k++) {
    sum += ways;
    ways *= n - k;
  }
  return sum;
}

/** Lab bent so that equal steps look about equal (DIN 99o, DIN 6176:2018), cut into cells of side 2. */
function cellName(lab: Lab): string {
  const rad = Math.PI / 180;
  const l99 = 303.67 * log(1 + 0.0039 * lab[0]);
  const e = lab[1] * Math.cos(26 * rad) + lab[2] * Math.sin(26 * rad);
  const f = 0.83 * (lab[2] * Math.cos(26 * rad) - lab[1] * Math.sin(26 * rad));
  const g = Math.hypot(e, f);
  const c99 = log(1 + 0.075 * g) / 0.0435;
  const a99 = g === 0 ? 0 : (c99 * e) / g,
    b99 = g === 0 ? 0 : (c99 * f) / g;
  return `${Math.round(l99 / 2)},${Math.round(a99 / 2)},${Math.round(b99 / 2)}`;
}
