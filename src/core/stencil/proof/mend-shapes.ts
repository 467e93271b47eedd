import { offsetRegion, regionArea, regionBox, strip } from '../../form/index.ts';
import type { Box, Region } from '../../form/index.ts';
import { nearLine, trimmed } from '../raster/lines.ts';
import { covers } from '../raster/rings.ts';
import type { PointMm } from '../types.ts';
import type { Widths } from './widths.ts';
import type { Thin } from './windows.ts';

/** A strip along the middle of a thin place that ends where the place does: its round ends reach no farther. */
export function along({ kind, line }: Pick<Thin, 'kind' | 'line'>, widthMm: number): Region {
  const half = widthMm / 2;
  const ends = kind === 'tongue' ? [0, half] : kind === 'thin-piece' ? [half, half] : [0, 0];
  return strip(trimmed(line, ends[0], ends[1]), widthMm, 'round');
}

export const areaOf = (regions: readonly Region[]): number => regions.reduce((sum, region) => sum + regionArea(region), 0);

/** The regions of thin places, each once. */
export const distinct = (thin: readonly Thin[]): Region[] =>
  [...new Set(thin.map((t) => t.region))].filter((region) => region.rings.length > 0);

/** What is nowhere wider than a hairline, or may go; not what is so in one place and broader in another. */
export function hairsOf(thin: readonly Thin[], mayGo: (t: Thin) => boolean = () => false): Region[] {
  const broader = new Set(thin.filter((t) => !t.hair).map((t) => t.region));
  return distinct(thin.filter((t) => (t.hair && !broader.has(t.region)) || mayGo(t)));
}

/** A little larger, so that no seam stays. */
export const overlapping = (region: Region): Region => offsetRegion(region, 0.006, 'miter');

export const near = (region: Region, [x, y]: PointMm, reachMm: number): boolean =>
  covers(region, x, y) || region.rings.some((ring) => nearLine([...ring, ring[0], ring[1]], [x, y]) <= reachMm);

/** Has a part of paper more than one broad place, or is there a part too many? */
export function needsJoining({ parts: found, partOfCore }: Widths, looseCount: number): boolean {
  return found.length > 1 + looseCount || new Set(partOfCore).size < partOfCore.length;
}

/** Short lines between broad places of one opening that nothing broad joins and nothing thin was seen to. */
export function joints(widths: Widths, apart: readonly PointMm[]): number[][] {
  const boxes = widths.cores.map(regionBox);
  return apart.map((at) => {
    const mine = widths.cores.findIndex((core) => core.rings[0][0] === at[0] && core.rings[0][1] === at[1]);
    const others = widths.cores
      .map((core, i) => ({ core, i, far: gap(boxes[i], boxes[mine]) }))
      .filter(({ i }) => i !== mine && widths.partOfCore[i] === widths.partOfCore[mine])
      .sort((a, b) => a.far - b.far);
    let best = { d: Infinity, line: [at[0], at[1], at[0] + 0.01, at[1]] };
    for (const { core, far } of others) {
      if (far >= best.d) break;
      best = shortest(core, widths.cores[mine], boxes[mine], best);
    }
    return best.line;
  });
}

interface Line {
  readonly d: number;
  readonly line: number[];
}

/** The shortest line between corners of two regions, if it is shorter than the best so far. */
function shortest(from: Region, to: Region, toBox: Box, best: Line): Line {
  let { d: least, line } = best;
  for (const a of from.rings)
    for (let p = 0; p < a.length; p += 2) {
      if (gap({ minX: a[p], minY: a[p + 1], maxX: a[p], maxY: a[p + 1] }, toBox) >= least) continue;
      for (const b of to.rings)
        for (let q = 0; q < b.length; q += 2) {
          const d = Math.hypot(a[p] - b[q], a[p + 1] - b[q + 1]);
          if (d >= least) continue;
          least = d;
          line = [a[p], a[p + 1], b[q], b[q + 1]];
        }
    }
  return { d: least, line };
}

/** How far two boxes lie apart at least. */
const gap = (a: Box, b: Box): number =>
  Math.hypot(Math.max(0, a.minX - b.maxX, b.minX - a.maxX), Math.max(0, a.minY - b.maxY, b.minY - a.maxY));

export const wider = (b: Box, mm: number): Box => ({ minX: b.minX - mm, minY: b.minY - mm, maxX: b.maxX + mm, maxY: b.maxY + mm });

/** Is some point of one within reach of the other? */
export const beside = (a: Region, b: Region, reachMm: number): boolean =>
  b.rings.length > 0 &&
  overlap(wider(regionBox(a), reachMm), regionBox(b)) &&
  a.rings.some((ring) => {
    for (let i = 0; i < ring.length; i += 2) if (near(b, [ring[i], ring[i + 1]], reachMm)) return true;
    return false;
  });

export const overlap = (a: Box, b: Box): boolean => a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
