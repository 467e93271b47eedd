import { shownBy } from '../../core/plan/parts/costs.ts';
import { drawnExtent, registerMarks } from '../marks.ts';
import { ratesOf } from '../../core/plan/parts/stencils.ts';
import { cornersOf, sharpDeg, type Corner } from '../../core/stencil/index.ts';
import { area, deltaE, length, listed, longLength, name as asName, say, sentences, type Saying } from '../../words/index.ts';
import { sayUses } from '../cut-uses.ts';
import type { Page } from '../pdf/page.ts';
import { seams } from '../tiles.ts';
import { widestPlace } from '../widest-place.ts';
import { caution, cautionOf, column, fact, steps } from './parts.ts';
import { roughly, sizeIn, startPage, type, type Frame, type Pages, type PlannedLayer, type Setting } from './setting.ts';
import { registerMark, tileMap, tilingOf, trueSizePages } from './true-size.ts';
import { inkName, materialOf, sideOf } from './words.ts';

/** The drawing at the foot of the page, seen from the side. */
const diagramHighMm = 62;

/** One page of facts for each stencil, then the stencil at true size. */
export function* cutPages(setting: Setting): Pages {
  for (const layer of setting.plan.layers) {
    factsPage(setting, layer);
    yield;
    yield* trueSizePages(setting, {
      name: say('cutPages.drawing', { layer: asName(layer.name), run: layer.run, side: sideOf(layer.side) }),
      says: say('cutPages.greyDropsOut'),
      extent: drawnExtent(setting.plan.job.image, layer.stencil.sheet),
      draw: (page, placing, at) => drawTrueSize(setting, layer, page, placing, at),
    });
  }
}

function drawTrueSize(
  setting: Setting,
  layer: PlannedLayer,
  page: Page,
  placing: { xMm: number; yMm: number; turned?: boolean },
  at: (x: number, y: number) => [number, number],
): void {
  const { stencil } = layer;
  const { image } = setting.plan.job;
  page.region(stencil.prints, placing, { fill: '#e4e4e4' }, 0.01);
  page.outlines(setting.cutLines(layer).outlines, placing, { stroke: '#000000', lineMm: 0.25 });
  for (const corner of sharpCorners(layer)) {
    const [x, y] = at(corner.atMm[0], corner.atMm[1]);
    page.circle(x, y, 1.1, { stroke: '#000000', lineMm: 0.12 });
  }
  for (const bridge of stencil.bridges) {
    page.region(bridge.region, placing, { stroke: '#000000', lineMm: 0.12, dashMm: [0.8, 0.8] });
    // Its name stands beside it, out of the knife's way.
    const dx = bridge.to[0] - bridge.from[0],
      dy = bridge.to[1] - bridge.from[1];
    const off = (bridge.widthMm / 2 + 2.6) / (Math.hypot(dx, dy) || 1);
    const [x, y] = at((bridge.from[0] + bridge.to[0]) / 2 - dy * off, (bridge.from[1] + bridge.to[1]) / 2 + dx * off);
    page.text(x, y + 1, bridge.id, { size: 8, weight: 'semibold', align: 'centre' });
  }
  stencil.islands.forEach((island) => {
    if (island.handled !== 'bridged') return;
    const inside = widestPlace(island.region);
    if (!inside || inside.widthMm < 11) return;
    const [x, y] = at(inside.x, inside.y);
    page.text(x, y + 1, setting.say('cutPages.island'), { size: 8, align: 'centre', turned: placing.turned });
  });
  for (const piece of stencil.loosePieces) {
    const [x, y] = at(piece.at[0], piece.at[1]);
    page.circle(x, y, 3.4, { fill: '#ffffff', stroke: '#000000', lineMm: 0.3 });
    page.text(x, y + 1.7, String(piece.number), { size: 10, weight: 'bold', align: 'centre' });
  }
  const [ax, ay] = at(0, 0),
    [bx, by] = at(image.widthMm, image.heightMm);
  page.rect(Math.min(ax, bx), Math.min(ay, by), Math.abs(bx - ax), Math.abs(by - ay), {
    stroke: '#000000',
    lineMm: 0.15,
    dashMm: [1, 1.5],
  });
  for (const mark of registerMarks(image, stencil.sheet)) registerMark(page, ...at(mark.x, mark.y));
  const hinge = setting.plan.job.screen?.hinge;
  const top = setting.say(hinge === undefined ? 'cutPages.topToMesh' : topAndHinge[hinge]);
  for (const share of [0.25, 0.75]) {
    const [x, y] = at(image.widthMm * share, -3);
    page.text(x, y, top, { size: 8, weight: 'semibold', align: 'centre', turned: placing.turned });
  }
}

const topAndHinge = {
  top: 'cutPages.topHinge',
  bottom: 'cutPages.topHingeBottom',
  left: 'cutPages.topHingeLeft',
  right: 'cutPages.topHingeRight',
} as const;

/** Where the knife must stop just so: the paper would tear on. */
const sharpCorners = (layer: PlannedLayer): Corner[] => cornersOf(layer.stencil.cutLines).filter((c) => c.inner && c.turnDeg > sharpDeg);

function factsPage(setting: Setting, layer: PlannedLayer): void {
  const { plan } = setting;
  const { stencil } = layer;
  const { knife, certificate, sheet } = stencil;
  const frame = startPage(setting, {
    step: 2,
    title: setting.say('cutPages.cut', { layer: asName(layer.name) }),
    side: setting.tell(sideOf(layer.side)),
    runs: [layer.run],
  });
  const { page, top } = frame;
  const picture = column(frame, 0, 4),
    words = column(frame, 4, 2);
  const size = placingMap(setting, layer, frame, picture.x, top, picture.width, Math.min(142, Math.max(30, frame.bottom - top - 104)));

  const material = materialOf(plan, layer);
  const cut = plan.cuts.find((c) => c.id === layer.cutId);
  const use = cut?.uses.find((u) => u.layerId === layer.id);
  const strong = (at: number, label: string, value: string): number => fact(page, words.x, at, words.width, label, value, type.strong);
  let y = top;
  y = strong(
    y,
    setting.say('cutPages.material'),
    material
      ? setting.say('cutPages.materialThick', { material: material.name, thickness: length(material.thicknessMm) })
      : setting.say('cutPages.yourChoice'),
  );
  y = fact(
    page,
    words.x,
    y,
    words.width,
    setting.say('cutPages.sheetToBegin'),
    sizeIn(setting, sheet.maxX - sheet.minX, sheet.maxY - sheet.minY),
    type.head,
  );
  y = strong(
    y,
    setting.say('cutPages.knife'),
    setting.say('cutPages.knifeWork', { length: longLength(knife.metres * 1000, 1), corners: knife.corners }),
  );
  y = strong(
    y,
    setting.say('cutPages.timeAt', { pace: longLength(ratesOf(plan.job).metresPerMinute * 1000) }),
    setting.say('cutPages.timeAndHow', { time: roughly(knife.minutes), how: say(`cutPages.${knife.difficulty}`) }),
  );
  y = strong(y, setting.say('cutPages.cutOuts'), setting.show(knife.pieces));
  y = strong(
    y,
    setting.say('cutPages.leastWidths'),
    material ? setting.tell(listed([length(material.leastBridgeMm), length(material.leastOpeningMm)], 'comma')) : '—',
  );
  y = strong(
    y,
    setting.say('cutPages.bridgesKept'),
    setting.tell(stencil.bridges.length === 0 ? say('packet.none') : whatShows(stencil.bridges)),
  );
  const givenUp = stencil.islands.filter((i) => i.handled === 'dropped'),
    kept = stencil.islands.filter((i) => i.handled !== 'dropped');
  if (kept.length > 0) y = strong(y, setting.say('cutPages.islandsIfDropped', { n: kept.length }), setting.tell(whatShows(kept)));
  if (givenUp.length > 0) y = strong(y, setting.say('cutPages.islandsDropped'), setting.tell(whatShows(givenUp)));
  const loose = stencil.loosePieces.length;
  y = strong(
    y,
    setting.say('cutPages.loosePieces'),
    loose === 0 ? setting.say('packet.none') : setting.say('cutPages.numberEach', { n: loose }),
  );
  const sheets = cut?.sets.find((set) => set.serves.includes(layer.id))?.sheets.length ?? 1;
  if (cut && (cut.timesToCut > 1 || cut.layers.length > 1)) {
    const why = sentences(sheets > 1 && say('cutPages.cutThisTimes', { times: say('packet.times', { n: sheets }) }), cut.why);
    y = page.para(words.x, y, words.width, setting.tell(why), type.small) + 1.5;
  }
  for (const line of cut ? sayUses(cut) : [])
    if (y < frame.bottom - diagramHighMm - 16) y = page.para(words.x, y, words.width, setting.tell(line), type.small) + 0.5;
  y += 1;
  page.para(
    words.x,
    y,
    words.width,
    certificate.holds ? setting.say('cutPages.proven') : setting.say('cutPages.notProven', { n: certificate.faults.length }),
    { ...type.small, weight: 'semibold' },
  );

  y = top + size + 8;
  const left = column(frame, 0, 4);
  y = steps(
    page,
    left.x,
    y,
    left.width,
    [
      say('cutPages.layOnMaterial'),
      sentences(say('cutPages.innerFirst'), sharpCorners(layer).length > 0 && say('cutPages.stopAtRings')),
      say(stencil.bridges.length > 0 ? 'cutPages.stopAtBridges' : 'cutPages.greyOutWhiteStays'),
      use?.keepForRun !== undefined
        ? say(use.side === 'window' ? 'cutPages.keepWhatDrops' : 'cutPages.keepSheet', { run: use.keepForRun })
        : say(loose > 0 ? 'cutPages.numberPieces' : 'cutPages.writeRun'),
    ].map((one) => setting.tell(one)),
  );
  const below = caution(page, left.x, y + 2, left.width, cautionOf(setting, 'blades'));
  sideDiagram(setting, page, words.x, Math.min(y + 20, frame.bottom - diagramHighMm), words.width, setting.tell(inkName(plan, layer)));
  const tiling = tilingOf(setting, drawnExtent(plan.job.image, sheet));
  if (tiling.tiles.length > 1) joinNote(setting, frame, layer, Math.min(below + 4, frame.bottom - 31));
}

/** How many, how large, and how much they show in the print where that is known. */
function whatShows(places: readonly { readonly areaMm2: number; readonly costDeltaE?: number }[]): Saying {
  const { count, areaMm2, deltaE: shown } = shownBy(places);
  return count > 0 ? say('cutPages.shows', { n: count, area: area(areaMm2), deltaE: deltaE(shown) }) : listed([places.length]);
}

/** The whole stencil small: pieces numbered, faults ringed, marks where they stand. */
function placingMap(setting: Setting, layer: PlannedLayer, frame: Frame, x: number, y: number, widthMm: number, heightMm: number): number {
  const { page } = frame;
  const { stencil } = layer;
  const { sheet } = stencil;
  const scale = Math.min(widthMm / (sheet.maxX - sheet.minX), heightMm / (sheet.maxY - sheet.minY));
  const w = (sheet.maxX - sheet.minX) * scale,
    h = (sheet.maxY - sheet.minY) * scale;
  const at = { xMm: x - sheet.minX * scale, yMm: y - sheet.minY * scale, scale };
  const point = (px: number, py: number): [number, number] => [at.xMm + px * scale, at.yMm + py * scale];
  page.rect(x, y, w, h, { stroke: '#000000', lineMm: 0.3 });
  page.region(stencil.prints, at, { fill: '#dcdcdc', stroke: '#000000', lineMm: 0.2 }, 0.02);
  for (const mark of registerMarks(setting.plan.job.image, sheet)) {
    const [mx, my] = point(mark.x, mark.y);
    page.line(mx - 2, my, mx + 2, my, 0.15);
    page.line(mx, my - 2, mx, my + 2, 0.15);
  }
  for (const piece of stencil.loosePieces) {
    const [px, py] = point(piece.at[0], piece.at[1]);
    page.circle(px, py, 2.6, { fill: '#ffffff', stroke: '#000000', lineMm: 0.2 });
    page.text(px, py + 1.25, String(piece.number), { size: 7.5, weight: 'bold', align: 'centre' });
  }
  for (const bridge of stencil.bridges) {
    const [bx, by] = point((bridge.from[0] + bridge.to[0]) / 2, (bridge.from[1] + bridge.to[1]) / 2);
    page.circle(bx, by, 1.9, { stroke: '#000000', lineMm: 0.35 });
  }
  for (const fault of stencil.certificate.faults) {
    const [fx, fy] = point(fault.atMm[0], fault.atMm[1]);
    page.circle(fx, fy, 3, { stroke: '#000000', lineMm: 0.6 });
  }
  return h;
}

function joinNote(setting: Setting, frame: Frame, layer: PlannedLayer, y: number): void {
  const extent = drawnExtent(setting.plan.job.image, layer.stencil.sheet);
  const tiling = tilingOf(setting, extent);
  const map = column(frame, 0, 1);
  const words = column(frame, 1, 3);
  tileMap(frame.page, tiling, extent, map.x, y, map.width, 30);
  const joined = seams(tiling).x.length + seams(tiling).y.length;
  frame.page.para(
    words.x,
    y,
    words.width,
    setting.tell(
      sentences(
        say('cutPages.sheetsToJoin', { n: tiling.tiles.length }),
        joined > 1 && say('cutPages.rowsFirst'),
        say('cutPages.edgeNotDrawn'),
      ),
    ),
    type.small,
  );
}

/** From the side: squeegee, mesh, stencil, paper. Which face goes up is seen, not only said. */
function sideDiagram(setting: Setting, page: Page, x: number, y: number, widthMm: number, ink: string): void {
  page.text(x, y + 3, setting.say('cutPages.fromTheSide'), type.smallStrong);
  const w = widthMm;
  const mesh = y + 21,
    gap = mesh + 2.2,
    paper = mesh + 12;
  // The blade leans towards the hand; ink lies before it.
  page.line(x + w * 0.42, mesh - 13, x + w * 0.5, mesh - 0.8, 1.6);
  page.fit(x + w * 0.55, mesh - 8, w * 0.45, ink, { size: 8 }, 6);
  for (let i = 0; i <= w / 2.4; i++) page.circle(x + i * 2.4, mesh, 0.45, { fill: '#000000' });
  page.rect(x, gap, w * 0.3, 1.5, { fill: '#ffffff', stroke: '#000000', lineMm: 0.3 });
  page.rect(x + w * 0.66, gap, w * 0.34, 1.5, { fill: '#ffffff', stroke: '#000000', lineMm: 0.3 });
  page.rect(x, paper, w, 1.2, { fill: '#000000' });
  page.text(x + w, mesh - 2, setting.say('cutPages.mesh'), { size: 8, align: 'right' });
  page.text(x, gap + 5.2, setting.say('cutPages.stencil'), { size: 8 });
  page.text(x, paper + 4.8, setting.say('cutPages.sheetToPrint'), { size: 8 });
  page.para(x, paper + 8, w, setting.say('cutPages.readsAsItPrints'), { ...type.small, weight: 'semibold' });
}
