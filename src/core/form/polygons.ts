import { Clipper64, ClipType, ClipperOffset, EndType, FillRule, JoinType, PolyTree64, Clipper } from 'clipper2-ts';
import type { Path64, Paths64, PolyPath64 } from 'clipper2-ts';
import { emptyRegion, regionArea, regionBox, ringArea } from './region.ts';
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

function fromMicrons(paths: Paths64): Region {
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

/** So many regions are united at once; more are halved and united by halves first. */
const groupSize = 16;

interface Boxed {
  readonly ring: Float64Array;
  readonly box: Box;
}

/**
 * The same as `unite` for thousands of tidy regions: neighbours first, so that what overlaps melts together early, and what
 * meets nothing is only put beside the rest. `check` sees the rings before they are united, and may throw.
 */
export function uniteMany(regions: readonly Region[], check?: (rings: readonly Float64Array[]) => void): Region {
  const boxed = (region: Region): Boxed[] => region.rings.map((ring) => ({ ring, box: regionBox({ rings: [ring] }) }));
  const union = (groups: readonly (readonly Boxed[])[]): Boxed[] => {
    const found = groups.filter((g) => g.length > 0);
    if (found.length < 2) return [...(found[0] ?? [])];
    check?.(found.flatMap((g) => g.map((b) => b.ring)));
    return boxed(unite(found.map((g) => ({ rings: g.map((b) => b.ring) }))));
  };
  const boxOf = (rings: readonly Boxed[]): Box => rings.reduce((a, { box }) => hull(a, box), rings[0].box);
  const some = (list: readonly (readonly Boxed[])[]): Boxed[] => {
    if (list.length <= groupSize) return union(list);
    const boxes = list.map(boxOf),
      all = boxes.reduce(hull);
    const wide = all.maxX - all.minX > all.maxY - all.minY;
    const middles = boxes.map((b) => (wide ? b.minX + b.maxX : b.minY + b.maxY));
    const order = list.map((_, i) => i).sort((a, b) => middles[a] - middles[b] || a - b);
    const half = order.length >> 1;
    const one = some(order.slice(0, half).map((i) => list[i])),
      two = some(order.slice(half).map((i) => list[i]));
    if (!one.length || !two.length) return [...one, ...two];
    // A ring that does not reach where the other half lies stays as it is: nothing meets it, nor lies in it.
    const oneBox = boxOf(one),
      twoBox = boxOf(two);
    const near = (rings: readonly Boxed[], other: Box): Boxed[] => rings.filter((b) => overlap(b.box, other));
    const far = (rings: readonly Boxed[], other: Box): Boxed[] => rings.filter((b) => !overlap(b.box, other));
    return [...far(one, twoBox), ...far(two, oneBox), ...union([near(one, twoBox), near(two, oneBox)])];
  };
  return { rings: some(regions.map(boxed).filter((g) => g.length > 0)).map((b) => b.ring) };
}

const hull = (a: Box, b: Box): Box => ({
  minX: Math.min(a.minX, b.minX),
  minY: Math.min(a.minY, b.minY),
  maxX: Math.max(a.maxX, b.maxX),
  maxY: Math.max(a.maxY, b.maxY),
});
const overlap = (a: Box, b: Box): boolean => a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;

/** A tidy region cut off at the sides of a box; rings that lie inside are not touched. */
export function cutToBox(region: Region, box: Box): Region {
  const inside = (ring: Float64Array): boolean => {
    const own = regionBox({ rings: [ring] });
    return own.minX >= box.minX && own.minY >= box.minY && own.maxX <= box.maxX && own.maxY <= box.maxY;
  };
  const crossing = region.rings.filter((ring) => !inside(ring));
  if (crossing.length === 0) return region;
  return { rings: [...region.rings.filter(inside), ...common({ rings: crossing }, boxRegion(box)).rings] };
}

/** A tidy region cut off at the sides of a box, quickly: its rings may run along those sides more than once. To look at, not to keep. */
export function nearBox(region: Region, box: Box): Region {
  return fromMicrons(Clipper.rectClip(sidesOf(box), toMicrons(region)));
}

/** The same for many boxes of one region. */
export function boxCutter(region: Region): (box: Box) => Region {
  const paths = toMicrons(region).map((path) => {
    let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
    for (const { x, y } of path) {
      left = Math.min(left, x);
      top = Math.min(top, y);
      right = Math.max(right, x);
      bottom = Math.max(bottom, y);
    }
    return { path, left, top, right, bottom };
  });
  return (box) => {
    const sides = sidesOf(box);
    const near = paths.filter((p) => p.left <= sides.right && p.right >= sides.left && p.top <= sides.bottom && p.bottom >= sides.top);
    return near.length > 0
      ? fromMicrons(
          Clipper.rectClip(
            sides,
            near.map(({ path }) => path),
          ),
        )
      : emptyRegion;
  };
}

const sidesOf = (box: Box): { left: number; top: number; right: number; bottom: number } => ({
  left: Math.round(box.minX * perMm),
  top: Math.round(box.minY * perMm),
  right: Math.round(box.maxX * perMm),
  bottom: Math.round(box.maxY * perMm),
});

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
  const paths = rings
    .map((ring) => {
      const path: Path64 = [];
      for (let i = 0; i < ring.length; i += 2) path.push({ x: Math.round(ring[i] * perMm), y: Math.round(ring[i + 1] * perMm) });
      return path;
    })
    .filter((path) => path.length >= 3);
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
  const keyed = found
    .filter((part) => part.rings.length)
    .map((part) => {
      let top = Infinity,
        left = Infinity;
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
