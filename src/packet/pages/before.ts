import { problem, type Problem } from '../../core/problem.ts';
import { say, type Saying } from '../../words/index.ts';
import { pointsPerMm } from '../pdf/numbers.ts';
import { capHeight, missingLetters, textWidthMm, wrap, type TextStyle } from '../pdf/type.ts';
import { startPage, type, type Frame, type Setting } from './ink/setting.ts';

/** Everything wrong or doubtful, with what to do, before the first cut. Not made when there is nothing to say. */
export function beforePages(setting: Setting): void {
  const problems = [...setting.plan.problems, ...lettersMissing(setting)];
  if (problems.length === 0) return;
  let frame: Frame | null = null;
  let y = 0;
  for (const told of problems) {
    const body = { ...type.small, leading: 1.22 };
    if (!frame || y + heightOf(setting, told, frame.width - 8) > frame.bottom) {
      frame = startPage(setting, { title: setting.say('packet.beforeYouStart'), side: frame ? setting.say('packet.continued') : '' });
      y = frame.top;
    }
    const { page, left, width } = frame;
    page.rect(left, y, 4.2, 4.2, { stroke: '#000000', lineMm: 0.3 });
    const from = y;
    const texts = [
      { text: setting.tell(told.message), style: { ...body, weight: told.severity === 'note' ? 'regular' : 'semibold' } as const },
      ...(told.advice ? [{ text: setting.tell(told.advice), style: body }] : []),
    ];
    y += 0.3;
    for (const { text, style } of texts) y = page.para(left + 8, y, width - 8, text, style);
    y = placed(setting, frame, y, texts.at(-1)!, setting.tell(whereTold(told)));
    y = Math.max(y + 2, from + 9);
  }
  if (frame) setting.under = { frame, y: y + 2 };
}

/** Says where, at the end of the last line if that leaves room, else below it. Returns where the next line begins. */
function placed(
  setting: Setting,
  { page, left, right, width }: Frame,
  y: number,
  last: { text: string; style: TextStyle },
  where: string,
): number {
  const { faces } = setting.book;
  const style = { size: 7.5 };
  const line = wrap(faces, last.text, width - 8, last.style).at(-1) ?? '';
  if (textWidthMm(faces, line, last.style) + textWidthMm(faces, where, style) + 8 > width - 8)
    return page.para(left + 8, y, width - 8, where, style);
  const sizeMm = last.style.size / pointsPerMm;
  page.text(right, y - sizeMm * ((last.style.leading ?? 1.36) - capHeight), where, { ...style, align: 'right' });
  return y;
}

/** What one problem takes on the page, so that none is cut at its foot. */
function heightOf(setting: Setting, told: Problem, widthMm: number): number {
  const { faces } = setting.book;
  const lines =
    wrap(faces, setting.tell(told.message), widthMm, { ...type.body, weight: 'semibold' }).length +
    (told.advice ? wrap(faces, setting.tell(told.advice), widthMm, type.body).length : 0);
  return lines * 4 + 6;
}

/** Names may be written in any script; the packet's fonts know Latin, Greek and Cyrillic. What they lack is told, not lost unseen. */
function lettersMissing(setting: Setting): Problem[] {
  const { job } = setting.plan;
  const named = [
    job.title,
    job.maker,
    ...[...job.layers, ...job.inks, ...job.papers, ...job.materials, ...job.cuts].map((one) => one.name),
  ];
  const missing = missingLetters(setting.book.faces, named);
  if (missing.length === 0) return [];
  return [problem('note', 'letters-missing', '', say('packet.lettersMissing'), say('packet.writeThemIn'))];
}

/** How bad it is, and where. */
function whereTold({ severity, where }: Problem): Saying {
  const kind = say(severity === 'error' ? 'packet.error' : severity === 'warning' ? 'packet.warning' : 'packet.note');
  return where ? say('packet.kindAt', { kind, place: where }) : kind;
}
