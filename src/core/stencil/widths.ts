import { offsetRegion, rasterize, regionArea, regionBox, ringArea, takeAway } from '../form/index.ts';
import type { Box, Grid, Region } from '../form/index.ts';
import { longestTaper, longestPoint, surveyWidths } from './survey.ts';
import type { ThinPlace } from './survey.ts';
import { smoothed } from './lines.ts';
import { innerPoint } from './inner-point.ts';
import { covers, pieces } from './rings.ts';
import type { PointMm } from './types.ts';

/**
 * How wide a shape is everywhere, from its outline itself: shrunk by half the least width (exact to a micron) what is left
 * are its broad parts. What discs of that width cannot cover is looked at on a fine raster, each place in a window of its own.
 */
export interface Widths {
  /** Separate parts, specks left out. */
  readonly parts: readonly Region[];
  /** Broad parts, shrunk, and the part that each belongs to. */
  readonly cores: readonly Region[];
  readonly partOfCore: readonly number[];
  readonly thin: readonly Thin[];
}

/** A place narrower than asked. */
export interface Thin {
  readonly kind: ThinPlace['kind'];
  /** Its middle, mm, x and y in turn; reaches into the broad parts that it joins. */
  readonly line: readonly number[];
  readonly atMm: PointMm;
  readonly widthMm: number;
  /** Nowhere wider than a hairline. */
  readonly hair: boolean;
  /** What discs of the least width cannot cover here. */
  readonly region: Region;
}

/** Parts smaller than this come from rounding, not from a drawing. */
export const speckMm2 = 0.1;
/** Microns in arcs and offsets: a width is proven to this. */
const slackMm = 0.02;
/** The fine raster is on the lenient side by so much at each edge: the exact outline has the last word on what is joined. */
const lenientPx = 0.3;
/** Of the raster on which a thin place is measured. */
export const finestMmPerPx = 0.05;
const mostPixels = 6_000_000;
/** What is nowhere wider is too fine to be meant: it closes, or is dropped. */
export const hairMm = 0.55;
/** Finer than any pixel here. */
const unseenMm = 0.06;

interface Rest {
  readonly region: Region;
  readonly box: Box;
  used: boolean;
}

/** `longTapers`: a knife cuts a long point that tapers; paper so slender would bend. */
export function widthsOf(region: Region, leastMm: number, longTapers: boolean): Widths {
  const found = pieces(region).filter((part) => regionArea(part) >= speckMm2);
  const r = leastMm / 2 - slackMm;
  const core = offsetRegion(region, -r);
  const cores = pieces(core);
  const boxes = found.map(regionBox);
  const partOfCore = cores.map((c) => {
    const x = c.rings[0][0],
      y = c.rings[0][1];
    return found.findIndex((part, i) => inBox(boxes[i], x, y) && covers(part, x, y));
  });
  const rests: Rest[] = [];
  for (const rest of pieces(takeAway(region, offsetRegion(core, r + 0.004)))) {
    const box = regionBox(rest);
    if (Math.hypot(box.maxX - box.minX, box.maxY - box.minY) >= 0.4 * leastMm) rests.push({ region: rest, box, used: false });
  }
  const thin = windows(rests, leastMm).flatMap((w) => looked(region, w, r, leastMm, longTapers));
  // The raster is lenient and the shrunk outline is not: where a part has no broad place, or more than one, and nothing thin
  // was seen in it, its places are looked at again, strictly.
  const broad = new Int32Array(found.length);
  for (const part of partOfCore) if (part >= 0) broad[part]++;
  const doubtful = found.filter(
    (part, i) => broad[i] !== 1 && !thin.some((t) => inBox(boxes[i], ...t.atMm) && covers(part, t.atMm[0], t.atMm[1])),
  );
  if (doubtful.length > 0) {
    const again = rests.filter(({ used, region: rest }) => !used && doubtful.some((part) => covers(part, ...insideOf(rest))));
    thin.push(...windows(again, leastMm).flatMap((w) => looked(region, w, r, leastMm, longTapers, -1)));
  }
  // What is finer than the raster may leave no trace on it.
  for (const rest of rests) {
    if (rest.used || lengthOf(rest.box) < 1 || offsetRegion(rest.region, -unseenMm).rings.length > 0 || !standsOut(rest.region, core, r))
      continue;
    thin.push(unseen(rest));
  }
  thin.push(...hidden(found, cores, thin, leastMm));
  return { parts: found, cores, partOfCore, thin };
}

const lengthOf = (box: Box): number => Math.hypot(box.maxX - box.minX, box.maxY - box.minY);

/** Does it reach away from what is broad? A sliver along its edge, where a curve is a little too tight, does not. */
function standsOut(rest: Region, core: Region, r: number): boolean {
  const reach = r + 0.3,
    own = regionBox(rest);
  const box = { minX: own.minX - reach, minY: own.minY - reach, maxX: own.maxX + reach, maxY: own.maxY + reach };
  const near = core.rings.filter((ring) => meets(regionBox({ rings: [ring] }), box));
  return rest.rings.some((ring) => {
    for (let i = 0; i < ring.length; i += 2) {
      const at: PointMm = [ring[i], ring[i + 1]];
      if (near.every((one) => nearLine(one, at) > reach)) return true;
    }
    return false;
  });
}

/** A point of a thin rest that is not on its edge, or nearly. */
const insideOf = (rest: Region): PointMm => innerPoint(rest, regionBox(rest));

function unseen({ region, box }: Rest): Thin {
  const ring = region.rings[0];
  const at: PointMm = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
  return { kind: 'tongue', line: [ring[0], ring[1], ...at], atMm: [ring[0], ring[1]], widthMm: unseenMm, hair: true, region };
}

interface Window {
  readonly box: Box;
  readonly rests: readonly Rest[];
}

/** Boxes around what is left, those that meet taken together. */
function windows(rests: readonly Rest[], leastMm: number): Window[] {
  const margin = leastMm * 0.75 + 0.5;
  let open: Window[] = [];
  const closed: Window[] = [];
  const wide = rests
    .map((rest) => ({
      box: { minX: rest.box.minX - margin, minY: rest.box.minY - margin, maxX: rest.box.maxX + margin, maxY: rest.box.maxY + margin },
      rests: [rest],
    }))
    .sort((a, b) => a.box.minX - b.box.minX);
  for (let one of wide as Window[]) {
    closed.push(...open.filter((o) => o.box.maxX < one.box.minX));
    open = open.filter((o) => o.box.maxX >= one.box.minX);
    for (let k = 0; k < open.length; ) {
      const o = open[k];
      // Together only where that looks at little more than each would alone.
      const both = hull(o.box, one.box);
      if (areaOf(both) > areaOf(o.box) + areaOf(one.box)) {
        k++;
        continue;
      }
      one = { box: both, rests: [...o.rests, ...one.rests] };
      open.splice(k, 1);
      k = 0;
    }
    open.push(one);
  }
  return [...closed, ...open];
}

const areaOf = (b: Box): number => (b.maxX - b.minX) * (b.maxY - b.minY);
const hull = (a: Box, b: Box): Box => ({
  minX: Math.min(a.minX, b.minX),
  minY: Math.min(a.minY, b.minY),
  maxX: Math.max(a.maxX, b.maxX),
  maxY: Math.max(a.maxY, b.maxY),
});
const meets = (a: Box, b: Box): boolean => a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
const inBox = (b: Box, x: number, y: number): boolean => x >= b.minX && x <= b.maxX && y >= b.minY && y <= b.maxY;

function looked(region: Region, { box, rests }: Window, r: number, leastMm: number, longTapers: boolean, lenient = lenientPx): Thin[] {
  const step = Math.max(finestMmPerPx, Math.sqrt(areaOf(box) / mostPixels));
  const grid: Grid = {
    originXMm: box.minX,
    originYMm: box.minY,
    mmPerPx: step,
    width: Math.ceil((box.maxX - box.minX) / step) + 1,
    height: Math.ceil((box.maxY - box.minY) / step) + 1,
  };
  const near: Region = { rings: region.rings.filter((ring) => meets(regionBox({ rings: [ring] }), box)) };
  const mask = rasterize(near, grid);
  const survey = surveyWidths(
    mask,
    1,
    grid.width,
    grid.height,
    r / step - lenient,
    0,
    hairMm / step,
    longTapers ? longestTaper : longestPoint,
  );
  return survey.thin.flatMap((t): Thin[] => {
    const at = middleOf(t.at, grid);
    const rest =
      rests.find((one) => inBox(one.box, ...at) && covers(one.region, ...at)) ??
      rests.find((one) => t.path.some((p) => inBox(one.box, ...middleOf(p, grid)) && covers(one.region, ...middleOf(p, grid))));
    // Another window has it whole.
    if (!rest) return [];
    rest.used = true;
    const line = smoothed(
      t.path.flatMap((p) => middleOf(p, grid)),
      0.3 * leastMm,
      step,
    );
    return [{ kind: t.kind, line, atMm: at, widthMm: t.widthPx * step, hair: t.hair, region: rest.region }];
  });
}

const middleOf = (p: number, grid: Grid): [number, number] => [
  grid.originXMm + ((p % grid.width) + 0.5) * grid.mmPerPx,
  grid.originYMm + (Math.floor(p / grid.width) + 0.5) * grid.mmPerPx,
];

/**
 * Necks that leave nothing uncovered: two tips that nearly meet. The shrunk shape knows them: one part falls into several,
 * or two holes of it become one.
 */
function hidden(found: readonly Region[], cores: readonly Region[], known: readonly Thin[], leastMm: number): Thin[] {
  const holesOf = (list: readonly Region[]): number => list.reduce((sum, one) => sum + one.rings.length - 1, 0);
  if (holesOf(cores) >= holesOf(found)) return [];
  const out: Thin[] = [];
  for (const part of found) {
    if (part.rings.length < 3) continue;
    const holes = part.rings.filter((ring) => ringArea(ring) * ringArea(part.rings[0]) < 0);
    for (let i = 0; i < holes.length; i++) {
      const a = regionBox({ rings: [holes[i]] });
      const grown = { minX: a.minX - leastMm, minY: a.minY - leastMm, maxX: a.maxX + leastMm, maxY: a.maxY + leastMm };
      for (let k = i + 1; k < holes.length; k++) {
        if (!meets(grown, regionBox({ rings: [holes[k]] }))) continue;
        const [width, at, [ux, uy]] = nearest(holes[i], holes[k], leastMm);
        if (width >= leastMm - 2 * slackMm || known.some((t) => nearLine(t.line, at) < leastMm)) continue;
        // Across the gap, as far as it stays about as narrow.
        const reach = leastMm * 0.6;
        const line = [at[0] - uy * reach, at[1] + ux * reach, at[0] + uy * reach, at[1] - ux * reach];
        out.push({ kind: 'neck', line, atMm: at, widthMm: width, hair: false, region: { rings: [] } });
      }
    }
  }
  return out;
}

/** The least distance of two rings, if under `most`, and the middle between the places where they are nearest. */
function nearest(a: Float64Array, b: Float64Array, most: number): [number, PointMm, PointMm] {
  let least = most,
    at: PointMm = [a[0], a[1]],
    along: PointMm = [1, 0];
  const boxB = regionBox({ rings: [b] });
  const from = (p: Float64Array, q: Float64Array): void => {
    for (let i = 0; i < p.length; i += 2) {
      const x = p[i],
        y = p[i + 1];
      for (let k = 0, j = q.length - 2; k < q.length; j = k, k += 2) {
        const dx = q[k] - q[j],
          dy = q[k + 1] - q[j + 1],
          l2 = dx * dx + dy * dy;
        const t = l2 > 0 ? Math.max(0, Math.min(1, ((x - q[j]) * dx + (y - q[j + 1]) * dy) / l2)) : 0;
        const u = q[j] + t * dx,
          v = q[j + 1] + t * dy,
          d = Math.hypot(x - u, y - v);
        if (d < least) {
          least = d;
          at = [(x + u) / 2, (y + v) / 2];
          if (d > 1e-6) along = [(u - x) / d, (v - y) / d];
        }
      }
    }
  };
  const close = pick(a, boxB, most);
  const boxA = regionBox({ rings: [a] });
  const closeB = pick(b, boxA, most);
  from(close, b);
  from(closeB, a);
  return [least, at, along];
}

const pick = (ring: Float64Array, box: Box, reach: number): Float64Array => {
  const out: number[] = [];
  for (let i = 0; i < ring.length; i += 2)
    if (ring[i] > box.minX - reach && ring[i] < box.maxX + reach && ring[i + 1] > box.minY - reach && ring[i + 1] < box.maxY + reach)
      out.push(ring[i], ring[i + 1]);
  return Float64Array.from(out);
};

export function nearLine(line: ArrayLike<number>, [x, y]: PointMm): number {
  let least = Infinity;
  for (let i = 0; i + 3 < line.length; i += 2) {
    const dx = line[i + 2] - line[i],
      dy = line[i + 3] - line[i + 1],
      l2 = dx * dx + dy * dy;
    const t = l2 > 0 ? Math.max(0, Math.min(1, ((x - line[i]) * dx + (y - line[i + 1]) * dy) / l2)) : 0;
    least = Math.min(least, Math.hypot(x - line[i] - t * dx, y - line[i + 1] - t * dy));
  }
  return least;
}
