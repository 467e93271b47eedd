import { saySize } from '../../core/units/index.ts';
import { finalNumbers, sheetGroups } from '../sheets.ts';
import { caution, drawProof, writingLine } from './parts.ts';
import { sizeIn, startPage, type, type Setting } from './setting.ts';
import { inkLine, materialOf, plural } from './words.ts';

/**
 * What a later owner, teacher or court would ask: the themes of disclosure that several US states' statutes name
 * (New York, Maryland, Hawaii, California, Georgia), as a form to fill in. No legal advice.
 */
export function documentationPage(setting: Setting): void {
  const { plan, date } = setting;
  const { job } = plan;
  const { record } = job.edition;
  const numbers = finalNumbers(plan);
  let frame = startPage(setting, { step: 6, title: 'About this print', side: 'to keep with the edition' });
  let { page } = frame;
  const { left, width } = frame;
  const paper = plan.papers[0];
  const pictureMm = 46;
  const picture = paper
    ? drawProof(setting, page, paper, plan.layers.length, frame.right - pictureMm, frame.top, pictureMm, 64)
    : { widthMm: 0, heightMm: 0 };
  const half = (width - pictureMm - 14) / 2;
  const right = left + half + 6;
  let y = frame.top + 7;
  writingLine(page, left, y, half, 'title', job.title);
  y = writingLine(page, right, y, half, 'artist', job.maker);
  writingLine(page, left, y, half, 'year', job.edition.year === undefined ? '' : String(job.edition.year));
  y = writingLine(page, right, y, half, 'workshop, printer', [job.edition.workshop, record.printer].filter((t) => t).join(', '));
  writingLine(page, left, y, half, 'image', sizeIn(setting, job.image.widthMm, job.image.heightMm));
  y = writingLine(page, right, y, half, 'medium', `screenprint, hand-cut stencils, ${plural(plan.layers.length, 'run')}`);
  writingLine(page, left, y, half, 'printed from … to …', [record.printedFrom, record.printedTo].filter((t) => t).join(' to ') || date);
  y = writingLine(
    page,
    right,
    y,
    half,
    'mesh',
    job.screen ? `${job.screen.mesh.perCm} / cm, thread ${job.screen.mesh.threadMicrons} µm` : '',
  );
  y = Math.max(y, frame.top + picture.heightMm + 9);

  page.line(left, y - 3, frame.right, y - 3, 0.5);
  page.text(left, y + 2, 'Papers and numbers', type.head);
  const names = ['edition', 'A/P', 'B.A.T.', 'P/P', 'H.C.', 'rejected'];
  const first = left + width * 0.46;
  const step = (frame.right - first) / names.length;
  names.forEach((name, i) => page.text(first + (i + 0.5) * step, y + 2, name, { ...type.small, align: 'centre' }));
  y += 5;
  /** Boxes from the right end of what is given; the rest are another row's. */
  const countBoxes = (at: number, values: readonly (number | undefined)[]): number => {
    const from = values.length === 1 ? names.length - 1 : 0;
    values.forEach((value, k) => {
      const x = first + (from + k) * step;
      page.rect(x + 1, at + 0.8, step - 2, 6.6, { stroke: '#000000', lineMm: 0.2 });
      if (numbers && value !== undefined) page.text(x + step / 2, at + 5.8, String(value), { ...type.strong, align: 'centre' });
    });
    return at + 8.4;
  };
  const counts = numbers ? (plan.edition.documentation?.counts ?? []) : [];
  const varied = job.edition.papersAre === 'varied' && sheetGroups(plan).length > 1;
  for (const group of sheetGroups(plan)) {
    const jobPaper = job.papers.find((p) => p.id === group.paperId);
    page.fit(
      left,
      y + 5.5,
      first - left - 4,
      `${group.letter}  ${group.name}${jobPaper ? `, ${saySize(jobPaper.widthMm, jobPaper.heightMm, setting.units)}` : ''}`,
      type.body,
      8,
    );
    const row = counts.find((r) => r.paper === group.name);
    const rejected = numbers?.sheets.filter((s) => s.kind === 'rejected' && s.sheet.paper === group.paperId).length;
    y = countBoxes(y, varied ? [rejected] : [row?.edition, row?.artists, row?.bat, row?.printers, row?.horsCommerce, rejected]);
  }
  if (varied) {
    page.fit(left, y + 5.5, first - left - 4, 'all papers, one varied edition', type.body, 8);
    const row = counts[0];
    y = countBoxes(y, [row?.edition, row?.artists, row?.bat, row?.printers, row?.horsCommerce]);
  }
  y += 9;
  page.text(left, y, 'Runs, first to last', type.head);
  y += 4;
  for (const layer of plan.layers) {
    const material = materialOf(plan, layer);
    page.fit(
      left,
      y + 3,
      width,
      `${layer.run}  ${layer.name}: ${inkLine(plan, layer)}${material ? `; ${material.name.toLowerCase()} ${layer.side}` : ''}`,
      type.small,
    );
    y += 5;
  }
  y += 9;
  if (y > frame.bottom - 78) {
    frame = startPage(setting, { step: 6, title: 'About this print', side: 'continued' });
    ({ page } = frame);
    y = frame.top + 3;
  }
  page.text(left, y, 'Stated by the artist', type.head);
  y += 3.5;
  const statements = [
    record.signature ? `Signed: ${record.signature}.` : 'All sheets are signed by the artist’s own hand.',
    record.master
      ? `Stencils: ${record.master} after printing.`
      : 'Stencils: kept / cancelled / destroyed / worn out (strike out what does not apply).',
    record.otherEditions
      ? `Other editions: ${record.otherEditions}`
      : 'No other edition of this image exists. If one does: how many, when, how it differs.',
    'Proofs outside the edition are counted above.',
    record.posthumous ? 'Printed after the artist’s death.' : 'Printed in the artist’s lifetime, by the artist or under the artist’s eyes.',
  ];
  for (const statement of statements) {
    page.rect(left, y, 4.2, 4.2, { stroke: '#000000', lineMm: 0.3 });
    page.fit(left + 7, y + 3.4, width - 7, statement, type.body, 8);
    y += 7.6;
  }
  if (numbers && plan.edition.documentation) y = page.para(left, y, width, plan.edition.documentation.footing, type.small);
  y += 13;
  writingLine(page, left, y, width * 0.55, 'signature');
  y = writingLine(page, left + width * 0.62, y, width * 0.38, 'date and place');
  caution(
    page,
    left,
    Math.min(y - 2, frame.bottom - 8),
    width,
    'Laws on what must be disclosed differ from place to place; this sheet is a record, not advice.',
  );
}
