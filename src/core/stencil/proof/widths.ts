import { emptyRegion, offsetRegion, regionArea, regionBox, regionPerimeter } from '../../form/index.ts';
import type { Box, Region } from '../../form/index.ts';
import { clearOf, nearHoles } from '../bridges/hidden.ts';
import { innerPoint } from '../raster/inner-point.ts';
import { covers, pieces, pointsOf } from '../raster/rings.ts';
import type { PointMm } from '../types.ts';
import { opened, openedInTiles } from './opened.ts';
import { isNear, sidesNear } from './sides.ts';
import { wornApart } from './worn.ts';
import { boxedRings, inBox, looked, meets, windows } from './windows.ts';
import type { BoxedRing, Look, Rest, Seen, Thin } from './windows.ts';

/**
 * How wide a shape is everywhere, from its outline itself: shrunk by half the least width (exact to a micron) what is left
 * are its broad parts. What discs of that width cannot cover is looked at on a fine raster, each place in a window of its own.
 */
export interface Widths {
  /** Separate parts, specks left out. */
  readonly parts: readonly Region[];
  /** Broad parts, shrunk, and the part that each belongs to. */
  readonly cores: readonly Region[];
  readonly partOfCore: readonly number[];
  readonly thin: readonly Thin[];
}

/** Parts smaller than this come from rounding, not from a drawing. */
export const speckMm2 = 0.1;
/** Microns in arcs and offsets: a width is proven to this. */
const slackMm = 0.02;
/** So long an outline is looked at tile by tile while it is mended. */
const manyPoints = 1200;
/** Finer than any pixel here. */
const unseenMm = 0.06;

/**
 * `longTapers`: a knife cuts a long point that tapers; paper so slender would bend. `seen`: what an earlier look at nearly
 * the same shape saw, which is used again where nothing has changed since.
 */
export function widthsOf(region: Region, leastMm: number, longTapers: boolean, seen?: Seen): Widths {
  const whole = pieces(region);
  const found = whole.filter((part) => regionArea(part) >= speckMm2);
  const rings = boxedRings(region);
  const r = leastMm / 2 - slackMm;
  const long = seen?.whole === false && pointsOf(region) > manyPoints;
  const broadAndRest = long ? [openedInTiles(region, regionBox(region), r, seen)] : groups(whole).map((group) => opened(group, r));
  const core: Region = { rings: broadAndRest.flatMap((o) => o.core.rings) };
  const cores = broadAndRest.flatMap((o) => pieces(o.core));
  const coreRings = boxedRings(core);
  const boxes = found.map(regionBox);
  const partOfCore = cores.map((c) => {
    const x = c.rings[0][0],
      y = c.rings[0][1];
    return found.findIndex((part, i) => inBox(boxes[i], x, y) && covers(part, x, y));
  });
  const rests: Rest[] = [];
  for (const rest of broadAndRest.flatMap((o) => pieces(o.rest))) {
    const box = regionBox(rest);
    if (Math.hypot(box.maxX - box.minX, box.maxY - box.minY) >= 0.4 * leastMm) rests.push({ region: rest, box, used: false });
  }
  const look: Look = { rings, radiusMm: r, leastMm, longTapers, strict: false, seen };
  const thin = windows(rests, leastMm).flatMap((w) => looked(w, look));
  // The raster is lenient and the shrunk outline is not: where a part has no broad place, or more than one, and nothing thin
  // was seen in it, its places are looked at again, strictly.
  const broad = new Int32Array(found.length);
  for (const part of partOfCore) if (part >= 0) broad[part]++;
  const doubtful = found.filter(
    (part, i) => broad[i] === 0 && !thin.some((t) => inBox(boxes[i], ...t.atMm) && covers(part, t.atMm[0], t.atMm[1])),
  );
  if (doubtful.length > 0) {
    const doubtfulBoxes = doubtful.map(regionBox);
    const again = rests.filter((rest) => {
      if (rest.used) return false;
      const near = doubtful.filter((_, i) => meets(doubtfulBoxes[i], rest.box));
      if (near.length === 0) return false;
      const at = insideOf(rest);
      return near.some((part) => covers(part, ...at));
    });
    thin.push(...windows(again, leastMm).flatMap((w) => looked(w, { ...look, strict: true })));
  }
  // What is finer than the raster may leave no trace on it.
  const slivers = rests.filter((rest) => !rest.used && lengthOf(rest.box) >= 1 && broadness(rest.region) <= unseenMm);
  thin.push(
    ...finer(slivers, unseenMm)
      .filter((rest) => standsOut(rest, coreRings, r))
      .map(unseen),
  );
  thin.push(...hidden(found, cores, thin, leastMm));
  if (thin.length === 0) thin.push(...wornApart(rings, coreRings, rests, r, !longTapers, seen));
  seen?.renew();
  return { parts: found, cores, partOfCore, thin };
}

/** Points of small pieces taken together. */
const groupPoints = 500;

/** Pieces do not meet: shrinking some neighbours at a time is quicker than all of them. From left to right. */
function groups(whole: readonly Region[]): Region[] {
  const sorted = whole.map((region) => ({ region, left: regionBox(region).minX })).sort((a, b) => a.left - b.left);
  const found: Float64Array[][] = [];
  let points = Infinity;
  for (const { region } of sorted) {
    const own = region.rings.reduce((sum, ring) => sum + ring.length / 2, 0);
    if (points + own > groupPoints) {
      found.push([]);
      points = 0;
    }
    found[found.length - 1].push(...region.rings);
    points += own;
  }
  return found.map((rings) => ({ rings }));
}

const lengthOf = (box: Box): number => Math.hypot(box.maxX - box.minX, box.maxY - box.minY);

/** A shape holds a disc at least this large (its area by its outline). */
const broadness = (region: Region): number => regionArea(region) / regionPerimeter(region);

/** Those in which no disc of this radius fits, found in one go. */
function finer(rests: readonly Rest[], radiusMm: number): readonly Rest[] {
  const broad = new Set<Rest>();
  for (const [x, y] of offsetRegion({ rings: rests.flatMap(({ region }) => region.rings) }, -radiusMm).rings) {
    const rest = rests.find(({ region, box }) => inBox(box, x, y) && covers(region, x, y));
    if (rest) broad.add(rest);
  }
  return rests.filter((rest) => !broad.has(rest));
}

/** Does it reach away from what is broad? A sliver along its edge, where a curve is a little too tight, does not. */
function standsOut({ region: rest, box: own }: Rest, cores: readonly BoxedRing[], r: number): boolean {
  const reach = r + 0.3;
  const near = sidesNear(cores, own, reach);
  return rest.rings.some((ring) => {
    for (let i = 0; i < ring.length; i += 2) if (!isNear(near, ring[i], ring[i + 1], reach)) return true;
    return false;
  });
}

/** A point of a thin rest that is not on its edge, or nearly. */
const insideOf = ({ region, box }: Rest): PointMm => innerPoint(region, box);

function unseen({ region, box }: Rest): Thin {
  const ring = region.rings[0];
  const at: PointMm = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
  return { kind: 'tongue', line: [ring[0], ring[1], ...at], atMm: [ring[0], ring[1]], widthMm: unseenMm, hair: true, region };
}

/**
 * Necks that leave nothing uncovered: two tips that nearly meet. The shrunk shape knows them: one part falls into several,
 * or two holes of it become one.
 */
function hidden(found: readonly Region[], cores: readonly Region[], known: readonly Thin[], leastMm: number): Thin[] {
  const holesOf = (list: readonly Region[]): number => list.reduce((sum, one) => sum + one.rings.length - 1, 0);
  if (holesOf(cores) >= holesOf(found)) return [];
  const clear = clearOf(
    known.map((t) => t.line),
    leastMm,
  );
  return found
    .flatMap((part) => nearHoles(part, leastMm - 2 * slackMm))
    .filter(({ atMm }) => clear(atMm))
    .map((near): Thin => ({ kind: 'neck', ...near, hair: false, region: emptyRegion }));
}
