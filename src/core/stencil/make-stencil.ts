import {
  boxRegion,
  common,
  emptyRegion,
  offsetRegion,
  parts,
  regionArea,
  regionBox,
  ringArea,
  strip,
  takeAway,
  unite,
} from '../form/index.ts';
import type { Box, Grid, Region } from '../form/index.ts';
import { problem } from '../problem.ts';
import type { Problem } from '../problem.ts';
import { length, lengths, say, type Saying } from '../../words/say.ts';
import { bridgeGround, findStrips, sampleCost } from './bridges.ts';
import type { Strip } from './bridges.ts';
import { borderMm, judge, lookAt, paperMask, unjoined, workingGrid, workingMmPerPx } from './certificate.ts';
import { innerPoint } from './inner-point.ts';
import { knifeWork } from './knife.ts';
import { covers, isSheetRing } from './rings.ts';
import { nearLine } from './widths.ts';
import { trimmed } from './lines.ts';
import type { Thin, Widths } from './widths.ts';
import type { Bridge, BridgePin, Certificate, CostRaster, Fault, Island, LoosePiece, PointMm, Stencil, StencilRequest } from './types.ts';

/** Rings smaller than this come from rounding, not from a drawing. */
const crumbMm2 = 0.1;
const mostRounds = 18;
/** Growing that has not made the faults fewer for so many rounds gets nowhere. */
const patience = 3;
/** So many times openings are widened; after that mending only adds paper. */
const roundsOfBoth = 3;
/** What is added is broader than the least width by this much: room for the fitted curve and for rounding. */
const spareMm = 0.06;
/** An opening that can't be cut closes unasked up to this area, or this share of all that prints. */
const leastLossMm2 = 6,
  lossShare = 0.01,
  mostLossShare = 0.1;
/** Where hairlines make up more of what prints than this, the drawing is made of fine lines. */
const fineShare = 0.25;

/** One stencil of a cut: what stays, what prints, what holds it together, and the proof that it does. Deterministic. */
export function makeStencil(request: StencilRequest): Stencil {
  const { side, material, islands: wish } = request;
  const place = request.place ?? '';
  const problems: Problem[] = [];
  const aperture = 'rings' in request.aperture ? request.aperture : boxRegion(request.aperture);
  const sheet = enough(request.sheet, regionBox(aperture), material.leastBridgeMm, place, problems);
  const openings0 = withoutCrumbs(side === 'window' ? common(request.shape, aperture) : takeAway(aperture, request.shape));
  if (!openings0.rings.length) {
    problems.push(
      problem(
        'error',
        'stencil-prints-nothing',
        place,
        say(side === 'window' ? 'stencil.outsideImage' : 'stencil.pieceCoversAll'),
        say('stencil.moveOrResize'),
      ),
    );
    return blank(request, sheet, problems);
  }
  const sheetRegion = boxRegion(sheet);
  const found = parts(takeAway(sheetRegion, openings0));
  const frameAt = found.findIndex((part) => touches(regionBox(part), sheet));
  const frame = found[frameAt];
  const sorted = sortIslands(
    found.filter((_, i) => i !== frameAt),
    wish,
    material.leastBridgeMm,
    place,
    problems,
  );
  const loose = sorted.filter((i) => i.handled === 'loose').map((i) => i.region);
  const held = sorted.filter((i) => i.handled === 'bridged').map((i) => i.region);
  const pinned: Strip[] = (request.pins ?? []).map((pin) => pinnedStrip(pin, Math.max(pin.widthMm ?? 0, material.leastBridgeMm + spareMm)));
  const start = unite([frame, ...held, ...loose, ...pinned.map((s) => s.region)]);

  const grid = workingGrid(regionBox(openings0), borderMm(material));
  const settled = settle(start, openings0, sheet, grid, request, loose.length);
  const { paper } = settled;
  const prints = takeAway(aperture, paper);
  const bridges = nameBridges([...pinned, ...settled.strips], pinned.length, openings0, request.cost);
  const loosePieces = loose.map(
    (region, i): LoosePiece => ({ number: i + 1, region, at: innerPoint(region, regionBox(region)), areaMm2: regionArea(region) }),
  );
  const cutLines: Region = { rings: paper.rings.filter((ring) => !isSheetRing(ring, sheet)) };
  const cutOuts = prints.rings.filter((ring) => ringArea(ring) > 0).length;
  report(settled, prints, place, material.name, problems);
  return {
    side,
    sheet,
    paper,
    prints,
    islands: sorted,
    bridges,
    loosePieces,
    cutLines,
    certificate: settled.certificate,
    knife: knifeWork(cutLines, cutOuts + loosePieces.length, request.rates),
    problems,
    ...(settled.certificate.holds ? {} : { inTheWay: settled.inTheWay.map(({ atMm, region }) => ({ atMm, region })) }),
  };
}

interface Settled {
  readonly paper: Region;
  readonly strips: readonly Strip[];
  readonly thickened: readonly PointMm[];
  readonly widened: readonly PointMm[];
  /** Hairlines of paper left out, and openings closed because no knife can cut them. */
  readonly dropped: readonly Region[];
  readonly closed: readonly Region[];
  /** Openings that stand in the way of the proof and are too large to be closed unasked. */
  readonly inTheWay: readonly Thin[];
  readonly certificate: Certificate;
}

/**
 * Bridges and mends in rounds until the outline passes. First hairlines go, then what is too thin grows and what is too
 * narrow widens. Where both needs meet they undo each other; so after a few rounds nothing is taken from the paper any more:
 * it only grows, and openings that are still too narrow close. What only grows comes to an end.
 */
function settle(start: Region, openings0: Region, sheet: Box, grid: Grid, request: StencilRequest, looseCount: number): Settled {
  const { material } = request;
  const bridgeMm = material.leastBridgeMm + spareMm,
    openingMm = material.leastOpeningMm + spareMm;
  const inkMm2 = regionArea(openings0);
  const mayClose = (region: Region): boolean => {
    if ((request.closings ?? []).some((at) => near(region, at, openingMm))) return true;
    const areaMm2 = regionArea(region);
    if (areaMm2 > Math.max(leastLossMm2, lossShare * inkMm2) || lostMm2 + areaMm2 > mostLossShare * inkMm2) return false;
    lostMm2 += areaMm2;
    return true;
  };
  let paper = start;
  const strips: Strip[] = [];
  const thickened: PointMm[] = [],
    widened: PointMm[] = [],
    dropped: Region[] = [],
    closed: Region[] = [];
  let meantFine: boolean | undefined;
  let widenings = 0,
    lostMm2 = 0,
    fewest = Infinity,
    since = 0;
  for (let round = 0; ; round++) {
    const seen = lookAt(paper, sheet, material);
    const last = round >= mostRounds,
      growing = widenings >= roundsOfBoth || round >= mostRounds / 2;
    if (!last && !growing) {
      const hairs = seen.paper.thin.filter((t) => t.hair && t.region.rings.length > 0);
      const slits = seen.openingWidths().thin.filter((t) => t.hair && t.region.rings.length > 0);
      const slitMm2 = areaOf(slits);
      // A drawing made of fine lines means them: its lines widen.
      meantFine ??= slitMm2 > fineShare * inkMm2;
      if (hairs.length > 0 || (slits.length > 0 && !meantFine)) {
        const gone = distinct(hairs),
          shut = meantFine ? [] : distinct(slits);
        dropped.push(...gone);
        closed.push(...shut);
        paper = takeAway(unite([paper, ...shut.map(overlapping)]), unite(gone.map(overlapping)));
        continue;
      }
    }
    if (!last && needsJoining(seen.paper, looseCount)) {
      const mask = paperMask(paper, sheet, grid);
      const ground = bridgeGround(mask, grid, seen.paper, bridgeMm, request.cost, request.forbidden ?? [], request.islands !== 'loose');
      const added = findStrips(ground, bridgeMm, request.cost === undefined);
      strips.push(...added.filter((s) => s.crosses));
      thickened.push(...added.filter((s) => !s.crosses).map((s) => s.from));
      if (added.length > 0) {
        paper = unite([paper, ...added.map((s) => s.region)]);
        continue;
      }
    }
    const thin = seen.paper.thin;
    if (!last && !growing && thin.length > 0) {
      thickened.push(...thin.map((t) => t.atMm));
      paper = unite([paper, unite(thin.map((t) => along(t, bridgeMm)))]);
      continue;
    }
    const narrow = seen.openingWidths();
    if (!last && !growing && narrow.thin.length + unjoined(narrow).length > 0) {
      widenings++;
      widened.push(...narrow.thin.map((t) => t.atMm), ...unjoined(narrow));
      paper = takeAway(
        paper,
        unite([...narrow.thin.map((t) => along(t, openingMm)), ...joints(narrow).map((line) => strip(line, openingMm, 'round'))]),
      );
      continue;
    }
    const left = thin.length + narrow.thin.length;
    if (growing && left < fewest) {
      fewest = left;
      since = round;
    }
    if (!last && growing && round - since <= patience) {
      const shut = distinct(narrow.thin).filter(mayClose);
      const tips = joints(narrow).map((line) => strip(line, openingMm, 'round'));
      if (thin.length + shut.length + tips.length > 0) {
        thickened.push(...thin.map((t) => t.atMm));
        closed.push(...shut);
        paper = unite([paper, unite([...thin.map((t) => along(t, bridgeMm)), ...shut.map(overlapping), ...tips])]);
        continue;
      }
    }
    return {
      paper,
      strips,
      thickened,
      widened,
      dropped,
      closed,
      inTheWay: narrow.thin,
      certificate: judge(seen, material, looseCount),
    };
  }
}

/** A strip along the middle of a thin place that ends where the place does: its round ends reach no farther. */
function along({ kind, line }: Thin, widthMm: number): Region {
  const half = widthMm / 2;
  const ends = kind === 'tongue' ? [0, half] : kind === 'thin-piece' ? [half, half] : [0, 0];
  return strip(trimmed(line, ends[0], ends[1]), widthMm, 'round');
}

const areaOf = (thin: readonly Thin[]): number => distinct(thin).reduce((sum, region) => sum + regionArea(region), 0);

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
function joints(widths: Widths): number[][] {
  return unjoined(widths).map((at) => {
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

function sortIslands(
  found: readonly Region[],
  wish: StencilRequest['islands'],
  leastMm: number,
  place: string | Saying,
  problems: Problem[],
): Island[] {
  let tooSmall = 0;
  const islands = found.map((region): Island => {
    const areaMm2 = regionArea(region);
    if (wish === 'drop') return { region, areaMm2, handled: 'dropped' };
    if (wish === 'bridge' && areaMm2 < 0.5 * leastMm * leastMm) {
      tooSmall++;
      return { region, areaMm2, handled: 'dropped' };
    }
    return { region, areaMm2, handled: wish === 'loose' ? 'loose' : 'bridged' };
  });
  if (tooSmall) {
    problems.push(
      problem('warning', 'stencil-island-too-small', place, say('stencil.islandsTooSmall', { n: tooSmall }), say('stencil.enlargeOrLoose')),
    );
  }
  return islands;
}

function pinnedStrip({ fromMm, viaMm = [], toMm }: BridgePin, widthMm: number): Strip {
  const line = [...fromMm, ...viaMm.flat(), ...toMm];
  return { region: strip(line, widthMm, 'round'), widthMm, line, from: fromMm, to: toMm, crosses: true };
}

/** Each bridge's part of the openings, numbered from top to bottom. */
function nameBridges(strips: readonly Strip[], pinnedCount: number, openings: Region, cost: CostRaster | undefined): Bridge[] {
  if (!strips.length) return [];
  const shares: Region[][] = strips.map(() => []);
  for (const part of parts(common(unite(strips.map((s) => s.region)), openings))) {
    const box = regionBox(part);
    const at: PointMm = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
    let best = 0,
      least = Infinity;
    strips.forEach((s, i) => {
      const d = distanceToLine(at, s.line);
      if (d < least) {
        least = d;
        best = i;
      }
    });
    shares[best].push(part);
  }
  const order = strips
    .map((_, i) => i)
    .sort((i, j) => strips[i].from[1] - strips[j].from[1] || strips[i].from[0] - strips[j].from[0] || i - j);
  return order
    .filter((i) => shares[i].length > 0)
    .map((i, k) => {
      const region: Region = { rings: shares[i].flatMap((part) => part.rings) };
      return {
        id: `b${k + 1}`,
        from: strips[i].from,
        to: strips[i].to,
        line: strips[i].line,
        widthMm: strips[i].widthMm,
        region,
        areaMm2: regionArea(region),
        pinned: i < pinnedCount,
        ...(cost ? { costDeltaE: meanCost(region, cost) } : {}),
      };
    });
}

function meanCost(region: Region, cost: CostRaster): number {
  const box = regionBox(region);
  const grid = workingGrid(box, 0);
  const inside = paperMask(region, box, grid);
  const values = sampleCost(cost, grid);
  let sum = 0,
    n = 0;
  for (let p = 0; p < inside.length; p++) {
    if (inside[p]) {
      sum += values[p];
      n++;
    }
  }
  return n ? sum / n : 0;
}

function distanceToLine(at: PointMm, line: readonly number[]): number {
  let least = Infinity;
  for (let i = 0; i + 3 < line.length; i += 2) {
    const dx = line[i + 2] - line[i],
      dy = line[i + 3] - line[i + 1];
    const length2 = dx * dx + dy * dy;
    const t = length2 > 0 ? Math.max(0, Math.min(1, ((at[0] - line[i]) * dx + (at[1] - line[i + 1]) * dy) / length2)) : 0;
    least = Math.min(least, Math.hypot(at[0] - line[i] - t * dx, at[1] - line[i + 1] - t * dy));
  }
  return least;
}

function report(settled: Settled, prints: Region, place: string | Saying, material: Saying, problems: Problem[]): void {
  const { certificate, thickened, widened, closed, dropped } = settled;
  const spot = (at: PointMm) => lengths(at, ',', 0);
  if (thickened.length)
    problems.push(
      problem(
        'warning',
        'stencil-strengthened',
        place,
        say('stencil.strengthened', { n: thickened.length, material, first: spot(thickened[0]) }),
        say('stencil.keepFineParts'),
      ),
    );
  if (widened.length)
    problems.push(
      problem(
        'warning',
        'stencil-widened',
        place,
        say('stencil.widened', { n: widened.length, first: spot(widened[0]) }),
        say('stencil.lookOrEnlarge'),
      ),
    );
  const fine = (
    code: string,
    regions: readonly Region[],
    message: (values: { n: number; first: ReturnType<typeof spot> }) => Saying,
  ): void => {
    if (regions.length === 0) return;
    const box = regionBox(regions[0]);
    const first = spot([(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]);
    problems.push(problem('warning', code, place, message({ n: regions.length, first }), say('stencil.keepHairlines')));
  };
  fine('stencil-closed', closed, (values) => say('stencil.closed', values));
  fine('stencil-dropped', dropped, (values) => say('stencil.dropped', values));
  if (!certificate.holds) {
    const first = certificate.faults[0];
    problems.push(
      problem(
        'error',
        'stencil-does-not-hold',
        place,
        say('stencil.doesNotHold', { n: certificate.faults.length, first: spot(first.atMm), fault: faults[first.kind] }),
        say('stencil.mendFaults'),
      ),
    );
  }
  if (!prints.rings.length)
    problems.push(problem('error', 'stencil-prints-nothing', place, say('stencil.noOpeningLeft'), say('stencil.enlargeForm')));
}

const faults: Readonly<Record<Fault['kind'], Saying>> = {
  neck: say('stencil.neckTooThin'),
  'thin-piece': say('stencil.pieceTooThin'),
  tongue: say('stencil.pointTooThin'),
  opening: say('stencil.openingTooNarrow'),
  apart: say('stencil.partUnheld'),
};

function enough(sheet: Box, aperture: Box, least: number, place: string | Saying, problems: Problem[]): Box {
  const wide: Box = {
    minX: Math.min(sheet.minX, aperture.minX - least),
    minY: Math.min(sheet.minY, aperture.minY - least),
    maxX: Math.max(sheet.maxX, aperture.maxX + least),
    maxY: Math.max(sheet.maxY, aperture.maxY + least),
  };
  if (wide.minX !== sheet.minX || wide.minY !== sheet.minY || wide.maxX !== sheet.maxX || wide.maxY !== sheet.maxY) {
    problems.push(
      problem(
        'warning',
        'stencil-margin-too-small',
        place,
        say('stencil.marginTooSmall', { least: length(least) }),
        say('stencil.widerMargin'),
      ),
    );
  }
  return wide;
}

function withoutCrumbs(region: Region): Region {
  return { rings: region.rings.filter((ring) => Math.abs(ringArea(ring)) >= crumbMm2) };
}

const touches = (box: Box, sheet: Box): boolean => box.minX <= sheet.minX + 0.001 && box.minY <= sheet.minY + 0.001;

function blank(request: StencilRequest, sheet: Box, problems: readonly Problem[]): Stencil {
  return {
    side: request.side,
    sheet,
    paper: boxRegion(sheet),
    prints: emptyRegion,
    islands: [],
    bridges: [],
    loosePieces: [],
    cutLines: emptyRegion,
    certificate: {
      holds: true,
      pieces: 1,
      leastNeckMm: request.material.leastBridgeMm,
      leastOpeningMm: request.material.leastOpeningMm,
      faults: [],
      mmPerPx: workingMmPerPx,
      method: say('stencil.nothingCut'),
    },
    knife: knifeWork(emptyRegion, 0, request.rates),
    problems,
  };
}
