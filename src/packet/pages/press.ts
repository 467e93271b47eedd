import { sayMass, sayFilm } from '../../core/units/index.ts';
import { sheetGroups } from '../sheets.ts';
import { caution, column, drawProof, drawStencil, drawSwatch, sideInWords, tickBox } from './parts.ts';
import { lengthIn, startPage, type, type Frame, type PlannedLayer, type Setting } from './setting.ts';
import { inkLine, materialOf, plural } from './words.ts';

/** One page a run, to stand at the press: big, few words, boxes to tick with inky hands. */
export function pressPages(setting: Setting): void {
  for (const layer of setting.plan.layers) pressCard(setting, layer);
}

function pressCard(setting: Setting, layer: PlannedLayer): void {
  const { plan, units } = setting;
  const frame = startPage(setting, { step: 4, title: `Print: ${layer.name}`, side: `run ${layer.run} of ${plan.layers.length}`, runs: [layer.run] });
  const { page, top } = frame;
  const a = column(frame, 0, 2), b = column(frame, 2, 2), c = column(frame, 4, 2);
  const pictureHigh = 66;

  page.text(a.x - 1, top + 17, String(layer.run), type.huge);
  drawSwatch(page, layer.swatch?.srgb ?? null, a.x + 22, top, a.width - 22, 17);
  page.fit(a.x, top + 26, a.width, inkLine(plan, layer), type.head, 9);
  const pot = layer.mix ? `${sayMass(layer.mix.totalGrams, units, units === 'mm' ? 0 : 1)} in the pot` : 'choose the ink first';
  page.fit(a.x, top + 33, a.width, pot, type.head, 9);
  const material = materialOf(plan, layer);
  page.para(a.x, top + 38, a.width, `${plural(layer.sheetsThrough, 'pull')}. Wet film about ${sayFilm(layer.wetMicrons, units, units === 'mm' ? 0 : 1)}. Gap ${lengthIn(setting, plan.press.gapMm)}.${material ? ` ${material.name}, ${sideInWords(layer)}.` : ''}`, type.body);

  const drawn = drawStencil(page, layer, b.x, top, b.width, pictureHigh);
  page.fit(b.x, top + drawn.heightMm + 5, b.width, 'stencil, from the squeegee side', { size: 8.5 });
  const paper = plan.papers[0];
  if (paper) {
    const half = (c.width - 3) / 2;
    const before = drawProof(setting, page, paper, layer.run - 1, c.x, top, half, pictureHigh);
    drawProof(setting, page, paper, layer.run, c.x + half + 3, top, half, pictureHigh);
    page.text(c.x, top + before.heightMm + 5, 'before', { size: 8.5 });
    page.text(c.x + half + 3, top + before.heightMm + 5, 'after', { size: 8.5 });
    lookFor(setting, frame, layer, c.x, top + before.heightMm + 10, c.width);
  }
  let y = top + pictureHigh + 14;
  page.text(frame.left, y, 'Sheets', type.head);
  page.text(frame.right, y, 'tick: printed    cross: spoiled', { ...type.small, align: 'right' });
  y = sheetBoxes(setting, frame, y + 4);
  y = Math.max(y + 4, top);
  const words = column(frame, 0, 4);
  const notes = column(frame, 4, 2);
  const end = frame.bottom;
  caution(page, words.x, y, words.width, layer.run === 1 ? 'Two lift a large frame. Wipe ink off before rinsing; mind what the drain may take.' : 'Wipe ink off before rinsing. Labels and local rules come first.');
  if (end - y > 14) {
    page.text(notes.x, y + 2.5, 'Notes', type.smallStrong);
    for (let line = y + 11; line < end; line += 8) page.line(notes.x, line, notes.x + notes.width, line, 0.15);
  }
}

/** Newsprint first, then every paper's sheets by their names. Gives back the y below. */
function sheetBoxes(setting: Setting, frame: Frame, from: number): number {
  const { page, left, width } = frame;
  const { plan } = setting;
  const setUp = plan.edition.sheets?.setUp;
  const groups = sheetGroups(plan);
  const rows: { label: string; note: string; boxes: string[] }[] = [];
  const perRun = setUp?.perRun ?? plan.job.edition.setUpSheets;
  const newsprint = setUp?.newsprint ?? perRun;
  if (perRun > 0) rows.push({ label: 'Set up', note: `${newsprint} newsprint${perRun > newsprint ? `, ${plural(perRun - newsprint, 'offcut')}` : ''}`, boxes: Array.from({ length: perRun }, (_, i) => (i < newsprint ? 'n' : 'o')) });
  for (const g of groups) if (g.count > 0) rows.push({ label: `${g.letter}  ${g.name}`, note: `${plural(g.count, 'sheet')}`, boxes: Array.from({ length: g.count }, (_, i) => `${g.letter}${i + 1}`) });
  const labelMm = 40;
  const total = (size: number): number => {
    const perRow = Math.max(1, Math.floor((width - labelMm) / (size + 1.5)));
    return rows.reduce((sum, row) => sum + Math.ceil(row.boxes.length / perRow) * (size + 1.5) + 4, 0);
  };
  // As large as fits, 12 mm for a thumb with a pencil, never under 5.
  let size = 12;
  while (size > 5 && total(size) > frame.bottom - from - 34) size -= 0.5;
  const perRow = Math.max(1, Math.floor((width - labelMm) / (size + 1.5)));
  let y = from;
  for (const row of rows) {
    page.line(left, y, left + width, y, 0.25);
    y += 2.2;
    page.fit(left, y + 4.4, labelMm - 3, row.label, type.strong, 8);
    page.fit(left, y + 9, labelMm - 3, row.note, { size: 8.5 });
    const lines = Math.ceil(row.boxes.length / perRow);
    const most = Math.floor((frame.bottom - y) / (size + 1.5));
    row.boxes.slice(0, most * perRow).forEach((name, i) => tickBox(page, left + labelMm + (i % perRow) * (size + 1.5), y + Math.floor(i / perRow) * (size + 1.5), size, name));
    y += Math.max(10.5, Math.min(lines, most) * (size + 1.5)) + 1.5;
  }
  page.line(left, y, left + width, y, 0.25);
  return y + 2;
}

function lookFor(setting: Setting, frame: Frame, layer: PlannedLayer, x: number, y: number, width: number): void {
  const { plan } = setting;
  const points: string[] = [];
  if (layer.run === 1) points.push('Stops taped down before the first sheet.');
  else points.push('Register: compare marks on the first three sheets.');
  if (layer.stencil.loosePieces.length > 0) points.push(`${plural(layer.stencil.loosePieces.length, 'loose piece')} down, none shifted.`);
  if (layer.stencil.bridges.length > 0) points.push('Bridges flat, no ink under them.');
  if (layer.coverage > 0.4) points.push('Large flat: even pressure, flood well.');
  else points.push('Edges sharp? If not, less ink, less gap.');
  const covered = plan.layers.filter((l) => l.run < layer.run && l.inkId !== null).length;
  if (covered > 0) points.push('Under-layers dry to the touch.');
  let at = y;
  frame.page.text(x, at + 2.6, 'Look for', type.smallStrong);
  at += 5;
  for (const point of points.slice(0, 4)) {
    frame.page.rect(x, at + 0.2, 2.2, 2.2, { stroke: '#000000', lineMm: 0.25 });
    at = frame.page.para(x + 4.5, at, width - 4.5, point, { size: 9, leading: 1.25 }) + 1;
  }
}
