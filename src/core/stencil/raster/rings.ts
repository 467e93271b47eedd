import { boxRegion, regionBox, ringArea, takeAway } from '../../form/index.ts';
import type { Box, Region } from '../../form/index.ts';

/**
 * The separate pieces of a proper region (rings that never cross, holes wound the other way): each outer ring with its
 * holes, in the order of their outer rings. Quicker than sorting it out by a union, which has been done already.
 */
export function pieces(region: Region): Region[] {
  const sign = Math.sign(region.rings.reduce((sum, ring) => sum + ringArea(ring), 0)) || 1;
  const outers: { readonly ring: Float64Array; readonly box: Box; readonly area: number; readonly rings: Float64Array[] }[] = [];
  const holes: Float64Array[] = [];
  for (const ring of region.rings) {
    const area = ringArea(ring) * sign;
    if (area > 0) outers.push({ ring, box: regionBox({ rings: [ring] }), area, rings: [ring] });
    else holes.push(ring);
  }
  for (const hole of holes) {
    const box = regionBox({ rings: [hole] });
    let best: (typeof outers)[number] | undefined;
    for (const outer of outers) {
      const o = outer.box;
      if (o.minX > box.minX || o.minY > box.minY || o.maxX < box.maxX || o.maxY < box.maxY) continue;
      if (best && best.area <= outer.area) continue;
      if (mostlyWithin(hole, outer.ring)) best = outer;
    }
    best?.rings.push(hole);
  }
  return outers.map(({ rings }) => ({ rings }));
}

/** A hole may touch its outer ring in a corner: three of its points decide. */
function mostlyWithin(hole: Float64Array, outer: Float64Array): boolean {
  const n = hole.length / 2;
  let within = 0;
  for (const i of [0, Math.floor(n / 3), Math.floor((2 * n) / 3)]) if (covers({ rings: [outer] }, hole[2 * i], hole[2 * i + 1])) within++;
  return within >= 2;
}

export const pointsOf = (region: Region): number => region.rings.reduce((sum, ring) => sum + ring.length / 2, 0);

/** Does the point lie in the region? By the crossings of a ray (even-odd). */
export function covers(region: Region, x: number, y: number): boolean {
  let inside = false;
  for (const ring of region.rings) {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      if (ring[i + 1] > y !== ring[j + 1] > y && x < ((ring[j] - ring[i]) * (y - ring[i + 1])) / (ring[j + 1] - ring[i + 1]) + ring[i])
        inside = !inside;
    }
  }
  return inside;
}

/** Is this ring the sheet's own edge? */
export function isSheetRing(ring: Float64Array, sheet: Box): boolean {
  const box = regionBox({ rings: [ring] });
  return (
    Math.abs(box.minX - sheet.minX) < 0.002 &&
    Math.abs(box.minY - sheet.minY) < 0.002 &&
    Math.abs(box.maxX - sheet.maxX) < 0.002 &&
    Math.abs(box.maxY - sheet.maxY) < 0.002 &&
    Math.abs(Math.abs(ringArea(ring)) - (sheet.maxX - sheet.minX) * (sheet.maxY - sheet.minY)) < 0.05
  );
}

/** What a sheet lets through, and its paper with `tapeMm` more all round, where the screen is closed. */
export function openingsAndTaped(paper: Region, sheet: Box, tapeMm: number): { readonly openings: Region; readonly taped: Region } {
  const wide = boxRegion({ minX: sheet.minX - tapeMm, minY: sheet.minY - tapeMm, maxX: sheet.maxX + tapeMm, maxY: sheet.maxY + tapeMm });
  const inner = paper.rings.filter((ring) => !isSheetRing(ring, sheet));
  if (inner.length === paper.rings.length - 1) {
    const sign = Math.sign(regionSum(paper)) || 1;
    const outer = Math.sign(ringArea(wide.rings[0])) === sign ? wide.rings[0] : reversed(wide.rings[0]);
    return { openings: { rings: inner.map(reversed) }, taped: { rings: [outer, ...inner] } };
  }
  const openings = takeAway(boxRegion(sheet), paper);
  return { openings, taped: takeAway(wide, openings) };
}

const regionSum = (region: Region): number => region.rings.reduce((sum, ring) => sum + ringArea(ring), 0);

function reversed(ring: Float64Array): Float64Array {
  const out = new Float64Array(ring.length);
  for (let i = 0, j = ring.length - 2; i < ring.length; i += 2, j -= 2) {
    out[i] = ring[j];
    out[i + 1] = ring[j + 1];
  }
  return out;
}
