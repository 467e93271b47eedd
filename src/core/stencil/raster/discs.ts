import { Runs } from './runs.ts';

/**
 * Marks with 1 every pixel of a new raster no farther than √reach2 pixels (centre to centre) from one of `mask` that is
 * `value`. Exact: each run of such pixels is laid down once for every row that its discs reach, as broad as they are there.
 * Where runs are few this costs little more than the memory; a distance transform looks at every pixel near an edge.
 */
export function withinReach(mask: Uint8Array, width: number, height: number, value: 0 | 1, reach2: number): Uint8Array {
  const out = new Uint8Array(width * height);
  if (!(reach2 >= 0)) return out;
  const rows = Math.floor(Math.sqrt(reach2));
  const halves = Int32Array.from({ length: rows + 1 }, (_, dy) => Math.floor(Math.sqrt(reach2 - dy * dy)));
  const runs = new Runs(mask, width, value);
  while (runs.next()) {
    const x = runs.from % width,
      y = (runs.from - x) / width,
      end = x + runs.end - runs.from;
    const first = -Math.min(rows, y),
      last = Math.min(rows, height - 1 - y);
    for (let dy = first; dy <= last; dy++) {
      const half = halves[dy < 0 ? -dy : dy];
      const row = (y + dy) * width;
      out.fill(1, row + (x > half ? x - half : 0), row + (end + half < width ? end + half : width));
    }
  }
  return out;
}
