import { common, parts, regionArea, regionBox, strip, unite } from '../../form/index.ts';
import type { Region } from '../../form/index.ts';
import { sampleCost } from './seen-cost.ts';
import type { Strip } from './bridges.ts';
import { paperMask } from '../proof/certificate.ts';
import { workingGrid } from '../raster/working-grid.ts';
import { nearLine } from '../raster/lines.ts';
import type { Bridge, BridgePin, CostRaster, PointMm } from '../types.ts';

export function pinnedStrip({ fromMm, viaMm = [], toMm }: BridgePin, widthMm: number): Strip {
  const line = [...fromMm, ...viaMm.flat(), ...toMm];
  return { region: strip(line, widthMm, 'round'), widthMm, line, from: fromMm, to: toMm, crosses: true };
}

/** Each bridge's part of the openings, numbered from top to bottom. */
export function nameBridges(strips: readonly Strip[], pinnedCount: number, openings: Region, cost: CostRaster | undefined): Bridge[] {
  if (!strips.length) return [];
  const shares: Region[][] = strips.map(() => []);
  for (const part of parts(common(unite(strips.map((s) => s.region)), openings))) {
    const box = regionBox(part);
    const at: PointMm = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
    let best = 0,
      least = Infinity;
    strips.forEach((s, i) => {
      const d = nearLine(s.line, at);
      if (d < least) {
        least = d;
        best = i;
      }
    });
    shares[best].push(part);
  }
  const order = strips
    .map((_, i) => i)
    .sort((i, j) => strips[i].from[1] - strips[j].from[1] || strips[i].from[0] - strips[j].from[0] || i - j);
  return order
    .filter((i) => shares[i].length > 0)
    .map((i, k) => {
      const region: Region = { rings: shares[i].flatMap((part) => part.rings) };
      return {
        id: `b${k + 1}`,
        from: strips[i].from,
        to: strips[i].to,
        line: strips[i].line,
        widthMm: strips[i].widthMm,
        region,
        areaMm2: regionArea(region),
        pinned: i < pinnedCount,
        ...(cost ? { costDeltaE: meanCost(region, cost) } : {}),
      };
    });
}

/** The same bridges at another price. */
export function pricedBridges(bridges: readonly Bridge[], cost: CostRaster | undefined): Bridge[] {
  return bridges.map((bridge) => {
    const { costDeltaE, ...unpriced } = bridge;
    if (cost) return { ...unpriced, costDeltaE: meanCost(bridge.region, cost) };
    return costDeltaE === undefined ? bridge : unpriced;
  });
}

function meanCost(region: Region, cost: CostRaster): number {
  const box = regionBox(region);
  const grid = workingGrid(box, 0);
  const inside = paperMask(region, box, grid);
  const values = sampleCost(cost, grid);
  let sum = 0,
    n = 0;
  for (let p = 0; p < inside.length; p++) {
    if (inside[p]) {
      sum += values[p];
      n++;
    }
  }
  return n ? sum / n : 0;
}
