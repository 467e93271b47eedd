import { sayFault, type MarkKind, type ProofCounts } from '../../../core/edition/index.ts';
import { list, listed, name as asName, say, type Saying } from '../../../words/index.ts';
import { finalNumbers, sheetGroups, sheetNames } from '../../sheets.ts';
import { tick } from '../parts.ts';
import { startPage, type, type Frame, type Pages, type Setting } from '../ink/setting.ts';

/** One line a sheet: its life through the runs, what was wrong, the number the pencil wrote, where it went. What was counted at the press stands there already. */
export function* recordPages(setting: Setting): Pages {
  const { plan } = setting;
  const names = sheetNames(sheetGroups(plan));
  const usualMm = 6.8,
    leastMm = 5.6;
  let at = 0;
  do {
    const frame = startPage(setting, {
      step: 5,
      title: setting.say('recordPages.editionRecord'),
      side: at === 0 ? setting.say('packet.sheets', { n: names.length }) : setting.say('packet.continued'),
    });
    const columns = columnsOf(setting, frame);
    let y = header(setting, frame, columns, at === 0 ? wishes(setting, frame) : frame.top);
    let paper = '';
    // Closer where that saves a page.
    const rows = names.length - at + new Set(names.slice(at).map((one) => one.group.paperId)).size;
    const rowMm = rows * leastMm <= frame.bottom - y - 0.5 ? Math.min(usualMm, (frame.bottom - y - 0.5) / rows) : usualMm;
    while (at < names.length) {
      const { name, group } = names[at];
      const headed = group.paperId !== paper;
      if (y + (headed ? 2 : 1) * rowMm > frame.bottom + 0.01) break;
      at++;
      if (headed) {
        paper = group.paperId;
        frame.page.fit(frame.left, y + rowMm - 1.8, frame.width, group.name, { ...type.small, weight: 'semibold' });
        y += rowMm;
      }
      row(setting, frame, columns, y, rowMm, name);
      y += rowMm;
    }
    frame.page.line(frame.left, y, frame.right, y, 0.4);
    yield;
  } while (at < names.length);
}

interface Columns {
  readonly sheet: number;
  readonly runs: number;
  readonly runMm: number;
  readonly fault: number;
  readonly number: number;
  readonly signed: number;
  readonly went: number;
  readonly end: number;
}

function columnsOf(setting: Setting, frame: Frame): Columns {
  const runs = setting.plan.layers.length;
  const runMm = Math.min(7.4, 48 / Math.max(1, runs));
  const start = frame.left + 13;
  const fault = start + runs * runMm + 2;
  const rest = frame.right - fault;
  return {
    sheet: frame.left,
    runs: start,
    runMm,
    fault,
    number: fault + rest * 0.34,
    signed: fault + rest * 0.54,
    went: fault + rest * 0.68,
    end: frame.right,
  };
}

function wishes(setting: Setting, frame: Frame): number {
  const { plan } = setting;
  const { edition } = plan.job;
  const planned = plan.edition.sheets?.papers ?? [];
  const lines = planned.map((p) =>
    setting.say('recordPages.plannedPaper', {
      paper: asName(p.name),
      edition: p.edition,
      ...proofsOf(p.proofs),
      start: p.start,
      met: Math.floor(p.certainty * 100),
    }),
  );
  const over = planned.flatMap((p) => {
    const n = Math.round(p.expectedGood - p.wanted);
    return n > 0 ? [say('recordPages.surplusOn', { n, paper: asName(p.name) })] : [];
  });
  if (over.length > 0 && edition.target > 0) lines.push(setting.say('recordPages.surplus', { where: list(over, 'comma') }));
  const intro = planned.length > 0 ? lines.join('\n') : setting.say('recordPages.wantedOnly', { n: edition.target });
  const y = frame.page.para(frame.left, frame.top - 1, frame.width, intro, type.small);
  const numbers = setting.say(edition.papersAre === 'varied' ? 'recordPages.variedEdition' : 'recordPages.subEditions');
  return frame.page.para(frame.left, y + 0.5, frame.width, numbers, type.small) + 4;
}

/** `1 B.A.T., 2 A/P`; nothing where all are of the edition. */
function proofsOf({ bat, artists, printers, horsCommerce }: ProofCounts): { readonly proofs?: ReturnType<typeof list> } {
  const counts = [
    [bat, say('edition.markBat')],
    [artists, say('edition.markArtists')],
    [printers, say('edition.markPrinters')],
    [horsCommerce, say('edition.markHorsCommerce')],
  ] as const;
  const some = counts.filter(([n]) => n > 0).map(([n, mark]) => say('recordPages.proofsOf', { n, mark }));
  return some.length > 0 ? { proofs: list(some, 'comma') } : {};
}

function header(setting: Setting, frame: Frame, c: Columns, y: number): number {
  const { page } = frame;
  page.text(c.sheet, y + 3, setting.say('recordPages.sheet'), type.smallStrong);
  setting.plan.layers.forEach((layer, i) =>
    page.text(c.runs + (i + 0.5) * c.runMm, y + 3, String(layer.run), { ...type.smallStrong, align: 'centre' }),
  );
  page.text(c.fault, y + 3, setting.say('recordPages.whatIsWrong'), type.smallStrong);
  page.text(c.number, y + 3, setting.say('recordPages.number'), type.smallStrong);
  page.text(c.signed, y + 3, setting.say('recordPages.signed'), type.smallStrong);
  page.text(c.went, y + 3, setting.say('recordPages.whereItWent'), type.smallStrong);
  page.line(frame.left, y + 5, frame.right, y + 5, 0.5);
  return y + 5;
}

function row(setting: Setting, frame: Frame, c: Columns, y: number, rowMm: number, name: string): void {
  const { page } = frame;
  page.text(c.sheet, y + rowMm - 2.2, name, type.strong);
  const box = Math.min(c.runMm - 1.4, rowMm - 2);
  const life = setting.plan.edition.counted?.sheets.find((s) => s.sheet === name);
  setting.plan.layers.forEach((layer, i) => {
    const x = c.runs + (i + 0.5) * c.runMm - box / 2,
      top = y + (rowMm - box) / 2;
    page.rect(x, top, box, box, { stroke: '#000000', lineMm: 0.2 });
    if (life?.faults.some((f) => f.run === layer.id)) tick(page, x, top, box, 'cross');
    else if (life?.runs.includes(layer.id)) tick(page, x, top, box, 'tick');
  });
  const said = [...(life?.faults ?? []), ...(life?.notes ?? [])].map(sayFault);
  if (said.length > 0) page.fit(c.fault, y + rowMm - 2, c.number - c.fault - 3, setting.tell(listed(said, 'semicolon')), { size: 8.5 }, 6);
  const one = finalNumbers(setting.plan)?.sheets.find((s) => s.sheet.id === name);
  if (one)
    page.fit(
      c.number,
      y + rowMm - 2,
      c.signed - c.number - 3,
      setting.tell(one.text ?? unsigned(one.kind)),
      { size: 9.5, weight: one.text ? 'bold' : 'regular' },
      6.5,
    );
  page.line(c.fault, y + rowMm, c.number - 2, y + rowMm, 0.12);
  page.line(c.number, y + rowMm, c.signed - 2, y + rowMm, 0.12);
  page.line(c.signed, y + rowMm, c.went - 2, y + rowMm, 0.12);
  page.line(c.went, y + rowMm, c.end, y + rowMm, 0.12);
}

/** What stands in the place of a number on a sheet that is not signed. */
function unsigned(kind: MarkKind): Saying {
  return say(kind === 'spare' ? 'recordPages.spare' : kind === 'set-up' ? 'recordPages.setUpSheet' : 'recordPages.rejected');
}
