import { rasterize, regionBox } from '../../form/index.ts';
import type { Box, Grid, Region } from '../../form/index.ts';
import { length, say } from '../../../words/say.ts';
import { covers, openingsAndTaped } from '../raster/rings.ts';
import { widthsOf } from './widths.ts';
import type { Widths } from './widths.ts';
import { finestMmPerPx, Seen } from './windows.ts';
import type { Certificate, Fault, PointMm } from '../types.ts';

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

export interface Limits {
  readonly leastBridgeMm: number;
  readonly leastOpeningMm: number;
}

/** What a stencil's outline is like: its paper, its openings, how wide both are. */
export interface Judged {
  readonly openings: Region;
  readonly paper: Widths;
  /** Worked out when first asked for. */
  readonly openingWidths: () => Widths;
}

/** Beyond the sheet the screen is closed (taped): paper is looked at with so much more of it all round. */
const tapeMm = 3;

/** What earlier looks at nearly the same outline saw. */
export class Looks {
  readonly paper = new Seen();
  readonly openings = new Seen();

  /** Pixels looked at so far. */
  get pixels(): number {
    return this.paper.pixels + this.openings.pixels;
  }

  /** Was anything looked at tile by tile only? From now on nothing is. */
  asWhole(): boolean {
    const anew = !this.paper.whole && (this.paper.usedTiles || this.openings.usedTiles);
    this.paper.whole = this.openings.whole = true;
    return anew;
  }

  /** Here the outline is another than at the last look. */
  touch(boxes: readonly Box[]): void {
    this.paper.touch(boxes);
    this.openings.touch(boxes);
  }
}

/** A look at an outline that both mending and judging start from; with `looks` only where something has changed. */
export function lookAt(paper: Region, sheet: Box, limits: Limits, looks?: Looks): Judged {
  const { openings, taped } = openingsAndTaped(paper, sheet, tapeMm);
  let widths: Widths | undefined;
  return {
    openings,
    paper: widthsOf(taped, limits.leastBridgeMm, false, looks?.paper),
    openingWidths: () => (widths ??= widthsOf(openings, limits.leastOpeningMm, true, looks?.openings)),
  };
}

/** Is it one piece, apart from `looseCount` loose pieces, with no neck under the least bridge and no opening under the least opening? */
export function judge({ paper, openingWidths }: Judged, limits: Limits, looseCount: number): Certificate {
  const { leastBridgeMm, leastOpeningMm } = limits;
  const openings = openingWidths();
  const faults: Fault[] = [];
  const pieces = Math.max(0, paper.parts.length - looseCount);
  if (pieces !== 1) faults.push(...apart(paper));
  for (const t of paper.thin) faults.push({ kind: t.kind, atMm: t.atMm, widthMm: t.widthMm });
  faults.push(...split(paper, 'neck'));
  for (const t of openings.thin) faults.push({ kind: 'opening', atMm: t.atMm, widthMm: t.widthMm });
  faults.push(...split(openings, 'opening'));
  const mmPerPx = finestMmPerPx(Math.max(leastBridgeMm, leastOpeningMm));
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
 * The certificate of a finished outline. `paper`: the sheet with its loose pieces, if any. What is joined and what is apart
 * is read from the outline itself, to a micron; how wide a place is, on a raster of 0.05 mm around it.
 */
export function certify(paper: Region, sheet: Box, limits: Limits, looseCount = 0): Certificate {
  return judge(lookAt(paper, sheet, limits), limits, looseCount);
}

/** Plain paper around the openings that the working raster takes in. */
export const borderMm = (limits: Limits): number => Math.max(2, limits.leastBridgeMm) * 1.5;

/** One fault for each part of paper that does not hang together with the frame. */
function apart(paper: Widths): Fault[] {
  const frame = frameOf(paper);
  return paper.parts.flatMap((part, i) => (i === frame ? [] : [{ kind: 'apart', atMm: [part.rings[0][0], part.rings[0][1]], widthMm: 0 }]));
}

/** The part that reaches farthest out. */
export function frameOf({ parts: found }: Widths): number {
  let best = 0,
    left = Infinity;
  found.forEach((part, i) => {
    const { minX } = regionBox(part);
    if (minX < left) {
      left = minX;
      best = i;
    }
  });
  return best;
}

/** Broad places of one part that no broad way joins, where nothing thin was found between them. */
function split(widths: Widths, kind: Fault['kind']): Fault[] {
  return unjoined(widths).map((at): Fault => ({ kind, atMm: at, widthMm: 0 }));
}

/** How many faults a look has seen. */
export function faultsOf({ paper, openingWidths }: Judged): number {
  const openings = openingWidths();
  return paper.parts.length - 1 + paper.thin.length + unjoined(paper).length + openings.thin.length + unjoined(openings).length;
}

/** One piece without a thin place: what does not hold then is broad places that nothing broad joins. */
export const nothingThin = ({ paper, openingWidths }: Judged): boolean =>
  paper.parts.length === 1 && paper.thin.length === 0 && openingWidths().thin.length === 0;

/** A point of each further broad place of a part, where its thin places do not account for it. */
export function unjoined({ parts: found, cores, partOfCore, thin }: Widths): PointMm[] {
  const out: PointMm[] = [];
  const first = new Map<number, number>();
  cores.forEach((core, i) => {
    const part = partOfCore[i];
    const had = first.get(part);
    if (had === undefined) {
      first.set(part, i);
      return;
    }
    const inPart = thin.some((t) => found[part] && covers(found[part], t.atMm[0], t.atMm[1]));
    if (!inPart) out.push([core.rings[0][0], core.rings[0][1]]);
  });
  return out;
}
