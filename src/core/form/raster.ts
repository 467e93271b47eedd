import type { Region } from './region.ts';

/** Pixels over a sheet. The centre of pixel (column i, row j) lies at origin + (i + ½, j + ½) · mmPerPx. */
export interface Grid {
  readonly originXMm: number;
  readonly originYMm: number;
  readonly mmPerPx: number;
  readonly width: number;
  readonly height: number;
}

/** 1 where the pixel's centre lies in the region, else 0. Row by row from the top left. */
export function rasterize(region: Region, grid: Grid): Uint8Array {
  const target = new Uint8Array(grid.width * grid.height);
  scan(target, 0, region, grid, true);
  return target;
}

/** Sets bit `bit` (0..7) of every pixel of `target` whose centre lies in the region; other bits stay. */
export function rasterizeInto(target: Uint8Array, bit: number, region: Region, grid: Grid): void {
  scan(target, bit, region, grid, false);
}

function scan(target: Uint8Array, bit: number, region: Region, grid: Grid, fresh: boolean): void {
  const { width, height, originXMm, originYMm, mmPerPx } = grid;
  const perPx = 1 / mmPerPx;
  const start = new Int32Array(height + 1);
  // First pass counts the crossings of each row of centres, second pass writes their columns.
  let columns = new Int32Array(0);
  let cursor = start;
  for (let pass = 0; pass < 2; pass++) {
    for (const ring of region.rings) {
      let x0 = (ring[ring.length - 2] - originXMm) * perPx - 0.5;
      let y0 = (ring[ring.length - 1] - originYMm) * perPx - 0.5;
      for (let i = 0; i < ring.length; i += 2) {
        const x1 = (ring[i] - originXMm) * perPx - 0.5;
        const y1 = (ring[i + 1] - originYMm) * perPx - 0.5;
        if (y0 !== y1) {
          // Rows j with top ≤ j < bottom: half open, so that a corner is counted once.
          const down = y0 < y1;
          const from = Math.max(0, Math.ceil(down ? y0 : y1));
          const to = Math.min(height - 1, Math.ceil(down ? y1 : y0) - 1);
          if (pass === 0) {
            for (let j = from; j <= to; j++) start[j + 1]++;
          } else if (from <= to) {
            // The edge's upper end is always the base, so that a shared edge falls the same way for both neighbours.
            const slope = down ? (x1 - x0) / (y1 - y0) : (x0 - x1) / (y0 - y1);
            const baseX = down ? x0 : x1,
              baseY = down ? y0 : y1;
            for (let j = from; j <= to; j++) {
              const column = Math.ceil(baseX + (j - baseY) * slope);
              columns[cursor[j]++] = column < 0 ? 0 : column > width ? width : column;
            }
          }
        }
        x0 = x1;
        y0 = y1;
      }
    }
    if (pass === 0) {
      for (let j = 0; j < height; j++) start[j + 1] += start[j];
      columns = new Int32Array(start[height]);
      cursor = start.slice();
    }
  }
  const value = 1 << bit;
  for (let j = 0; j < height; j++) {
    const from = start[j],
      to = start[j + 1];
    if (from === to) continue;
    sortShort(columns, from, to);
    const row = j * width;
    for (let k = from; k + 1 < to; k += 2) {
      const left = row + columns[k],
        right = row + columns[k + 1];
      // `fill` is several times faster than a loop, and right where nothing else was set.
      if (fresh) target.fill(value, left, right);
      else for (let p = left; p < right; p++) target[p] |= value;
    }
  }
}

function sortShort(list: Int32Array, from: number, to: number): void {
  if (to - from > 64) {
    list.subarray(from, to).sort();
    return;
  }
  for (let i = from + 1; i < to; i++) {
    const v = list[i];
    let k = i - 1;
    while (k >= from && list[k] > v) {
      list[k + 1] = list[k];
      k--;
    }
    list[k + 1] = v;
  }
}
