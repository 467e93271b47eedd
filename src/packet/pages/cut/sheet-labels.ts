import { labelsFor } from '../../../core/edition/index.ts';
import { finalNumbers } from '../../sheets.ts';
import { startPage, type Pages, type Setting } from '../ink/setting.ts';

/** A label for the sleeve or the back of the frame of every sheet that is signed. Never to be stuck on the sheet itself. */
export function* sheetLabelPages(setting: Setting): Pages {
  const { plan } = setting;
  const numbers = finalNumbers(plan);
  if (!numbers) return;
  const labels = labelsFor(plan.edition.facts, numbers);
  const high = 34,
    gap = 2;
  let at = 0;
  while (at < labels.length) {
    const frame = startPage(setting, { step: 5, title: setting.say('recordPages.labels'), side: setting.say('recordPages.forSleeves') });
    const { page } = frame;
    const rows = Math.max(1, Math.floor((frame.bottom - frame.top + gap) / (high + gap)));
    const wide = (frame.width - 4) / 2;
    labels.slice(at, at + 2 * rows).forEach(({ sheetId, lines }, i) => {
      const x = frame.left + (i % 2) * (wide + 4),
        y = frame.top + Math.floor(i / 2) * (high + gap);
      page.rect(x, y, wide, high, { stroke: '#000000', lineMm: 0.15, dashMm: [2, 2] });
      const [title, ...rest] = lines;
      page.fit(x + 4, y + 8, wide - 8, setting.tell(title.text), { size: 12, weight: 'bold' }, 7);
      rest.forEach((line, k) =>
        page.fit(
          x + 4,
          y + 14.5 + k * 5.4,
          wide - 8,
          setting.tell(line.text),
          { size: 10, weight: line.what === 'mark' ? 'bold' : 'regular' },
          6.5,
        ),
      );
      page.text(x + wide - 4, y + high - 3, sheetId, { size: 7, align: 'right' });
    });
    at += 2 * rows;
    yield;
  }
}
