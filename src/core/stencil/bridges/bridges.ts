import { rasterize, regionBox, strip } from '../../form/index.ts';
import type { Grid, Region } from '../../form/index.ts';
import { balanced } from './balanced.ts';
import { frameOf } from '../proof/certificate.ts';
import { pixelMm } from '../raster/working-grid.ts';
import { halved, linePixels } from '../raster/halved.ts';
import { smoothed } from '../raster/lines.ts';
import type { CostRaster, NoBridge, PointMm } from '../types.ts';
import { addVisibleCost, openStep, paperStep } from './seen-cost.ts';
import { joinAll, oneMore } from './ways.ts';
import type { Ground, Way } from './ways.ts';
import type { Widths } from '../proof/widths.ts';

/** A strip of paper to add: a bridge where it crosses an opening, a strengthening where it only widens paper. */
export interface Strip {
  readonly region: Region;
  readonly widthMm: number;
  /** Middle line in mm, x0, y0, … */
  readonly line: readonly number[];
  /** Where it leaves paper on either side; the same twice if it never does. */
  readonly from: PointMm;
  readonly to: PointMm;
  readonly crosses: boolean;
}

/** Islands whose box has a longer diagonal than this hang on two bridges, than three times this on three. */
const longIslandMm = 50;
/** What one bridge of 1.5 mm bears: area times reach, mm³ (common practice: a palm-sized piece on a bridge of a few millimetres hangs down). */
const momentPerBridge = 12_000;

export interface BridgeGround extends Ground {
  readonly grid: Grid;
  readonly mask: Uint8Array;
  /** Part of paper (as labelled) of each terminal. */
  readonly partOf: Int32Array;
  /** The part that everything is to hang on. */
  readonly frame: number;
}

/**
 * Broad parts of paper are what bridges join; a part too thin to have any is taken whole. Without `acrossOpenings`
 * only thin paper between broad parts is strengthened.
 */
export function bridgeGround(
  mask: Uint8Array,
  grid: Grid,
  paper: Widths,
  widthMm: number,
  cost: CostRaster | undefined,
  forbidden: readonly NoBridge[],
  acrossOpenings: boolean,
): BridgeGround {
  const { width, height } = grid;
  const n = width * height;
  const terminal = new Int32Array(n);
  const parts: number[] = [0];
  paper.cores.forEach((core, i) => {
    parts.push(paper.partOfCore[i]);
    mark(terminal, core, grid, i + 1);
  });
  const whole = new Set(paper.partOfCore);
  paper.parts.forEach((part, i) => {
    if (whole.has(i)) return;
    parts.push(i);
    mark(terminal, part, grid, parts.length - 1);
  });
  const step = new Uint16Array(n);
  for (let p = 0; p < n; p++) step[p] = mask[p] ? paperStep : acrossOpenings ? openStep : 0;
  if (cost && acrossOpenings) addVisibleCost(step, mask, grid, cost, widthMm);
  for (const f of forbidden) forbid(step, mask, grid, f, widthMm);
  return { width, height, terminal, terminals: parts.length - 1, step, grid, mask, partOf: Int32Array.from(parts), frame: frameOf(paper) };
}

/** Marks a part's pixels; at least one, however small it is. */
function mark(labels: Int32Array, part: Region, grid: Grid, label: number): void {
  const box = regionBox(part);
  const at = (mm: number, origin: number, most: number): number => Math.max(0, Math.min(most, Math.floor((mm - origin) / grid.mmPerPx)));
  const x0 = at(box.minX, grid.originXMm, grid.width - 1),
    x1 = at(box.maxX, grid.originXMm, grid.width - 1),
    y0 = at(box.minY, grid.originYMm, grid.height - 1),
    y1 = at(box.maxY, grid.originYMm, grid.height - 1);
  const w = x1 - x0 + 1,
    h = y1 - y0 + 1;
  const own = rasterize(part, {
    originXMm: grid.originXMm + x0 * grid.mmPerPx,
    originYMm: grid.originYMm + y0 * grid.mmPerPx,
    mmPerPx: grid.mmPerPx,
    width: w,
    height: h,
  });
  let marked = false;
  for (let y = 0; y < h; y++) {
    for (let x = 0; x < w; x++) {
      if (!own[y * w + x]) continue;
      labels[(y0 + y) * grid.width + x0 + x] = label;
      marked = true;
    }
  }
  if (marked) return;
  const ring = part.rings[0];
  const p = at(ring[1], grid.originYMm, grid.height - 1) * grid.width + at(ring[0], grid.originXMm, grid.width - 1);
  labels[p] = label;
}

function forbid(step: Uint16Array, mask: Uint8Array, grid: Grid, spot: NoBridge, widthMm: number): void {
  // A bridge's edge must stay out of the spot, not only its middle.
  const r = (spot.radiusMm + widthMm / 2) / grid.mmPerPx;
  const cx = (spot.atMm[0] - grid.originXMm) / grid.mmPerPx - 0.5,
    cy = (spot.atMm[1] - grid.originYMm) / grid.mmPerPx - 0.5;
  for (let y = Math.max(0, Math.ceil(cy - r)); y <= Math.min(grid.height - 1, cy + r); y++) {
    for (let x = Math.max(0, Math.ceil(cx - r)); x <= Math.min(grid.width - 1, cx + r); x++) {
      const p = y * grid.width + x;
      if (!mask[p] && (x - cx) ** 2 + (y - cy) ** 2 <= r * r) step[p] = 0;
    }
  }
}

/** Strips that join everything, and more for long islands. `uniform`: a bridge costs the same everywhere. */
export function findStrips(ground: BridgeGround, widthMm: number, uniform: boolean): Strip[] {
  const rough = uniform && ground.terminals > 1 ? halved(ground) : undefined;
  const searched = rough?.ground ?? ground;
  const fullPixel = (p: number): number => rough?.fullPixel(p) ?? p;
  const ways = joinAll(searched).map((way) => rough?.fullWay(way) ?? way);
  const { frame } = ground;
  const feet = new Map<number, number[]>(),
    longest = new Map<number, number>();
  const note = (way: Way): void => {
    if (ground.partOf[way.from] === ground.partOf[way.to]) return;
    for (const [t, p] of [
      [way.from, way.path[0]],
      [way.to, way.path[way.path.length - 1]],
    ]) {
      const part = ground.partOf[t];
      if (part === frame) continue;
      feet.set(part, [...(feet.get(part) ?? []), p]);
      longest.set(part, Math.max(longest.get(part) ?? 0, way.path.length * ground.grid.mmPerPx));
    }
  };
  ways.forEach(note);
  const all = [...ways];
  const boxes = partBoxes(ground),
    areas = partAreas(ground);
  for (const part of [...feet.keys()].sort((a, b) => a - b)) {
    const [x0, y0, x1, y1] = boxes.subarray(4 * part, 4 * part + 4);
    const diagonal = Math.hypot(x1 - x0, y1 - y0);
    const longMm = diagonal * ground.grid.mmPerPx;
    // What swings is weight times reach: half the island's length and the way to what holds it.
    const moment = areas[part] * ground.grid.mmPerPx ** 2 * (longMm / 2 + (longest.get(part) ?? 0));
    const holds = momentPerBridge * (widthMm / 1.5) ** 2;
    const wanted = longMm > 3 * longIslandMm ? 3 : longMm > longIslandMm || moment > holds ? 2 : 1;
    const apart = (diagonal * 0.9) / wanted;
    // Bridges side by side hold like one.
    const spread = (): number =>
      (feet.get(part) ?? []).reduce<number[]>(
        (kept, f) => (kept.every((k) => pixelDistance(k, f, ground.width) >= apart / 2) ? [...kept, f] : kept),
        [],
      ).length;
    while (spread() < wanted) {
      const standing = feet.get(part) ?? [];
      const clear = (p: number, pixels: number): boolean => standing.every((f) => pixelDistance(fullPixel(p), f, ground.width) >= pixels);
      // Nor may it start far off and run along the rim to where one stands.
      const step = awayFrom(standing, apart / 2, searched, ground);
      const more = oneMore({ ...searched, step }, ground.partOf, part, (p) => clear(p, apart));
      if (!more) break;
      const way = rough?.fullWay(more) ?? more;
      note(way);
      all.push(way);
    }
  }
  return balanced(uniform ? all.map((way) => shortened(way, ground)) : all, ground).map((way) => stripOf(way, ground, widthMm, uniform));
}

/** Steps of a ground, full or halved; none nearer than so many full pixels to where bridges stand. */
function awayFrom(standing: readonly number[], pixels: number, searched: Ground, { width }: Ground): Uint16Array {
  const step = searched.step.slice();
  const times = searched.width < width ? 2 : 1;
  for (const foot of standing) {
    const fx = foot % width,
      fy = Math.floor(foot / width);
    const from = (at: number): number => Math.max(0, Math.floor((at - pixels) / times));
    const yEnd = Math.min(searched.height - 1, Math.ceil((fy + pixels) / times)),
      xEnd = Math.min(searched.width - 1, Math.ceil((fx + pixels) / times));
    for (let y = from(fy); y <= yEnd; y++)
      for (let x = from(fx); x <= xEnd; x++) if (Math.hypot(times * x - fx, times * y - fy) < pixels) step[y * searched.width + x] = 0;
  }
  return step;
}

/** Pixels of each part's broad places. */
function partAreas(ground: BridgeGround): Int32Array {
  const areas = new Int32Array(ground.partOf.reduce((most, part) => Math.max(most, part), 0) + 1);
  for (const t of ground.terminal) if (t > 0) areas[ground.partOf[t]]++;
  return areas;
}

function partBoxes(ground: BridgeGround): Int32Array {
  let parts = 0;
  for (const part of ground.partOf) parts = Math.max(parts, part);
  const boxes = new Int32Array(4 * (parts + 1));
  for (let i = 0; i <= parts; i++) boxes.set([1 << 30, 1 << 30, -1, -1], 4 * i);
  for (let p = 0, y = 0; y < ground.height; y++) {
    for (let x = 0; x < ground.width; x++, p++) {
      const t = ground.terminal[p];
      if (t === 0) continue;
      const b = 4 * ground.partOf[t];
      if (x < boxes[b]) boxes[b] = x;
      if (y < boxes[b + 1]) boxes[b + 1] = y;
      if (x > boxes[b + 2]) boxes[b + 2] = x;
      if (y > boxes[b + 3]) boxes[b + 3] = y;
    }
  }
  return boxes;
}

const pixelDistance = (p: number, q: number, width: number): number =>
  Math.hypot((p % width) - (q % width), Math.floor(p / width) - Math.floor(q / width));

function stripOf(way: Way, ground: BridgeGround, widthMm: number, uniform: boolean): Strip {
  const { width, grid, mask } = ground;
  let a = way.path[0],
    b = way.path[way.path.length - 1];
  if (uniform && !way.fixed) [a, b] = nearestEnds(a, b, ground);
  const line = linePixels(a, b, width);
  const direct = isDirect(line, way, ground);
  const path = direct ? line : way.path;
  const points = direct
    ? [...pixelMm(a, grid), ...pixelMm(b, grid)]
    : smoothed(
        path.flatMap((p) => pixelMm(p, grid)),
        widthMm,
        grid.mmPerPx,
      );
  const first = path.findIndex((p) => !mask[p]);
  let last = -1;
  for (let i = path.length - 1; i >= 0 && last < 0; i--) if (!mask[path[i]]) last = i;
  const crosses = first >= 0;
  const from = pixelMm(crosses ? path[Math.max(0, first - 1)] : path[path.length >> 1], grid);
  const to = pixelMm(crosses ? path[Math.min(path.length - 1, last + 1)] : path[path.length >> 1], grid);
  const region = direct && crosses ? flared(points, from, to, widthMm) : strip(points, widthMm, 'round');
  return { region, widthMm, line: points, from, to, crosses };
}

/** Is the straight line about as good as the way that was found? */
function isDirect(line: readonly number[], way: Way, { step }: BridgeGround): boolean {
  const costOf = (path: readonly number[]): number => path.reduce((sum, p) => sum + (step[p] === 0 ? 1e9 : step[p]), 0);
  return costOf(line) <= 1.2 * costOf(way.path) + 20;
}

/** A way as its strip will lie, so that its images lie as it does: of two ends as near as one another the raster takes the upper left. */
function shortened(way: Way, ground: BridgeGround): Way {
  if (way.fixed) return way;
  const [a, b] = nearestEnds(way.path[0], way.path[way.path.length - 1], ground);
  const path = linePixels(a, b, ground.width);
  return isDirect(path, way, ground) ? { ...way, path, fixed: true } : way;
}

/** Shortest straight line between two parts of paper, found by going back and forth between their nearest pixels. */
function nearestEnds(a: number, b: number, ground: BridgeGround): [number, number] {
  const nearest = (from: number, label: number, radius: number): number => {
    const { width, height, terminal } = ground;
    const fx = from % width,
      fy = (from - fx) / width;
    let best = -1,
      least = Infinity;
    for (let y = Math.max(0, fy - radius); y <= Math.min(height - 1, fy + radius); y++) {
      for (let x = Math.max(0, fx - radius); x <= Math.min(width - 1, fx + radius); x++) {
        if (terminal[y * width + x] !== label) continue;
        const d = (x - fx) ** 2 + (y - fy) ** 2;
        if (d < least) {
          least = d;
          best = y * width + x;
        }
      }
    }
    return best;
  };
  for (let turn = 0; turn < 3; turn++) {
    const radius = Math.ceil(pixelDistance(a, b, ground.width));
    if (radius > 160) break;
    const nb = nearest(a, ground.terminal[b], radius);
    if (nb >= 0) b = nb;
    const na = nearest(b, ground.terminal[a], radius);
    if (na < 0 || na === a) break;
    a = na;
  }
  return [a, b];
}

/** A straight bridge, broader where it leaves the paper so that it doesn't tear there. */
function flared(points: readonly number[], from: PointMm, to: PointMm, widthMm: number): Region {
  const [ax, ay, bx, by] = points;
  const length = Math.hypot(bx - ax, by - ay);
  if (!(length > 0)) return strip([ax, ay, ax + 0.01, ay], widthMm, 'round');
  const ux = (bx - ax) / length,
    uy = (by - ay) / length;
  const half = widthMm / 2;
  const t0 = (from[0] - ax) * ux + (from[1] - ay) * uy,
    t1 = (to[0] - ax) * ux + (to[1] - ay) * uy;
  const flare = Math.min(widthMm * 0.75, (t1 - t0) / 3);
  const stations: [number, number][] = [
    [-half * 0.5, half],
    [t0, half * 1.3],
    [t0 + flare, half],
    [t1 - flare, half],
    [t1, half * 1.3],
    [length + half * 0.5, half],
  ];
  const ring: number[] = [];
  for (const [t, h] of stations) ring.push(ax + ux * t + uy * h, ay + uy * t - ux * h);
  for (const [t, h] of [...stations].reverse()) ring.push(ax + ux * t - uy * h, ay + uy * t + ux * h);
  return { rings: [Float64Array.from(ring)] };
}
