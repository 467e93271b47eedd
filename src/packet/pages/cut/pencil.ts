import { cancellationSteps, sayFault, type NumberedSheet } from '../../../core/edition/index.ts';
import { asWritten, listed, name as asName, say, type Saying } from '../../../words/index.ts';
import { finalNumbers } from '../../sheets.ts';
import { steps } from '../parts.ts';
import { startPage, type, type Frame, type Pages, type Setting } from '../ink/setting.ts';

const rowMm = 9;

/** Numbers for the pencil, in the order of the pile: the name on the back, what to write on the front. Only when all runs are counted. */
export function* pencilPages(setting: Setting): Pages {
  const numbers = finalNumbers(setting.plan);
  if (!numbers) return;
  const signed = numbers.sheets.filter((one) => one.text !== null);
  let at = 0;
  do {
    const frame = startPage(setting, {
      step: 5,
      title: setting.say('recordPages.forThePencil'),
      side: at === 0 ? setting.say('packet.sheets', { n: signed.length }) : setting.say('packet.continued'),
    });
    let y = frame.top;
    if (at === 0) y = frame.page.para(frame.left, y - 1, frame.width, setting.say('recordPages.softPencil'), type.small) + 4;
    const perColumn = Math.max(1, Math.floor((frame.bottom - y - 2) / rowMm));
    const shown = signed.slice(at, at + 2 * perColumn);
    const rows = Math.ceil(shown.length / 2);
    shown.forEach((one, i) => row(setting, frame, one, i < rows ? 0 : 1, y + (i < rows ? i : i - rows) * rowMm));
    at += shown.length;
    if (at >= signed.length) ending(setting, frame, y + rows * rowMm + 6, numbers.sheets);
    yield;
  } while (at < signed.length);
}

function row(setting: Setting, frame: Frame, one: NumberedSheet, columnAt: number, y: number): void {
  const { page } = frame;
  const wide = (frame.width - 8) / 2;
  const x = frame.left + columnAt * (wide + 8);
  page.line(x, y, x + wide, y, 0.2);
  page.rect(x, y + 2.2, 4.6, 4.6, { stroke: '#000000', lineMm: 0.3 });
  page.text(x + 8, y + 6.6, one.sheet.id, { size: 13 });
  page.fit(x + 26, y + 6.6, wide - 26, one.text ? setting.tell(one.text) : '', { size: 15, weight: 'bold' }, 8);
}

/** What got no number, the colophon, and how an edition is ended. What no longer fits goes on a page of its own. */
function ending(setting: Setting, first: Frame, from: number, all: readonly NumberedSheet[]): void {
  const { edition } = setting.plan;
  let frame = first,
    y = from;
  const room = (mm: number): void => {
    if (y + mm <= frame.bottom) return;
    frame = startPage(setting, { step: 5, title: setting.say('recordPages.forThePencil'), side: setting.say('packet.continued') });
    y = frame.top;
  };
  const without = (kind: NumberedSheet['kind']): Saying[] =>
    all.filter((one) => one.text === null && one.kind === kind).map((one) => withFault(setting, one));
  const groups = [
    ['recordPages.goodUnnumbered', without('spare')],
    ['recordPages.setUpWith', without('set-up')],
    ['recordPages.rejectedMark', without('rejected')],
  ] as const;
  for (const [title, names] of groups) {
    if (names.length === 0) continue;
    room(16);
    frame.page.text(frame.left, y + 3.4, setting.say(title), type.strong);
    y = frame.page.para(frame.left, y + 6, frame.width, setting.tell(listed(names, 'comma')), type.body) + 4;
  }
  room(38);
  frame.page.text(frame.left, y + 3.6, setting.say('recordPages.colophon'), type.head);
  y = frame.page.para(frame.left, y + 8, frame.width, edition.colophon ? setting.tell(edition.colophon) : '', type.body) + 5;
  if (setting.plan.job.edition.record.master === 'kept') return;
  room(44);
  frame.page.text(frame.left, y + 3.6, setting.say('recordPages.toEndEdition'), type.head);
  steps(
    frame.page,
    frame.left,
    y + 8,
    frame.width,
    cancellationSteps.map((one) => setting.tell(one)),
  );
}

/** `A3 (run 3: smeared)`: what keeps it out, and in which run. */
function withFault(setting: Setting, { sheet: { id, faults } }: NumberedSheet): Saying {
  const fault = faults.find((f) => f.rejects);
  if (!fault) return asWritten(id);
  const run = setting.plan.layers.find((l) => l.id === fault.run)?.run;
  const values = { sheet: asName(id), fault: sayFault(fault) };
  return run === undefined ? say('recordPages.faulty', values) : say('recordPages.faultIn', { ...values, run });
}
