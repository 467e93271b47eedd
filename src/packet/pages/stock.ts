import type { PlannedStock } from '../../core/plan/index.ts';
import { asWritten, list, name as asName, say, share } from '../../words/index.ts';
import { column, fact } from './parts.ts';
import { lengthIn, sizeIn, startPage, type, type Pages, type Setting } from './setting.ts';

/** How the stencils lie on the stock they are cut from: one page a sheet, as it lies on the table. */
export function* stockPages(setting: Setting): Pages {
  for (const sheet of setting.plan.stock) {
    stockPage(setting, sheet);
    yield;
  }
}

function stockPage(setting: Setting, sheet: PlannedStock): void {
  const { plan } = setting;
  const runs = plan.layers.filter((l) => sheet.placed.some((p) => p.layers.includes(l.id))).map((l) => l.run);
  const frame = startPage(setting, {
    step: 2,
    title: setting.say('cutPages.stock', { material: asWritten(sheet.materialName) }),
    side: setting.say('cutPages.oneSheet', { n: sheet.number }),
    runs,
  });
  const { page, top, bottom, left } = frame;
  const picture = column(frame, 0, 4),
    words = column(frame, 4, 2);
  const listHigh = Math.min(90, 10 + sheet.placed.length * 11);
  const scale = Math.min(picture.width / sheet.widthMm, (bottom - top - listHigh - 6) / sheet.heightMm);
  page.rect(picture.x, top, sheet.widthMm * scale, sheet.heightMm * scale, { fill: '#e9e9e9', stroke: '#000000', lineMm: 0.5 });
  for (const placed of sheet.placed) {
    const layer = plan.layers.find((l) => l.id === placed.layerId);
    if (!layer) continue;
    const x = picture.x + placed.xMm * scale,
      y = top + placed.yMm * scale,
      w = placed.widthMm * scale,
      h = placed.heightMm * scale;
    const { sheet: box, prints } = layer.stencil;
    page.rect(x, y, w, h, { fill: '#ffffff', stroke: '#000000', lineMm: 0.35 });
    const at = placed.turned
      ? { xMm: x + box.maxY * scale, yMm: y - box.minX * scale, scale, turned: true }
      : { xMm: x - box.minX * scale, yMm: y - box.minY * scale, scale };
    page.region(prints, at, { fill: '#cfcfcf', stroke: '#000000', lineMm: 0.12 }, 0.05);
    // The top edge is the one that is written on: seen at a glance, turned or not.
    if (placed.turned) page.line(x + w - 1.2, y, x + w - 1.2, y + h, 1.2);
    else page.line(x, y + 1.2, x + w, y + 1.2, 1.2);
    // In the corner, where the stencil's border is: the shape stays to be seen.
    const r = Math.min(5, w / 4, h / 4);
    const [cx, cy] = [x + r + 1.6, y + r + 3];
    page.circle(cx, cy, r, { fill: '#ffffff', stroke: '#000000', lineMm: 0.4 });
    page.text(cx, cy + r * 0.5, String(placed.number), { size: r * 3.8, weight: 'bold', align: 'centre' });
  }
  let y = top;
  y = fact(page, words.x, y, words.width, setting.say('cutPages.sheet'), sizeIn(setting, sheet.widthMm, sheet.heightMm));
  const strong = (label: string, value: string): void => {
    y = fact(page, words.x, y, words.width, label, value, type.strong);
  };
  strong(setting.say('cutPages.cutLikeThis'), setting.say('packet.times', { n: sheet.times }));
  strong(setting.say('cutPages.leftOver'), setting.show(share(1 - sheet.usedShare, 0)));
  strong(setting.say('cutPages.grain'), setting.say(sheet.grainMatters ? 'cutPages.allOneWay' : 'cutPages.anyWay'));
  if (sheet.kerfMm > 0) strong(setting.say('cutPages.machineTakes'), lengthIn(setting, sheet.kerfMm, 2));
  page.para(words.x, y, words.width, setting.say('cutPages.thickBar'), {
    ...type.small,
    weight: 'semibold',
  });

  y = top + sheet.heightMm * scale + 6;
  for (const placed of sheet.placed) {
    if (y + 9 > bottom) {
      page.para(left, y, frame.width, setting.say('cutPages.moreAsDrawn', { n: sheet.placed.length - placed.number + 1 }), type.small);
      break;
    }
    const layer = plan.layers.find((l) => l.id === placed.layerId);
    const served = plan.layers.filter((l) => placed.layers.includes(l.id));
    page.line(left, y, frame.right, y, 0.2);
    page.text(left, y + 7, String(placed.number), { size: 16, weight: 'bold' });
    const called = asName(layer?.name ?? '');
    const what =
      served.length > 1
        ? say('cutPages.placedRuns', { layer: called, runs: list(served.map((l) => l.run)) })
        : say('cutPages.placedRun', { layer: called, run: layer?.run ?? 0 });
    page.fit(left + 12, y + 6.6, frame.width * 0.55, setting.tell(what), type.strong, 8);
    const way = say(placed.turned ? 'cutPages.turned' : 'cutPages.upright');
    const lies = served.length > 1 ? say('cutPages.keepPieces', { way, n: served.length - 1 }) : way;
    page.fit(frame.right, y + 6.6, frame.width * 0.36, setting.tell(lies), { ...type.body, align: 'right' }, 7.5);
    y += 10;
  }
}
