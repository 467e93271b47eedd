import { length, lengths, say } from '../../words/index.ts';
import { column, fact, steps } from './parts.ts';
import { sizeIn, startPage, type, type Pages, type Setting } from './setting.ts';
import { trueSizePages } from './true-size.ts';

/** The three stops for each size of sheet: a page of steps, then the drawing at true size. */
export function* stopsPages(setting: Setting): Pages {
  for (const { template, names } of groups(setting)) {
    const frame = startPage(setting, { step: 3, title: setting.say('setUpPages.stops'), side: names.join(', ') });
    const { page, top } = frame;
    const picture = column(frame, 0, 4),
      words = column(frame, 4, 2);
    const { drawing, sheet, image } = template;
    const scale = Math.min(picture.width / drawing.widthMm, 150 / drawing.heightMm);
    const x = (mm: number): number => picture.x + (mm - drawing.xMm) * scale,
      y = (mm: number): number => top + (mm - drawing.yMm) * scale;
    page.rect(x(sheet.xMm), y(sheet.yMm), sheet.widthMm * scale, sheet.heightMm * scale, { stroke: '#000000', lineMm: 0.4 });
    page.rect(x(image.xMm), y(image.yMm), image.widthMm * scale, image.heightMm * scale, { fill: '#e9e9e9' });
    page.text(x(image.xMm + image.widthMm / 2), y(image.yMm + image.heightMm / 2), setting.say('setUpPages.image'), {
      ...type.body,
      align: 'centre',
    });
    page.text(x(sheet.xMm + 6), y(sheet.yMm + 12), setting.say('setUpPages.sheet'), type.body);
    for (const stop of template.stops) {
      page.rect(x(stop.xMm), y(stop.yMm), stop.widthMm * scale, stop.heightMm * scale, { fill: '#000000' });
      page.text(x(stop.xMm + stop.widthMm / 2), y(stop.yMm + stop.heightMm / 2) + 1.4, String(stop.number), {
        size: 9,
        weight: 'bold',
        align: 'centre',
        colour: '#ffffff',
      });
    }
    let at = fact(page, words.x, top, words.width, setting.say('setUpPages.sheetSize'), sizeIn(setting, sheet.widthMm, sheet.heightMm));
    at = fact(
      page,
      words.x,
      at,
      words.width,
      setting.say('setUpPages.stopsThick'),
      setting.show(lengths(template.thicknessMm, 'to')),
      type.strong,
    );
    fact(
      page,
      words.x,
      at,
      words.width,
      setting.say('setUpPages.imageFromCorner'),
      setting.say('setUpPages.acrossUp', {
        across: length(Math.abs(template.cornerMm[0] - image.xMm)),
        up: length(Math.abs(template.cornerMm[1] - image.yMm - image.heightMm)),
      }),
      type.strong,
    );
    steps(
      page,
      picture.x,
      top + drawing.heightMm * scale + 8,
      picture.width,
      template.steps.map((one) => setting.tell(one)),
    );
    yield;
    yield* trueSizePages(setting, {
      name: say('setUpPages.stopsFor', { sheet: lengths([sheet.widthMm, sheet.heightMm]) }),
      says: say('setUpPages.onTheBoard'),
      extent: {
        minX: drawing.xMm - 1,
        minY: drawing.yMm - 1,
        maxX: drawing.xMm + drawing.widthMm + 1,
        maxY: drawing.yMm + drawing.heightMm + 1,
      },
      draw: (drawn, placing, to) => {
        const box = (r: typeof sheet, paint: Parameters<typeof drawn.rect>[4]): void => {
          const [ax, ay] = to(r.xMm, r.yMm),
            [bx, by] = to(r.xMm + r.widthMm, r.yMm + r.heightMm);
          drawn.rect(Math.min(ax, bx), Math.min(ay, by), Math.abs(bx - ax), Math.abs(by - ay), paint);
        };
        box(sheet, { stroke: '#000000', lineMm: 0.25 });
        box(image, { stroke: '#000000', lineMm: 0.2, dashMm: [1.5, 1.5] });
        for (const stop of template.stops) {
          box(stop, { fill: '#d4d4d4', stroke: '#000000', lineMm: 0.25 });
          const [tx, ty] = to(stop.xMm + stop.widthMm / 2, stop.yMm + stop.heightMm / 2);
          drawn.text(tx, ty + 2, String(stop.number), { size: 14, weight: 'bold', align: 'centre', turned: placing.turned });
        }
        for (const [mx, my] of template.marks) {
          const [cx, cy] = to(mx, my);
          drawn.line(cx - 4, cy, cx + 4, cy, 0.2);
          drawn.line(cx, cy - 4, cx, cy + 4, 0.2);
        }
      },
    });
  }
}

type Template = Setting['plan']['register']['stops'][number]['template'];

/** Papers of one size with the image in one place share a drawing. */
function groups(setting: Setting): { readonly template: Template; readonly names: string[] }[] {
  const found = new Map<string, { template: Template; names: string[] }>();
  for (const { paperId, template } of setting.plan.register.stops) {
    const { sheet, image } = template;
    const key = [sheet.widthMm, sheet.heightMm, image.xMm, image.yMm].join(' ');
    const name = setting.plan.job.papers.find((p) => p.id === paperId)?.name ?? paperId;
    const known = found.get(key);
    if (!known) found.set(key, { template, names: [name] });
    else {
      known.names.push(name);
      // The thickest sheet decides how thick the stops must be.
      if (template.thicknessMm[0] > known.template.thicknessMm[0]) known.template = template;
    }
  }
  return [...found.values()];
}
