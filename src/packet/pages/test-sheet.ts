import { registerTestSheet, type TestSheet } from '../../core/press/index.ts';
import { ProblemError } from '../../core/problem.ts';
import { column, fact, steps } from './parts.ts';
import { lengthIn, startPage, type, type Pages, type Setting } from './setting.ts';
import { trueSizePages } from './true-size.ts';

/** A sheet that is printed twice to measure the studio's own register: a page that says how, then the drawing at true size. */
export function* testSheetPages(setting: Setting): Pages {
  const { image } = setting.plan.job;
  const sheet = sheetFor(image.widthMm, image.heightMm);
  if (!sheet) return;
  const frame = startPage(setting, { step: 3, title: 'Measure your register', side: 'once, on any paper' });
  const { page, top } = frame;
  const words = column(frame, 0, 4), side = column(frame, 4, 2);
  let at = fact(page, side.x, top, side.width, 'Reads', lengthIn(setting, sheet.readsMm));
  at = fact(page, side.x, at, side.width, 'Up to', `${lengthIn(setting, sheet.rangeMm)} each way`, type.strong);
  fact(page, side.x, at, side.width, 'Places', String(sheet.places.length), type.strong);
  steps(page, words.x, top + 4, words.width, ['Cut both drawings as stencils, or print the first and cut the second.', ...sheet.howToRead, 'Ten sheets tell enough. Enter the spread at the press station: it replaces the usual figures.']);
  for (const run of ['first', 'second'] as const) {
    yield;
    yield* trueSizePages(setting, {
      name: `register test, ${run} run`, say: 'The side you see faces the mesh.',
      extent: { minX: 0, minY: 0, maxX: image.widthMm, maxY: image.heightMm },
      draw: (drawn, placing, to) => {
        for (const line of sheet.lines) {
          if (line.run !== run) continue;
          const [ax, ay] = to(line.x1Mm, line.y1Mm), [bx, by] = to(line.x2Mm, line.y2Mm);
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

/** null: the image is too small to hold crosses and scales. */
function sheetFor(widthMm: number, heightMm: number): TestSheet | null {
  try {
    return registerTestSheet([widthMm, heightMm]);
  } catch (error) {
    if (error instanceof ProblemError) return null;
    throw error;
  }
}
