import { boxRegion, common, emptyRegion, parts, regionArea, regionBox, ringArea, simplify, takeAway, unite } from '../form/index.ts';
import type { Box, Region } from '../form/index.ts';
import { problem } from '../problem.ts';
import type { Problem } from '../problem.ts';
import { length, say, share, type Saying } from '../../words/say.ts';
import type { Strip } from './bridges/bridges.ts';
import { coarser } from './coarser.ts';
import { fineLines, toldLines, type FineLines } from './fine-lines.ts';
import { borderMm } from './proof/certificate.ts';
import { workingGrid, workingMmPerPx } from './raster/working-grid.ts';
import type { Limits } from './proof/certificate.ts';
import { innerPoint } from './raster/inner-point.ts';
import { knifeWork } from './knife.ts';
import { withLeastLoss } from './least-loss.ts';
import { nameBridges, pinnedStrip, pricedBridges } from './bridges/name-bridges.ts';
import { report } from './proof/report.ts';
import { covers, isSheetRing } from './raster/rings.ts';
import { follows, keepTrace, tracesOf } from './proof/retrace.ts';
import { beside } from './proof/mend-shapes.ts';
import { settle, stripsFor } from './proof/settle.ts';
import { spareMm } from './proof/settling.ts';
import type { Settled } from './proof/settled.ts';
import type { InTheWay, Island, LoosePiece, Spot, Stencil, StencilRequest } from './types.ts';

/** Rings smaller than this come from rounding, not from a drawing. */
const crumbMm2 = 0.1;
/** Mending that takes more of the drawing than this is told, with ways out. */
const muchLost = 0.3;
/** One stencil of a cut: what stays, what prints, what holds it together, and the proof that it does. Deterministic. */
export function makeStencil(request: StencilRequest): Stencil {
  const made = mended(request);
  if (request.asAsked || made.certificate.holds || !made.prints.rings.length) return made;
  return withLeastLoss(request, made, asDrawn(request).openings, mended);
}

function mended(request: StencilRequest): Stencil {
  const { side, material, islands: wish } = request;
  const place = request.place ?? '';
  const problems: Problem[] = [];
  const { aperture, drawn, openings: openings0, sheet, fine } = asDrawn(request);
  if (sheet !== request.sheet) problems.push(sheetTooSmall(place, material.leastBridgeMm));
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
  const { frame, apart } = frameAndIslands(sheet, openings0);
  const sorted = sortIslands(apart, wish, request.drops ?? [], material.leastBridgeMm, place, problems);
  const loose = sorted.filter((i) => i.handled === 'loose').map((i) => i.region);
  const held = sorted.filter((i) => i.handled === 'bridged').map((i) => i.region);
  const pinned: Strip[] = (request.pins ?? []).map((pin) => pinnedStrip(pin, Math.max(pin.widthMm ?? 0, material.leastBridgeMm + spareMm)));
  const start = unite([frame, ...held, ...loose, ...pinned.map((s) => s.region)]);

  const grid = workingGrid(regionBox(openings0), borderMm(material));
  // Other colours seldom move a bridge: then all is as it was but for what the bridges cost.
  const joined: (readonly Strip[])[] = [];
  for (const trace of tracesOf(request)) {
    if (!follows(trace, joined, (join) => stripsFor(join, sheet, grid, request))) continue;
    keepTrace(request, trace);
    return { ...trace.stencil, bridges: pricedBridges(trace.stencil.bridges, request.cost) };
  }
  const settled = settle(start, openings0, sheet, grid, request, loose.length, joined);
  const { paper } = settled;
  const prints = takeAway(aperture, paper);
  const bridges = nameBridges([...pinned, ...settled.strips], pinned.length, openings0, request.cost);
  const loosePieces = loose.map(
    (region, i): LoosePiece => ({ number: i + 1, region, at: innerPoint(region, regionBox(region)), areaMm2: regionArea(region) }),
  );
  const cutLines: Region = { rings: paper.rings.filter((ring) => !isSheetRing(ring, sheet)) };
  const cutOuts = prints.rings.filter((ring) => ringArea(ring) > 0).length;
  const drawnMm2 = Math.min(regionArea(drawn), regionArea(request.shape));
  if (fine) problems.push(toldLines(fine, place));
  const lostMm2 = regionArea(takeAway(drawn, prints)) - bridges.reduce((sum, b) => sum + b.areaMm2, 0);
  if (!fine && lostMm2 > muchLost * drawnMm2 && prints.rings.length > 0)
    problems.push(
      problem(
        'warning',
        'stencil-much-lost',
        place,
        say('stencil.muchLost', { lost: share(lostMm2 / drawnMm2, 0) }),
        say('stencil.takeAnOffer'),
      ),
    );
  report(settled, prints, place, material.name, problems);
  const stencil: Stencil = {
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
    effort: settled.effort,
    problems,
    ...(settled.certificate.holds
      ? {}
      : { inTheWay: settled.inTheWay.map(({ atMm, region }) => ({ atMm, region })), mayGo: leastBeside(settled, sorted, material) }),
  };
  keepTrace(request, { joins: settled.joins, stencil });
  return stencil;
}

/** Does the drawing hold islands that bridges will have to carry? Asked before the stencil is made, for a hundredth of its time. */
export function needsBridges(request: StencilRequest): boolean {
  if (request.islands !== 'bridge') return false;
  const { openings, sheet } = asDrawn(request);
  const { apart } = frameAndIslands(sheet, openings);
  return sortIslands(apart, 'bridge', request.drops ?? [], request.material.leastBridgeMm, '', []).some((i) => i.handled === 'bridged');
}

interface AsDrawn {
  readonly aperture: Region;
  readonly sheet: Box;
  readonly drawn: Region;
  readonly openings: Region;
  readonly fine: FineLines | null;
}

/** Where ink may pass at all, what is drawn there, and where it would pass if every island floated in its place. */
function asDrawn(request: StencilRequest): AsDrawn {
  const aperture = 'rings' in request.aperture ? request.aperture : boxRegion(request.aperture);
  const shape = calm(request.shape);
  const drawn = request.side === 'window' ? common(shape, aperture) : takeAway(aperture, shape);
  const { material, drops = [], closings = [] } = request;
  const sheet = enough(request.sheet, regionBox(aperture), material.leastBridgeMm);
  const given = withoutCrumbs(drawn);
  // Fine lines become broad before what is too fine goes: else all of them would.
  const fineOf = (lines: Region, limits: Limits): FineLines | null => fineLines(lines, sheet, limits);
  const without = (region: Region): Region => withoutCrumbs(coarser(region, material, drops, closings));
  if (request.side === 'window') {
    const fine = fineOf(given, material);
    return { aperture, sheet, drawn, openings: without(fine?.openings ?? given), fine };
  }
  // Of a piece the lines are paper: they become as broad as a bridge.
  const fine = fineOf(takeAway(aperture, given), { leastBridgeMm: material.leastOpeningMm, leastOpeningMm: material.leastBridgeMm });
  return { aperture, sheet, drawn, openings: without(fine ? takeAway(aperture, fine.openings) : given), fine };
}

/** Outlines of more points than this say more than a knife can follow: less than a hundredth of a millimetre goes. */
const manyPoints = 4000,
  calmMm = 0.006;
const calmed = new WeakMap<Region, Region>();

function calm(shape: Region): Region {
  if (shape.rings.reduce((sum, ring) => sum + ring.length / 2, 0) <= manyPoints) return shape;
  let found = calmed.get(shape);
  if (!found) calmed.set(shape, (found = simplify(shape, calmMm)));
  return found;
}

/** The paper that hangs on the sheet's edge, and what lies apart from it. */
function frameAndIslands(sheet: Box, openings: Region): { readonly frame: Region; readonly apart: readonly Region[] } {
  const found = parts(takeAway(boxRegion(sheet), openings));
  const frameAt = found.findIndex((part) => touches(regionBox(part), sheet));
  return { frame: found[frameAt], apart: found.filter((_, i) => i !== frameAt) };
}

/** For each opening in the way the least detail of paper beside it: an island, or paper that was slender as drawn. */
function leastBeside({ inTheWay, slender }: Settled, islands: readonly Island[], { leastBridgeMm }: Limits): InTheWay[] {
  const details = [...islands.filter((i) => i.handled === 'bridged').map((i) => i.region), ...slender.map((t) => t.region)]
    .map((region) => ({ region, areaMm2: regionArea(region) }))
    .sort((a, b) => a.areaMm2 - b.areaMm2);
  const least = new Set(inTheWay.map((t) => details.find(({ region }) => beside(region, t.region, leastBridgeMm))?.region));
  return [...least].filter((region) => region !== undefined).map((region) => ({ atMm: innerPoint(region, regionBox(region)), region }));
}

function sortIslands(
  found: readonly Region[],
  wish: StencilRequest['islands'],
  drops: readonly Spot[],
  leastMm: number,
  place: string | Saying,
  problems: Problem[],
): Island[] {
  let tooSmall = 0;
  const islands = found.map((region): Island => {
    const areaMm2 = regionArea(region);
    if (wish === 'drop' || drops.some((drop) => drop.withinMm === undefined && covers(region, ...drop.atMm)))
      return { region, areaMm2, handled: 'dropped' };
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

/** The sheet, or a larger one where it leaves too little around the image. */
function enough(sheet: Box, aperture: Box, least: number): Box {
  const wide: Box = {
    minX: Math.min(sheet.minX, aperture.minX - least),
    minY: Math.min(sheet.minY, aperture.minY - least),
    maxX: Math.max(sheet.maxX, aperture.maxX + least),
    maxY: Math.max(sheet.maxY, aperture.maxY + least),
  };
  return wide.minX !== sheet.minX || wide.minY !== sheet.minY || wide.maxX !== sheet.maxX || wide.maxY !== sheet.maxY ? wide : sheet;
}

const sheetTooSmall = (place: string | Saying, least: number): Problem =>
  problem(
    'warning',
    'stencil-margin-too-small',
    place,
    say('stencil.marginTooSmall', { least: length(least) }),
    say('stencil.widerMargin'),
  );

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
    effort: 0,
    problems,
  };
}
