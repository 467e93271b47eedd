import type { Face, FacePart } from '../../image/index.ts';

/** How often a colour counts on what is drawn in a face, and on the face around it; 1 is usual. */
const counts: Readonly<Record<FacePart, number>> = { eye: 6, mouth: 6, brow: 4, nose: 2.5 },
  faceCounts = 1.2;
/** What is drawn reaches beyond the points that were found: so much of its own width, and softly so much farther. */
const reach = 0.12,
  soft = 0.25;

/** Eyes and mouth before all else: what counts less there counts as much as they do. `weight` is changed in place. */
export function facesMatter(faces: readonly Face[], weight: Float32Array, width: number, height: number): void {
  const raise = (outline: readonly number[], least: number, near: number, far: number): void => {
    const points = outline.map((v, i) => v * (i % 2 === 0 ? width : height)),
      wide = widthOf(points),
      [x0, x1] = span(points, 0, (near + far) * wide, width),
      [y0, y1] = span(points, 1, (near + far) * wide, height);
    for (let y = y0; y <= y1; y++)
      for (let x = x0; x <= x1; x++) {
        const out = outside(points, x + 0.5, y + 0.5) / wide,
          share = Math.min(1, Math.max(0, (near + far - out) / far)),
          i = y * width + x;
        if (share > 0) weight[i] = Math.max(weight[i], 1 + (least - 1) * share);
      }
  };
  for (const { outline, parts } of faces) {
    raise(outline, faceCounts, 0, 0.1);
    for (const { part, outline: drawn } of parts) raise(drawn, counts[part], reach, soft);
  }
}

function widthOf(points: readonly number[]): number {
  let most = 1;
  for (let i = 0; i < points.length; i += 2)
    for (let k = 0; k < i; k += 2) most = Math.max(most, Math.hypot(points[i] - points[k], points[i + 1] - points[k + 1]));
  return most;
}

export function span(points: readonly number[], axis: 0 | 1, beyond: number, size: number): readonly [number, number] {
  const values = points.filter((_, i) => i % 2 === axis);
  return [Math.max(0, Math.floor(Math.min(...values) - beyond)), Math.min(size - 1, Math.ceil(Math.max(...values) + beyond))];
}

/** How far a place lies outside an outline; 0 within. */
export function outside(points: readonly number[], x: number, y: number): number {
  let inside = false,
    least = Infinity;
  for (let i = 0, k = points.length - 2; i < points.length; k = i, i += 2) {
    const [ax, ay, bx, by] = [points[k], points[k + 1], points[i], points[i + 1]];
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
    const t = Math.max(0, Math.min(1, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2 || 1)));
    least = Math.min(least, Math.hypot(ax + t * (bx - ax) - x, ay + t * (by - ay) - y));
  }
  return inside ? 0 : least;
}

/** An eye or a mouth that was found, or a dot of a drawing: its outline on the print, mm; x and y in turn. */
export interface PartOnPrint {
  readonly face: number;
  readonly part: 'eye' | 'mouth' | 'dot';
  readonly outlineMm: readonly number[];
}
