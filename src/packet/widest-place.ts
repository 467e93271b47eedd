import { regionBox, type Region } from '../core/form/index.ts';

/** The middle of the widest level stretch inside a shape: where a word about it can stand. Null for a shape with no inside. */
export function widestPlace(region: Region): { readonly x: number; readonly y: number; readonly widthMm: number } | null {
  const box = regionBox(region);
  const levels = 24;
  let best: { x: number; y: number; widthMm: number } | null = null;
  for (let k = 0; k < levels; k++) {
    const y = box.minY + ((k + 0.5) * (box.maxY - box.minY)) / levels;
    const crossings = crossingsAt(region, y);
    for (let i = 0; i + 1 < crossings.length; i += 2) {
      const widthMm = crossings[i + 1] - crossings[i];
      if (best === null || widthMm > best.widthMm) best = { x: (crossings[i] + crossings[i + 1]) / 2, y, widthMm };
    }
  }
  return best;
}

function crossingsAt(region: Region, y: number): number[] {
  const found: number[] = [];
  for (const ring of region.rings) {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const y0 = ring[j + 1],
        y1 = ring[i + 1];
      if (y0 > y !== y1 > y) found.push(ring[j] + ((y - y0) / (y1 - y0)) * (ring[i] - ring[j]));
    }
  }
  return found.sort((a, b) => a - b);
}
