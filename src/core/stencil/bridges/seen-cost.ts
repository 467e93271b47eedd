import type { Grid } from '../../form/index.ts';
import type { CostRaster } from '../types.ts';
import { mostStep } from './ways.ts';

/** Steps cost this much of ΔE for their length alone, so that bridges stay short where nothing shows. */
const lengthDeltaE = 0.25;
export const openStep = 4,
  paperStep = 1;

/** Steps across openings by how much a bridge would be seen there. */
export function addVisibleCost(step: Uint16Array, mask: Uint8Array, grid: Grid, cost: CostRaster, widthMm: number): void {
  const seen = blurred(sampleCost(cost, grid), grid.width, grid.height, Math.max(1, Math.round(widthMm / 2 / grid.mmPerPx)));
  for (let p = 0; p < step.length; p++) {
    if (mask[p]) continue;
    step[p] = Math.min(mostStep, Math.max(1, Math.round((openStep * (lengthDeltaE + seen[p])) / lengthDeltaE)));
  }
}

/** ΔE on the working raster, from the nearest pixel of the cost raster; 0 beyond it. */
export function sampleCost(cost: CostRaster, grid: Grid): Float32Array {
  const out = new Float32Array(grid.width * grid.height);
  const { grid: from, deltaE } = cost;
  const columns = Int32Array.from({ length: grid.width }, (_, x) =>
    Math.floor((grid.originXMm + (x + 0.5) * grid.mmPerPx - from.originXMm) / from.mmPerPx),
  );
  for (let y = 0; y < grid.height; y++) {
    const sy = Math.floor((grid.originYMm + (y + 0.5) * grid.mmPerPx - from.originYMm) / from.mmPerPx);
    if (sy < 0 || sy >= from.height) continue;
    for (let x = 0; x < grid.width; x++) {
      const sx = columns[x];
      if (sx >= 0 && sx < from.width) out[y * grid.width + x] = deltaE[sy * from.width + sx];
    }
  }
  return out;
}

/** Mean over a square of 2 r + 1 pixels, by running sums. */
function blurred(values: Float32Array, width: number, height: number, r: number): Float32Array {
  return downward(across(values, width, height, r), width, height, r);
}

function across(from: Float32Array, width: number, height: number, r: number): Float32Array {
  const to = new Float32Array(from.length);
  for (let y = 0; y < height; y++) {
    const row = y * width;
    let sum = 0;
    for (let x = 0; x < Math.min(r, width); x++) sum += from[row + x];
    for (let x = 0; x < width; x++) {
      if (x + r < width) sum += from[row + x + r];
      if (x - r - 1 >= 0) sum -= from[row + x - r - 1];
      to[row + x] = sum / (2 * r + 1);
    }
  }
  return to;
}

/** Row after row: down each column by itself, every step would be far away in memory. */
function downward(from: Float32Array, width: number, height: number, r: number): Float32Array {
  const to = new Float32Array(from.length),
    sums = new Float64Array(width);
  const add = (y: number, sign: 1 | -1): void => {
    if (y < 0 || y >= height) return;
    for (let x = 0, i = y * width; x < width; x++, i++) sums[x] += sign * from[i];
  };
  for (let y = 0; y < Math.min(r, height); y++) add(y, 1);
  for (let y = 0; y < height; y++) {
    add(y + r, 1);
    add(y - r - 1, -1);
    for (let x = 0, i = y * width; x < width; x++, i++) to[i] = sums[x] / (2 * r + 1);
  }
  return to;
}
