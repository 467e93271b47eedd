import { common, nearBox, offsetRegion, regionArea, regionBox, takeAway } from '../../form/index.ts';
import type { Box, Region } from '../../form/index.ts';
import { tapersPlainly } from './tapering.ts';
import { pieces } from '../raster/rings.ts';
import type { PointMm } from '../types.ts';
import { meets } from './windows.ts';
import type { BoxedRing, Rest, Seen, Thin } from './windows.ts';

/** Half widths from the least down by this are tried, so many mm apart: any look at a tenth of a millimetre less lies between. */
const bandMm = 0.09,
  stepMm = 0.015;
/** Arcs of an offset are true to a hundredth of a millimetre. */
const arcMm = 0.012;
/** Smaller than a fifth of a pixel of any look. */
const crumbMm2 = 0.0005;
/** What swells may lie this far behind what the discs leave. */
const behindMm = 0.5;
/** Paper that becomes slender by less than this over so much of its length is as wide all along: pixels would break it up. */
const fallMm = 0.03,
  alongMm = 0.5;
/** Flanks that lean to the middle by so much leave nothing to look for: a point falls by more than that; or it falls for certain. */
const slenderDeg = 5,
  straightDeg = 2;
/** Below that band half widths so far apart are tried, down to the finest. What swells by twice as much is seen for certain, by less never. */
const swellMm = 0.035,
  finestMm = 0.04;
/** What is left of a swelling at its neck's width is at least so large. */
const swellingMm2 = 0.02;

/**
 * What comes apart when a shape is worn down by a little less than half the least width: a point that swells again by some
 * microns; a narrower one that swells again by a few hundredths of a millimetre (`swollen`); and, where `flat` is asked for, a stub
 * that is about as slender for a while. No raster of a twentieth of a
 * millimetre can tell such a place from its own noise. So the outline itself is worn down, by one half width after another,
 * and each place must stay one with what is broad (`cores`: the shape worn down by `radiusMm`). `rests`: what discs of that
 * radius do not cover.
 */
export function wornApart(
  rings: readonly BoxedRing[],
  cores: readonly BoxedRing[],
  rests: readonly Rest[],
  radiusMm: number,
  flat: boolean,
  seen?: Seen,
): Thin[] {
  // Beyond a corner that is not slender less is left.
  const across = 1.95 * (radiusMm - bandMm);
  return rests
    .filter(({ box }) => Math.hypot(box.maxX - box.minX, box.maxY - box.minY) >= across)
    .filter((rest) => !tapersPlainly(rest, cores, radiusMm, flat ? slenderDeg : straightDeg))
    .flatMap((rest) => {
      const found = seen?.recallWorn(rest.box) ?? apartAt(rest, rings, cores, radiusMm, flat);
      seen?.keepWorn(rest.box, wider(rest.box, reach(radiusMm)), found);
      return found;
    });
}

/** So far around a place its surroundings matter. */
const reach = (radiusMm: number): number => 4 * radiusMm;

function apartAt(rest: Rest, rings: readonly BoxedRing[], cores: readonly BoxedRing[], radiusMm: number, flat: boolean): Thin[] {
  const box = wider(rest.box, reach(radiusMm));
  const outline = within(rings, box);
  const worn = (half: number): Region => offsetRegion(outline, -half);
  const least = worn(radiusMm - bandMm),
    broad = within(cores, box);
  const thin = (piece: Region, half: number): Thin => ({
    kind: 'neck',
    ...away(piece, broad),
    widthMm: 2 * half,
    hair: false,
    region: rest.region,
  });
  const swelling = swollen(rest.region, worn, least, broad, radiusMm - bandMm);
  if (swelling) return swelling.found.map((piece) => thin(piece, swelling.half));
  const here = offsetRegion(rest.region, behindMm);
  if (!meetsAny(takeAway(least, offsetRegion(broad, bandMm + arcMm)), here)) return [];
  for (let half = radiusMm - bandMm; half < radiusMm - stepMm / 2; half += stepMm) {
    const left = pieces(half === radiusMm - bandMm ? least : worn(half)).filter(
      (piece) => regionArea(piece) >= crumbMm2 && meetsAny(piece, here),
    );
    const apart = left.filter((piece) => !meetsAny(piece, broad));
    if (apart.length > 0) return apart.map((piece) => thin(piece, half));
    if (!flat || left.length === 0 || half + fallMm > radiusMm + stepMm / 2) continue;
    const reached = offsetRegion(worn(half + fallMm), alongMm);
    const stubs = pieces(takeAway({ rings: left.flatMap((piece) => piece.rings) }, reached)).filter((piece) => meetsAny(piece, here));
    if (stubs.length > 0) return stubs.map((piece) => thin(piece, half));
  }
  return [];
}

/**
 * A point's width falls all the way to its tip. Worn down by less and less, what comes back must hang together with what is
 * broad: what came back alone one step before, and still does, swells again behind a neck.
 */
function swollen(
  place: Region,
  worn: (half: number) => Region,
  least: Region,
  broad: Region,
  fromMm: number,
): { readonly found: readonly Region[]; readonly half: number } | undefined {
  let before = least;
  for (let half = fromMm - swellMm; half >= finestMm; half -= swellMm) {
    const left = worn(half);
    const found = pieces(left).filter(
      (piece) => regionArea(piece) >= swellingMm2 && meetsAny(piece, place) && !meetsAny(piece, broad) && meetsAny(piece, before),
    );
    if (found.length > 0) return { found, half };
    before = left;
  }
  return undefined;
}

/** What of a shape lies in a box. */
function within(rings: readonly BoxedRing[], box: Box): Region {
  return nearBox({ rings: rings.filter((one) => meets(one.box, box)).map(({ ring }) => ring) }, box);
}

/** From what is broad to the end of a piece that lies farthest from it, so that all of it grows. */
function away(piece: Region, broad: Region): { readonly line: readonly number[]; readonly atMm: PointMm } {
  let line: number[] = [],
    most = -1;
  for (const ring of piece.rings)
    for (let i = 0; i < ring.length; i += 2) {
      const at: PointMm = [ring[i], ring[i + 1]];
      const to = nearest(broad, at);
      const d = Math.hypot(to[0] - at[0], to[1] - at[1]);
      if (d <= most) continue;
      most = d;
      line = [...to, ...at];
    }
  return { line, atMm: [line[2], line[3]] };
}

/** The nearest corner of a region's outline; the point itself where there is none. */
function nearest({ rings }: Region, [x, y]: PointMm): PointMm {
  let best: PointMm = [x, y],
    least = Infinity;
  for (const ring of rings)
    for (let i = 0; i < ring.length; i += 2) {
      const d = Math.hypot(ring[i] - x, ring[i + 1] - y);
      if (d >= least) continue;
      least = d;
      best = [ring[i], ring[i + 1]];
    }
  return best;
}

const meetsAny = (a: Region, b: Region): boolean =>
  a.rings.length > 0 && b.rings.length > 0 && meets(regionBox(a), regionBox(b)) && regionArea(common(a, b)) > 0;
const wider = (b: Box, mm: number): Box => ({ minX: b.minX - mm, minY: b.minY - mm, maxX: b.maxX + mm, maxY: b.maxY + mm });
