import { offsetRegion, regionArea, regionBox, ringArea, strip, takeAway, unite } from '../../form/index.ts';
import type { Box, Grid, Region } from '../../form/index.ts';
import { bridgeGround, findStrips } from '../bridges/bridges.ts';
import type { Strip } from '../bridges/bridges.ts';
import { faultsOf, judge, lookAt, Looks, nothingThin, paperMask, unjoined } from './certificate.ts';
import type { Judged } from './certificate.ts';
import { clearOf } from '../bridges/hidden.ts';
import type { Join } from './retrace.ts';
import { aside } from '../raster/aside.ts';
import { nearLine } from '../raster/lines.ts';
import type { PointMm, StencilRequest } from '../types.ts';
import { along, areaOf, hairsOf, overlapping, near, needsJoining, joints, wider } from './mend-shapes.ts';
import { pointsOf } from '../raster/rings.ts';
import type { Settled } from './settled.ts';
import {
  beyondHope,
  mostRounds,
  roundsOfBoth,
  leastRounds,
  mendingEffort,
  pixelsAPoint,
  idleMm2,
  idleBridgesMm2,
  patience,
  hopelessFaults,
  mostYielding,
  mostHairRounds,
  mostDropRounds,
  yieldingRounds,
  yieldingEffort,
  lateMm,
  changeMm,
  seamMm,
  mostWidenings,
  spareMm,
  leastLossMm2,
  lossShare,
  mostLossShare,
  yieldingLossShare,
  fineShare,
} from './settling.ts';
import { speckMm2 } from './widths.ts';
import type { Thin } from './windows.ts';

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
  private points = 0;
  private bridged = 0;
  private hairRounds = 0;
  /** Faults before each of them. */
  private readonly hairFaults: number[] = [];
  private joinedAt = -2;
  /** What was to join broad paper was there already. */
  private idle = false;
  /** Paper too thin at first sight. */
  private slender: readonly Thin[] = [];
  private lostMm2 = 0;
  /** Late on: what can't be cut closes, as long as all of it is little of the drawing. */
  private yielding = false;
  /** Lines along which openings were widened. */
  private readonly widenings: (readonly number[])[] = [];
  /** Where paper grew to one side only. */
  private readonly movedAt: PointMm[] = [];
  private readonly looks = new Looks();
  private readonly mostFaults: number;

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
    // Who asks for all that is too fine to go wants it to end well.
    this.mostFaults = [...(request.closings ?? []), ...(request.drops ?? [])].some((spot) => spot.withinMm !== undefined)
      ? Infinity
      : hopelessFaults;
  }

  done(): Settled {
    const mended = this.inRounds(
      (since, faults) =>
        !(this.rounds > leastRounds && faults > this.mostFaults) &&
        faults <= beyondHope * this.mostFaults &&
        this.rounds < mostRounds &&
        this.rounds - since < patience &&
        this.effort() < mendingEffort,
    );
    const left = faultsOf(mended);
    if (left === 0 || left > Math.min(this.mostFaults, mostYielding)) return this.settled(mended);
    // What is left is closed; if that loses too much, or does not help, it is left as it is.
    const before = {
      paper: this.paper,
      kept: [this.strips, this.thickened, this.widened, this.dropped, this.closed].map((list) => list.length),
    };
    this.yielding = true;
    const from = this.rounds;
    const most = this.effort() + (this.mostFaults === Infinity ? 2 : 1) * yieldingEffort;
    const yielded = this.inRounds(() => this.rounds - from < yieldingRounds && this.effort() < most, mended);
    if (faultsOf(yielded) === 0) return this.settled(yielded);
    this.paper = before.paper;
    [this.strips, this.thickened, this.widened, this.dropped, this.closed].forEach((list, i) => list.splice(before.kept[i]));
    return this.settled(mended);
  }

  /** Rounds until nothing is wrong, nothing more can be done, or it no longer `goesOn`: the last look. `last`: the one before, if any. */
  private inRounds(goesOn: (fewestAt: number, faults: number) => boolean, last?: Judged): Judged {
    let fewest = Infinity,
      fewestAt = this.rounds;
    for (let known = last; ; known = undefined) {
      let seen = known ?? this.look(),
        faults = faultsOf(seen);
      // Tiles may differ by some microns: what they pass, or where they alone come apart, is looked at as a whole, and from then on all is.
      if (nothingThin(seen) && this.looks.asWhole()) {
        seen = this.look();
        faults = faultsOf(seen);
      }
      // What is joined anew has other faults: counted from there.
      if (faults < fewest || this.joinedAt === this.rounds - 1) {
        fewest = faults;
        fewestAt = this.rounds;
      }
      const more = goesOn(fewestAt, faults) && this.effort() < (this.request.mostEffort ?? Infinity);
      this.rounds++;
      if (!more || !this.mended(seen)) return seen;
    }
  }

  private look(): Judged {
    this.points += pointsOf(this.paper);
    return lookAt(this.paper, this.sheet, this.request.material, this.looks);
  }

  /** Work so far. */
  private effort(): number {
    return this.points + (this.looks.pixels + this.bridged) / pixelsAPoint;
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
      effort: Math.round(this.effort()),
      joins,
    };
  }

  /** Paper put in, then paper taken away. */
  private change(added: readonly Region[], taken: readonly Region[]): true {
    const boxes = [...added, ...taken].filter((one) => one.rings.length > 0).map((one) => wider(regionBox(one), changeMm));
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
    return this.joinedUp(seen) || this.bothWays(seen);
  }

  /** Hairlines of paper dropped, those of ink closed. */
  private withoutHairs(seen: Judged): boolean {
    if (this.hairRounds >= (this.request.drops?.some((d) => d.withinMm !== undefined) ? mostDropRounds : mostHairRounds)) return false;
    const hairs = hairsOf(seen.paper.thin, (t) => this.mayDrop(t.region));
    let shut: Region[] = [];
    if (this.meantFine !== true) {
      shut = hairsOf(seen.openingWidths().thin);
      // A drawing made of fine lines means them: its lines widen.
      this.meantFine ??= areaOf(shut) > fineShare * this.inkMm2;
      if (this.meantFine) shut = [];
    }
    if (hairs.length + shut.length === 0) return false;
    // What is dropped may leave openings that close, and these paper that is dropped again: it goes on as long as that gains something.
    this.hairFaults.push(faultsOf(seen));
    const [before, , now] = this.hairFaults.slice(-3);
    if (now >= before) {
      this.hairRounds = mostDropRounds;
      return false;
    }
    this.hairRounds++;
    this.dropped.push(...hairs);
    this.closed.push(...shut);
    return this.change(shut.map(overlapping), hairs.map(overlapping));
  }

  /** Bridges, and more paper between broad places of one part; false where that adds nothing to what is there. */
  private joinedUp({ paper: widths }: Judged): boolean {
    this.idle = false;
    if (!needsJoining(widths, this.looseCount)) return false;
    const here = { paper: this.paper, widths };
    this.bridged += this.grid.width * this.grid.height;
    const added = this.joined[this.joinsSoFar.length] ?? stripsFor(here, this.sheet, this.grid, this.request);
    this.joinsSoFar.push({ ...here, strips: added });
    if (added.length === 0) return false;
    const areaMm2 = regionArea(this.paper);
    this.change(
      added.map((s) => s.region),
      [],
    );
    this.idle = regionArea(this.paper) - areaMm2 < (added.some((s) => s.crosses) ? idleBridgesMm2 : idleMm2);
    if (this.idle) return false;
    this.joinedAt = this.rounds - 1;
    this.strips.push(...added.filter((s) => s.crosses));
    this.thickened.push(...added.filter((s) => !s.crosses).map((s) => s.from));
    return true;
  }

  /**
   * More paper where it is too thin, wider openings where they are too narrow. Where both are wanted paper comes first; and
   * what has been widened so often and is too narrow again closes, if that loses little.
   */
  private bothWays(seen: Judged): boolean {
    const { thin } = seen.paper,
      openings = seen.openingWidths(),
      apart = unjoined(openings);
    const apartMm = (this.bridgeMm + this.openingMm) / 2;
    // Beside an opening that is as narrow as may be paper grows to the other side.
    const narrowLines = [...(this.late() ? [] : openings.thin.map((t) => t.line)), ...this.widenings];
    const paperLines = thin.map((t) => this.beside(t, narrowLines, apartMm));
    const added = thin.map(({ kind }, i) => along({ kind, line: paperLines[i] }, this.bridgeMm)),
      taken: Region[] = [];
    // What no bridge joins grows together where it is nearest.
    if (this.idle) added.push(...joints(seen.paper, unjoined(seen.paper)).map((line) => strip(line, this.bridgeMm, 'round')));
    this.thickened.push(...thin.map((t) => t.atMm));
    const closing = new Set<Region>();
    const clear = clearOf(paperLines, apartMm - seamMm);
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
      if (!this.late() && this.widenings.filter((known) => nearLine(known, at) < this.openingMm).length < mostWidenings) {
        this.widened.push(at);
        this.widenings.push(line);
        taken.push(mend);
      } else if (!region) added.push(mend);
      else if (region.rings.length > 0 && this.mayClose(region)) closing.add(region);
    }
    this.closed.push(...closing);
    // Late on what is left beside them goes too.
    added.push(...[...closing].map((region) => (this.late() ? offsetRegion(region, lateMm) : overlapping(region))));
    if (added.length + taken.length === 0) return false;
    return this.change(added, taken);
  }

  /** Where paper grows; beside narrow openings to the other side of them, so often in one place and no more. */
  private beside({ line, atMm }: Thin, narrow: readonly (readonly number[])[], apartMm: number): readonly number[] {
    if (this.movedAt.filter((at) => Math.hypot(at[0] - atMm[0], at[1] - atMm[1]) < this.bridgeMm).length >= mostWidenings) return line;
    const moved = aside(line, narrow, apartMm);
    if (moved.length !== line.length || moved.some((v, i) => v !== line[i])) this.movedAt.push(atMm);
    return moved;
  }

  private late(): boolean {
    return this.yielding || this.rounds >= roundsOfBoth;
  }

  private mayDrop(region: Region): boolean {
    return (this.request.drops ?? []).some(({ atMm, withinMm = 0.1 }) => near(region, atMm, withinMm));
  }

  private mayClose(region: Region): boolean {
    if ((this.request.closings ?? []).some(({ atMm, withinMm = this.openingMm }) => near(region, atMm, withinMm))) return true;
    const areaMm2 = regionArea(region);
    if (!this.yielding && areaMm2 > Math.max(leastLossMm2, lossShare * this.drawnMm2)) return false;
    if (this.lostMm2 + areaMm2 > (this.yielding ? yieldingLossShare : mostLossShare) * this.drawnMm2) return false;
    this.lostMm2 += areaMm2;
    return true;
  }
}
