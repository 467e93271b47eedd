import type { TestSheet } from '../../../core/press/index.ts';
import { length, say } from '../../../words/index.ts';
import { testSheetFor } from '../../test-sheet.ts';
import { column, fact, steps } from '../parts.ts';
import { lengthIn, startPage, type, type Frame, type Pages, type Setting } from '../ink/setting.ts';
import { trueSizePages } from '../cut/true-size.ts';

/** A sheet that is printed twice to measure the studio's own register: a page that says how, then the drawing at true size. */
export function* testSheetPages(setting: Setting): Pages {
  const { image, register } = setting.plan.job;
  const sheet = testSheetFor(image.widthMm, image.heightMm, register.method);
  if (!sheet) return;
  const frame = startPage(setting, {
    step: 3,
    title: setting.say('setUpPages.measureRegister'),
    side: setting.say('setUpPages.onceOnAnyPaper'),
  });
  const { page, top } = frame;
  const words = column(frame, 0, 4),
    side = column(frame, 4, 2);
  let at = fact(page, side.x, top, side.width, setting.say('setUpPages.reads'), lengthIn(setting, sheet.readsMm));
  at = fact(
    page,
    side.x,
    at,
    side.width,
    setting.say('setUpPages.upTo'),
    setting.say('setUpPages.eachWay', { range: length(sheet.rangeMm) }),
    type.strong,
  );
  at = fact(page, side.x, at, side.width, setting.say('setUpPages.places'), setting.show(sheet.places.length), type.strong);
  const below = steps(page, words.x, top + 4, words.width, [
    setting.say('setUpPages.cutBoth'),
    ...sheet.howToRead.map((one) => setting.tell(one)),
    setting.say('setUpPages.typeNumbersIn'),
  ]);
  writingTable(setting, frame, sheet, Math.max(below, at + 14) + 6);
  for (const run of ['first', 'second'] as const) {
    yield;
    yield* trueSizePages(setting, {
      name: say(run === 'first' ? 'setUpPages.testFirst' : 'setUpPages.testSecond'),
      says: say('packet.facesMesh'),
      extent: { minX: 0, minY: 0, maxX: image.widthMm, maxY: image.heightMm },
      draw: (drawn, placing, to) => {
        for (const line of sheet.lines) {
          if (line.run !== run) continue;
          const [ax, ay] = to(line.x1Mm, line.y1Mm),
            [bx, by] = to(line.x2Mm, line.y2Mm);
          drawn.line(ax, ay, bx, by, line.widthMm);
        }
        for (const label of sheet.labels) {
          if (label.run !== run) continue;
          const [x, y] = to(label.xMm, label.yMm);
          drawn.text(x, y, label.text, { size: 8, align: 'centre', turned: placing.turned });
        }
      },
    });
  }
}

/** Ten sheets, and at each place the number of the lines that meet: across, down. */
function writingTable(setting: Setting, frame: Frame, sheet: TestSheet, y: number): void {
  const { page, left, right, width, bottom } = frame;
  const rows = Math.min(10, Math.floor((bottom - y - 14) / 9));
  if (rows < 3) return;
  const name = 18;
  const step = (width - name) / sheet.places.length;
  page.text(left, y + 8.6, setting.say('setUpPages.sheetNumber'), type.smallStrong);
  sheet.places.forEach((place, i) => {
    const x = left + name + i * step;
    page.fit(x + step / 2, y + 3.4, step - 2, setting.tell(place.name), { ...type.smallStrong, align: 'centre' });
    page.text(x + step / 4, y + 8.6, setting.say('setUpPages.across'), { ...type.small, align: 'centre' });
    page.text(x + (3 * step) / 4, y + 8.6, setting.say('setUpPages.down'), { ...type.small, align: 'centre' });
  });
  const from = y + 10.5;
  for (let row = 0; row <= rows; row++) page.line(left, from + row * 9, right, from + row * 9, row === 0 ? 0.5 : 0.2);
  for (let row = 0; row < rows; row++) page.text(left, from + row * 9 + 6.4, String(row + 1), type.strong);
  sheet.places.forEach((_, i) => {
    const x = left + name + i * step;
    page.line(x, y, x, from + rows * 9, 0.4);
    page.line(x + step / 2, from, x + step / 2, from + rows * 9, 0.15);
  });
}
