import { deltaE, length, lengths, name as asName } from '../../../words/index.ts';
import { caution, cautionOf, column, drawStack, drawSwatch, fact, steps } from '../parts.ts';
import { startPage, type, type Frame, type Pages, type PlannedLayer, type PlannedPaper, type Setting } from './setting.ts';
import type { Page } from '../../pdf/page.ts';

type WorthPick = NonNullable<PlannedPaper['worthReading']>['picks'][number];

/** Side of a square to read: an instrument's opening, and room for a hand. */
const squareMm = 16;
const gapMm = 4;

/** The overlaps whose reading would narrow the forecast most, and strips to print just those with the first sheets. */
export function* proofStripPages(setting: Setting): Pages {
  // Papers that call for the same overlaps share a page.
  const seen = new Set<string>();
  for (const paper of setting.plan.papers) {
    const key = paper.worthReading?.picks.map((p) => p.code).join();
    if (!key || seen.has(key)) continue;
    seen.add(key);
    yield* draw(setting, paper);
  }
}

function* draw(setting: Setting, paper: PlannedPaper): Pages {
  const worth = paper.worthReading!;
  const frame = newPage(setting, paper);
  const { page, top } = frame;
  const words = column(frame, 0, 4),
    side = column(frame, 4, 2);
  const listed = steps(page, words.x, top + 4, words.width, [
    setting.say('recordPages.worthSteps1'),
    setting.say('recordPages.worthSteps2'),
    setting.say('recordPages.worthSteps3'),
  ]);
  const below = caution(page, words.x, listed + 2, words.width, cautionOf(setting, 'blades'));
  let at = fact(page, side.x, top, side.width, setting.say('recordPages.worthNow'), `± ${setting.show(deltaE(worth.meanBand))}`);
  worth.picks.forEach((pick, i) => {
    const label = setting.say('recordPages.worthThen', { n: i + 1 });
    at = fact(page, side.x, at, side.width, label, `± ${setting.show(deltaE(pick.meanBand))}`, type.strong);
  });
  yield* drawStrips(setting, frame, paper, drawPicks(setting, frame, paper, Math.max(below, at) + 4) + 4);
}

function newPage(setting: Setting, paper: PlannedPaper): Frame {
  return startPage(setting, {
    step: 3,
    title: setting.say('recordPages.worthReading', { paper: asName(paper.name) }),
    side: setting.say('recordPages.onceWithFirstSheets'),
  });
}

/** What the squares will be, as foreseen. */
function drawPicks(setting: Setting, { page, left, width }: Frame, paper: PlannedPaper, y: number): number {
  const { layers } = setting.plan;
  let at = y;
  paper.worthReading!.picks.forEach((pick, i) => {
    const overlap = paper.overlaps.find((o) => o.code === pick.code);
    page.text(left, at + 8, String(i + 1), type.head);
    drawStack(page, layers, pick.layers, left + 8, at, 8, 14);
    drawSwatch(setting, page, overlap?.srgb ?? null, left + 19, at, 24, 14);
    const names = pick.layers.map((id) => layers.find((l) => l.id === id)?.name ?? id).join(' + ');
    page.fit(left + 47, at + 5, width - 47, names, type.strong);
    page.fit(left + 47, at + 11, width - 47, setting.say('recordPages.worthAt', { at: lengths(pick.atMm, ',', 0) }), type.small);
    at += 17;
  });
  return at;
}

/** One strip a run that prints into any of the squares, at true size, open where it prints; over more pages where one holds no more. */
function* drawStrips(setting: Setting, first: Frame, paper: PlannedPaper, y: number): Pages {
  const { picks } = paper.worthReading!;
  const wide = picks.length * (squareMm + gapMm) + gapMm,
    high = squareMm + 2 * gapMm;
  const waiting = setting.plan.layers.filter((l) => picks.some((p) => p.layers.includes(l.id)));
  const across = Math.max(1, Math.floor((first.width + 10) / (wide + 10)));
  let frame = first,
    top = y;
  while (waiting.length > 0) {
    const { page, left, bottom } = frame;
    page.text(left, top + 4, setting.say('recordPages.stripSquare', { size: length(squareMm) }), type.strong);
    page.text(left, top + 9, setting.say('recordPages.stripOpen'), type.small);
    const from = top + 14;
    const down = Math.floor((bottom - from) / (high + 8));
    waiting.splice(0, across * down).forEach((layer, i) => {
      drawStrip(setting, page, layer, picks, left + Math.floor(i / down) * (wide + 10), from + (i % down) * (high + 8));
    });
    yield;
    if (waiting.length === 0) return;
    frame = newPage(setting, paper);
    top = frame.top;
  }
}

function drawStrip(setting: Setting, page: Page, layer: PlannedLayer, picks: readonly WorthPick[], x: number, top: number): void {
  const wide = picks.length * (squareMm + gapMm) + gapMm;
  page.fit(x, top + 4, wide, setting.say('recordPages.stripOfRun', { run: layer.run, layer: asName(layer.name) }), type.smallStrong);
  page.rect(x, top + 6, wide, squareMm + 2 * gapMm, { fill: '#d4d4d4', stroke: '#000000', lineMm: 0.25 });
  // The corner that all strips share.
  page.line(x, top + 9, x + 3, top + 6, 0.4);
  picks.forEach((pick, k) => {
    if (!pick.layers.includes(layer.id)) return;
    const at = x + gapMm + k * (squareMm + gapMm);
    page.rect(at, top + 6 + gapMm, squareMm, squareMm, { fill: '#ffffff', stroke: '#000000', lineMm: 0.25 });
  });
}
