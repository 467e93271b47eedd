import type { Codes } from './codes.ts';

/** Cells that the search walks at most along a side. */
const fine = 360;

/**
 * Where an overlap lies broadest: the point farthest from all other overlaps, mm from the image's top left corner, by code. Found on a coarser grid by a chamfer distance (Borgefors 1986), which is near enough to point at.
 */
export function deepestPoints(codes: Codes): ReadonlyMap<number, readonly [xMm: number, yMm: number]> {
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
  const best = new Map<number, number>();
  for (let i = 0; i < here.length; i++) {
    const known = best.get(here[i]);
    if (known === undefined || far[i] > far[known]) best.set(here[i], i);
  }
  const mm = step * codes.mmPerPx;
  return new Map([...best].map(([code, i]) => [code, [((i % width) + 0.5) * mm, (Math.floor(i / width) + 0.5) * mm]]));
}
