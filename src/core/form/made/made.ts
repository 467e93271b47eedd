import { seeded } from '../../random.ts';
import { offsetRegion, simplify, takeAway, tidy, unite } from '../polygons.ts';
import { rectangle, type Region } from '../region.ts';
import { smoothRing } from '../trace/smooth.ts';
import { makeLetters, type Weight } from './letters.ts';

/** Shapes that everyone needs and nobody should have to draw. Lengths in mm. */
export type MadeShape =
  | { readonly kind: 'flat' | 'band'; readonly widthMm: number; readonly heightMm: number }
  | { readonly kind: 'circle'; readonly acrossMm: number }
  | { readonly kind: 'ring'; readonly acrossMm: number; readonly bandMm: number }
  | {
      readonly kind: 'comb';
      readonly stripes: number;
      readonly stripeMm: number;
      readonly gapMm: number;
      readonly lengthMm: number;
      /** What joins the stripes at one end; 0: they stand apart. */
      readonly backMm: number;
    }
  | {
      readonly kind: 'torn';
      readonly widthMm: number;
      readonly heightMm: number;
      readonly edges: 'top' | 'both' | 'all';
      /** How far the edge wanders. */
      readonly roughMm: number;
      readonly seed: number;
    }
  | {
      readonly kind: 'wave';
      readonly widthMm: number;
      readonly heightMm: number;
      readonly edges: 'top' | 'both';
      readonly lengthMm: number;
      readonly swingMm: number;
    }
  | { readonly kind: 'grid'; readonly columns: number; readonly rows: number; readonly cellMm: number; readonly gapMm: number }
  | {
      readonly kind: 'letters';
      readonly text: string;
      readonly capHeightMm: number;
      readonly weight: Weight;
      readonly bridgeMm: number;
      readonly spaceMm: number;
    };

export interface ShapeMade {
  readonly region: Region;
  /** Letters that the font does not have. */
  readonly missing: readonly string[];
}

const flatnessMm = 0.01;

export function makeShape(shape: MadeShape): ShapeMade {
  if (shape.kind === 'letters') return makeLetters(shape);
  return { region: regionOf(shape), missing: [] };
}

function regionOf(shape: Exclude<MadeShape, { kind: 'letters' }>): Region {
  switch (shape.kind) {
    case 'flat':
    case 'band':
      return rectangle(0, 0, shape.widthMm, shape.heightMm);
    case 'circle':
      return circle(shape.acrossMm / 2, shape.acrossMm / 2);
    case 'ring': {
      const r = shape.acrossMm / 2;
      return takeAway(circle(r, r), circle(r, Math.max(0, r - shape.bandMm)));
    }
    case 'comb': {
      const { stripes, stripeMm, gapMm, lengthMm, backMm } = shape;
      const all = Array.from({ length: stripes }, (_, i) => rectangle(i * (stripeMm + gapMm), 0, stripeMm, lengthMm));
      const widthMm = stripes * (stripeMm + gapMm) - gapMm;
      return unite(backMm > 0 ? [...all, rectangle(0, 0, widthMm, Math.min(backMm, lengthMm))] : all);
    }
    case 'grid': {
      const { columns, rows, cellMm, gapMm } = shape;
      const step = cellMm + gapMm;
      const cells = Array.from({ length: columns * rows }, (_, i) =>
        rectangle((i % columns) * step, Math.floor(i / columns) * step, cellMm, cellMm),
      );
      return gapMm > 0 ? { rings: cells.flatMap((cell) => cell.rings) } : unite(cells);
    }
    case 'wave':
      return wave(shape);
    case 'torn':
      return torn(shape);
  }
}

function circle(centre: number, r: number): Region {
  if (!(r > 0)) return { rings: [] };
  const n = Math.max(24, Math.ceil(Math.PI / Math.acos(1 - Math.min(0.5, flatnessMm / r))));
  const ring = new Float64Array(2 * n);
  // As large as the true circle in area: corners a little outside, sides a little inside.
  const out = r * Math.sqrt((2 * Math.PI) / n / Math.sin((2 * Math.PI) / n));
  for (let i = 0; i < n; i++) {
    ring[2 * i] = centre + out * Math.cos((2 * Math.PI * i) / n);
    ring[2 * i + 1] = centre + out * Math.sin((2 * Math.PI * i) / n);
  }
  return { rings: [ring] };
}

function wave({ widthMm, heightMm, edges, lengthMm, swingMm }: Extract<MadeShape, { kind: 'wave' }>): Region {
  const n = Math.max(2, Math.ceil(widthMm / Math.min(0.5, lengthMm / 40)));
  const at = (i: number): number => (swingMm / 2) * (1 - Math.cos((2 * Math.PI * widthMm * i) / n / lengthMm));
  const points: number[] = [];
  for (let i = 0; i <= n; i++) points.push((widthMm * i) / n, at(i));
  if (edges === 'both') for (let i = n; i >= 0; i--) points.push((widthMm * i) / n, heightMm - swingMm + at(i));
  else points.push(widthMm, heightMm, 0, heightMm);
  return tidy([Float64Array.from(points)], 'non-zero');
}

/** Points along a torn edge lie so far apart; paper tears in longer pulls with fine fibres between. */
const tornStepMm = 0.8;

/** A line that wanders as torn paper does: coarse pulls, and at each finer scale three fifths of the swing before. */
function wander(lengthMm: number, roughMm: number, random: { next(): number }): number[] {
  const n = Math.max(4, Math.ceil(lengthMm / tornStepMm));
  const out = new Array<number>(n + 1).fill(0);
  let whole = 0;
  for (let pullMm = Math.max(8 * tornStepMm, lengthMm / 4), swing = 1; pullMm > tornStepMm; pullMm /= 2.1, swing *= 0.6) {
    const knots = Array.from({ length: Math.ceil(lengthMm / pullMm) + 2 }, () => random.next() * 2 - 1);
    whole += swing;
    for (let i = 0; i <= n; i++) {
      const at = (i * lengthMm) / n / pullMm,
        k = Math.floor(at),
        t = at - k;
      const s = t * t * (3 - 2 * t);
      out[i] += swing * (knots[k] * (1 - s) + knots[k + 1] * s);
    }
  }
  return out.map((v) => (v / whole) * (roughMm / 2));
}

function torn({ widthMm, heightMm, edges, roughMm, seed }: Extract<MadeShape, { kind: 'torn' }>): Region {
  const random = seeded(seed);
  const rough = Math.min(roughMm, widthMm / 3, heightMm / 3);
  const half = rough / 2;
  const side = (lengthMm: number, is: boolean): number[] => (is ? wander(lengthMm, rough, random) : [0, 0]);
  const top = side(widthMm, true),
    right = side(heightMm, edges === 'all'),
    bottom = side(widthMm, edges !== 'top'),
    left = side(heightMm, edges === 'all');
  const points: number[] = [];
  const along = (list: readonly number[], put: (t: number, off: number) => readonly [number, number]): void => {
    list.slice(0, -1).forEach((off, i) => points.push(...put(i / (list.length - 1), off)));
  };
  const l = edges === 'all' ? half : 0,
    b = edges === 'top' ? 0 : half;
  const w = widthMm - 2 * l,
    h = heightMm - half - b;
  along(top, (t, off) => [l + w * t, half + off]);
  along(right, (t, off) => [l + w + off, half + h * t]);
  along(bottom, (t, off) => [l + w * (1 - t), half + h + off]);
  along(left, (t, off) => [l + off, half + h * (1 - t)]);
  return tidy([Float64Array.from(points)], 'non-zero');
}

/** A hand that draws trembles by about this much. */
const trembleMm = 0.6;

/**
 * A line drawn by finger or pen, closed, as a shape that a knife follows with ease: the tremble is taken out, loops smaller
 * than a tremble go, and what crosses itself counts by what it surrounds.
 */
export function pencilShape(points: readonly (readonly [number, number])[], smoothMm = trembleMm): Region {
  const ring = Float64Array.from(points.flat());
  if (ring.length < 6) return { rings: [] };
  const calm = smoothRing(ring, 0.25, smoothMm);
  const whole = tidy([calm], 'non-zero');
  // In and out again: hairs and slits that the line's crossing left behind close.
  const opened = offsetRegion(offsetRegion(whole, -0.2, 'round'), 0.2, 'round');
  return simplify(offsetRegion(offsetRegion(opened, 0.2, 'round'), -0.2, 'round'), 0.02);
}

/** The openings of a plate: everything that its outer outline surrounds and it does not cover. */
export function openingsOf(plate: Region): Region {
  const outer = unite(plate.rings.map((ring) => ({ rings: [ring] })));
  return takeAway(outer, plate);
}
