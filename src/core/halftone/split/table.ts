import type { Lab } from '../../colour/index.ts';
import { quietTask, type Task } from '../../task.ts';
import type { Invert } from './invert.ts';

/** A picture's numbers → what each film covers, on a grid. */
export interface SplitTable {
  readonly k: number;
  /** Nodes along each side. */
  readonly side: number;
  /** side³ × k, red slowest. */
  readonly covers: Float32Array;
}

const coarse = 9,
  fine = 33;
/** A picture's colours lie in so few of the finest grid's cells that most of its nodes are never looked at. */
export type UsedCells = Uint8Array;

/** Which cells of the finest grid a picture's colours lie in, red slowest. @param rgb three a pixel; @param top full light */
export function usedCells(rgb: Uint8Array | Uint16Array, top: number): UsedCells {
  const cells = fine - 1;
  const used = new Uint8Array(cells ** 3);
  const cell = Uint8Array.from({ length: top + 1 }, (_, v) => Math.min(cells - 1, Math.floor((v * cells) / top)));
  for (let i = 0; i < rgb.length; i += 3) used[(cell[rgb[i]] * cells + cell[rgb[i + 1]]) * cells + cell[rgb[i + 2]]] = 1;
  return used;
}

/** Nodes of a grid of `side` that colours in these cells are reckoned from. */
function usedNodes(cells: UsedCells, side: number): Uint8Array {
  const [n, by] = [fine - 1, (fine - 1) / (side - 1)];
  const nodes = new Uint8Array(side ** 3);
  for (let i = 0; i < cells.length; i++) {
    if (cells[i] === 0) continue;
    const [r, g, b] = [Math.floor(i / (n * n)), Math.floor(i / n) % n, i % n].map((v) => Math.floor(v / by));
    for (let corner = 0; corner < 8; corner++) nodes[at(r + (corner & 1), g + ((corner >> 1) & 1), b + (corner >> 2), side)] = 1;
  }
  return nodes;
}
/** Steps of Lab that nobody sees, not even in a gradient. */
const met = 0.15;

/**
 * The inverse on a grid of the picture's own numbers: a coarse grid solved from its neighbours' solutions, then every other step between them put in and refined by
 * Newton. Starting from the mean of the neighbours, one branch of the many mixtures is followed all over, so that no contour arises.
 */
export async function splitTable(
  k: number,
  aim: (r: number, g: number, b: number) => Lab,
  invert: Invert,
  task: Task = quietTask,
  /** Left out: all. What lies elsewhere is the mean of its neighbours. */
  cells?: UsedCells,
): Promise<SplitTable> {
  let side = coarse;
  let covers = new Float32Array(side ** 3 * k);
  const start = new Float64Array(k);
  // From white (last node) to black: what lies lighter is known when a node is solved.
  for (let r = side - 1; r >= 0; r--)
    for (let g = side - 1; g >= 0; g--)
      for (let b = side - 1; b >= 0; b--) {
        const target = aim(r / (side - 1), g / (side - 1), b / (side - 1));
        const before = [
          r < side - 1 ? at(r + 1, g, b, side) : -1,
          g < side - 1 ? at(r, g + 1, b, side) : -1,
          b < side - 1 ? at(r, g, b + 1, side) : -1,
        ].filter((i) => i >= 0);
        start.fill(0);
        for (const i of before) for (let c = 0; c < k; c++) start[c] += covers[i * k + c] / before.length;
        covers.set(invert(target, start, 40).covers, at(r, g, b, side) * k);
      }
  await task.pause();
  while (side < fine) {
    const next = side * 2 - 1;
    const finer = new Float32Array(next ** 3 * k);
    const old = { k, side, covers };
    const used = cells && usedNodes(cells, next);
    for (let r = 0; r < next; r++) {
      for (let g = 0; g < next; g++)
        for (let b = 0; b < next; b++) {
          coversAt(old, (r / (next - 1)) * 255, (g / (next - 1)) * 255, (b / (next - 1)) * 255, start);
          if (used?.[at(r, g, b, next)] === 0) {
            finer.set(start, at(r, g, b, next) * k);
            continue;
          }
          const target = aim(r / (next - 1), g / (next - 1), b / (next - 1));
          finer.set(invert(target, start, next === fine ? 3 : 6, met).covers, at(r, g, b, next) * k);
        }
      if (r % 4 === 0) {
        task.report(next === fine ? 0.3 + (0.6 * r) / next : (0.3 * r) / next);
        await task.pause();
      }
    }
    side = next;
    covers = finer;
  }
  return { k, side, covers };
}

const at = (r: number, g: number, b: number, side: number): number => (r * side + g) * side + b;

/** Between nodes: the tetrahedron that a colour lies in (Sakamoto 1981; greys lie on one edge). `r`, `g`, `b` 0..255. */
export function coversAt({ k, side, covers }: SplitTable, r: number, g: number, b: number, out: Float64Array | Float32Array): void {
  const scale = (side - 1) / 255;
  const [x, y, z] = [r * scale, g * scale, b * scale];
  const i = Math.min(side - 2, Math.floor(x)),
    j = Math.min(side - 2, Math.floor(y)),
    l = Math.min(side - 2, Math.floor(z));
  const [u, v, w] = [x - i, y - j, z - l];
  const R = side * side * k,
    G = side * k;
  const base = at(i, j, l, side) * k,
    last = base + R + G + k;
  let first: number, second: number, f0: number, f1: number, f2: number;
  if (u >= v) {
    if (v >= w) [first, second, f0, f1, f2] = [base + R, base + R + G, u, v, w];
    else if (u >= w) [first, second, f0, f1, f2] = [base + R, base + R + k, u, w, v];
    else [first, second, f0, f1, f2] = [base + k, base + R + k, w, u, v];
  } else if (u >= w) [first, second, f0, f1, f2] = [base + G, base + R + G, v, u, w];
  else if (v >= w) [first, second, f0, f1, f2] = [base + G, base + G + k, v, w, u];
  else [first, second, f0, f1, f2] = [base + k, base + G + k, w, v, u];
  for (let c = 0; c < k; c++)
    out[c] = covers[base + c] * (1 - f0) + covers[first + c] * (f0 - f1) + covers[second + c] * (f1 - f2) + covers[last + c] * f2;
}
