import { log, solveDamped } from '../../numeric/index.ts';
import { sampleQuad, type Photograph, type Point, type Quad } from '../../ink/index.ts';
import { cellAt, type Depths } from '../../print/index.ts';

/** A square on the print, mm from the image's top left corner. */
export interface Square {
  readonly xMm: number;
  readonly yMm: number;
  readonly sideMm: number;
}

/** What is read stays so far from an edge: register, and corners that were laid by hand. */
export const clearMm = 1;
export const leastSideMm = 1.5;
const mostSideMm = 8;
/** Looked for in so many parts along each side of the image. */
const parts = 4;

/** The square that lies clear of everything around a place. */
export function squareAt([xMm, yMm]: readonly [number, number], reachMm: number): Square | null {
  const sideMm = Math.min(mostSideMm, (reachMm - clearMm) * Math.SQRT2);
  return sideMm < leastSideMm ? null : { xMm, yMm, sideMm };
}

/** Where paper should lie bare: inside the image, which is sure, and on the sheet around it, if nothing lies there and it wasn't cut down. */
export interface BarePlaces<T> {
  readonly inside: readonly T[];
  readonly around: readonly T[];
}

export function barePlaces(
  depths: Depths,
  image: { readonly widthMm: number; readonly heightMm: number },
  /** How far the sheet goes beyond the image, mm: left, top, right, bottom. */
  margins: readonly [number, number, number, number],
): BarePlaces<Square> {
  const best = new Map<number, number>();
  depths.codes.forEach((code, cell) => {
    if (code !== 0) return;
    const part =
      Math.floor(((cell % depths.width) * parts) / depths.width) +
      parts * Math.floor((Math.floor(cell / depths.width) * parts) / depths.height);
    const known = best.get(part);
    if (known === undefined || depths.mm[cell] > depths.mm[known]) best.set(part, cell);
  });
  const inside = [...best.values()].map((cell) => squareAt(cellAt(depths, cell), depths.mm[cell]));
  const { widthMm: w, heightMm: h } = image;
  const around = margins.flatMap((margin, side) => {
    const off = Math.min(margin / 2, 10);
    return Array.from({ length: parts }, (_, i) => {
      const along = (i + 0.5) / parts;
      const at = [
        [-off, along * h],
        [along * w, -off],
        [w + off, along * h],
        [along * w, h + off],
      ][side] as [number, number];
      return squareAt(at, off);
    });
  });
  const clear = (squares: readonly (Square | null)[]): Square[] => squares.filter((square) => square !== null);
  return { inside: clear(inside), around: clear(around) };
}

/** Of light from place to place, and of one channel against another, both as logarithms; of noise, relative. */
const apart = { light: 0.15, near: 0.3, hue: 0.1, noise: 0.12 } as const;

/**
 * Of places that should be bare paper, those that look like one paper under one light: within the photograph, even in themselves, of one hue, as
 * light as the surest place nearest by, on one smooth plane of light. A table beyond a sheet cut down, a tab or a thumb falls out.
 */
export function reallyBare(photo: Photograph, places: BarePlaces<Quad>): Quad[] {
  const seen = (quads: readonly Quad[]): Seen[] =>
    quads
      .filter((quad) => quad.every(([x, y]) => x >= 1 && y >= 1 && x <= photo.width - 2 && y <= photo.height - 2))
      .map((quad) => ({ quad, sample: sampleQuad(photo, quad) }))
      .filter(({ sample }) => sample.noise <= apart.noise)
      .map(({ quad, sample: { rgb, centre } }) => ({
        quad,
        centre,
        light: logOf(rgb[1]),
        hues: [0, 2].map((c) => logOf(rgb[c]) - logOf(rgb[1])),
      }));
  const inside = seen(places.inside),
    all = [...inside, ...seen(places.around)];
  // Without enough bare paper in the image, the lightest places around it: paper is lighter than what it lies on.
  const lightest = Math.max(...all.map((s) => s.light));
  const sure = inside.length >= 3 ? inside : all.filter((s) => s.light > lightest - 0.5);
  const hues = [0, 1].map((c) => middle(sure.map((s) => s.hues[c])));
  const nearest = (s: Seen): Seen => sure.reduce((best, one) => (distance(one, s) < distance(best, s) ? one : best));
  let kept = all.filter(
    (s) => hues.every((hue, c) => Math.abs(s.hues[c] - hue) <= apart.hue) && Math.abs(s.light - nearest(s).light) <= apart.near,
  );
  while (kept.length > 4) {
    const off = offPlane(
      kept.map((s) => s.centre),
      kept.map((s) => s.light),
    );
    const worst = off.reduce((most, v, i) => (v > off[most] ? i : most), 0);
    if (off[worst] <= apart.light) break;
    kept = kept.filter((_, i) => i !== worst);
  }
  return kept.map((s) => s.quad);
}

interface Seen {
  readonly quad: Quad;
  readonly centre: Point;
  readonly light: number;
  /** Red and blue against green. */
  readonly hues: readonly number[];
}

const logOf = (light: number): number => log(Math.max(1e-4, light));
const middle = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0;
const distance = (a: Seen, b: Seen): number => Math.hypot(a.centre[0] - b.centre[0], a.centre[1] - b.centre[1]);

/** How far each value lies off the plane through all. */
function offPlane(at: readonly (readonly [number, number])[], values: readonly number[]): number[] {
  const span = Math.max(1, ...at.flat());
  const A = new Float64Array(9),
    b = new Float64Array(3);
  const terms = at.map(([x, y]) => [1, x / span, y / span]);
  terms.forEach((t, i) => {
    for (let p = 0; p < 3; p++) {
      b[p] += t[p] * values[i];
      for (let q = 0; q < 3; q++) A[p * 3 + q] += t[p] * t[q];
    }
  });
  const plane = solveDamped(A, b, 1e-9);
  return terms.map((t, i) => Math.abs(values[i] - t[0] * plane[0] - t[1] * plane[1] - t[2] * plane[2]));
}
