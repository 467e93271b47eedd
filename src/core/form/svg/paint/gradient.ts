import { tidy } from '../../polygons.ts';
import { regionBox, type Region } from '../../region.ts';
import { chain, inverse, readMatrix, type Matrix } from '../path.ts';
import type { Tag } from '../tree.ts';

/** Where the offsets of a gradient lie (SVG 2, section 14.2). */
export interface GradientPlace {
  readonly kind: 'linear' | 'radial';
  readonly spread: 'pad' | 'reflect' | 'repeat';
  /** From the working scale into the gradient's own coordinates, and back. */
  readonly into: Matrix;
  readonly back: Matrix;
  /** Linear: from, to. Radial: focus and centre. */
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly r: number;
}

export function gradientPlace({ name, attributes }: Tag, base: Matrix): GradientPlace | undefined {
  const back = chain(base, readMatrix(attributes['gradientTransform']));
  const into = inverse(back);
  if (!into) return undefined;
  const number = (key: string, usual: number): number => (attributes[key] === undefined ? usual : Number(attributes[key]) || 0);
  const method = attributes['spreadMethod'];
  const spread = method === 'reflect' || method === 'repeat' ? method : 'pad';
  if (name === 'linearGradient') {
    const place = { x1: number('x1', 0), y1: number('y1', 0), x2: number('x2', 1), y2: number('y2', 0) };
    return Math.hypot(place.x2 - place.x1, place.y2 - place.y1) > 0 ? { kind: 'linear', spread, into, back, ...place, r: 0 } : undefined;
  }
  const x2 = number('cx', 0.5),
    y2 = number('cy', 0.5),
    r = number('r', 0.5);
  if (!(r > 0)) return undefined;
  let x1 = number('fx', x2),
    y1 = number('fy', y2);
  // A focus on the rim or outside is drawn in a little, as SVG 1.1 has it.
  const off = Math.hypot(x1 - x2, y1 - y2);
  if (off > 0.99 * r) {
    x1 = x2 + ((x1 - x2) * 0.99 * r) / off;
    y1 = y2 + ((y1 - y2) * 0.99 * r) / off;
  }
  return { kind: 'radial', spread, into, back, x1, y1, x2, y2, r };
}

const apply = ([a, b, c, d, e, f]: Matrix, x: number, y: number): readonly [number, number] => [a * x + c * y + e, b * x + d * y + f];

/** How far along a gradient a point of the working scale lies; not yet folded back into 0..1. */
export function along(place: GradientPlace, x: number, y: number): number {
  const [px, py] = apply(place.into, x, y);
  const { x1, y1, x2, y2, r } = place;
  const dx = x2 - x1,
    dy = y2 - y1;
  if (place.kind === 'linear') return ((px - x1) * dx + (py - y1) * dy) / (dx * dx + dy * dy);
  // The t of the circle round focus + t (centre − focus) with radius t r that passes through the point.
  const qx = px - x1,
    qy = py - y1;
  const a = r * r - dx * dx - dy * dy,
    b = qx * dx + qy * dy;
  return (Math.sqrt(b * b + a * (qx * qx + qy * qy)) - b) / a;
}

/** Folds an offset back into 0..1. */
export function folded(spread: GradientPlace['spread'], t: number): number {
  if (spread === 'pad') return Math.max(0, Math.min(1, t));
  const whole = Math.floor(t);
  return spread === 'repeat' || whole % 2 === 0 ? t - whole : 1 - (t - whole);
}

const perUnit = 128,
  mostUnits = 60,
  farMm = 4000;

/** Where, over the box of a shape, the offsets of a gradient pass `test`: strips or rings, exact to the bend of a circle. */
export function bandsWhere(place: GradientPlace, over: Region, test: (at: number) => boolean): Region {
  const box = regionBox(over);
  const corners = [
    [box.minX, box.minY],
    [box.maxX, box.minY],
    [box.maxX, box.maxY],
    [box.minX, box.maxY],
  ].map(([x, y]) => along(place, x, y));
  let low = place.kind === 'radial' ? 0 : Math.min(...corners),
    high = Math.max(...corners);
  const passes = (t: number): boolean => test(folded(place.spread, t));
  const openLow = place.spread === 'pad' && low < 0,
    openHigh = place.spread === 'pad' && high > 1;
  if (place.spread === 'pad') {
    low = Math.max(0, low);
    high = Math.min(1, high);
    if (low > 1) low = high = 1;
    if (high < 0) low = high = 0;
  }
  high = Math.min(high, low + mostUnits);
  const steps = Math.max(1, Math.ceil((high - low) * perUnit));
  const at = (i: number): number => low + ((high - low) * i) / steps;
  const edge = (a: number, b: number): number => {
    const first = passes(a);
    let one = a,
      two = b;
    for (let k = 0; k < 14; k++) {
      const middle = (one + two) / 2;
      if (passes(middle) === first) one = middle;
      else two = middle;
    }
    return (one + two) / 2;
  };
  const bands: [number, number][] = [];
  let from: number | undefined = passes(low) ? (openLow || place.kind === 'linear' ? -Infinity : low) : undefined;
  for (let i = 1; i <= steps; i++) {
    const now = passes(at(i));
    if (now === (from !== undefined)) continue;
    const t = edge(at(i - 1), at(i));
    if (from === undefined) from = t;
    else {
      bands.push([from, t]);
      from = undefined;
    }
  }
  if (from !== undefined) bands.push([from, openHigh || place.kind === 'linear' ? Infinity : high + 1]);
  return tidy(
    bands.flatMap(([a, b]) => (place.kind === 'linear' ? strip(place, a, b) : ring(place, a, b))),
    'even-odd',
  );
}

/** Corners of a strip across the gradient's line, reaching far beyond anything drawn. */
function strip(place: GradientPlace, from: number, to: number): Float64Array[] {
  const { x1, y1, x2, y2, back } = place;
  const dx = x2 - x1,
    dy = y2 - y1;
  // How far, in offsets and in lengths of the line, `farMm` reaches.
  const grown = Math.hypot(...apply([back[0], back[1], back[2], back[3], 0, 0], dx, dy)),
    across = Math.hypot(...apply([back[0], back[1], back[2], back[3], 0, 0], -dy, dx));
  const reach = farMm / Math.max(1e-9, grown),
    side = farMm / Math.max(1e-9, across);
  const a = Math.max(-reach, Math.min(reach, from)),
    b = Math.max(-reach, Math.min(reach, to));
  const corner = (t: number, s: number): readonly [number, number] => apply(back, x1 + dx * t - dy * s, y1 + dy * t + dx * s);
  return [Float64Array.from([corner(a, -side), corner(b, -side), corner(b, side), corner(a, side)].flat())];
}

const pointsRound = 180;

function ring(place: GradientPlace, from: number, to: number): Float64Array[] {
  const { x1, y1, x2, y2, r, back } = place;
  const circle = (t: number): Float64Array => {
    const out = new Float64Array(2 * pointsRound);
    for (let i = 0; i < pointsRound; i++) {
      const turn = (2 * Math.PI * i) / pointsRound;
      const [x, y] = apply(back, x1 + (x2 - x1) * t + r * t * Math.cos(turn), y1 + (y2 - y1) * t + r * t * Math.sin(turn));
      out[2 * i] = x;
      out[2 * i + 1] = y;
    }
    return out;
  };
  const outer = to === Infinity ? Float64Array.of(-farMm, -farMm, farMm, -farMm, farMm, farMm, -farMm, farMm) : circle(to);
  return from > 0 ? [outer, circle(from)] : [outer];
}
