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
import { bridgeGround, findStrips, sampleCost, thinOut } from './bridges.ts';
import type { Strip } from './bridges.ts';
import {
  borderMm,
  judge,
  outlineParts,
  paperMask,
  pixelMm,
  spareWhenJudgingPx,
  spareWhenMendingPx,
  surveyOpenings,
  surveyPaper,
  withOutline,
  workingGrid,
  workingMmPerPx,
} from './certificate.ts';
import { innerPoint } from './inner-point.ts';
import { knifeWork } from './knife.ts';
import { labelParts } from './label.ts';
import type { Labels } from './label.ts';
import type { Survey, ThinPlace } from './survey.ts';
import type { Bridge, BridgePin, Certificate, CostRaster, Fault, Island, LoosePiece, PointMm, Stencil, StencilRequest } from './types.ts';

/** Rings smaller than this come from rounding, not from a drawing. */
const crumbMm2 = 0.1;
const mostRounds = 7;
/** Gaps of up to twice this are closed where pixels can't see them. */
const hairlineMm = 0.15;
/**
 * What is added is broader than the least width by this much: half a pixel a side because the judge is on the safe
 * side, and up to 0.71 a side because no pixel need lie on the middle line.
 */
const spareWidthPx = 2.5;

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
  const pinned: Strip[] = (request.pins ?? []).map((pin) =>
    pinnedStrip(pin, Math.max(pin.widthMm ?? 0, material.leastBridgeMm + spareWidthPx * workingMmPerPx)),
  );
  const start = unite([frame, ...held, ...loose, ...pinned.map((s) => s.region)]);

  const grid = workingGrid(regionBox(openings0), borderMm(material));
  const settled = settle(start, sheet, grid, request, loose.length);
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
  };
}

interface Settled {
  readonly paper: Region;
  readonly strips: readonly Strip[];
  readonly thickened: readonly PointMm[];
  readonly widened: readonly PointMm[];
  readonly certificate: Certificate;
}

/** Bridges and mends in rounds until the outline passes, or mending gets nowhere. */
function settle(start: Region, sheet: Box, grid: Grid, request: StencilRequest, looseCount: number): Settled {
  const { material } = request;

  const bridgeMm = material.leastBridgeMm + spareWidthPx * grid.mmPerPx,
    openingMm = material.leastOpeningMm + spareWidthPx * grid.mmPerPx;
  let paper = start;
  const strips: Strip[] = [];
  const thickened: PointMm[] = [],
    widened: PointMm[] = [];
  for (let round = 0; ; round++) {
    const mask = paperMask(paper, sheet, grid);
    const found = labelParts(mask, grid.width, grid.height, 1, false);
    const last = round >= mostRounds;
    const join = (survey: Survey): boolean => {
      if (last || (found.count <= 1 + looseCount && nothingToJoin(survey, found))) return false;
      const ground = bridgeGround(mask, grid, found, survey, bridgeMm, request.cost, request.forbidden ?? [], request.islands !== 'loose');
      const added = findStrips(ground, bridgeMm, request.cost === undefined);
      strips.push(...added.filter((s) => s.crosses));
      thickened.push(...added.filter((s) => !s.crosses).map((s) => s.from));
      paper = unite([paper, ...added.map((s) => s.region)]);
      return added.length > 0;
    };
    // First with room to spare, then as the finished outline will be judged: a knob at the end of a point may be broad
    // enough for one and not for the other.
    let survey = surveyPaper(mask, grid, material, spareWhenMendingPx);
    if (join(survey)) continue;
    if (!survey.thin.length || last) {
      survey = surveyPaper(mask, grid, material, spareWhenJudgingPx);
      if (join(survey)) continue;
    }
    if (!last && survey.thin.length) {
      thickened.push(...survey.thin.map((t) => pixelMm(t.at, grid)));
      paper = unite([paper, ...survey.thin.map((t) => along(t, grid, bridgeMm))]);
      continue;
    }
    let openings = surveyOpenings(mask, grid, material, spareWhenMendingPx);
    if (!openings.thin.length || last) openings = surveyOpenings(mask, grid, material, spareWhenJudgingPx);
    if (!last && openings.thin.length) {
      widened.push(...openings.thin.map((t) => pixelMm(t.at, grid)));
      paper = takeAway(paper, unite(openings.thin.map((t) => along(t, grid, openingMm))));
      continue;
    }
    // Pieces that touch in a point, or almost, look joined in pixels: paper closes over so fine a gap, and is judged again.
    const outlined = outlineParts(paper);
    if (!last && outlined.length > 1 + looseCount) {
      paper = offsetRegion(offsetRegion(paper, hairlineMm, 'miter'), -hairlineMm, 'miter');
      continue;
    }
    return {
      paper,
      strips,
      thickened,
      widened,
      certificate: withOutline(outlined, looseCount, judge(grid, found, survey, openings, material, looseCount)),
    };
  }
}

/** Is every broad part of paper a piece of its own? */
const nothingToJoin = (survey: Survey, found: Labels): boolean => {
  const { firsts } = survey.cores();
  return new Set(firsts.map((p) => found.labels[p])).size === firsts.length;
};

/** A strip along the middle of a thin place. */
function along(thin: ThinPlace, grid: Grid, widthMm: number): Region {
  const points = thinOut(
    thin.path.flatMap((p) => pixelMm(p, grid)),
    grid.mmPerPx,
  );
  if (points.length < 4) points.push(points[0] + 0.01, points[1]);
  return strip(points, widthMm, 'round');
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
  const { certificate, thickened, widened } = settled;
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

function isSheetRing(ring: Float64Array, sheet: Box): boolean {
  const box = regionBox({ rings: [ring] });
  return touches(box, sheet) && box.maxX >= sheet.maxX - 0.001 && box.maxY >= sheet.maxY - 0.001;
}

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
