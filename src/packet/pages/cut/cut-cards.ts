import { ratesOf } from '../../../core/plan/index.ts';
import type { Mend, PointMm } from '../../../core/stencil/index.ts';
import { length, lengths, longLength, say, sentences, type Saying } from '../../../words/index.ts';
import { sayUses } from '../../cut-uses.ts';
import type { Page } from '../../pdf/page.ts';
import { drawsWhole, pagesOfDrawing, placingMap, sharpCorners, whatShows } from './cut-drawing.ts';
import { caution, cautionOf, column, fact, paraHigh, steps } from '../parts.ts';
import { roughly, sizeIn, startPage, type, type Frame, type Pages, type PlannedLayer, type Setting } from '../ink/setting.ts';
import { inkName, materialOf, sideOf } from '../words.ts';

const leastPictureMm = 50;
const mostPictureMm = 86;
/** Between a card and the next one's line, and from its line to its first words. */
const gapMm = 5.5;
const headMm = 11.5;
const factStyle = type.strong;
const pointStyle = { ...type.small, leading: 1.28 };
const pointGapMm = 1.1;

interface Card {
  readonly layer: PlannedLayer;
  readonly facts: readonly (readonly [label: string, value: string])[];
  readonly points: readonly string[];
}

/** A card, or what is left of one that no page holds whole. */
interface Placed extends Card {
  readonly heightMm: number;
}

/** A card for each stencil, several a page, nothing left out; how to cut, once, above the first. */
export function* cutCards(setting: Setting): Pages {
  const cut = setting.plan.layers.filter((layer) => !layer.tone);
  if (cut.length === 0) return;
  const begin = (more: boolean): Frame =>
    startPage(setting, {
      step: 2,
      title: setting.say('cutPages.cutCards'),
      side: setting.say(more ? 'packet.continued' : 'cutPages.oneCardAStencil'),
      runs: [],
    });
  let frame = begin(false);
  let top = introduction(setting, frame);
  const room = frame.bottom - frame.top;
  const cardPages = setting.book.pages.length;
  // Each card names the pages of its drawing, which begin after the last card.
  let pages: Placed[][] = [];
  for (let count = 1, before = 0; count !== before; ) {
    let page = cardPages + count;
    const cards = cut.map((layer): Card => {
      const first = page;
      page += pagesOfDrawing(setting, layer);
      return cardOf(setting, layer, first, page - 1);
    });
    pages = place(frame, cards, frame.bottom - top, room);
    [before, count] = [count, Math.max(count, pages.length)];
  }
  for (const [i, placed] of pages.entries()) {
    if (i > 0) [frame, top] = [begin(true), frame.top];
    const spare = frame.bottom - top - placed.reduce((sum, one) => sum + one.heightMm + gapMm, 0);
    const each = Math.max(0, Math.min(12, spare / placed.length));
    let y = top;
    for (const one of placed) {
      draw(setting, frame, one, y, one.heightMm + each);
      y += one.heightMm + each + gapMm;
    }
    yield;
  }
}

const columnsOf = (frame: Frame): { picture: Column; facts: Column; points: Column } => ({
  picture: column(frame, 0, 1.6),
  facts: column(frame, 1.72, 1.7),
  points: column(frame, 3.5, 2.5),
});
type Column = ReturnType<typeof column>;

const factHigh = ({ page }: Frame, widthMm: number, value: string): number => 4.6 + paraHigh(page, widthMm, value, factStyle) + 1.4;

/** Cards in their order, as many a page as it holds; one that no page holds goes on with the rest of its points. */
function place(frame: Frame, cards: readonly Card[], firstRoom: number, room: number): Placed[][] {
  const { facts: factColumn, points: pointColumn } = columnsOf(frame);
  const highOf = ({ facts, points }: Card): number =>
    Math.max(
      leastPictureMm,
      headMm + facts.reduce((sum, [, value]) => sum + factHigh(frame, factColumn.width, value), 0),
      headMm + points.reduce((sum, one) => sum + paraHigh(frame.page, pointColumn.width, one, pointStyle) + pointGapMm, 0),
    );
  const pages: Placed[][] = [[]];
  let left = firstRoom;
  const next = (): void => {
    pages.push([]);
    left = room;
  };
  for (const card of cards) {
    let rest: Card = card;
    for (;;) {
      const heightMm = highOf(rest);
      if (heightMm + gapMm > left && left < room) next();
      if (heightMm + gapMm <= left || rest.points.length < 2) {
        pages[pages.length - 1].push({ ...rest, heightMm: Math.min(heightMm, left - gapMm) });
        left -= heightMm + gapMm;
        break;
      }
      let some = rest.points.length - 1;
      while (some > 1 && highOf({ ...rest, points: rest.points.slice(0, some) }) + gapMm > left) some--;
      pages[pages.length - 1].push({ ...rest, points: rest.points.slice(0, some), heightMm: left - gapMm });
      rest = { ...rest, facts: [], points: rest.points.slice(some) };
      next();
    }
  }
  return pages.filter((one) => one.length > 0);
}

/** What holds for all of them: the order of the knife, the caution, and which side is up. */
function introduction(setting: Setting, frame: Frame): number {
  const { page, top } = frame;
  const layers = setting.plan.layers.filter((layer) => !layer.tone);
  const words = column(frame, 0, 4),
    side = column(frame, 4, 2);
  const y = steps(
    page,
    words.x,
    top,
    words.width,
    [
      sentences(
        say('cutPages.layOnMaterial'),
        layers.some((layer) => pagesOfDrawing(setting, layer) > 1) && say('cutPages.howToJoin'),
        layers.some((layer) => !drawsWhole(setting, layer)) && say('cutPages.edgeNotDrawn'),
      ),
      say('cutPages.innerFirst'),
      sentences(
        say('cutPages.greyOutWhiteStays'),
        layers.some((layer) => layer.stencil.bridges.length > 0) && say('cutPages.stopAtBridges'),
        layers.some((layer) => sharpCorners(layer).length > 0) && say('cutPages.stopAtRings'),
      ),
    ].map((one) => setting.tell(one)),
    { ...type.body, size: 9, leading: 1.3 },
  );
  const below = sideDiagram(setting, page, side.x, top - 6, side.width, setting.tell(inkName(setting.plan, layers[0])));
  return caution(page, frame.left, Math.max(y, below) + 2, frame.width, cautionOf(setting, 'blades')) + 3;
}

/** All that is said of one stencil. */
function cardOf(setting: Setting, layer: PlannedLayer, firstPage: number, lastPage: number): Card {
  const { plan } = setting;
  const { knife, certificate, sheet, bridges, islands, loosePieces, mends = [] } = layer.stencil;
  const material = materialOf(plan, layer);
  const cut = plan.cuts.find((c) => c.id === layer.cutId);
  const use = cut?.uses.find((u) => u.layerId === layer.id);
  const facts: Card['facts'] = [
    [setting.say('cutPages.sheetToBegin'), sizeIn(setting, sheet.maxX - sheet.minX, sheet.maxY - sheet.minY)],
    [
      setting.say('cutPages.knifeAndLift', { n: knife.pieces }),
      setting.say('cutPages.knifeWork', { length: longLength(knife.metres * 1000, 1), corners: knife.corners }),
    ],
    [
      setting.say('cutPages.timeAt', { pace: longLength(ratesOf(plan.job).metresPerMinute * 1000) }),
      setting.say('cutPages.timeAndHow', { time: roughly(knife.minutes), how: say(`cutPages.${knife.difficulty}`) }),
    ],
  ];
  const points: Saying[] = [];
  const dropped = islands.filter((i) => i.handled === 'dropped');
  if (bridges.length > 0) points.push(say('cutPages.bridgesAre', { what: whatShows(bridges) }));
  if (dropped.length > 0) points.push(say('cutPages.droppedAre', { what: whatShows(dropped) }));
  for (const [kind, key] of changes) {
    const some = mends.filter((mend) => mend.kind === kind);
    if (some.length > 0) points.push(say(`cutPages.${key}`, { what: whatShows(some), largest: lengths(largestOf(some), ',', 0) }));
  }
  for (const { acrossMm, atMm } of knife.punched) points.push(say('cutPages.punch', { n: atMm.length, across: length(acrossMm) }));
  if (loosePieces.length > 0) points.push(say('cutPages.numberPieces'));
  if (use?.keepForRun !== undefined)
    points.push(
      use.side === 'window' ? say('cutPages.keepWhatDrops', { run: use.keepForRun }) : say('cutPages.keepSheet', { run: use.keepForRun }),
    );
  const sheets = cut?.sets.find((set) => set.serves.includes(layer.id))?.sheets.length ?? 1;
  if (cut && (cut.timesToCut > 1 || cut.layers.length > 1))
    points.push(sentences(sheets > 1 && say('cutPages.cutThisTimes', { times: say('packet.times', { n: sheets }) }), cut.why));
  if (cut && cut.layers.length > 1) points.push(...sayUses(cut));
  points.push(certificate.holds ? proven(material) : say('cutPages.notProven', { n: certificate.faults.length }));
  points.push(
    sentences(
      firstPage === lastPage
        ? say('cutPages.drawnOnPage', { page: firstPage })
        : say('cutPages.drawnOnPages', { first: firstPage, last: lastPage }),
      firstPage < lastPage && say('cutPages.sheetsToJoin', { n: lastPage - firstPage + 1 }),
    ),
  );
  return { layer, facts, points: points.map((one) => setting.tell(one)) };
}

const changes = [
  ['broader', 'keptFree'],
  ['wider', 'printsMore'],
] as const;

/** Where the largest of some places is. */
const largestOf = (mends: readonly Mend[]): PointMm => mends.reduce((a, b) => (b.areaMm2 > a.areaMm2 ? b : a)).at;

const proven = (material: ReturnType<typeof materialOf>): Saying =>
  material
    ? say('cutPages.provenWidths', { strip: length(material.leastBridgeMm), opening: length(material.leastOpeningMm) })
    : say('cutPages.proven');

function draw(setting: Setting, frame: Frame, { layer, facts, points }: Card, y: number, heightMm: number): void {
  const { page, left, right } = frame;
  const { picture, facts: factColumn, points: pointColumn } = columnsOf(frame);
  page.line(left, y - 3, right, y - 3, 0.3);
  placingMap(setting, layer, page, picture.x, y, picture.width, Math.min(mostPictureMm, heightMm));
  page.text(factColumn.x, y + 6.2, String(layer.run), type.large);
  const words = factColumn.x + 9;
  page.fit(words, y + 3.4, right - words, layer.name, type.head, 8);
  const material = materialOf(setting.plan, layer);
  const from = material
    ? setting.say('cutPages.sideOfThick', { side: sideOf(layer.side), material: material.name, thickness: length(material.thicknessMm) })
    : setting.tell(sideOf(layer.side));
  page.fit(words, y + 7.8, right - words, from, type.small, 7);
  let a = y + headMm;
  for (const [label, value] of facts) a = fact(page, factColumn.x, a, factColumn.width, label, value, factStyle) - 0.8;
  let b = y + headMm + 0.5;
  for (const point of points) b = page.para(pointColumn.x, b, pointColumn.width, point, pointStyle) + pointGapMm;
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
