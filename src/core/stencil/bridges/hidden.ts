import { regionBox } from '../../form/index.ts';
import type { Region } from '../../form/index.ts';
import { nearLine } from '../raster/lines.ts';
import type { PointMm } from '../types.ts';

/** Two holes of one part that come nearer to each other than they may. */
export interface NearHoles {
  readonly atMm: PointMm;
  readonly widthMm: number;
  /** Across the gap, as far as it stays about as narrow. */
  readonly line: readonly number[];
}

interface Edge {
  readonly hole: number;
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
}

/** Where holes of a part are less than `underMm` from one another: for each two the narrowest place. */
export function nearHoles(part: Region, underMm: number): NearHoles[] {
  const holes = part.rings;
  if (holes.length < 2) return [];
  const cells = new Map<number, Edge[]>();
  const cell = (v: number): number => Math.floor(v / underMm);
  const key = (x: number, y: number): number => x * 100_003 + y;
  holes.forEach((ring, hole) => {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const edge: Edge = { hole, ax: ring[j], ay: ring[j + 1], bx: ring[i], by: ring[i + 1] };
      const x1 = cell(Math.max(edge.ax, edge.bx)),
        y1 = cell(Math.max(edge.ay, edge.by));
      for (let y = cell(Math.min(edge.ay, edge.by)); y <= y1; y++)
        for (let x = cell(Math.min(edge.ax, edge.bx)); x <= x1; x++) {
          const k = key(x, y),
            list = cells.get(k);
          if (list) list.push(edge);
          else cells.set(k, [edge]);
        }
    }
  });
  const least = new Map<number, { readonly d: number; readonly from: PointMm; readonly to: PointMm }>();
  holes.forEach((ring, hole) => {
    for (let i = 0; i < ring.length; i += 2) {
      const px = ring[i],
        py = ring[i + 1],
        cx = cell(px),
        cy = cell(py);
      for (let y = cy - 1; y <= cy + 1; y++)
        for (let x = cx - 1; x <= cx + 1; x++)
          for (const e of cells.get(key(x, y)) ?? []) {
            if (e.hole === hole) continue;
            const dx = e.bx - e.ax,
              dy = e.by - e.ay,
              l2 = dx * dx + dy * dy;
            const t = l2 > 0 ? Math.max(0, Math.min(1, ((px - e.ax) * dx + (py - e.ay) * dy) / l2)) : 0;
            const u = e.ax + t * dx,
              v = e.ay + t * dy,
              d = Math.hypot(px - u, py - v);
            if (d >= underMm) continue;
            const pair = Math.min(hole, e.hole) * holes.length + Math.max(hole, e.hole);
            const had = least.get(pair);
            if (!had || d < had.d) least.set(pair, { d, from: [px, py], to: [u, v] });
          }
    }
  });
  return [...least]
    .sort((a, b) => a[0] - b[0])
    .map(([pair, { d, from, to }]) => {
      const at: PointMm = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
      const [ux, uy] = d > 1e-6 ? [(to[0] - from[0]) / d, (to[1] - from[1]) / d] : [1, 0];
      const reach = underMm * 0.6;
      const [a, b] = [holes[Math.floor(pair / holes.length)], holes[pair % holes.length]];
      const ahead = between(a, b, at, [-uy, ux], underMm),
        behind = between(a, b, at, [uy, -ux], underMm);
      const ends = (line: readonly number[], sign: number): number[] =>
        line.length > 0 ? [...line] : [at[0] - sign * uy * reach, at[1] + sign * ux * reach];
      return { atMm: at, widthMm: d, line: [...backwards(ends(behind, -1)), ...at, ...ends(ahead, 1)] };
    });
}

/** As narrow as the narrowest place, but for so much, is as narrow: a bar is mended as a whole and not by the millimetre. */
const alikeMm = 0.06,
  walkMm = 0.4,
  mostSteps = 1000;

/** The middle between two outlines, from a place in a direction, for as long as they stay about as near to one another. */
function between(a: Float64Array, b: Float64Array, start: PointMm, towards: PointMm, underMm: number): number[] {
  const out: number[] = [];
  let [x, y] = start,
    [ux, uy] = towards;
  for (let k = 0; k < mostSteps; k++) {
    let u = x + ux * walkMm,
      v = y + uy * walkMm,
      wide = Infinity;
    // Halfway between the nearest of both; twice, as the first try lies on a tangent.
    for (let round = 0; round < 2; round++) {
      const p = nearestOf(a, u, v),
        q = nearestOf(b, u, v);
      wide = Math.hypot(p[0] - q[0], p[1] - q[1]);
      u = (p[0] + q[0]) / 2;
      v = (p[1] + q[1]) / 2;
    }
    const step = Math.hypot(u - x, v - y);
    if (wide > underMm + alikeMm || step < walkMm / 4 || (k > 4 && Math.hypot(u - start[0], v - start[1]) < walkMm)) break;
    [ux, uy] = [(u - x) / step, (v - y) / step];
    [x, y] = [u, v];
    out.push(x, y);
  }
  return out;
}

const nearestOf = (ring: Float64Array, x: number, y: number): PointMm => {
  let best: PointMm = [ring[0], ring[1]],
    least = Infinity;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const dx = ring[i] - ring[j],
      dy = ring[i + 1] - ring[j + 1],
      l2 = dx * dx + dy * dy;
    const t = l2 > 0 ? Math.max(0, Math.min(1, ((x - ring[j]) * dx + (y - ring[j + 1]) * dy) / l2)) : 0;
    const u = ring[j] + t * dx,
      v = ring[j + 1] + t * dy,
      d = (x - u) ** 2 + (y - v) ** 2;
    if (d >= least) continue;
    least = d;
    best = [u, v];
  }
  return best;
};

function backwards(line: readonly number[]): number[] {
  const out: number[] = [];
  for (let i = line.length - 2; i >= 0; i -= 2) out.push(line[i], line[i + 1]);
  return out;
}

/** Is a place farther than this from all lines? */
export function clearOf(lines: readonly (readonly number[])[], mm: number): (at: PointMm) => boolean {
  const boxed = lines.map((line) => ({ line, box: regionBox({ rings: [Float64Array.from(line)] }) }));
  return ([x, y]) =>
    boxed.every(
      ({ line, box: b }) => x < b.minX - mm || x > b.maxX + mm || y < b.minY - mm || y > b.maxY + mm || nearLine(line, [x, y]) >= mm,
    );
}
