import { parts, rasterize, regionArea } from '../form/index.ts';
import type { Box, Grid, Region } from '../form/index.ts';
import { length, say } from '../../words/say.ts';
import { labelParts } from './label.ts';
import type { Labels } from './label.ts';
import { longestTaper, surveyWidths } from './survey.ts';
import type { Survey } from './survey.ts';
import type { Certificate, Fault, PointMm } from './types.ts';

/** Knife accuracy decides the working raster. */
export const workingMmPerPx = 0.25;
const mostPixels = 24_000_000;

/** The raster on which a stencil is judged: the openings and a border of plain paper around them. */
export function workingGrid(openings: Box, borderMm: number, mmPerPx = workingMmPerPx): Grid {
  const width = openings.maxX - openings.minX + 2 * borderMm,
    height = openings.maxY - openings.minY + 2 * borderMm;
  const step = Math.max(mmPerPx, Math.sqrt((width * height) / mostPixels));
  // Pixels lie in the same places whatever box is looked at, so that two looks at one outline agree.
  const left = Math.floor((openings.minX - borderMm) / step),
    top = Math.floor((openings.minY - borderMm) / step);
  return {
    originXMm: left * step,
    originYMm: top * step,
    mmPerPx: step,
    width: Math.ceil(width / step) + 1,
    height: Math.ceil(height / step) + 1,
  };
}

/** 1 where paper lies. Beyond the sheet the screen is closed (taped), which counts as paper. */
export function paperMask(paper: Region, sheet: Box, grid: Grid): Uint8Array {
  const mask = rasterize(paper, grid);
  const { width, height, originXMm, originYMm, mmPerPx } = grid;
  for (let y = 0; y < height; y++) {
    const my = originYMm + (y + 0.5) * mmPerPx;
    if (my < sheet.minY || my >= sheet.maxY) {
      mask.fill(1, y * width, (y + 1) * width);
      continue;
    }
    const left = Math.ceil((sheet.minX - originXMm) / mmPerPx - 0.5),
      right = Math.ceil((sheet.maxX - originXMm) / mmPerPx - 0.5);
    if (left > 0) mask.fill(1, y * width, y * width + Math.min(width, left));
    if (right < width) mask.fill(1, y * width + Math.max(0, right), (y + 1) * width);
  }
  return mask;
}

export function pixelMm(p: number, grid: Grid): PointMm {
  const x = p % grid.width,
    y = (p - x) / grid.width;
  return [grid.originXMm + (x + 0.5) * grid.mmPerPx, grid.originYMm + (y + 0.5) * grid.mmPerPx];
}

export interface Limits {
  readonly leastBridgeMm: number;
  readonly leastOpeningMm: number;
}

/**
 * Judges a stencil from its raster and the two surveys of it: is it one piece, apart from `looseCount` loose pieces,
 * with no neck under the least bridge and no opening under the least opening?
 */
export function judge(grid: Grid, partsFound: Labels, paper: Survey, openings: Survey, limits: Limits, looseCount: number): Certificate {
  const { leastBridgeMm, leastOpeningMm } = limits;
  const { mmPerPx } = grid;
  const { labels, count } = partsFound;
  const faults: Fault[] = [];
  const pieces = Math.max(0, count - looseCount);
  if (pieces !== 1) faults.push(...apart(partsFound, grid));
  for (const t of paper.thin) faults.push({ kind: t.kind, atMm: pixelMm(t.at, grid), widthMm: t.widthPx * mmPerPx });
  for (const t of openings.thin) faults.push({ kind: 'opening', atMm: pixelMm(t.at, grid), widthMm: t.widthPx * mmPerPx });
  faults.push(...split(paper, labels, count, grid));
  const necks = faults.filter((f) => f.kind !== 'opening' && f.kind !== 'apart').map((f) => f.widthMm);
  const gaps = faults.filter((f) => f.kind === 'opening').map((f) => f.widthMm);
  return {
    holds: faults.length === 0,
    pieces,
    leastNeckMm: Math.min(leastBridgeMm, ...necks),
    leastOpeningMm: Math.min(leastOpeningMm, ...gaps),
    faults,
    mmPerPx,
    method: say('stencil.provenBy', { pixel: length(mmPerPx, 2), paper: length(leastBridgeMm), opening: length(leastOpeningMm) }),
  };
}

/**
 * The certificate of a finished outline. `paper`: the sheet with its loose pieces, if any. Shown with an exact
 * Euclidean distance transform on a raster of 0.25 mm; widths hold to within a pixel.
 */
export function certify(paper: Region, sheet: Box, openings: Box, limits: Limits, looseCount = 0, mmPerPx = workingMmPerPx): Certificate {
  const grid = workingGrid(openings, borderMm(limits), mmPerPx);
  const mask = paperMask(paper, sheet, grid);
  return withOutline(
    outlineParts(paper),
    looseCount,
    judge(
      grid,
      labelParts(mask, grid.width, grid.height, 1, false),
      surveyPaper(mask, grid, limits, spareWhenJudgingPx),
      surveyOpenings(mask, grid, limits, spareWhenJudgingPx),
      limits,
      looseCount,
    ),
  );
}

/** Pieces of the outline itself, specks left out. */
export const outlineParts = (paper: Region): Region[] => parts(paper).filter((part) => regionArea(part) >= 0.1);

/** Pixels don't see a gap finer than themselves: the outline's own pieces (`outlineParts`) are counted as well. */
export function withOutline(found: readonly Region[], looseCount: number, seen: Certificate): Certificate {
  const pieces = found.length - looseCount;
  if (pieces <= Math.max(1, seen.pieces)) return seen;
  const largest = found.reduce((a, b) => (regionArea(b) > regionArea(a) ? b : a));
  const faults = found
    .filter((part) => part !== largest)
    .map((part): Fault => ({ kind: 'apart', atMm: [part.rings[0][0], part.rings[0][1]], widthMm: 0 }));
  return { ...seen, holds: false, pieces, faults: [...seen.faults, ...faults] };
}

/** Plain paper around the openings that the judging raster takes in. */
export const borderMm = (limits: Limits): number => Math.max(2, limits.leastBridgeMm) * 1.5;

/**
 * Distance to spare beyond the least radius, in pixels: while mending, and when judging a finished outline. The difference
 * leaves room for curve fitting and rounding when a file is written.
 */
export const spareWhenMendingPx = 0.5,
  spareWhenJudgingPx = 0.2;

export const surveyPaper = (mask: Uint8Array, grid: Grid, limits: Limits, sparePx: number): Survey =>
  surveyWidths(mask, 1, grid.width, grid.height, limits.leastBridgeMm / 2 / grid.mmPerPx, sparePx);
export const surveyOpenings = (mask: Uint8Array, grid: Grid, limits: Limits, sparePx: number): Survey =>
  surveyWidths(mask, 0, grid.width, grid.height, limits.leastOpeningMm / 2 / grid.mmPerPx, sparePx, longestTaper);

/** One fault for each part of paper that does not hang together with the frame. */
function apart({ labels, firsts }: Labels, grid: Grid): Fault[] {
  return firsts.filter((p) => labels[p] !== labels[0]).map((p) => ({ kind: 'apart', atMm: pixelMm(p, grid), widthMm: 0 }));
}

/** Broad parts of one piece of paper that no broad way joins, although nothing thin shows between them. */
function split(survey: Survey, labels: Int32Array, count: number, grid: Grid): Fault[] {
  if (survey.thin.some((t) => t.kind === 'neck')) return [];
  const seen = new Uint8Array(count + 1);
  const faults: Fault[] = [];
  for (const p of survey.cores().firsts) {
    if (seen[labels[p]]) faults.push({ kind: 'neck', atMm: pixelMm(p, grid), widthMm: Math.sqrt(survey.distance2(p)) * grid.mmPerPx });
    seen[labels[p]] = 1;
  }
  return faults;
}
