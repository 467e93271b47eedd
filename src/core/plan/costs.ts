import { rasterize, regionBox, type Region } from '../form/index.ts';
import type { Codes } from '../print/index.ts';
import type { Stencil } from '../stencil/index.ts';

/**
 * What bridges and islands of a stencil cost in the finished print, ΔE00: `missing` by code, where this layer's ink would be
 * missing (a bridge); `extra` by code, where it would print too much (an island dropped). Bridges chosen by cost have theirs.
 */
export function withCosts(stencil: Stencil, codes: Codes, missing: Float32Array, extra: Float32Array): Stencil {
  return {
    ...stencil,
    bridges: stencil.bridges.map((b) => (b.costDeltaE === undefined ? { ...b, costDeltaE: meanOver(b.region, codes, missing) } : b)),
    islands: stencil.islands.map((island) => ({ ...island, costDeltaE: meanOver(island.region, codes, extra) })),
  };
}

/** Mean of a table by code over the pixels of a region; 0 where it covers none. */
export function meanOver(region: Region, codes: Codes, table: Float32Array): number {
  const box = regionBox(region);
  const mm = codes.mmPerPx;
  const left = Math.max(0, Math.floor(box.minX / mm)), top = Math.max(0, Math.floor(box.minY / mm));
  const width = Math.min(codes.width, Math.ceil(box.maxX / mm)) - left, height = Math.min(codes.height, Math.ceil(box.maxY / mm)) - top;
  if (!(width > 0) || !(height > 0)) return 0;
  const inside = rasterize(region, { originXMm: left * mm, originYMm: top * mm, mmPerPx: mm, width, height });
  let sum = 0, n = 0;
  for (let y = 0; y < height; y++) {
    const row = (top + y) * codes.width + left;
    for (let x = 0; x < width; x++) {
      if (!inside[y * width + x]) continue;
      sum += table[codes.data[row + x]];
      n++;
    }
  }
  return n > 0 ? sum / n : 0;
}
