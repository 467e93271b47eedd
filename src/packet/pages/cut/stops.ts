import type { Box } from '../../../core/form/index.ts';
import { length, lengths, list, name as asName, say } from '../../../words/index.ts';
import { column, fact, steps } from '../parts.ts';
import { sizeIn, startPage, type, type Pages, type Setting } from '../ink/setting.ts';
import { trueSizePages } from './true-size.ts';

/** The three stops as they stand for all papers of a setting: a page of steps, then the drawing at true size. */
export function* stopsPages(setting: Setting): Pages {
  const { stopSettings } = setting.plan.register;
  for (const one of stopSettings) {
    const sheets = sheetsOf(setting, one);
    const [largest] = sheets;
    if (!largest) continue;
    const { template } = largest;
    const names = sheets.flatMap((s) => s.names);
    const title =
      stopSettings.length > 1
        ? setting.say('setUpPages.stopsSetting', { n: one.number, of: stopSettings.length })
        : setting.say('setUpPages.stops');
    const frame = startPage(setting, { step: 3, title, side: names.join(', ') });
    const { page, top } = frame;
    const picture = column(frame, 0, 4),
      words = column(frame, 4, 2);
    const { drawing, sheet, image } = template;
    const scale = Math.min(picture.width / drawing.widthMm, 150 / drawing.heightMm);
    const x = (mm: number): number => picture.x + (mm - drawing.xMm) * scale,
      y = (mm: number): number => top + (mm - drawing.yMm) * scale;
    for (const { box } of sheets)
      page.rect(x(box.xMm), y(box.yMm), box.widthMm * scale, box.heightMm * scale, { stroke: '#000000', lineMm: 0.4 });
    page.rect(x(image.xMm), y(image.yMm), image.widthMm * scale, image.heightMm * scale, { fill: '#e9e9e9' });
    page.text(x(image.xMm + image.widthMm / 2), y(image.yMm + image.heightMm / 2), setting.say('setUpPages.image'), {
      ...type.body,
      align: 'centre',
    });
    // Within the border where it has the room.
    const border = (image.yMm - sheet.yMm) * scale;
    if (border > 4)
      page.text(x(sheet.xMm) + 2, y(sheet.yMm) + Math.min(6, border / 2 + 1.2), setting.say('setUpPages.sheet'), {
        size: Math.min(11, border * 1.6),
      });
    for (const stop of template.stops) {
      page.rect(x(stop.xMm), y(stop.yMm), stop.widthMm * scale, stop.heightMm * scale, { fill: '#000000' });
      page.text(x(stop.xMm + stop.widthMm / 2), y(stop.yMm + stop.heightMm / 2) + 1.4, String(stop.number), {
        size: 9,
        weight: 'bold',
        align: 'centre',
        colour: '#ffffff',
      });
    }
    let at = top;
    for (const { box, names: on } of sheets)
      at = fact(page, words.x, at, words.width, on.join(', '), sizeIn(setting, box.widthMm, box.heightMm), type.strong);
    at = fact(
      page,
      words.x,
      at,
      words.width,
      setting.say('setUpPages.stopsThick'),
      setting.show(lengths(one.thicknessMm, 'to')),
      type.strong,
    );
    fact(
      page,
      words.x,
      at,
      words.width,
      setting.say('setUpPages.imageFromCorner'),
      setting.say('setUpPages.acrossUp', {
        across: length(one.imageFromCornerMm[0]),
        up: length(one.imageFromCornerMm[1]),
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
      name: say('setUpPages.stopsForPapers', { papers: list(names.map((n) => asName(n))) }),
      says: say('setUpPages.onTheBoard'),
      extent: {
        minX: drawing.xMm - 1,
        minY: drawing.yMm - 1,
        maxX: drawing.xMm + drawing.widthMm + 1,
        maxY: drawing.yMm + drawing.heightMm + 1,
      },
      // The far stop stands anywhere on its edge: what counts is the corner, and a line to go on along.
      least: around(template.stops.filter((stop) => stop.number !== 2)),
      drawnIn: (part) => template.stops.some((stop) => meets(stop, part)),
      draw: (drawn, placing, to) => {
        const box = (r: typeof sheet, paint: Parameters<typeof drawn.rect>[4]): void => {
          const [ax, ay] = to(r.xMm, r.yMm),
            [bx, by] = to(r.xMm + r.widthMm, r.yMm + r.heightMm);
          drawn.rect(Math.min(ax, bx), Math.min(ay, by), Math.abs(bx - ax), Math.abs(by - ay), paint);
        };
        for (const outline of sheets) box(outline.box, { stroke: '#000000', lineMm: 0.25 });
        box(image, { stroke: '#000000', lineMm: 0.2, dashMm: [1.5, 1.5] });
        for (const stop of template.stops) {
          box(stop, { fill: '#d4d4d4', stroke: '#000000', lineMm: 0.25 });
          const [tx, ty] = to(stop.xMm + stop.widthMm / 2, stop.yMm + stop.heightMm / 2);
          drawn.text(tx, ty + 2, String(stop.number), { size: 14, weight: 'bold', align: 'centre', turned: placing.turned });
        }
        const far = template.stops.find((stop) => stop.number === 2);
        if (far) {
          const [tx, ty] = to(sheet.xMm + 8, template.cornerMm[1] - 8);
          const middle = [far.xMm + far.widthMm / 2 - template.cornerMm[0], far.yMm + far.heightMm / 2 - template.cornerMm[1]];
          const along = Math.max(Math.abs(middle[0]), Math.abs(middle[1]));
          drawn.text(tx, ty, setting.say('setUpPages.farStop', { number: 2, along: length(along) }), {
            size: 9,
            weight: 'semibold',
            turned: placing.turned,
          });
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

/** The box that holds all stops, and a little of the edges that they touch. */
function around(stops: Template['stops']): Box {
  return {
    minX: Math.min(...stops.map((s) => s.xMm)) - 1,
    minY: Math.min(...stops.map((s) => s.yMm)) - 1,
    maxX: Math.max(...stops.map((s) => s.xMm + s.widthMm)) + 6,
    maxY: Math.max(...stops.map((s) => s.yMm + s.heightMm)) + 1,
  };
}

const meets = (stop: Template['stops'][number], box: Box): boolean =>
  stop.xMm <= box.maxX && stop.xMm + stop.widthMm >= box.minX && stop.yMm <= box.maxY && stop.yMm + stop.heightMm >= box.minY;

type Template = Setting['plan']['register']['stops'][number]['template'];

interface SheetOnStops {
  readonly template: Template;
  readonly names: string[];
  /** Where it lies in the drawing of the largest sheet: all share the stops' corner. */
  readonly box: Template['sheet'];
}

/** Sizes of sheet that lie against these stops, the largest first; papers of one size are one outline. */
function sheetsOf({ plan }: Setting, { number }: { readonly number: number }): SheetOnStops[] {
  const here = plan.register.stops.filter((s) => s.setting === number);
  const area = ({ template: { sheet } }: (typeof here)[number]): number => sheet.widthMm * sheet.heightMm;
  const found: SheetOnStops[] = [];
  for (const { paperId, template } of [...here].sort((p, q) => area(q) - area(p))) {
    const name = plan.job.papers.find((p) => p.id === paperId)?.name ?? paperId;
    const { sheet, cornerMm } = template;
    const known = found.find((f) => f.box.widthMm === sheet.widthMm && f.box.heightMm === sheet.heightMm);
    const of = found[0]?.template.cornerMm ?? cornerMm;
    if (known) known.names.push(name);
    else found.push({ template, names: [name], box: { ...sheet, xMm: of[0] - cornerMm[0], yMm: of[1] - cornerMm[1] } });
  }
  return found;
}
