import { pressNotes } from '../../../core/plan/index.ts';
import { ridgeMatters } from '../../../core/press/index.ts';
import { film, length, listed, name as asName, say, type Saying } from '../../../words/index.ts';
import { sheetGroups } from '../../sheets.ts';
import { caution, cautionHigh, cautionOf, column, drawProof, drawStencil, drawSwatch, tickBox } from '../parts.ts';
import { massIn, startPage, type, type Frame, type Pages, type PlannedLayer, type Setting } from '../ink/setting.ts';
import { risersOfRun } from './set-up.ts';
import { inkLine, materialOf, stencilOf } from '../words.ts';

/** One page a run, to stand at the press: big, few words, boxes to tick with inky hands. */
export function* pressPages(setting: Setting): Pages {
  for (const layer of setting.plan.layers) {
    pressCard(setting, layer);
    yield;
  }
}

function pressCard(setting: Setting, layer: PlannedLayer): void {
  const { plan } = setting;
  const frame = startPage(setting, {
    step: 4,
    title: setting.say('cards.printLayer', { layer: asName(layer.name) }),
    side: setting.say('cards.runOf', { run: layer.run, runs: plan.layers.length }),
    runs: [layer.run],
  });
  const { page, left, right, top } = frame;
  const a = column(frame, 0, 2),
    b = column(frame, 2, 2),
    c = column(frame, 4, 2);

  page.text(left - 1, top + 17.5, String(layer.run), type.huge);
  drawSwatch(setting, page, layer.swatch?.srgb ?? null, left + 25, top, 30, 18);
  const words = left + 61;
  page.fit(words, top + 5.2, right - words, setting.tell(inkLine(plan, layer)), { size: 20, weight: 'bold' });
  const pulls = layer.sheetsThrough;
  const pot = layer.mix
    ? say('cards.inPot', { mass: massIn(setting, layer.mix.totalGrams, 'about'), pulls })
    : say('cards.chooseInk', { pulls });
  page.fit(words, top + 12, right - words, setting.tell(pot), type.head, 9);
  const gap = plan.press.gaps.find((one) => one.layerId === layer.id);
  const facts = [
    say('cards.wetFilm', { film: film(layer.wetMicrons, setting.units === 'mm' ? 0 : 1) }),
    ...(gap?.own ? [] : [say('cards.gap', { gap: length(plan.press.gapMm) })]),
    ...(materialOf(plan, layer) ? [stencilOf(plan, layer)] : []),
  ];
  page.fit(words, top + 18, right - words, setting.tell(listed(facts, 'comma')), type.body, 8);

  if (gap?.own) page.fit(left, top + 26, frame.width, setting.tell(ownGap(gap, plan.press.gapMm)), type.head, 9);
  // Once is enough: who stands at the press has read them on the first card.
  const cautions = layer.run === 1 ? ['hinge', 'clean', 'spray', 'fans'].map((id) => cautionOf(setting, id)) : [];
  const cautionRoom = cautions.reduce((sum, one) => sum + cautionHigh(page, frame.width, one), 0);
  const y0 = top + (gap?.own ? 31 : 25),
    high = Math.max(30, Math.min(66, frame.bottom - top - 150 - cautionRoom));
  const paper = plan.papers[0];
  const label = (x: number, y: number, text: string): void => {
    page.text(x, y + 4.4, text, { size: 8.5 });
  };
  if (paper) {
    const before = drawProof(setting, page, paper, layer.run - 1, a.x, y0, a.width, high);
    label(a.x, y0 + before.heightMm, setting.say(layer.run === 1 ? 'cards.beforeBare' : 'cards.before'));
    const after = drawProof(setting, page, paper, layer.run, c.x, y0, c.width, high);
    label(c.x, y0 + after.heightMm, setting.say(layer.inkId === null ? 'cards.afterUnknown' : 'cards.after'));
  }
  const drawn = drawStencil(setting, page, layer, b.x, y0, b.width, high);
  label(b.x, y0 + drawn.heightMm, setting.say(layer.tone ? 'cards.fromFilm' : 'cards.fromSqueegee'));

  let y = lookFor(setting, frame, layer, y0 + high + 9);
  for (const one of pressNotes(plan, layer)) y = page.para(left, y - 1, frame.width, setting.tell(one), type.strong) + 1.5;
  page.text(left, y + 5, setting.say('cards.sheets'), type.head);
  page.text(right, y + 5, setting.say('cards.tickCross'), { ...type.small, align: 'right' });
  y = sheetBoxes(setting, { ...frame, bottom: frame.bottom - cautionRoom }, layer, y + 8) + 2;
  for (const one of cautions) y = caution(page, left, y, frame.width, one);
  if (frame.bottom - y > 14) {
    page.text(left, y + 4, setting.say('cards.notes'), type.smallStrong);
    for (let line = y + 12; line < frame.bottom; line += 8) page.line(left, line, right, line, 0.15);
  }
}

function ownGap(own: Setting['plan']['press']['gaps'][number], othersMm: number): Saying {
  const [gap, others] = [length(own.gapMm), length(othersMm)];
  return own.risers ? say('cards.ownGapRisers', { gap, others, risers: risersOfRun(own.risers) }) : say('cards.ownGap', { gap, others });
}

/** Newsprint first, then every paper's sheets by their names. Gives back the y below. */
function sheetBoxes(setting: Setting, frame: Frame, layer: PlannedLayer, from: number): number {
  const { page, left, width } = frame;
  const { plan } = setting;
  const setUp = plan.edition.sheets?.setUp;
  const groups = sheetGroups(plan);
  const rows: { label: string; note: Saying; boxes: string[] }[] = [];
  // After these sheets the stencil is changed: a bar stands there.
  const last = new Set(layer.changes.map((c) => plan.edition.sheetNames[c.afterSheets - 1]?.id));
  const checks = layer.changes.reduce((sum, c) => sum + c.checkSheets, 0);
  const perRun = setUp?.perRun ?? plan.job.edition.setUpSheets;
  const newsprint = setUp?.newsprint ?? perRun;
  const offcuts = perRun - newsprint + checks;
  if (perRun + checks > 0)
    rows.push({
      label: setting.say('cards.setUp'),
      note: offcuts > 0 ? say('cards.newsprintOffcuts', { n: newsprint, offcuts }) : say('cards.newsprint', { n: newsprint }),
      boxes: Array.from({ length: newsprint + offcuts }, (_, i) =>
        setting.say(i < newsprint ? 'cards.newsprintLetter' : 'cards.offcutLetter'),
      ),
    });
  for (const g of groups)
    if (g.sheets.length > 0)
      rows.push({ label: `${g.letter}  ${g.name}`, note: say('packet.sheets', { n: g.sheets.length }), boxes: [...g.sheets] });
  const labelMm = 36,
    gap = 1.5,
    least = 11;
  const perRow = (size: number): number => Math.max(1, Math.floor((width - labelMm) / (size + gap)));
  const rowHigh = (lines: number, size: number): number => Math.max(least, lines * (size + gap)) + 3.5;
  const total = (size: number, most = Infinity): number =>
    rows.reduce((sum, row) => sum + rowHigh(Math.min(most, Math.ceil(row.boxes.length / perRow(size))), size), 0);
  // As large as fits, 13 mm for a thumb with a pencil, never under 5; then fewer lines, and the record holds the rest.
  const room = frame.bottom - from - 4;
  let size = 13;
  while (size > 5 && total(size) > room - (layer.run === 1 ? 0 : 22)) size -= 0.5;
  let most = Math.max(1, ...rows.map((row) => Math.ceil(row.boxes.length / perRow(size))));
  while (most > 1 && total(size, most) > room) most--;
  let y = from;
  for (const row of rows) {
    if (y + rowHigh(1, size) > frame.bottom) {
      page.fit(left, y + 4, width, setting.say('cards.morePapers'), type.small);
      break;
    }
    page.line(left, y, left + width, y, 0.25);
    y += 2;
    page.fit(left, y + 4.2, labelMm - 3, row.label, type.strong, 8);
    const shown = row.boxes.slice(0, most * perRow(size));
    const unseen = row.boxes.length - shown.length;
    const note = unseen > 0 ? say('cards.restInRecord', { row: row.note, n: unseen }) : row.note;
    page.fit(left, y + 8.6, labelMm - 3, setting.tell(note), { size: 8.5 });
    shown.forEach((name, i) => {
      const [x, at] = [left + labelMm + (i % perRow(size)) * (size + gap), y + Math.floor(i / perRow(size)) * (size + gap)];
      tickBox(page, x, at, size, name);
      if (last.has(name)) page.line(x + size + gap / 2, at - 0.6, x + size + gap / 2, at + size + 0.6, 1.4);
    });
    y += rowHigh(Math.ceil(shown.length / perRow(size)), size) - 2;
  }
  page.line(left, y, left + width, y, 0.25);
  return y + 2;
}

/** Boxes to look through before and during the run, in two columns. Gives back the y below. */
function lookFor(setting: Setting, frame: Frame, layer: PlannedLayer, y: number): number {
  const { plan } = setting;
  const points: Saying[] = [];
  const covered = plan.layers.filter((l) => l.run < layer.run && l.inkId !== null).length;
  if (layer.run === 1) points.push(say('cards.stopsTried'));
  else points.push(say('cards.marksMatch'));
  if (covered > 0) points.push(say('cards.underlayersDry'));
  if (layer.stencil.loosePieces.length > 0) points.push(say('cards.loosePiecesDown', { n: layer.stencil.loosePieces.length }));
  if (layer.stencil.bridges.length > 0) points.push(say('cards.bridgesFlat'));
  points.push(say(layer.coverage > 0.4 ? 'cards.largeFlat' : 'cards.edgesSharp'));
  if (layer.ridge.share <= ridgeMatters && layer.ridge.timesTheFilm > 2) points.push(say('cards.thickEdges'));
  points.push(say('cards.noBrightGap'));
  const shown = points.slice(0, 4);
  const width = frame.width / 2 - 3;
  shown.forEach((point, i) => {
    const x = frame.left + (i % 2) * (width + 6),
      at = y + Math.floor(i / 2) * 6;
    frame.page.rect(x, at, 3.2, 3.2, { stroke: '#000000', lineMm: 0.3 });
    frame.page.fit(x + 6, at + 3, width - 6, setting.tell(point), type.body, 6.5);
  });
  return y + Math.ceil(shown.length / 2) * 6 + 3;
}
