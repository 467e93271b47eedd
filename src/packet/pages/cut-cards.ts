import { ratesOf } from '../../core/plan/index.ts';
import { length, listed, longLength, say, sentences, type Saying } from '../../words/index.ts';
import { sayUses } from '../cut-uses.ts';
import type { Page } from '../pdf/page.ts';
import { drawsWhole, pagesOfDrawing, placingMap, sharpCorners, whatShows } from './cut.ts';
import { caution, cautionOf, column, fact, steps } from './parts.ts';
import { roughly, sizeIn, startPage, type, type Frame, type Pages, type PlannedLayer, type Setting } from './setting.ts';
import { inkName, materialOf, sideOf } from './words.ts';

const leastHighMm = 62;
const mostHighMm = 82;

/** A card for each stencil, several a page; how to cut, once, above the first. */
export function* cutCards(setting: Setting): Pages {
  const { layers } = setting.plan;
  let at = 0;
  for (let sheet = 0; at < layers.length; sheet++) {
    const frame = startPage(setting, {
      step: 2,
      title: setting.say('cutPages.cutCards'),
      side: sheet === 0 ? setting.say('cutPages.oneCardAStencil') : setting.say('packet.continued'),
      runs: [],
    });
    const top = sheet === 0 ? introduction(setting, frame) : frame.top;
    const room = frame.bottom - top;
    const fits = Math.max(1, Math.floor(room / leastHighMm));
    const high = Math.min(mostHighMm, room / Math.min(fits, Math.max(1, layers.length - at)));
    layers.slice(at, at + fits).forEach((layer, i) => card(setting, frame, layer, top + i * high, high - 5));
    at += fits;
    yield;
  }
}

/** What holds for all of them: the order of the knife, the caution, and which side is up. */
function introduction(setting: Setting, frame: Frame): number {
  const { page, top } = frame;
  const words = column(frame, 0, 4),
    side = column(frame, 4, 2);
  const y = steps(
    page,
    words.x,
    top,
    words.width,
    [say('cutPages.layOnMaterial'), say('cutPages.innerFirst'), say('cutPages.greyOutWhiteStays')].map((one) => setting.tell(one)),
    { ...type.body, size: 10 },
  );
  const end = caution(page, words.x, y + 1, words.width, cautionOf(setting, 'blades'));
  const below = sideDiagram(setting, page, side.x, top - 6, side.width, setting.tell(inkName(setting.plan, setting.plan.layers[0])));
  return Math.max(end, below) + 4;
}

function card(setting: Setting, frame: Frame, layer: PlannedLayer, y: number, heightMm: number): void {
  const { page, left, right } = frame;
  const { plan } = setting;
  const { knife, certificate, sheet, bridges, islands, loosePieces } = layer.stencil;
  const floor = page.floorMm;
  page.floorMm = Math.min(floor, y + heightMm);
  page.line(left, y - 3, right, y - 3, 0.3);
  const picture = column(frame, 0, 1.7),
    first = column(frame, 1.85, 2),
    second = column(frame, 3.95, 2.05);
  placingMap(setting, layer, page, picture.x, y, picture.width, heightMm);
  page.text(first.x, y + 6.2, String(layer.run), type.large);
  page.fit(first.x + 9, y + 3.4, right - first.x - 9, layer.name, type.head, 8);
  const material = materialOf(plan, layer);
  const from = material
    ? setting.say('cutPages.sideOfThick', { side: sideOf(layer.side), material: material.name, thickness: length(material.thicknessMm) })
    : setting.tell(sideOf(layer.side));
  page.fit(first.x + 9, y + 7.8, right - first.x - 9, from, type.small, 7);

  const cut = plan.cuts.find((c) => c.id === layer.cutId);
  const use = cut?.uses.find((u) => u.layerId === layer.id);
  let a = y + 11.5;
  const one = (label: string, value: string): void => {
    if (a < page.floorMm - 8) a = fact(page, first.x, a, first.width, label, value, type.strong) - 0.8;
  };
  one(setting.say('cutPages.sheetToBegin'), sizeIn(setting, sheet.maxX - sheet.minX, sheet.maxY - sheet.minY));
  one(
    setting.say('cutPages.knife'),
    setting.say('cutPages.knifeWork', { length: longLength(knife.metres * 1000, 1), corners: knife.corners }),
  );
  one(
    setting.say('cutPages.timeAt', { pace: longLength(ratesOf(plan.job).metresPerMinute * 1000) }),
    setting.say('cutPages.timeAndHow', { time: roughly(knife.minutes), how: say(`cutPages.${knife.difficulty}`) }),
  );
  one(
    setting.say('cutPages.leastWidths'),
    material ? setting.tell(listed([length(material.leastBridgeMm), length(material.leastOpeningMm)], 'comma')) : '—',
  );
  one(setting.say('cutPages.cutOuts'), setting.show(knife.pieces));

  const points: Saying[] = [];
  const dropped = islands.filter((i) => i.handled === 'dropped');
  if (bridges.length > 0) points.push(say('cutPages.bridgesAre', { what: whatShows(bridges) }), say('cutPages.stopAtBridges'));
  if (dropped.length > 0) points.push(say('cutPages.droppedAre', { what: whatShows(dropped) }));
  if (sharpCorners(layer).length > 0) points.push(say('cutPages.stopAtRings'));
  if (loosePieces.length > 0) points.push(say('cutPages.numberPieces'));
  if (use?.keepForRun !== undefined)
    points.push(
      use.side === 'window' ? say('cutPages.keepWhatDrops', { run: use.keepForRun }) : say('cutPages.keepSheet', { run: use.keepForRun }),
    );
  const sheets = cut?.sets.find((set) => set.serves.includes(layer.id))?.sheets.length ?? 1;
  if (cut && (cut.timesToCut > 1 || cut.layers.length > 1))
    points.push(sentences(sheets > 1 && say('cutPages.cutThisTimes', { times: say('packet.times', { n: sheets }) }), cut.why));
  if (cut && cut.layers.length > 1) points.push(...sayUses(cut));
  points.push(certificate.holds ? say('cutPages.proven') : say('cutPages.notProven', { n: certificate.faults.length }));
  points.push(whereDrawn(setting, layer));
  let b = y + 12;
  for (const point of points) {
    if (b > page.floorMm - 3) break;
    b = page.para(second.x, b, second.width, setting.tell(point), { ...type.small, leading: 1.28 }) + 1.1;
  }
  page.floorMm = floor;
}

/** On which pages of this file it is drawn at true size, or how they are joined. */
function whereDrawn(setting: Setting, layer: PlannedLayer): Saying {
  const pages = pagesOfDrawing(setting, layer);
  return sentences(
    pages === 1 ? say('cutPages.drawnOnOne') : say('cutPages.sheetsToJoin', { n: pages }),
    !drawsWhole(setting, layer) && say('cutPages.edgeNotDrawn'),
  );
}

/** From the side: squeegee, mesh, stencil, paper. Which face goes up is seen, not only said. */
function sideDiagram(setting: Setting, page: Page, x: number, y: number, widthMm: number, ink: string): number {
  const w = widthMm;
  const mesh = y + 19,
    gap = mesh + 2.2,
    paper = mesh + 9;
  page.text(x, y + 3, setting.say('cutPages.fromTheSide'), type.smallStrong);
  // The blade leans towards the hand; ink lies before it.
  page.line(x + w * 0.42, mesh - 12, x + w * 0.5, mesh - 0.8, 1.6);
  page.fit(x + w * 0.55, mesh - 8, w * 0.45, ink, { size: 8 }, 6);
  for (let i = 0; i <= w / 2.4; i++) page.circle(x + i * 2.4, mesh, 0.45, { fill: '#000000' });
  page.rect(x, gap, w * 0.3, 1.5, { fill: '#ffffff', stroke: '#000000', lineMm: 0.3 });
  page.rect(x + w * 0.66, gap, w * 0.34, 1.5, { fill: '#ffffff', stroke: '#000000', lineMm: 0.3 });
  page.rect(x, paper, w, 1.2, { fill: '#000000' });
  page.text(x + w, mesh - 2, setting.say('cutPages.mesh'), { size: 8, align: 'right' });
  page.text(x, gap + 5, setting.say('cutPages.stencil'), { size: 8 });
  page.text(x, paper + 4.6, setting.say('cutPages.sheetToPrint'), { size: 8 });
  return page.para(x, paper + 7, w, setting.say('cutPages.readsAsItPrints'), { ...type.small, size: 8.5, weight: 'semibold' });
}
