import fitCurve from 'fit-curve';
import { unite, type Region } from '../../form/index.ts';
import { ringsOfLayer, traceArcs, type Arc } from './trace.ts';

/** Fitting works in units of a quarter of the tolerance: the library takes its error squared and iterates only above 1. */
const unitsPerTolerance = 4;
/** Curves become straight pieces within this, as everywhere in the house (form/region.ts). */
const flatMm = 0.02;

/**
 * Smooth outlines of every layer. Each edge between two codes is traced and fitted once, so edges that coincide between
 * layers stay coincident, and where edges meet they meet in one point.
 * @returns one region a layer, mm
 */
export function outlinesOf(codes: Uint8Array, width: number, height: number, mmPerPx: number, layers: number, toleranceMm = 0.1): Region[] {
  const arcs = traceArcs(codes, width, height);
  const smooth = arcs.map((arc) => smoothed(arc, width, height, mmPerPx, toleranceMm));
  return Array.from({ length: layers }, (_, layer) => {
    const rings = ringsOfLayer(arcs, smooth, layer, width);
    return rings.length > 0 ? unite([{ rings }]) : { rings: [] };
  });
}

/** Points of a smoothed arc in mm; an open arc keeps its ends, a closed one ends where it starts. */
export function smoothed(arc: Arc, width: number, height: number, mmPerPx: number, toleranceMm: number): Float64Array {
  const { points } = arc;
  if (onBorder(points, width, height)) return scaled([points[0], points[1], points[points.length - 2], points[points.length - 1]], mmPerPx);
  const dots: [number, number][] = [];
  const scale = (unitsPerTolerance * mmPerPx) / toleranceMm;
  if (!arc.closed) dots.push([points[0] * scale, points[1] * scale]);
  for (let i = 0; i + 3 < points.length; i += 2)
    dots.push([((points[i] + points[i + 2]) / 2) * scale, ((points[i + 1] + points[i + 3]) / 2) * scale]);
  dots.push(arc.closed ? [dots[0][0], dots[0][1]] : [points[points.length - 2] * scale, points[points.length - 1] * scale]);
  // Calming takes up to half of the tolerance, the fit the rest.
  const curves = fitCurve(calmed(dots, arc.closed, unitsPerTolerance * 0.5), (unitsPerTolerance * 0.6) ** 2);
  const out: number[] = [dots[0][0], dots[0][1]];
  for (const curve of curves) flatten(curve, (flatMm / mmPerPx) * scale, out);
  const last = dots[dots.length - 1];
  out[out.length - 2] = last[0];
  out[out.length - 1] = last[1];
  return scaled(out, mmPerPx / scale);
}

/**
 * The staircase calmed before fitting, or its steps would pass for tangents: five neighbours by 1 4 6 4 1, no point moved farther
 * than `most`, ends kept. A straight edge of any slope comes out straight, a corner gives way by half the tolerance.
 */
function calmed(dots: readonly [number, number][], closed: boolean, most: number): [number, number][] {
  const n = closed ? dots.length - 1 : dots.length;
  if (n < 5) return dots.slice();
  const at = (i: number): [number, number] => (closed ? dots[(i + n) % n] : dots[Math.max(0, Math.min(n - 1, i))]);
  const out = dots.slice();
  for (let i = closed ? 0 : 1; i < (closed ? n : n - 1); i++) {
    const move = [0, 1].map(
      (axis) => (at(i - 2)[axis] + 4 * at(i - 1)[axis] + 4 * at(i + 1)[axis] + at(i + 2)[axis] - 10 * at(i)[axis]) / 16,
    );
    const length = Math.hypot(move[0], move[1]),
      share = length > most ? most / length : 1;
    out[i] = [dots[i][0] + move[0] * share, dots[i][1] + move[1] * share];
  }
  if (closed) out[n] = out[0];
  return out;
}

function onBorder(p: Int32Array, width: number, height: number): boolean {
  const all = (axis: number, value: number): boolean => {
    for (let i = axis; i < p.length; i += 2) if (p[i] !== value) return false;
    return true;
  };
  return all(0, 0) || all(0, width) || all(1, 0) || all(1, height);
}

/** Appends a cubic Bézier as straight pieces, its first point left out. Piece count from the second differences of its controls. */
function flatten([a, b, c, d]: readonly (readonly number[])[], tolerance: number, out: number[]): void {
  const bend = Math.max(
    Math.hypot(a[0] - 2 * b[0] + c[0], a[1] - 2 * b[1] + c[1]),
    Math.hypot(b[0] - 2 * c[0] + d[0], b[1] - 2 * c[1] + d[1]),
  );
  const pieces = Math.max(1, Math.ceil(Math.sqrt((0.75 * bend) / tolerance)));
  for (let i = 1; i <= pieces; i++) {
    const t = i / pieces,
      s = 1 - t;
    for (let axis = 0; axis < 2; axis++)
      out.push(s * s * s * a[axis] + 3 * s * s * t * b[axis] + 3 * s * t * t * c[axis] + t * t * t * d[axis]);
  }
}

function scaled(points: readonly number[], factor: number): Float64Array {
  return Float64Array.from(points, (v) => v * factor);
}
