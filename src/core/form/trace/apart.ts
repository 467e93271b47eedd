import { common, offsetRegion, parts, takeAway, unite } from '../polygons.ts';
import { emptyRegion, regionArea, regionBox, type Box, type Region } from '../region.ts';

/** Between two things that touched, so much stays free: more than a knife's point, less than an eye sees. */
const gapMm = 0.3;

/**
 * Things that touch by necks narrower than `neckMm`, each by itself: drawn in until the necks give way, taken apart, and let out
 * again as far as they went before. Pieces smaller than `leastMm2` were part of a neck.
 */
export function keptApart(region: Region, neckMm: number, leastMm2: number): Region {
  const inward = neckMm / 2;
  const cores = parts(offsetRegion(region, -inward, 'miter'));
  const grown = cores
    .map((core) => common(offsetRegion(core, inward, 'miter'), region))
    .filter((piece) => regionArea(piece) >= leastMm2)
    .map((piece) => ({ piece, box: regionBox(piece) }));
  if (grown.length < 2) return grown.length === 0 ? region : grown[0].piece;
  const near = (a: Box, b: Box): boolean =>
    a.minX - gapMm <= b.maxX && b.minX - gapMm <= a.maxX && a.minY - gapMm <= b.maxY && b.minY - gapMm <= a.maxY;
  const out: { readonly piece: Region; readonly box: Box }[] = [];
  for (const { piece, box } of grown) {
    const others = out.filter((other) => near(box, other.box));
    // The one after gives way: a third of a millimetre, where they touched.
    const around = others.length > 0 ? offsetRegion(unite(others.map((o) => o.piece)), gapMm, 'round') : emptyRegion;
    out.push({ piece: takeAway(piece, around), box });
  }
  return unite(out.map((o) => o.piece));
}
