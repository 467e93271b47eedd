import { offsetRegion, regionArea, regionBox, ringArea, strip, takeAway, unite } from '../../form/index.ts';
import type { Box, Grid, Region } from '../../form/index.ts';
import { bridgeGround, findStrips } from '../bridges/bridges.ts';
import type { Strip } from '../bridges/bridges.ts';
import { judge, lookAt, Looks, paperMask, unjoined } from './certificate.ts';
import type { Judged } from './certificate.ts';
import { clearOf } from '../bridges/hidden.ts';
import type { Join } from './retrace.ts';
import { nearLine, trimmed } from '../raster/lines.ts';
import { covers } from '../raster/rings.ts';
import type { Certificate, PointMm, StencilRequest } from '../types.ts';
import { speckMm2 } from './widths.ts';
import type { Widths } from './widths.ts';
import type { Thin } from './windows.ts';

/** At most so many rounds, the first of which widen openings too; fewer for long outlines (points looked at in all rounds), so that none takes more than a few seconds. */
const mostRounds = 20,
  roundsOfBoth = 7,
  leastRounds = 3,
  mostPoints = 32_000;
/** It ends when the faults have not become fewer for so many rounds. */
const patience = 4;
const mostHairRounds = 2;
/** So much of their surroundings closes with openings late on. */
const lateMm = 0.2;
/** So many times an opening is widened in one place; where paper has grown into it again, or late, it closes. */
const mostWidenings = 2;
/** What is added is broader than the least width by this much: room for the fitted curve and for rounding. */
export const spareMm = 0.06;
/** An opening that can't be cut closes unasked up to this area, or this share of the drawing; all together up to the last. */
const leastLossMm2 = 6,
  lossShare = 0.01,
  mostLossShare = 0.1;
/** Where hairlines make up more of what prints than this, the drawing is made of fine lines. */
const fineShare = 0.25;

export interface Settled {
  readonly paper: Region;
  readonly strips: readonly Strip[];
  readonly thickened: readonly PointMm[];
  readonly widened: readonly PointMm[];
  /** Hairlines of paper left out, and openings closed because no knife can cut them. */
  readonly dropped: readonly Region[];
  readonly closed: readonly Region[];
  /** Openings that stand in the way of the proof and are too large to be closed unasked. */
  readonly inTheWay: readonly Thin[];
  /** Paper too thin at first sight, hairlines aside. */
  readonly slender: readonly Thin[];
  readonly certificate: Certificate;
  readonly joins: readonly Join[];
}

/**
 * Bridges and mends in rounds until the outline passes, or until further rounds leave no fewer faults.
 * @param joined strips of the first joins where they are known already
 */
export function settle(
  start: Region,
  openings0: Region,
  sheet: Box,
  grid: Grid,
  request: StencilRequest,
  looseCount: number,
  joined: readonly (readonly Strip[])[] = [],
): Settled {
  return new Mending(start, openings0, sheet, grid, request, looseCount, joined).done();
}

/** Strips that join the broad places of this paper where they cost least. */
export function stripsFor({ paper, widths }: Omit<Join, 'strips'>, sheet: Box, grid: Grid, request: StencilRequest): Strip[] {
  const { cost, forbidden = [], islands, material } = request;
  const bridgeMm = material.leastBridgeMm + spareMm;
  const mask = paperMask(paper, sheet, grid);
  return findStrips(bridgeGround(mask, grid, widths, bridgeMm, cost, forbidden, islands !== 'loose'), bridgeMm, cost === undefined);
}

/**
 * First hairlines go and parts are joined; then what is too thin grows and what is too narrow widens. Where both needs meet
 * they undo each other: an opening is widened so often in one place and no more, then it closes or stands in the way. So
 * in the end paper only grows, and what only grows comes to an end.
 */
class Mending {
  private paper: Region;
  private readonly strips: Strip[] = [];
  private readonly thickened: PointMm[] = [];
  private readonly widened: PointMm[] = [];
  private readonly dropped: Region[] = [];
  private readonly closed: Region[] = [];

  private readonly inkMm2: number;
  /** Of a piece's ink most is ground: its drawing is the smaller. */
  private readonly drawnMm2: number;
  private readonly bridgeMm: number;
  private readonly openingMm: number;
  private meantFine: boolean | undefined;
  private rounds = 0;
  private hairRounds = 0;
  /** Paper too thin at first sight. */
  private slender: readonly Thin[] = [];
  private lostMm2 = 0;
  /** Lines along which openings were widened. */
  private readonly widenings: (readonly number[])[] = [];
  private readonly looks = new Looks();
  /** So far from a change a look may come out another. */
  private readonly reachMm: number;

  private readonly sheet: Box;
  private readonly grid: Grid;
  private readonly request: StencilRequest;
  private readonly looseCount: number;
  private readonly joined: readonly (readonly Strip[])[];
  private readonly joinsSoFar: Join[] = [];

  constructor(
    start: Region,
    openings0: Region,
    sheet: Box,
    grid: Grid,
    request: StencilRequest,
    looseCount: number,
    joined: readonly (readonly Strip[])[],
  ) {
    this.joined = joined;
    this.paper = start;
    this.sheet = sheet;
    this.grid = grid;
    this.request = request;
    this.looseCount = looseCount;
    this.inkMm2 = regionArea(openings0);
    this.drawnMm2 = Math.min(this.inkMm2, regionArea(request.shape));
    this.bridgeMm = request.material.leastBridgeMm + spareMm;
    this.openingMm = request.material.leastOpeningMm + spareMm;
    this.reachMm = 2 * Math.max(this.bridgeMm, this.openingMm);
  }

  done(): Settled {
    const { sheet } = this;
    const { material } = this.request;
    let fewest = Infinity,
      since = 0;
    let points = 0;
    for (;;) {
      const seen = lookAt(this.paper, sheet, material, this.looks);
      const faults = faultsOf(seen);
      if (faults < fewest) {
        fewest = faults;
        since = this.rounds;
      }
      points += pointsOf(this.paper);
      const goesOn =
        (this.rounds < leastRounds && points < 2 * mostPoints) ||
        (this.rounds < mostRounds && points < mostPoints && this.rounds - since < patience);
      this.rounds++;
      if (!goesOn || !this.mended(seen)) return this.settled(seen);
    }
  }

  private settled(seen: Judged): Settled {
    const { paper, strips, thickened, widened, dropped, closed, joinsSoFar: joins } = this;
    const certificate = judge(seen, this.request.material, this.looseCount);
    return {
      paper,
      strips,
      thickened,
      widened,
      dropped,
      closed,
      inTheWay: seen.openingWidths().thin,
      slender: this.slender,
      certificate,
      joins,
    };
  }

  /** Paper put in, then paper taken away. */
  private change(added: readonly Region[], taken: readonly Region[]): true {
    const boxes = [...added, ...taken].filter((one) => one.rings.length > 0).map((one) => wider(regionBox(one), this.reachMm));
    this.looks.touch(boxes);
    if (added.length > 0) this.paper = unite([this.paper, unite(added)]);
    if (taken.length > 0) this.paper = takeAway(this.paper, unite(taken));
    // What strips leave between them: specks of paper that nothing holds, openings that no knife can cut.
    this.paper = { rings: this.paper.rings.filter((ring) => Math.abs(ringArea(ring)) >= speckMm2) };
    return true;
  }

  /** One round; false when there is nothing more to do. */
  private mended(seen: Judged): boolean {
    if (this.slender.length === 0) this.slender = seen.paper.thin.filter((t) => !t.hair && t.region.rings.length > 0);
    if (this.withoutHairs(seen)) return true;
    const joins = this.joins(seen);
    return joins.length > 0 ? this.change(joins, []) : this.bothWays(seen);
  }

  /** Hairlines of paper dropped, those of ink closed. */
  private withoutHairs(seen: Judged): boolean {
    if (this.hairRounds >= mostHairRounds) return false;
    const hairs = distinct(seen.paper.thin.filter((t) => t.hair || this.mayDrop(t.region)));
    let shut: Region[] = [];
    if (this.meantFine !== true) {
      shut = distinct(seen.openingWidths().thin.filter((t) => t.hair));
      // A drawing made of fine lines means them: its lines widen.
      this.meantFine ??= areaOf(shut) > fineShare * this.inkMm2;
      if (this.meantFine) shut = [];
    }
    if (hairs.length + shut.length === 0) return false;
    this.hairRounds++;
    this.dropped.push(...hairs);
    this.closed.push(...shut);
    return this.change(shut.map(overlapping), hairs.map(overlapping));
  }

  /** Bridges, and more paper between broad places of one part. */
  private joins({ paper: widths }: Judged): Region[] {
    if (!needsJoining(widths, this.looseCount)) return [];
    const here = { paper: this.paper, widths };
    const added = this.joined[this.joinsSoFar.length] ?? stripsFor(here, this.sheet, this.grid, this.request);
    this.joinsSoFar.push({ ...here, strips: added });
    this.strips.push(...added.filter((s) => s.crosses));
    this.thickened.push(...added.filter((s) => !s.crosses).map((s) => s.from));
    return added.map((s) => s.region);
  }

  /**
   * More paper where it is too thin, wider openings where they are too narrow. Where both are wanted paper comes first; and
   * what has been widened so often and is too narrow again closes, if that loses little.
   */
  private bothWays(seen: Judged): boolean {
    const { thin } = seen.paper,
      openings = seen.openingWidths(),
      apart = unjoined(openings);
    const added = thin.map((t) => along(t, this.bridgeMm)),
      taken: Region[] = [];
    this.thickened.push(...thin.map((t) => t.atMm));
    const closing = new Set<Region>();
    const clear = clearOf(
      thin.map((t) => t.line),
      (this.bridgeMm + this.openingMm) / 2,
    );
    const narrow = [
      ...openings.thin.map((t) => ({ at: t.atMm, line: t.line, region: t.region, mend: along(t, this.openingMm) })),
      ...joints(openings, apart).map((line) => ({
        at: [line[0], line[1]] as PointMm,
        line,
        region: undefined,
        mend: strip(line, this.openingMm, 'round'),
      })),
    ];
    for (const { at, line, region, mend } of narrow) {
      if (!clear(at)) continue;
      if (this.rounds < roundsOfBoth && this.widenings.filter((known) => nearLine(known, at) < this.openingMm).length < mostWidenings) {
        this.widened.push(at);
        this.widenings.push(line);
        taken.push(mend);
      } else if (!region) added.push(mend);
      else if (region.rings.length > 0 && this.mayClose(region)) closing.add(region);
    }
    this.closed.push(...closing);
    // Late on what is left beside them goes too.
    added.push(...[...closing].map((region) => (this.rounds < roundsOfBoth ? overlapping(region) : offsetRegion(region, lateMm))));
    if (added.length + taken.length === 0) return false;
    return this.change(added, taken);
  }

  private mayDrop(region: Region): boolean {
    return (this.request.drops ?? []).some((at) => near(region, at, 0.1));
  }

  private mayClose(region: Region): boolean {
    if ((this.request.closings ?? []).some((at) => near(region, at, this.openingMm))) return true;
    const areaMm2 = regionArea(region);
    if (areaMm2 > Math.max(leastLossMm2, lossShare * this.drawnMm2) || this.lostMm2 + areaMm2 > mostLossShare * this.drawnMm2) return false;
    this.lostMm2 += areaMm2;
    return true;
  }
}

const pointsOf = (region: Region): number => region.rings.reduce((sum, ring) => sum + ring.length / 2, 0);

const faultsOf = ({ paper, openingWidths }: Judged): number => {
  const openings = openingWidths();
  return paper.parts.length - 1 + paper.thin.length + unjoined(paper).length + openings.thin.length + unjoined(openings).length;
};

/** A strip along the middle of a thin place that ends where the place does: its round ends reach no farther. */
function along({ kind, line }: Thin, widthMm: number): Region {
  const half = widthMm / 2;
  const ends = kind === 'tongue' ? [0, half] : kind === 'thin-piece' ? [half, half] : [0, 0];
  return strip(trimmed(line, ends[0], ends[1]), widthMm, 'round');
}

const areaOf = (regions: readonly Region[]): number => regions.reduce((sum, region) => sum + regionArea(region), 0);

/** The regions of thin places, each once. */
const distinct = (thin: readonly Thin[]): Region[] => [...new Set(thin.map((t) => t.region))].filter((region) => region.rings.length > 0);

/** A little larger, so that no seam stays. */
const overlapping = (region: Region): Region => offsetRegion(region, 0.006, 'miter');

const near = (region: Region, [x, y]: PointMm, reachMm: number): boolean =>
  covers(region, x, y) || region.rings.some((ring) => nearLine([...ring, ring[0], ring[1]], [x, y]) <= reachMm);

/** Has a part of paper more than one broad place, or is there a part too many? */
function needsJoining({ parts: found, partOfCore }: Widths, looseCount: number): boolean {
  return found.length > 1 + looseCount || new Set(partOfCore).size < partOfCore.length;
}

/** Short lines between broad places of one opening that nothing broad joins and nothing thin was seen to. */
function joints(widths: Widths, apart: readonly PointMm[]): number[][] {
  return apart.map((at) => {
    const mine = widths.cores.findIndex((core) => core.rings[0][0] === at[0] && core.rings[0][1] === at[1]);
    let least = Infinity,
      line = [at[0], at[1], at[0] + 0.01, at[1]];
    widths.cores.forEach((core, i) => {
      if (i === mine || widths.partOfCore[i] !== widths.partOfCore[mine]) return;
      for (const a of core.rings)
        for (const b of widths.cores[mine].rings)
          for (let p = 0; p < a.length; p += 2)
            for (let q = 0; q < b.length; q += 2) {
              const d = Math.hypot(a[p] - b[q], a[p + 1] - b[q + 1]);
              if (d < least) {
                least = d;
                line = [a[p], a[p + 1], b[q], b[q + 1]];
              }
            }
    });
    return line;
  });
}

const wider = (b: Box, mm: number): Box => ({ minX: b.minX - mm, minY: b.minY - mm, maxX: b.maxX + mm, maxY: b.maxY + mm });

/** Is some point of one within reach of the other? */
export const beside = (a: Region, b: Region, reachMm: number): boolean =>
  b.rings.length > 0 &&
  overlap(wider(regionBox(a), reachMm), regionBox(b)) &&
  a.rings.some((ring) => {
    for (let i = 0; i < ring.length; i += 2) if (near(b, [ring[i], ring[i + 1]], reachMm)) return true;
    return false;
  });

const overlap = (a: Box, b: Box): boolean => a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
