import { startPage, type, type Frame, type Setting } from './setting.ts';

/** Everything wrong or doubtful, with what to do, before the first cut. Not made when there is nothing to say. */
export function beforePages(setting: Setting): void {
  const { problems } = setting.plan;
  if (problems.length === 0) return;
  let frame: Frame | null = null;
  let y = 0;
  for (const problem of problems) {
    const body = { ...type.body, leading: 1.3 };
    if (!frame || y > frame.bottom - 26) {
      frame = startPage(setting, { title: 'Before you start', side: frame ? 'continued' : '' });
      y = frame.top;
    }
    const { page, left, width } = frame;
    page.rect(left, y, 4.2, 4.2, { stroke: '#000000', lineMm: 0.3 });
    const from = y;
    y = page.para(left + 8, y + 0.3, width - 8, problem.message, { ...body, weight: problem.severity === 'note' ? 'regular' : 'semibold' });
    if (problem.advice) y = page.para(left + 8, y, width - 8, problem.advice, body);
    y = page.para(left + 8, y, width - 8, `${problem.severity === 'note' ? 'for your information' : problem.severity}: ${problem.place}`, { size: 8.5 });
    y = Math.max(y + 4, from + 12);
  }
}
