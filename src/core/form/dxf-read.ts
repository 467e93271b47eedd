import { entitiesOf, growthOf, mapPath } from './dxf-entities.ts';
import type { Entity } from './dxf-entities.ts';
import { figure, say, type Saying } from '../../words/say.ts';
import { fail, problem } from '../problem.ts';
import type { Problem } from '../problem.ts';
import { fileAt } from './file-at.ts';
import { tidy } from './polygons.ts';
import { mapRegion } from './place.ts';
import { regionArea, regionBox } from './region.ts';
import type { Drawing } from './svg/read-svg.ts';
import { refuseTangle } from './svg/guard/tangle.ts';

/** Millimetres per drawing unit by $INSUNITS (DXF Reference, HEADER section). */
const unitMm: Readonly<Record<number, number>> = {
  1: 25.4,
  2: 304.8,
  4: 1,
  5: 10,
  6: 1000,
  8: 0.0000254,
  9: 0.0254,
  10: 914.4,
  13: 0.001,
  14: 100,
};
const flatness = 0.02;
const mostCharacters = 40_000_000,
  mostPoints = 2_000_000;

/**
 * Reads the closed outlines of a DXF text (lines, arcs, circles, ellipses, polylines with bulges, splines): open ends
 * that meet within 0.05 mm are joined, what stays open is left out with a warning. Rings inside rings are holes.
 * Without units in the file, millimetres are taken and a warning given. `file`: its name, for messages.
 */
export function readDxf(text: string, file: string): Drawing {
  const place = fileAt(file);
  if (text.length > mostCharacters)
    fail(
      'drawing-too-large',
      place,
      say('form.tooManyCharacters', { size: figure(Math.ceil(text.length / 1e5) / 10, 1), most: mostCharacters / 1e6 }),
      say('form.leaveOutUncut'),
    );
  if (/^\w+ Binary DXF/.test(text.slice(0, 40))) fail('drawing-binary', place, say('form.dxfBinary'), say('form.saveDxfAsText'));
  const pairs = readPairs(text, file);
  const unitAt = pairs.findIndex(([code, value]) => code === 9 && value === '$INSUNITS');
  const unit = unitAt >= 0 ? Number(pairs[unitAt + 1]?.[1]) : 0;
  const scale = unitMm[unit] ?? 1;
  const problems: Problem[] = [];
  if (!unitMm[unit]) problems.push(problem('warning', 'drawing-no-units', place, say('form.noUnit'), say('form.giveTrueSize')));
  const { placed, tooMany } = entitiesOf(pairs);
  if (tooMany) fail('drawing-too-large', place, say('form.tooManyLinesInBlocks'), say('form.fewerRepeats'));
  const drawn: number[][] = [];
  let points = 0;
  for (const { entity, frame } of placed) {
    for (const path of pathOf(entity, flatness / scale / Math.max(1e-6, growthOf(frame)), place, problems)) {
      points += path.length / 2;
      if (points > mostPoints) fail('drawing-too-large', place, say('form.tooManyLinesInBlocks'), say('form.fewerRepeats'));
      if (path.length >= 4) drawn.push(mapPath(path, frame));
    }
  }
  const paths = withoutTwins(drawn, 0.05 / scale);
  const { rings, open } = joinEnds(paths, 0.05 / scale);
  if (open) problems.push(problem('warning', 'drawing-open-lines', place, say('form.linesOpen', { n: open }), say('form.closeOutlines')));
  refuseTangle(
    rings.map((ring) => Float64Array.from(ring)),
    place,
  );
  // y goes up in a DXF and down here.
  const scaled = rings.map((ring) => Float64Array.from(ring, (v, i) => (i % 2 ? -v * scale : v * scale)));
  // A drawing in map coordinates lies far out as a whole: brought near, nothing of it is lost.
  const near = broughtNear(scaled);
  const kept = near.filter((ring) => ring.every((v) => Math.abs(v) < farMm));
  if (kept.length < near.length)
    problems.push(
      problem('warning', 'drawing-far-away', place, say('form.farOut', { n: near.length - kept.length }), say('form.moveToOrigin')),
    );
  const region = tidy(kept, 'even-odd');
  if (!(regionArea(region) > 0)) fail('drawing-empty', place, say('form.noOutline'), say('form.closeAndSaveDxf'));
  const box = regionBox(region);
  return {
    region: mapRegion(region, (x, y) => [x - box.minX, y - box.minY]),
    widthMm: box.maxX - box.minX,
    heightMm: box.maxY - box.minY,
    hasPhysicalUnits: Boolean(unitMm[unit]),
    reading: { what: 'silhouette' },
    seen: { colours: [], whiteOnTop: false, fullPage: false },
    problems,
  };
}

/** Farther out than this, whole microns are no longer exact enough. */
const farMm = 1e6;

/** Everything moved by whole millimetres so that the middle outline lies at the origin, where that is far from it. */
function broughtNear(rings: readonly Float64Array[]): readonly Float64Array[] {
  const middle = (axis: 0 | 1): number => {
    const starts = rings.map((ring) => ring[axis]).sort((a, b) => a - b);
    return Math.round(starts[starts.length >> 1] ?? 0);
  };
  const [x, y] = [middle(0), middle(1)];
  if (Math.max(Math.abs(x), Math.abs(y)) < farMm / 100 || !Number.isFinite(x + y)) return rings;
  return rings.map((ring) => ring.map((v, i) => v - (i % 2 === 0 ? x : y)));
}

function readPairs(text: string, file: string): [number, string][] {
  const lines = text.split(/\r\n|\n|\r/);
  const pairs: [number, string][] = [];
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const code = Number(lines[i].trim());
    if (!Number.isInteger(code) || lines[i].trim() === '')
      fail('drawing-not-dxf', fileAt(file, i + 1), say('form.dxfDamaged'), say('form.saveDxfAgain'));
    pairs.push([code, lines[i + 1].trim()]);
  }
  if (!pairs.some(([code, value]) => code === 0 && value === 'SECTION'))
    fail('drawing-not-dxf', fileAt(file), say('form.notDxf'), say('form.saveDxfAgain'));
  // A DXF file ends with EOF, and every section before it with ENDSEC (DXF Reference, file structure).
  const sections = (name: string): number => pairs.filter(([code, value]) => code === 0 && value === name).length;
  if (!pairs.some(([code, value]) => code === 0 && value === 'EOF') || sections('ENDSEC') < sections('SECTION'))
    fail('drawing-breaks-off', fileAt(file, lines.length), say('form.dxfBreaksOff'), say('form.saveDxfAgain'));
  return pairs;
}

function pathOf(entity: Entity, tolerance: number, place: Saying, problems: Problem[]): number[][] {
  const warn = (code: string, message: Saying, advice: Saying): void => {
    if (!problems.some((p) => p.code === code)) problems.push(problem('warning', code, place, message, advice));
  };
  const one = (code: number, usual = 0): number => Number(entity.codes.find(([c]) => c === code)?.[1] ?? usual);
  const all = (code: number): number[] => entity.codes.filter(([c]) => c === code).map(([, v]) => Number(v));
  switch (entity.kind) {
    case 'LINE':
      return [[one(10), one(20), one(11), one(21)]];
    case 'CIRCLE':
      return [closed(ellipse(one(10), one(20), one(40), 0, 1, 0, 2 * Math.PI, tolerance))];
    case 'ARC': {
      const from = (one(50) * Math.PI) / 180;
      let to = (one(51) * Math.PI) / 180;
      if (to <= from) to += 2 * Math.PI;
      return [ellipse(one(10), one(20), one(40), 0, 1, from, to, tolerance)];
    }
    case 'ELLIPSE': {
      const from = one(41, 0);
      let to = one(42, 2 * Math.PI);
      if (to <= from) to += 2 * Math.PI;
      const path = ellipse(one(10), one(20), one(11), one(21), one(40, 1), from, to, tolerance);
      return [to - from > 2 * Math.PI - 1e-6 ? closed(path) : path];
    }
    case 'LWPOLYLINE':
      return [polyline(entity, (one(70) & 1) === 1, tolerance)];
    case 'SPLINE':
      if (all(10).length === 0 && all(11).length > 1) {
        warn('drawing-fit-points', say('form.curveByPoints'), say('form.curvesToPolylines'));
        const ys = all(21);
        return [all(11).flatMap((x, i) => [x, ys[i] ?? 0])];
      } else return [spline(one(71, 3), all(40), all(10), all(20), all(41), (one(70) & 1) === 1, tolerance)];
    case 'TEXT':
    case 'MTEXT':
      warn('drawing-has-text', say('form.textLeftOut'), say('form.textToOutlines'));
      return [];
    case 'HATCH':
    case '3DSOLID':
    case 'REGION':
      warn('drawing-has-blocks', say('form.solidsLeftOut'), say('form.explodeSolids'));
      return [];
    default:
      return [];
  }
}

function closed(path: number[]): number[] {
  path[path.length - 2] = path[0];
  path[path.length - 1] = path[1];
  return path;
}

/** Major axis as a vector (mx, my), the minor one `ratio` times as long, parameter from..to. */
function ellipse(cx: number, cy: number, mx: number, my: number, ratio: number, from: number, to: number, tolerance: number): number[] {
  const r = Math.hypot(mx, my);
  if (!(r > 0) || !Number.isFinite(r)) return [];
  const step = 2 * Math.acos(Math.max(0, 1 - Math.min(1, tolerance / r)));
  const steps = Math.min(4000, Math.max(4, Math.ceil((to - from) / step)));
  const out: number[] = [];
  for (let i = 0; i <= steps; i++) {
    const t = from + ((to - from) * i) / steps,
      c = Math.cos(t),
      s = Math.sin(t) * ratio;
    out.push(cx + mx * c - my * s, cy + my * c + mx * s);
  }
  return out;
}

/** Vertices with bulges: the tangent of a quarter of the arc's angle, positive anticlockwise. */
function polyline(entity: Entity, isClosed: boolean, tolerance: number): number[] {
  const points: { x: number; y: number; bulge: number }[] = [];
  for (const [code, value] of entity.codes) {
    if (code === 10) points.push({ x: Number(value), y: 0, bulge: 0 });
    else if (code === 20 && points.length) points[points.length - 1].y = Number(value);
    else if (code === 42 && points.length) points[points.length - 1].bulge = Number(value);
  }
  const out: number[] = [];
  const last = isClosed ? points.length : points.length - 1;
  for (let i = 0; i < last; i++) {
    const a = points[i],
      b = points[(i + 1) % points.length];
    if (i === 0) out.push(a.x, a.y);
    if (a.bulge !== 0) {
      const angle = 4 * Math.atan(a.bulge);
      const dx = b.x - a.x,
        dy = b.y - a.y;
      const k = (1 - a.bulge * a.bulge) / (4 * a.bulge);
      const cx = (a.x + b.x) / 2 - dy * k,
        cy = (a.y + b.y) / 2 + dx * k;
      const r = Math.hypot(a.x - cx, a.y - cy),
        from = Math.atan2(a.y - cy, a.x - cx);
      const steps = Math.min(2000, Math.max(2, Math.ceil(Math.abs(angle) / (2 * Math.acos(Math.max(0, 1 - Math.min(1, tolerance / r)))))));
      for (let s = 1; s < steps; s++)
        out.push(cx + r * Math.cos(from + (angle * s) / steps), cy + r * Math.sin(from + (angle * s) / steps));
    }
    out.push(b.x, b.y);
  }
  return out;
}

/** A B-spline (with weights, if given) by de Boor's algorithm. */
function spline(
  degree: number,
  knots: readonly number[],
  xs: readonly number[],
  ys: readonly number[],
  weights: readonly number[],
  isClosed: boolean,
  tolerance: number,
): number[] {
  const n = xs.length;
  if (n < 2 || degree < 1 || degree > 10 || knots.length < n + degree + 1) return [];
  const at = (t: number): [number, number] => {
    let k = degree;
    while (k < n - 1 && t >= knots[k + 1]) k++;
    const px: number[] = [],
      py: number[] = [],
      pw: number[] = [];
    for (let j = 0; j <= degree; j++) {
      const i = k - degree + j,
        w = weights.length === n ? weights[i] : 1;
      px.push(xs[i] * w);
      py.push(ys[i] * w);
      pw.push(w);
    }
    for (let r = 1; r <= degree; r++) {
      for (let j = degree; j >= r; j--) {
        const i = k - degree + j,
          low = knots[i],
          span = knots[i + degree - r + 1] - low;
        const a = span > 0 ? (t - low) / span : 0;
        px[j] = (1 - a) * px[j - 1] + a * px[j];
        py[j] = (1 - a) * py[j - 1] + a * py[j];
        pw[j] = (1 - a) * pw[j - 1] + a * pw[j];
      }
    }
    return [px[degree] / pw[degree], py[degree] / pw[degree]];
  };
  const out: number[] = [];
  out.push(...at(knots[degree]));
  for (let k = degree; k < n; k++) {
    const a = knots[k],
      b = knots[k + 1];
    if (!(b > a)) continue;
    // As many steps as the control polygon's length asks for at this tolerance; generous.
    let length = 0;
    for (let i = Math.max(1, k - degree + 1); i <= Math.min(n - 1, k); i++) length += Math.hypot(xs[i] - xs[i - 1], ys[i] - ys[i - 1]);
    const steps = Math.min(500, Math.max(4, Math.ceil(Math.sqrt(length / tolerance))));
    for (let s = 1; s <= steps; s++) out.push(...at(s === steps ? b - (b - a) * 1e-12 : a + ((b - a) * s) / steps));
    if (out.length > 2 * mostPoints) return [];
  }
  if (isClosed && Math.hypot(out[0] - out[out.length - 2], out[1] - out[out.length - 1]) < tolerance * 4) closed(out);
  return out;
}

/** What was drawn twice in the same place counts once: two equal outlines would cancel each other, two equal lines lead back. */
function withoutTwins(paths: readonly number[][], reach: number): number[][] {
  const known = new Set<string>();
  return paths.filter((path) => {
    const n = path.length;
    const at = (i: number): string => `${Math.round(path[i] / reach)},${Math.round(path[i + 1] / reach)}`;
    let length = 0,
      sumX = 0,
      sumY = 0;
    for (let i = 2; i < n; i += 2) {
      const step = Math.hypot(path[i] - path[i - 2], path[i + 1] - path[i - 1]);
      length += step;
      sumX += (step * (path[i] + path[i - 2])) / 2;
      sumY += (step * (path[i + 1] + path[i - 1])) / 2;
    }
    const ends = at(0) < at(n - 2) ? `${at(0)} ${at(n - 2)}` : `${at(n - 2)} ${at(0)}`;
    const closes = at(0) === at(n - 2);
    const key = `${closes ? '' : ends} ${Math.round(length / reach)} ${Math.round(sumX / (length || 1) / reach)} ${Math.round(sumY / (length || 1) / reach)}`;
    if (known.has(key)) return false;
    known.add(key);
    return true;
  });
}

/** Chains paths end to end into closed rings. */
function joinEnds(paths: readonly number[][], reach: number): { rings: number[][]; open: number } {
  const rings: number[][] = [];
  const waiting: number[][] = [];
  const near = (ax: number, ay: number, bx: number, by: number): boolean => Math.hypot(ax - bx, ay - by) <= reach;
  for (const path of paths) {
    if (path.length >= 8 && near(path[0], path[1], path[path.length - 2], path[path.length - 1])) rings.push(path.slice(0, -2));
    else waiting.push(path);
  }
  // Ends by cells of the reach, so that many short lines are no trouble.
  const cells = new Map<string, Set<number>>();
  const cell = (x: number, y: number, dx: number, dy: number): string => `${Math.round(x / reach) + dx},${Math.round(y / reach) + dy}`;
  waiting.forEach((path, i) => {
    for (const [x, y] of [
      [path[0], path[1]],
      [path[path.length - 2], path[path.length - 1]],
    ]) {
      const key = cell(x, y, 0, 0);
      cells.set(key, (cells.get(key) ?? new Set()).add(i));
    }
  });
  const used = new Uint8Array(waiting.length);
  let open = 0;
  waiting.forEach((first, start) => {
    if (used[start]) return;
    used[start] = 1;
    const chain = [...first];
    for (;;) {
      const ex = chain[chain.length - 2],
        ey = chain[chain.length - 1];
      if (chain.length >= 8 && near(ex, ey, chain[0], chain[1])) {
        rings.push(chain.slice(0, -2));
        return;
      }
      let next = -1,
        turned = false;
      for (let dx = -1; dx <= 1 && next < 0; dx++) {
        for (let dy = -1; dy <= 1 && next < 0; dy++) {
          for (const i of cells.get(cell(ex, ey, dx, dy)) ?? []) {
            if (used[i]) continue;
            const p = waiting[i];
            if (near(ex, ey, p[0], p[1])) next = i;
            else if (near(ex, ey, p[p.length - 2], p[p.length - 1])) {
              next = i;
              turned = true;
            }
            if (next >= 0) break;
          }
        }
      }
      if (next < 0) {
        open++;
        return;
      }
      used[next] = 1;
      const p = waiting[next];
      if (turned) for (let i = p.length - 4; i >= 0; i -= 2) chain.push(p[i], p[i + 1]);
      else for (let i = 2; i < p.length; i++) chain.push(p[i]);
    }
  });
  return { rings, open };
}
