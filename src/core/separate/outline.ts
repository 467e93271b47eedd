import { fitCurves, unite, type Cubic, type Region } from '../form/index.ts';
import { ringsOfLayer, traceArcs, type Arc } from './trace.ts';

/** Fitting works in units of a quarter of the tolerance: the fit takes its error squared and iterates only above 1. */
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
  const dots: number[] = [];
  const scale = (unitsPerTolerance * mmPerPx) / toleranceMm;
  if (!arc.closed) dots.push(points[0] * scale, points[1] * scale);
  for (let i = 0; i + 3 < points.length; i += 2) dots.push(((points[i] + points[i + 2]) / 2) * scale, ((points[i + 1] + points[i + 3]) / 2) * scale);
  dots.push(...(arc.closed ? dots.slice(0, 2) : [points[points.length - 2] * scale, points[points.length - 1] * scale]));
  // Calming takes up to half of the tolerance, the fit the rest.
  const curves = fitCurves(calmed(dots, arc.closed, unitsPerTolerance * 0.5), (unitsPerTolerance * 0.6) ** 2);
  const out: number[] = [dots[0], dots[1]];
  for (const curve of curves) flatten(curve, (flatMm / mmPerPx) * scale, out);
  out[out.length - 2] = dots[dots.length - 2];
  out[out.length - 1] = dots[dots.length - 1];
  return scaled(out, mmPerPx / scale);
}

/**
 * The staircase calmed before fitting, or its steps would pass for tangents: five neighbours by 1 4 6 4 1, no point moved farther
 * than `most`, ends kept. A straight edge of any slope comes out straight, a corner gives way by half the tolerance.
 */
function calmed(dots: readonly number[], closed: boolean, most: number): Float64Array {
  const out = Float64Array.from(dots);
  const n = dots.length / 2 - (closed ? 1 : 0);
  if (n < 5) return out;
  const at = (i: number): number => 2 * (closed ? (i + n) % n : Math.max(0, Math.min(n - 1, i)));
  for (let i = closed ? 0 : 1; i < (closed ? n : n - 1); i++) {
    const p = at(i - 2), q = at(i - 1), r = at(i + 1), s = at(i + 2), o = 2 * i;
    const dx = (dots[p] + 4 * dots[q] + 4 * dots[r] + dots[s] - 10 * dots[o]) / 16;
    const dy = (dots[p + 1] + 4 * dots[q + 1] + 4 * dots[r + 1] + dots[s + 1] - 10 * dots[o + 1]) / 16;
    const length = Math.hypot(dx, dy), share = length > most ? most / length : 1;
    out[o] = dots[o] + dx * share;
    out[o + 1] = dots[o + 1] + dy * share;
  }
  if (closed) out.copyWithin(2 * n, 0, 2);
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
function flatten([ax, ay, bx, by, cx, cy, dx, dy]: Cubic, tolerance: number, out: number[]): void {
  const bend = Math.max(Math.hypot(ax - 2 * bx + cx, ay - 2 * by + cy), Math.hypot(bx - 2 * cx + dx, by - 2 * cy + dy));
  const pieces = Math.max(1, Math.ceil(Math.sqrt((0.75 * bend) / tolerance)));
  for (let i = 1; i <= pieces; i++) {
    const t = i / pieces, s = 1 - t;
    const w0 = s * s * s, w1 = 3 * s * s * t, w2 = 3 * s * t * t, w3 = t * t * t;
    out.push(w0 * ax + w1 * bx + w2 * cx + w3 * dx, w0 * ay + w1 * by + w2 * cy + w3 * dy);
  }
}

function scaled(points: readonly number[], factor: number): Float64Array {
  return Float64Array.from(points, (v) => v * factor);
}
