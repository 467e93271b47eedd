import { offsetRegion, regionArea, regionBox, takeAway, unite, type Region } from '../form/index.ts';
import type { Limits } from './proof/certificate.ts';
import { spareMm } from './proof/settling.ts';
import { pieces } from './raster/rings.ts';
import type { Spot } from './types.ts';

/** What a disc leaves in a corner of 60° and more, as a share of its radius squared: that is no detail of its own. */
const cornerShare = 0.7;
/** So that no seam stays between what was there and what is put in or taken away. */
const seamMm = 0.006;

/**
 * Openings without what is too fine for the knife, within the circles asked for: paper between them where no bridge's width
 * fits prints too (`drops`), then what is narrower than the least opening closes (`closings`). By discs of the least widths.
 */
export function coarser(openings: Region, limits: Limits, drops: readonly Spot[], closings: readonly Spot[]): Region {
  let now = openings;
  const half = { paper: limits.leastBridgeMm / 2 + spareMm, opening: limits.leastOpeningMm / 2 + spareMm };
  if (drops.some(isCircle)) {
    const filled = offsetRegion(offsetRegion(now, half.paper), -half.paper);
    const gaps = within(takeAway(filled, now), half.paper, drops);
    if (gaps.length > 0) now = unite([now, ...gaps.map((gap) => offsetRegion(gap, seamMm, 'miter'))]);
  }
  if (closings.some(isCircle)) {
    const broad = offsetRegion(offsetRegion(now, -half.opening), half.opening);
    const fine = within(takeAway(now, broad), half.opening, closings);
    if (fine.length > 0) now = takeAway(now, unite(fine.map((one) => offsetRegion(one, seamMm, 'miter'))));
  }
  return now;
}

const isCircle = (spot: Spot): boolean => spot.withinMm !== undefined;

/** Details in one of the circles, corners aside. */
function within(region: Region, radiusMm: number, spots: readonly Spot[]): Region[] {
  return pieces(region).filter((piece) => {
    if (regionArea(piece) < cornerShare * radiusMm * radiusMm) return false;
    const box = regionBox(piece);
    const x = (box.minX + box.maxX) / 2,
      y = (box.minY + box.maxY) / 2;
    return spots.some(({ atMm, withinMm = 0 }) => Math.hypot(x - atMm[0], y - atMm[1]) <= withinMm);
  });
}
