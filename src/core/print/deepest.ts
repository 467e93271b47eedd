import type { Codes } from './codes.ts';

/** Cells that the search walks at most along a side. */
const fine = 360;

/** How far each place lies from every other overlap and from the image's edge, on a coarser grid than the proof's. */
export interface Depths {
  readonly width: number;
  readonly height: number;
  readonly mmPerCell: number;
  /** The overlap in each cell. */
  readonly codes: Uint8Array;
  /** From the cell's middle, mm. */
  readonly mm: Float64Array;
}

/** By a chamfer distance (Borgefors 1986), which is near enough to point at. */
export function depthsOf(codes: Codes): Depths {
  const step = Math.max(1, Math.ceil(Math.max(codes.width, codes.height) / fine));
  const width = Math.ceil(codes.width / step),
    height = Math.ceil(codes.height / step);
  const here = new Uint8Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      here[y * width + x] =
        codes.data[Math.min(codes.height - 1, y * step + (step >> 1)) * codes.width + Math.min(codes.width - 1, x * step + (step >> 1))];
  const far = new Float64Array(width * height);
  const look = (x: number, y: number, dx: number, dy: number, cost: number): number => {
    const u = x + dx,
      v = y + dy;
    if (u < 0 || v < 0 || u >= width || v >= height) return cost;
    return here[v * width + u] === here[y * width + x] ? far[v * width + u] + cost : cost;
  };
  far.fill(1e9);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      far[y * width + x] = Math.min(look(x, y, -1, 0, 3), look(x, y, 0, -1, 3), look(x, y, -1, -1, 4), look(x, y, 1, -1, 4));
  for (let y = height - 1; y >= 0; y--)
    for (let x = width - 1; x >= 0; x--)
      far[y * width + x] = Math.min(
        far[y * width + x],
        look(x, y, 1, 0, 3),
        look(x, y, 0, 1, 3),
        look(x, y, 1, 1, 4),
        look(x, y, -1, 1, 4),
      );
  const mmPerCell = step * codes.mmPerPx;
  // A cell at the border of another is half a cell away from it.
  return { width, height, mmPerCell, codes: here, mm: far.map((chamfer) => (chamfer / 3 - 0.5) * mmPerCell) };
}

/** The middle of a cell, mm from the image's top left corner. */
export function cellAt(depths: Pick<Depths, 'width' | 'mmPerCell'>, cell: number): readonly [xMm: number, yMm: number] {
  return [((cell % depths.width) + 0.5) * depths.mmPerCell, (Math.floor(cell / depths.width) + 0.5) * depths.mmPerCell];
}

/** The cell of each overlap that lies farthest from all others, by code. */
export function deepestCells(depths: Depths): ReadonlyMap<number, number> {
  const best = new Map<number, number>();
  for (let i = 0; i < depths.codes.length; i++) {
    const known = best.get(depths.codes[i]);
    if (known === undefined || depths.mm[i] > depths.mm[known]) best.set(depths.codes[i], i);
  }
  return best;
}

/** Where an overlap lies broadest: the point farthest from all other overlaps, mm from the image's top left corner, by code. */
export function deepestPoints(codes: Codes): ReadonlyMap<number, readonly [xMm: number, yMm: number]> {
  const depths = depthsOf(codes);
  return new Map([...deepestCells(depths)].map(([code, cell]) => [code, cellAt(depths, cell)]));
}
