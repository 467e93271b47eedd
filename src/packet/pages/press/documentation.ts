import { figure, film, lengths, name as asName, say } from '../../../words/index.ts';
import { finalNumbers, sheetGroups } from '../../sheets.ts';
import { caution, drawProof, writingLine } from '../parts.ts';
import { sizeIn, startPage, type, type Setting } from '../ink/setting.ts';
import { inkLine, stencilOf } from '../words.ts';

const stencilsAfter = {
  kept: 'recordPages.stencilsKept',
  cancelled: 'recordPages.stencilsCancelled',
  destroyed: 'recordPages.stencilsDestroyed',
  'worn out': 'recordPages.stencilsWornOut',
} as const;

/**
 * What a later owner, teacher or court would ask: the themes of disclosure that several US states' statutes name
 * (New York, Maryland, Hawaii, California, Georgia), as a form to fill in. No legal advice.
 */
export function documentationPage(setting: Setting): void {
  const { plan, date } = setting;
  const { job } = plan;
  const { record } = job.edition;
  const numbers = finalNumbers(plan);
  let frame = startPage(setting, { step: 6, title: setting.say('recordPages.aboutThisPrint'), side: setting.say('recordPages.toKeep') });
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
  writingLine(page, left, y, half, setting.say('recordPages.title'), job.title);
  y = writingLine(page, right, y, half, setting.say('recordPages.artist'), job.maker);
  writingLine(page, left, y, half, setting.say('recordPages.year'), job.edition.year === undefined ? '' : String(job.edition.year));
  y = writingLine(
    page,
    right,
    y,
    half,
    setting.say('recordPages.workshopPrinter'),
    [job.edition.workshop, record.printer].filter((t) => t).join(', '),
  );
  writingLine(page, left, y, half, setting.say('recordPages.image'), sizeIn(setting, job.image.widthMm, job.image.heightMm));
  y = writingLine(
    page,
    right,
    y,
    half,
    setting.say('recordPages.medium'),
    setting.say('recordPages.screenprint', { runs: plan.layers.length }),
  );
  const { printedFrom: from, printedTo: to } = record;
  const printed = from && to ? setting.say('recordPages.fromTo', { from: asName(from), to: asName(to) }) : from || to || date;
  writingLine(page, left, y, half, setting.say('recordPages.printedFromTo'), printed);
  const { mesh } = job.screen ?? {};
  const meshIs = mesh ? setting.say('recordPages.meshIs', { count: figure(mesh.perCm, 1, false), thread: film(mesh.threadMicrons) }) : '';
  const ownMeshes = plan.press.runs.flatMap(({ layerId, own, name }) => {
    const run = plan.layers.find((l) => l.id === layerId)?.run;
    return own && run !== undefined ? [setting.say('recordPages.runMesh', { run, mesh: asName(name) })] : [];
  });
  y = writingLine(page, right, y, half, setting.say('recordPages.mesh'), [meshIs, ...ownMeshes].filter((t) => t !== '').join('; '));
  y = Math.max(y, frame.top + picture.heightMm + 9);

  page.line(left, y - 3, frame.right, y - 3, 0.5);
  page.text(left, y + 2, setting.say('recordPages.papersAndNumbers'), type.head);
  const names = [
    setting.say('recordPages.edition'),
    'A/P',
    'B.A.T.',
    'P/P',
    'H.C.',
    setting.say('recordPages.spare'),
    setting.say('recordPages.rejected'),
  ];
  const first = left + width * 0.4;
  const step = (frame.right - first) / names.length;
  names.forEach((name, i) => page.text(first + (i + 0.5) * step, y + 2, name, { ...type.small, align: 'centre' }));
  y += 5;
  /** Boxes from the right end of what is given; the rest are another row's. */
  const countBoxes = (at: number, values: readonly (number | undefined)[]): number => {
    const from = values.length === 2 ? names.length - 2 : 0;
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
      jobPaper
        ? setting.say('recordPages.paperOfSize', {
            letter: asName(group.letter),
            paper: asName(group.name),
            size: lengths([jobPaper.widthMm, jobPaper.heightMm]),
          })
        : `${group.letter}  ${group.name}`,
      type.body,
      8,
    );
    const row = counts.find((r) => r.paperId === group.paperId);
    const [spare, rejected] = (['spare', 'rejected'] as const).map(
      (kind) => numbers?.sheets.filter((s) => s.kind === kind && s.sheet.paper === group.paperId).length,
    );
    y = countBoxes(y, [...(varied ? [] : [row?.edition, row?.artists, row?.bat, row?.printers, row?.horsCommerce]), spare, rejected]);
  }
  if (varied) {
    page.fit(left, y + 5.5, first - left - 4, setting.say('recordPages.allVaried'), type.body, 8);
    const row = counts[0];
    y = countBoxes(y, [row?.edition, row?.artists, row?.bat, row?.printers, row?.horsCommerce]);
  }
  y += 9;
  page.text(left, y, setting.say('recordPages.runsInOrder'), type.head);
  y += 4;
  for (const layer of plan.layers) {
    const line = setting.say('recordPages.runLine', {
      run: layer.run,
      layer: asName(layer.name),
      ink: inkLine(plan, layer),
      stencil: stencilOf(plan, layer),
    });
    page.fit(left, y + 3, width, line, type.small);
    y += 5;
  }
  y += 9;
  if (y > frame.bottom - 78) {
    frame = startPage(setting, { step: 6, title: setting.say('recordPages.aboutThisPrint'), side: setting.say('packet.continued') });
    ({ page } = frame);
    y = frame.top + 3;
  }
  page.text(left, y, setting.say('recordPages.statedByArtist'), type.head);
  y += 3.5;
  const statements = [
    record.signature ? say('recordPages.signedHow', { how: asName(record.signature) }) : say('recordPages.signedByHand'),
    say(record.master ? stencilsAfter[record.master] : 'recordPages.stencilsStrikeOut'),
    record.otherEditions ? say('recordPages.otherEditions', { which: asName(record.otherEditions) }) : say('recordPages.noOtherEdition'),
    say('recordPages.proofsCounted'),
    say(record.posthumous ? 'recordPages.posthumous' : 'recordPages.inLifetime'),
  ];
  for (const statement of statements) {
    page.rect(left, y, 4.2, 4.2, { stroke: '#000000', lineMm: 0.3 });
    page.fit(left + 7, y + 3.4, width - 7, setting.tell(statement), type.body, 8);
    y += 7.6;
  }
  if (numbers && plan.edition.documentation) y = page.para(left, y, width, setting.tell(plan.edition.documentation.footing), type.small);
  y += 13;
  writingLine(page, left, y, width * 0.55, setting.say('recordPages.signature'));
  y = writingLine(page, left + width * 0.62, y, width * 0.38, setting.say('recordPages.dateAndPlace'));
  caution(page, left, Math.min(y - 2, frame.bottom - 8), width, setting.say('recordPages.lawsDiffer'));
}
