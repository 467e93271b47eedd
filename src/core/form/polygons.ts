import { Clipper64, ClipType, ClipperOffset, EndType, FillRule, JoinType, PolyTree64, Clipper } from 'clipper2-ts';
import type { Path64, Paths64, PolyPath64 } from 'clipper2-ts';
import { emptyRegion, regionArea, ringArea } from './region.ts';
import type { Box, Region } from './region.ts';

/** Booleans and offsets work on whole microns: finer than any knife, coarse enough to be exact. */
const perMm = 1000;

/** How corners look after an offset. `miter` goes out to twice the distance, then is cut off. */
export type Join = 'round' | 'miter' | 'bevel';

const joins: Readonly<Record<Join, JoinType>> = { round: JoinType.Round, miter: JoinType.Miter, bevel: JoinType.Bevel };
/** A rounded corner may leave the true arc by this much (microns). */
const arcToleranceMicrons = 10;

/** Rings as whole-micron paths, outer rings winding positively. */
export function toMicrons(region: Region): Paths64 {
  let signed = 0;
  for (const ring of region.rings) signed += ringArea(ring);
  const paths: Paths64 = [];
  for (const ring of region.rings) {
    const path: Path64 = [];
    for (let i = 0; i < ring.length; i += 2) path.push({ x: Math.round(ring[i] * perMm), y: Math.round(ring[i + 1] * perMm) });
    if (signed < 0) path.reverse();
    if (path.length >= 3) paths.push(path);
  }
  return paths;
}

export function fromMicrons(paths: Paths64): Region {
  const rings: Float64Array[] = [];
  for (const path of paths) {
    if (path.length < 3) continue;
    const ring = new Float64Array(path.length * 2);
    for (let i = 0; i < path.length; i++) {
      ring[2 * i] = path[i].x / perMm;
      ring[2 * i + 1] = path[i].y / perMm;
    }
    rings.push(ring);
  }
  return { rings };
}

function combine(kind: ClipType, subjects: Paths64, clips: Paths64, rule = FillRule.NonZero): Paths64 {
  const clipper = new Clipper64();
  clipper.preserveCollinear = false;
  if (subjects.length) clipper.addSubject(subjects);
  if (clips.length) clipper.addClip(clips);
  const out: Paths64 = [];
  clipper.execute(kind, rule, out);
  return out;
}

/** Everything that any of the regions covers. */
export function unite(regions: readonly Region[]): Region {
  const paths = regions.flatMap(toMicrons);
  return paths.length ? fromMicrons(combine(ClipType.Union, paths, [])) : emptyRegion;
}

/** What `from` covers and `away` does not. */
export function takeAway(from: Region, away: Region): Region {
  if (!from.rings.length) return emptyRegion;
  return fromMicrons(combine(ClipType.Difference, toMicrons(from), toMicrons(away)));
}

/** What both cover. */
export function common(a: Region, b: Region): Region {
  if (!a.rings.length || !b.rings.length) return emptyRegion;
  return fromMicrons(combine(ClipType.Intersection, toMicrons(a), toMicrons(b)));
}

/** Turns rings that cross themselves or one another (as drawn) into a proper region, by the drawing's fill rule. */
export function tidy(rings: readonly Float64Array[], rule: 'even-odd' | 'non-zero'): Region {
  const paths = rings.map((ring) => {
    const path: Path64 = [];
    for (let i = 0; i < ring.length; i += 2) path.push({ x: Math.round(ring[i] * perMm), y: Math.round(ring[i + 1] * perMm) });
    return path;
  }).filter((path) => path.length >= 3);
  if (!paths.length) return emptyRegion;
  return fromMicrons(combine(ClipType.Union, paths, [], rule === 'even-odd' ? FillRule.EvenOdd : FillRule.NonZero));
}

/** Grows (mm > 0) or shrinks (mm < 0) a region evenly. */
export function offsetRegion(region: Region, mm: number, join: Join = 'round'): Region {
  if (mm === 0 || !region.rings.length) return region;
  const offset = new ClipperOffset(2, arcToleranceMicrons);
  offset.addPaths(toMicrons(region), joins[join], EndType.Polygon);
  const out: Paths64 = [];
  offset.execute(mm * perMm, out);
  return fromMicrons(out);
}

/** A line of some width as a region. `points` x0, y0, …; in mm. */
export function strip(points: ArrayLike<number>, widthMm: number, ends: 'flat' | 'round' = 'flat'): Region {
  const path: Path64 = [];
  for (let i = 0; i + 1 < points.length; i += 2) path.push({ x: Math.round(points[i] * perMm), y: Math.round(points[i + 1] * perMm) });
  const offset = new ClipperOffset(2, arcToleranceMicrons);
  offset.addPath(path, JoinType.Round, ends === 'flat' ? EndType.Butt : EndType.Round);
  const out: Paths64 = [];
  offset.execute((widthMm * perMm) / 2, out);
  return fromMicrons(out);
}

/** Fewer points, none of the outline farther than `toleranceMm` from before. Rings that shrink to nothing go. */
export function simplify(region: Region, toleranceMm: number): Region {
  const thinner = Clipper.simplifyPaths(toMicrons(region), toleranceMm * perMm, true);
  return fromMicrons(combine(ClipType.Union, thinner, []));
}

export function boxRegion(box: Box): Region {
  return { rings: [Float64Array.of(box.minX, box.minY, box.maxX, box.minY, box.maxX, box.maxY, box.minX, box.maxY)] };
}

/**
 * The separate pieces: each one outer ring with its holes, from top to bottom, then left to right, then large to
 * small. Pieces that touch only in a point are separate.
 */
export function parts(region: Region): Region[] {
  if (!region.rings.length) return [];
  const clipper = new Clipper64();
  clipper.preserveCollinear = false;
  clipper.addSubject(toMicrons(region));
  const tree = new PolyTree64();
  clipper.execute(ClipType.Union, FillRule.NonZero, tree);
  const found: Region[] = [];
  const visit = (node: PolyPath64): void => {
    const outline = node.polygon;
    if (outline && !node.isHole) {
      const paths: Paths64 = [outline];
      for (let i = 0; i < node.count; i++) {
        const hole = node.child(i).polygon;
        if (hole) paths.push(hole);
      }
      found.push(fromMicrons(paths));
    }
    for (let i = 0; i < node.count; i++) visit(node.child(i));
  };
  visit(tree);
  const keyed = found.filter((part) => part.rings.length).map((part) => {
    let top = Infinity, left = Infinity;
    const ring = part.rings[0];
    for (let i = 0; i < ring.length; i += 2) {
      if (ring[i + 1] < top) top = ring[i + 1];
      if (ring[i] < left) left = ring[i];
    }
    return { part, top, left, area: regionArea(part) };
  });
  keyed.sort((a, b) => a.top - b.top || a.left - b.left || b.area - a.area);
  return keyed.map((k) => k.part);
}
