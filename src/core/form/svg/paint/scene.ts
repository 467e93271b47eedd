import { say, type Saying } from '../../../../words/say.ts';
import { problem, type Problem } from '../../../problem.ts';
import { mapRegion } from '../../place.ts';
import { common, tidy, unite } from '../../polygons.ts';
import { emptyRegion, regionBox, type Region } from '../../region.ts';
import { clipRings } from '../guard/clip.ts';
import { isConvex } from '../guard/convex.ts';
import { leastAlpha, readPaint, share, type Paint } from './paint.ts';
import { chain, coarseness, flatnessMm, flattenPath, identity, inverse, readMatrix, scaleOf } from '../path.ts';
import type { Matrix } from '../path.ts';
import { strokeRegion } from './stroke.ts';
import { refuseTangle } from '../guard/tangle.ts';
import { refersTo, type Tag } from '../tree.ts';

export interface Canvas {
  /** Side of the working square: everything farther out than twice this is cut off. */
  readonly reachMm: number;
  readonly byId: ReadonlyMap<string, Tag>;
  /** Where its problems are. */
  readonly place: Saying;
  readonly problems: Map<string, Problem>;
}

/** What is painted, from the bottom to the top, on the working scale: shapes with their paint, and groups cut by a clip path or a mask. */
export type Scene = readonly (Painted | Group)[];

export interface Painted {
  readonly region: Region;
  readonly paint: Paint;
}

export interface Group {
  readonly scene: Scene;
  readonly clip?: Region;
  readonly mask?: Mask;
}

/** Shows by its lightness (or by its cover alone) what it is laid over; nothing outside `window`. */
export interface Mask {
  readonly scene: Scene;
  readonly coverOnly: boolean;
  readonly window: Region;
  readonly outer?: Mask;
}

const mostNested = 20;

/** Everything below `tag`, flattened. */
export function sceneOf(tag: Tag, matrix: Matrix, canvas: Canvas): Scene {
  const found: (Painted | Group)[] = [];
  collect(tag, matrix, 1, canvas, found, 0);
  return found;
}

function collect(tag: Tag, matrix: Matrix, dim: number, canvas: Canvas, found: (Painted | Group)[], nested: number): void {
  const { attributes } = tag;
  if (attributes.visibility === 'hidden' || attributes.visibility === 'collapse' || attributes.display === 'none') return;
  const alpha = dim * share(attributes.opacity, 1);
  if (alpha <= leastAlpha) return;
  if (tag.name === 'path') {
    found.push(...painted(tag, chain(matrix, readMatrix(attributes.transform)), alpha, canvas));
    return;
  }
  if (tag.name !== 'g' && tag.name !== 'svg') return;
  const inner = tag.name === 'g' ? chain(matrix, readMatrix(attributes.transform)) : matrix;
  if (attributes.filter) warn(canvas, 'drawing-has-effects', say('form.effects'), say('form.fineIfRight'));
  const clip = refersTo(attributes['clip-path'], canvas.byId);
  const mask = refersTo(attributes.mask, canvas.byId);
  if (!clip && !mask) {
    for (const child of tag.children) collect(child, inner, alpha, canvas, found, nested);
    return;
  }
  const below: (Painted | Group)[] = [];
  for (const child of tag.children) collect(child, inner, alpha, canvas, below, nested);
  const user: Region = { rings: ringsOf(below) };
  if (user.rings.length === 0) return;
  found.push({
    scene: below,
    ...(clip ? { clip: clipShape(clip, inner, canvas, user, 0) } : {}),
    ...(mask ? { mask: readMask(mask, inner, canvas, user, nested) } : {}),
  });
}

function painted(tag: Tag, matrix: Matrix, alpha: number, canvas: Canvas): Painted[] {
  const { attributes } = tag;
  const data = attributes.d ?? '';
  const out: Painted[] = [];
  noteCoarse(data, matrix, canvas);
  const paintOf = (part: 'fill' | 'stroke'): Paint | undefined =>
    readPaint(attributes[part], alpha * share(attributes[`${part}-opacity`], 1), matrix, () => unitBox(data, matrix), canvas.byId);
  const fill = paintOf('fill'),
    stroke = paintOf('stroke');
  if (fill) {
    if (refersTo(attributes.fill, canvas.byId)?.name === 'pattern')
      warn(canvas, 'drawing-has-pattern', say('form.pattern'), say('form.patternToShapes'));
    out.push({ region: fillShape(data, matrix, attributes['fill-rule'] === 'evenodd' ? 'even-odd' : 'non-zero', canvas), paint: fill });
  }
  if (stroke) out.push({ region: strokeRegion(data, matrix, attributes, canvas.reachMm, canvas.place), paint: stroke });
  if (attributes['paint-order']?.trim().startsWith('stroke')) out.reverse();
  return out.filter(({ region }) => region.rings.length > 0);
}

/** Maps the unit square onto the box of a path as it was drawn. */
function unitBox(data: string, matrix: Matrix): Matrix {
  const box = regionBox({
    rings: flattenPath(data, identity, flatnessMm / Math.max(1e-9, scaleOf(matrix))).map((sub) => Float64Array.from(sub.points)),
  });
  return chain(matrix, [box.maxX - box.minX, 0, 0, box.maxY - box.minY, box.minX, box.minY]);
}

/** Every ring that is painted, before it is clipped. */
export function ringsOf(scene: Scene): Float64Array[] {
  return scene.flatMap((item) => ('scene' in item ? ringsOf(item.scene) : item.region.rings));
}

/** Outlines that are off by more than this on the working scale are worth a warning. */
const coarseMm = 0.05;

function noteCoarse(data: string, matrix: Matrix, canvas: Canvas): void {
  const found = coarseness(data);
  if (!found || found.off * scaleOf(matrix) < coarseMm) return;
  // Small and far away: nothing of its shape is left. Huge and straight: its edges may still be right.
  const lost = found.extent < 10_000 * found.off;
  canvas.problems.set(
    'drawing-far-away',
    problem(
      lost || canvas.problems.get('drawing-far-away')?.severity === 'error' ? 'error' : 'warning',
      'drawing-far-away',
      canvas.place,
      say('form.farAway'),
      say('form.moveToOrigin'),
    ),
  );
}

function fillShape(data: string, matrix: Matrix, rule: 'even-odd' | 'non-zero', canvas: Canvas): Region {
  const rings = flattenPath(data, matrix, flatnessMm)
    .filter((sub) => sub.points.length >= 6)
    .map((sub) => Float64Array.from(sub.points));
  const inReach = clipRings(rings, canvas.reachMm);
  if (inReach.length === 1 && isConvex(inReach[0])) return { rings: inReach };
  refuseTangle(inReach, canvas.place);
  return tidy(inReach, rule);
}

/** Where a clip path lets through. Its children are filled by `clip-rule`; it may itself be clipped. */
function clipShape(clip: Tag, matrix: Matrix, canvas: Canvas, user: Region, depth: number): Region {
  if (depth > mostNested) return emptyRegion;
  const base = clip.attributes.clipPathUnits === 'objectBoundingBox' ? boxMatrix(user, matrix) : matrix;
  const frame = chain(base, readMatrix(clip.attributes.transform));
  const found: Region[] = [];
  const visit = (tag: Tag, outside: Matrix): void => {
    const m = chain(outside, readMatrix(tag.attributes.transform));
    if (tag.attributes.visibility === 'hidden' || tag.attributes.display === 'none') return;
    let shape: Region = emptyRegion;
    if (tag.name === 'path')
      shape = fillShape(
        tag.attributes.d ?? '',
        m,
        (tag.attributes['clip-rule'] ?? tag.attributes['fill-rule']) === 'evenodd' ? 'even-odd' : 'non-zero',
        canvas,
      );
    else if (tag.name === 'g') {
      const own = found.length;
      for (const child of tag.children) visit(child, m);
      shape = unite(found.splice(own));
    }
    const inner = refersTo(tag.attributes['clip-path'], canvas.byId);
    if (inner && shape.rings.length) shape = common(shape, clipShape(inner, m, canvas, shape, depth + 1));
    if (shape.rings.length) found.push(shape);
  };
  for (const child of clip.children) visit(child, frame);
  let region = unite(found);
  const outer = refersTo(clip.attributes['clip-path'], canvas.byId);
  if (outer && region.rings.length) region = common(region, clipShape(outer, matrix, canvas, user, depth + 1));
  return region;
}

function readMask(mask: Tag, matrix: Matrix, canvas: Canvas, user: Region, nested: number): Mask {
  const frame = mask.attributes.maskContentUnits === 'objectBoundingBox' ? boxMatrix(user, matrix) : matrix;
  const scene: (Painted | Group)[] = [];
  if (nested < mostNested) for (const child of mask.children) collect(child, frame, 1, canvas, scene, nested + 1);
  const outer = nested < mostNested ? refersTo(mask.attributes.mask, canvas.byId) : undefined;
  return {
    scene,
    coverOnly: mask.attributes['mask-type'] === 'alpha',
    window: maskWindow(mask, matrix, user),
    ...(outer ? { outer: readMask(outer, matrix, canvas, user, nested + 1) } : {}),
  };
}

/** The rectangle outside which a mask hides everything: −10 % … 120 % of the shape's box unless it says otherwise. */
function maskWindow(mask: Tag, matrix: Matrix, user: Region): Region {
  const own = mask.attributes.maskUnits === 'userSpaceOnUse';
  const side = (key: string, usual: number): number => (mask.attributes[key] === undefined ? usual : Number(mask.attributes[key]) || 0);
  const x = side('x', -0.1),
    y = side('y', -0.1),
    width = side('width', 1.2),
    height = side('height', 1.2);
  const [a, b, c, d, e, f] = own ? matrix : boxMatrix(user, matrix);
  const corners = [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
  return { rings: [Float64Array.from(corners.flatMap(([u, v]) => [a * u + c * v + e, b * u + d * v + f]))] };
}

/** Maps the unit square onto a shape's box, which stands upright where the shape was drawn, not on the page. */
function boxMatrix(user: Region, matrix: Matrix): Matrix {
  const back = inverse(matrix);
  if (!back) return matrix;
  const [a, b, c, d, e, f] = back;
  const box = regionBox(mapRegion(user, (x, y) => [a * x + c * y + e, b * x + d * y + f]));
  return chain(matrix, [box.maxX - box.minX, 0, 0, box.maxY - box.minY, box.minX, box.minY]);
}

function warn(canvas: Canvas, code: string, message: Saying, advice: Saying): void {
  if (!canvas.problems.has(code)) canvas.problems.set(code, problem('warning', code, canvas.place, message, advice));
}
