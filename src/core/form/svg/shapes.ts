import { say, type Saying } from '../../../words/say.ts';
import { mapRegion } from '../place.ts';
import { common, takeAway, tidy, unite, uniteMany } from '../polygons.ts';
import { emptyRegion, regionBox } from '../region.ts';
import type { Region } from '../region.ts';
import { problem } from '../../problem.ts';
import type { Problem } from '../../problem.ts';
import { clipRings } from './clip.ts';
import { isConvex } from './convex.ts';
import { chain, coarseness, flatnessMm, flattenPath, inverse, readMatrix, scaleOf } from './path.ts';
import type { Matrix } from './path.ts';
import { strokeRegion } from './stroke.ts';
import { refuseTangle } from './tangle.ts';
import type { Tag } from './tree.ts';

export interface Canvas {
  /** Side of the working square: everything farther out than twice this is cut off. */
  readonly reachMm: number;
  readonly byId: ReadonlyMap<string, Tag>;
  /** Where its problems are. */
  readonly place: Saying;
  readonly problems: Map<string, Problem>;
}

/** Everything visible below `tag`, united, on the working scale. */
export function shapesOf(tag: Tag, matrix: Matrix, canvas: Canvas): Region {
  const found: Region[] = [];
  collect(tag, matrix, canvas, found);
  return found.length === 1 ? found[0] : uniteMany(found, (rings) => refuseTangle(rings, canvas.place));
}

function collect(tag: Tag, matrix: Matrix, canvas: Canvas, found: Region[]): void {
  const { attributes } = tag;
  if (attributes.visibility === 'hidden' || attributes.visibility === 'collapse' || attributes.display === 'none') return;
  if (attributes.opacity !== undefined && Number(attributes.opacity) <= 0) return;
  if (tag.name === 'path') {
    found.push(...pathShapes(tag, chain(matrix, readMatrix(attributes.transform)), canvas));
    return;
  }
  if (tag.name !== 'g' && tag.name !== 'svg') return;
  const inner = tag.name === 'g' ? chain(matrix, readMatrix(attributes.transform)) : matrix;
  if (attributes.filter) {
    warn(canvas, 'drawing-has-effects', say('form.effects'), say('form.fineIfRight'));
  }
  const clip = reference(attributes['clip-path'], canvas);
  const mask = reference(attributes.mask, canvas);
  if (!clip && !mask) {
    for (const child of tag.children) collect(child, inner, canvas, found);
    return;
  }
  const below: Region[] = [];
  for (const child of tag.children) collect(child, inner, canvas, below);
  let region = uniteMany(below, (rings) => refuseTangle(rings, canvas.place));
  if (!region.rings.length) return;
  if (clip) region = common(region, clipShape(clip, inner, canvas, region, 0));
  if (mask && region.rings.length) region = common(region, maskShape(mask, inner, canvas, region, 0));
  found.push(region);
}

function pathShapes(tag: Tag, matrix: Matrix, canvas: Canvas): Region[] {
  const { attributes } = tag;
  const data = attributes.d ?? '';
  const out: Region[] = [];
  noteCoarse(data, matrix, canvas);
  if (seen(attributes.fill, canvas) && opacity(attributes['fill-opacity']) > 0) {
    if (isWhite(attributes.fill))
      canvas.problems.set(
        'drawing-has-white',
        problem('note', 'drawing-has-white', canvas.place, say('form.whiteCounts'), say('form.takeWhiteOut')),
      );
    if (attributes.fill.startsWith('url(') && canvas.byId.get(attributes.fill.slice(5, -1))?.name === 'pattern') {
      warn(canvas, 'drawing-has-pattern', say('form.pattern'), say('form.patternToShapes'));
    }
    out.push(fillShape(data, matrix, attributes['fill-rule'] === 'evenodd' ? 'even-odd' : 'non-zero', canvas));
  }
  if (seen(attributes.stroke, canvas) && opacity(attributes['stroke-opacity']) > 0) {
    out.push(strokeRegion(data, matrix, attributes, canvas.reachMm, canvas.place));
  }
  return out.filter((region) => region.rings.length > 0);
}

/** Is there paint, and is it anywhere to be seen? A gradient that is clear from end to end is not. */
function seen(paint: string | undefined, canvas: Canvas): paint is string {
  if (paint === undefined || paint === 'none') return false;
  const stops = /gradient$/i.test(reference(paint, canvas)?.name ?? '')
    ? (reference(paint, canvas)?.children.filter((c) => c.name === 'stop') ?? [])
    : [];
  return stops.length === 0 || stops.some((stop) => opacity(stop.attributes['stop-opacity']) > 0);
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
  if (depth > 20) return emptyRegion;
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
    const inner = reference(tag.attributes['clip-path'], canvas);
    if (inner && shape.rings.length) shape = common(shape, clipShape(inner, m, canvas, shape, depth + 1));
    if (shape.rings.length) found.push(shape);
  };
  for (const child of clip.children) visit(child, frame);
  let region = unite(found);
  const outer = reference(clip.attributes['clip-path'], canvas);
  if (outer && region.rings.length) region = common(region, clipShape(outer, matrix, canvas, user, depth + 1));
  return region;
}

/** Where a mask lets through: white shows, black hides, later shapes over earlier ones. Grey masks are refused. */
function maskShape(mask: Tag, matrix: Matrix, canvas: Canvas, user: Region, depth: number): Region {
  if (depth > 20) return emptyRegion;
  const frame = mask.attributes.maskContentUnits === 'objectBoundingBox' ? boxMatrix(user, matrix) : matrix;
  const alphaOnly = mask.attributes['mask-type'] === 'alpha';
  let shown: Region = emptyRegion;
  const visit = (tag: Tag, m: Matrix, dim: number, within: Region | undefined): void => {
    const see = dim * opacity(tag.attributes.opacity);
    if (tag.name === 'g') {
      const inner = chain(m, readMatrix(tag.attributes.transform));
      const quiet: Canvas = { ...canvas, problems: new Map() };
      let left = within;
      for (const [kind, cut] of [
        [clipShape, reference(tag.attributes['clip-path'], canvas)],
        [maskShape, reference(tag.attributes.mask, canvas)],
      ] as const) {
        if (!cut) continue;
        const shape = kind(cut, inner, canvas, shapesOf({ ...tag, attributes: {} }, inner, quiet), depth + 1);
        left = left ? common(left, shape) : shape;
      }
      for (const child of tag.children) visit(child, inner, see, left);
      return;
    }
    if (tag.name !== 'path') return;
    for (const part of ['fill', 'stroke'] as const) {
      const paint = tag.attributes[part];
      if (!paint || paint === 'none') continue;
      const strength = see * opacity(tag.attributes[`${part}-opacity`]);
      const light = alphaOnly ? 1 : lightness(paint);
      const only: Tag = { ...tag, attributes: { ...tag.attributes, [part === 'fill' ? 'stroke' : 'fill']: 'none' } };
      const quiet: Canvas = { ...canvas, problems: new Map() };
      if (light === undefined || (light * strength > 0.1 && light * strength < 0.9) || (strength > 0.1 && strength < 0.9)) {
        canvas.problems.set(
          'drawing-soft-mask',
          problem('error', 'drawing-soft-mask', canvas.place, say('form.softMask'), say('form.hardMask')),
        );
        return;
      }
      if (strength <= 0.1) continue;
      const whole = unite(pathShapes(only, chain(m, readMatrix(tag.attributes.transform)), quiet));
      const shape = within ? common(whole, within) : whole;
      shown = light >= 0.5 ? unite([shown, shape]) : takeAway(shown, shape);
    }
  };
  for (const child of mask.children) visit(child, frame, 1, undefined);
  shown = common(shown, maskWindow(mask, matrix, user));
  const outer = reference(mask.attributes.mask, canvas);
  if (outer && shown.rings.length) shown = common(shown, maskShape(outer, matrix, canvas, user, depth + 1));
  return shown;
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
function boxMatrix(region: Region, matrix: Matrix): Matrix {
  const back = inverse(matrix);
  if (!back) return matrix;
  const [a, b, c, d, e, f] = back;
  const box = regionBox(mapRegion(region, (x, y) => [a * x + c * y + e, b * x + d * y + f]));
  return chain(matrix, [box.maxX - box.minX, 0, 0, box.maxY - box.minY, box.minX, box.minY]);
}

function reference(value: string | undefined, canvas: Canvas): Tag | undefined {
  const found = value ? /url\(\s*['"]?#([^)'"]+)/.exec(value) : null;
  return found ? canvas.byId.get(found[1]) : undefined;
}

const opacity = (value: string | undefined): number => (value === undefined ? 1 : Math.max(0, Math.min(1, Number(value) || 0)));

/** Relative lightness of a plain colour `#rrggbb`; undefined for gradients. */
function lightness(paint: string): number | undefined {
  const found = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(paint);
  if (!found) return undefined;
  const [r, g, b] = found.slice(1).map((hex) => parseInt(hex, 16) / 255);
  return 0.2125 * r + 0.7154 * g + 0.0721 * b;
}

const isWhite = (paint: string): boolean => /^#f[d-f]f[d-f]f[d-f]$/i.test(paint);

function warn(canvas: Canvas, code: string, message: Saying, advice: Saying): void {
  if (!canvas.problems.has(code)) canvas.problems.set(code, problem('warning', code, canvas.place, message, advice));
}
