import { rasterize } from '../../form/index.ts';
import type { Box, Region } from '../../form/index.ts';
import { pixelMm, workingGrid } from './working-grid.ts';
import { nearDistance } from './edt.ts';
import type { PointMm } from '../types.ts';

/** The middle of the broadest place, for a number that is to stand on the piece. Raster of about 120 pixels. */
export function innerPoint(region: Region, box: Box): PointMm {
  const step = Math.max(box.maxX - box.minX, box.maxY - box.minY) / 120;
  const grid = workingGrid(box, 2 * step, step);
  const mask = rasterize(region, grid);
  const distance = nearDistance(mask, grid.width, grid.height, 1, 255);
  let best = 0;
  for (let p = 1; p < mask.length; p++) if (distance[p] > distance[best]) best = p;
  return pixelMm(best, grid);
}
