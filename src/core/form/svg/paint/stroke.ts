import { ClipperOffset, EndType, JoinType } from 'clipper2-ts';
import type { Path64, Paths64 } from 'clipper2-ts';
import type { Saying } from '../../../../words/say.ts';
import { tidy } from '../../polygons.ts';
import { emptyRegion } from '../../region.ts';
import type { Region } from '../../region.ts';
import { clipRings } from '../guard/clip.ts';
import { dashes } from './dash.ts';
import { flatnessMm, flattenPath, identity, scaleOf } from '../path.ts';
import type { Matrix, SubPath } from '../path.ts';
import { refuseTangle } from '../guard/tangle.ts';

/** A drawn line as a filled shape: width, ends, corners and dashes as SVG 2 section 13.5 has them. */
export function strokeRegion(
  data: string,
  matrix: Matrix,
  attributes: Readonly<Record<string, string>>,
  reachMm: number,
  place: Saying,
): Region {
  const asked = attributes['stroke-width'] === undefined ? 1 : Number(attributes['stroke-width']);
  const scale = scaleOf(matrix);
  if (!(asked > 0) || !(scale > 0)) return emptyRegion;
  // A line as wide as this fills all there is to see; round ends of a million kilometres have no end of corners.
  const width = Math.min(asked, (8 * reachMm) / scale);
  // The line is widened in its own coordinates (a stretched drawing has stretched lines), on a grid of 1 µm.
  const perUnit = scale * 1000;
  let subs = flattenPath(data, identity, flatnessMm / scale);
  refuseTangle(
    subs.map((sub) => Float64Array.from(sub.points)),
    place,
  );
  const pattern = (attributes['stroke-dasharray'] ?? '')
    .split(/[\s,]+/)
    .map(Number)
    .filter((v) => Number.isFinite(v));
  if (pattern.length && attributes['stroke-dasharray'] !== 'none')
    subs = dashes(subs, pattern, Number(attributes['stroke-dashoffset'] ?? 0) || 0);
  const cap = attributes['stroke-linecap'] ?? 'butt';
  const join = attributes['stroke-linejoin'] ?? 'miter';
  const miterLimit = Number(attributes['stroke-miterlimit'] ?? 4) || 4;
  const out: Paths64 = [];
  for (const sub of subs) {
    const path = toPath(sub, perUnit);
    const offset = new ClipperOffset(miterLimit, flatnessMm * 1000);
    const ends = cap === 'round' ? EndType.Round : cap === 'square' ? EndType.Square : EndType.Butt;
    if (path.length === 1) {
      // A line of no length: a dot with round or square ends, nothing otherwise.
      if (cap === 'butt') continue;
    }
    offset.addPath(
      path,
      join === 'round' ? JoinType.Round : join === 'bevel' ? JoinType.Bevel : JoinType.Miter,
      path.length === 1 && cap === 'round' ? EndType.Round : sub.closed && path.length > 2 ? EndType.Joined : ends,
    );
    const one: Paths64 = [];
    offset.execute((width / 2) * perUnit, one);
    out.push(...one);
  }
  if (!out.length) return emptyRegion;
  const [a, b, c, d, e, f] = matrix;
  const rings = out
    .filter((path) => path.length >= 3)
    .map((path) => {
      const ring = new Float64Array(path.length * 2);
      path.forEach((p, i) => {
        const x = p.x / perUnit,
          y = p.y / perUnit;
        ring[2 * i] = a * x + c * y + e;
        ring[2 * i + 1] = b * x + d * y + f;
      });
      return ring;
    });
  return tidy(clipRings(rings, reachMm), 'non-zero');
}

function toPath(sub: SubPath, perUnit: number): Path64 {
  const path: Path64 = [];
  for (let i = 0; i < sub.points.length; i += 2) {
    const x = Math.round(sub.points[i] * perUnit),
      y = Math.round(sub.points[i + 1] * perUnit);
    const last = path[path.length - 1];
    if (!last || last.x !== x || last.y !== y) path.push({ x, y });
  }
  if (sub.closed && path.length > 1 && path[0].x === path[path.length - 1].x && path[0].y === path[path.length - 1].y) path.pop();
  return path;
}
