import { cautions } from '../../core/edition/index.ts';
import { sayFilm, sayMass } from '../../core/units/index.ts';
import { sheetGroups } from '../sheets.ts';
import { caution, column, drawProof, drawStencil, drawSwatch, sideInWords, tickBox } from './parts.ts';
import { lengthIn, startPage, type, type Frame, type Pages, type PlannedLayer, type Setting } from './setting.ts';
import { inkLine, materialOf, plural, sentence } from './words.ts';

/** One page a run, to stand at the press: big, few words, boxes to tick with inky hands. */
export function* pressPages(setting: Setting): Pages {
  for (const layer of setting.plan.layers) {
    pressCard(setting, layer);
    yield;
  }
}

function pressCard(setting: Setting, layer: PlannedLayer): void {
  const { plan, units } = setting;
  const frame = startPage(setting, {
    step: 4,
    title: `Print: ${layer.name}`,
    side: `run ${layer.run} of ${plan.layers.length}`,
    runs: [layer.run],
  });
  const { page, left, right, top } = frame;
  const a = column(frame, 0, 2),
    b = column(frame, 2, 2),
    c = column(frame, 4, 2);

  page.text(left - 1, top + 17.5, String(layer.run), type.huge);
  drawSwatch(page, layer.swatch?.srgb ?? null, left + 25, top, 30, 18);
  const words = left + 61;
  page.fit(words, top + 5.2, right - words, inkLine(plan, layer), { size: 20, weight: 'bold' });
  const pot = layer.mix ? `${sayMass(layer.mix.totalGrams, units, units === 'mm' ? 0 : 1)} in the pot` : 'choose the ink first';
  page.fit(words, top + 12, right - words, `${pot}, ${plural(layer.sheetsThrough, 'pull')}`, type.head, 9);
  const material = materialOf(plan, layer);
  const gap = plan.press.gaps.find((one) => one.layerId === layer.id);
  const facts = [
    `wet film about ${sayFilm(layer.wetMicrons, units, units === 'mm' ? 0 : 1)}`,
    ...(gap?.own ? [] : [`gap ${lengthIn(setting, plan.press.gapMm)}`]),
    ...(material ? [`${material.name.toLowerCase()} ${sideInWords(layer)}`] : []),
  ];
  page.fit(words, top + 18, right - words, sentence(facts.join(', ')), type.body, 8);

  if (gap?.own) {
    const front = gap.risers
      ? `; front risers ${lengthIn(setting, gap.risers.frontMm)}${gap.risers.underHingeMm > 0.05 ? `, hinge packed ${lengthIn(setting, gap.risers.underHingeMm)}` : ''}`
      : '';
    page.fit(
      left,
      top + 26,
      frame.width,
      `Gap for this run: ${lengthIn(setting, gap.gapMm)} (others ${lengthIn(setting, plan.press.gapMm)})${front}`,
      type.head,
      9,
    );
  }
  const y0 = top + (gap?.own ? 31 : 25),
    high = Math.max(30, Math.min(66, frame.bottom - top - 150));
  const paper = plan.papers[0];
  const label = (x: number, y: number, text: string): void => {
    page.text(x, y + 4.4, text, { size: 8.5 });
  };
  if (paper) {
    const before = drawProof(setting, page, paper, layer.run - 1, a.x, y0, a.width, high);
    label(a.x, y0 + before.heightMm, layer.run === 1 ? 'before: the bare sheet' : 'before');
    const after = drawProof(setting, page, paper, layer.run, c.x, y0, c.width, high);
    label(c.x, y0 + after.heightMm, layer.inkId === null ? 'after: not known yet' : 'after');
  }
  const drawn = drawStencil(page, layer, b.x, y0, b.width, high);
  label(b.x, y0 + drawn.heightMm, 'stencil, from the squeegee side');

  let y = lookFor(setting, frame, layer, y0 + high + 9);
  page.text(left, y + 5, 'Sheets', type.head);
  page.text(right, y + 5, 'tick: printed    cross: spoiled', { ...type.small, align: 'right' });
  y = sheetBoxes(setting, frame, y + 8) + 2;
  const hurt = cautions.filter((one) => (layer.run === 1 ? ['lift', 'clean'] : ['hinge', 'clean']).includes(one.id));
  for (const one of hurt) if (y < frame.bottom - 8) y = caution(page, left, y, frame.width, one.text);
  if (frame.bottom - y > 14) {
    page.text(left, y + 4, 'Notes', type.smallStrong);
    for (let line = y + 12; line < frame.bottom; line += 8) page.line(left, line, right, line, 0.15);
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
  if (perRun > 0)
    rows.push({
      label: 'Set up',
      note: `${newsprint} newsprint${perRun > newsprint ? `, ${plural(perRun - newsprint, 'offcut')}` : ''}`,
      boxes: Array.from({ length: perRun }, (_, i) => (i < newsprint ? 'n' : 'o')),
    });
  for (const g of groups)
    if (g.sheets.length > 0) rows.push({ label: `${g.letter}  ${g.name}`, note: plural(g.sheets.length, 'sheet'), boxes: [...g.sheets] });
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
  while (size > 5 && total(size) > room - 22) size -= 0.5;
  let most = Math.max(1, ...rows.map((row) => Math.ceil(row.boxes.length / perRow(size))));
  while (most > 1 && total(size, most) > room) most--;
  let y = from;
  for (const row of rows) {
    if (y + rowHigh(1, size) > frame.bottom) {
      page.fit(left, y + 4, width, 'More papers than this card holds: tick them in the record.', type.small);
      break;
    }
    page.line(left, y, left + width, y, 0.25);
    y += 2;
    page.fit(left, y + 4.2, labelMm - 3, row.label, type.strong, 8);
    const shown = row.boxes.slice(0, most * perRow(size));
    const unseen = row.boxes.length - shown.length;
    page.fit(left, y + 8.6, labelMm - 3, unseen > 0 ? `${row.note}, ${unseen} in the record` : row.note, { size: 8.5 });
    shown.forEach((name, i) =>
      tickBox(page, left + labelMm + (i % perRow(size)) * (size + gap), y + Math.floor(i / perRow(size)) * (size + gap), size, name),
    );
    y += rowHigh(Math.ceil(shown.length / perRow(size)), size) - 2;
  }
  page.line(left, y, left + width, y, 0.25);
  return y + 2;
}

/** Boxes to look through before and during the run, in two columns. Gives back the y below. */
function lookFor(setting: Setting, frame: Frame, layer: PlannedLayer, y: number): number {
  const { plan } = setting;
  const points: string[] = [];
  const covered = plan.layers.filter((l) => l.run < layer.run && l.inkId !== null).length;
  if (layer.run === 1) points.push('Stops fixed, three sheets tried.');
  else points.push('Marks match on the first three sheets.');
  if (covered > 0) points.push('Under-layers dry to the touch.');
  if (layer.stencil.loosePieces.length > 0) points.push(`${plural(layer.stencil.loosePieces.length, 'loose piece')} down, none shifted.`);
  if (layer.stencil.bridges.length > 0) points.push('Bridges flat, no ink under them.');
  points.push(layer.coverage > 0.4 ? 'Large flat: flood well, even pressure.' : 'Edges sharp? If not: less ink, less gap.');
  if (layer.ridge.timesTheFilm > 2) points.push('Thick ink along edges: dry it longer.');
  points.push('No bright gap outside the aperture.');
  const shown = points.slice(0, 4);
  const width = frame.width / 2 - 3;
  shown.forEach((point, i) => {
    const x = frame.left + (i % 2) * (width + 6),
      at = y + Math.floor(i / 2) * 6;
    frame.page.rect(x, at, 3.2, 3.2, { stroke: '#000000', lineMm: 0.3 });
    frame.page.fit(x + 6, at + 3, width - 6, point, type.body, 8);
  });
  return y + Math.ceil(shown.length / 2) * 6 + 3;
}
