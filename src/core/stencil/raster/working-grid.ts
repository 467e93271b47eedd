import type { Box, Grid } from '../../form/index.ts';
import type { PointMm } from '../types.ts';

/** Knife accuracy decides the working raster. */
export const workingMmPerPx = 0.25;
const mostPixels = 24_000_000;

/** The raster on which a stencil is judged: the openings and a border of plain paper around them. */
export function workingGrid(openings: Box, borderMm: number, mmPerPx = workingMmPerPx): Grid {
  const width = openings.maxX - openings.minX + 2 * borderMm,
    height = openings.maxY - openings.minY + 2 * borderMm;
  const step = Math.max(mmPerPx, Math.sqrt((width * height) / mostPixels));
  // Pixels lie in the same places whatever box is looked at, so that two looks at one outline agree.
  const left = Math.floor((openings.minX - borderMm) / step),
    top = Math.floor((openings.minY - borderMm) / step);
  return {
    originXMm: left * step,
    originYMm: top * step,
    mmPerPx: step,
    width: Math.ceil(width / step) + 1,
    height: Math.ceil(height / step) + 1,
  };
}

/** The middle of a pixel. */
export function pixelMm(p: number, grid: Grid): PointMm {
  const x = p % grid.width,
    y = (p - x) / grid.width;
  return [grid.originXMm + (x + 0.5) * grid.mmPerPx, grid.originYMm + (y + 0.5) * grid.mmPerPx];
}
