import type { PlannedStock } from '../../../core/plan/index.ts';
import { asWritten, list, name as asName, say, share } from '../../../words/index.ts';
import { lengthIn, sizeIn, startPage, type, type Frame, type Pages, type Setting } from '../ink/setting.ts';

const leastHighMm = 74;

/** How the stencils lie on the stock they are cut from, as it lies on the table; as many sheets a page as can still be read. */
export function* stockPages(setting: Setting): Pages {
  const { stock, layers } = setting.plan;
  let at = 0;
  while (at < stock.length) {
    const left = stock.length - at;
    const first = stock.slice(at, at + 3);
    const runs = layers.filter((l) => first.some((sheet) => sheet.placed.some((p) => p.layers.includes(l.id)))).map((l) => l.run);
    const frame = startPage(setting, {
      step: 2,
      title: setting.say('cutPages.stockSheets'),
      side: at === 0 ? setting.say('packet.sheets', { n: stock.length }) : setting.say('packet.continued'),
      runs,
    });
    frame.page.para(frame.left, frame.top - 2, frame.width, setting.say('cutPages.thickBar'), { ...type.small, weight: 'semibold' });
    const top = frame.top + 8;
    const room = frame.bottom - top;
    const fits = Math.max(1, Math.min(3, left, Math.floor(room / leastHighMm)));
    for (let i = 0; i < fits; i++) oneSheet(setting, frame, stock[at + i], top + (i * room) / fits, room / fits - 5);
    at += fits;
    yield;
  }
}

function oneSheet(setting: Setting, frame: Frame, sheet: PlannedStock, top: number, heightMm: number): void {
  const { plan } = setting;
  const { page, left, right, width } = frame;
  page.line(left, top - 2.5, right, top - 2.5, 0.25);
  const scale = Math.min((width * 0.56) / sheet.widthMm, heightMm / sheet.heightMm);
  page.rect(left, top, sheet.widthMm * scale, sheet.heightMm * scale, { fill: '#e9e9e9', stroke: '#000000', lineMm: 0.5 });
  for (const placed of sheet.placed) {
    const layer = plan.layers.find((l) => l.id === placed.layerId);
    if (!layer) continue;
    const x = left + placed.xMm * scale,
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
    const r = Math.min(4, w / 4, h / 4);
    const [cx, cy] = [x + r + 1.4, y + r + 2.6];
    page.circle(cx, cy, r, { fill: '#ffffff', stroke: '#000000', lineMm: 0.4 });
    page.text(cx, cy + r * 0.5, String(placed.number), { size: r * 3.8, weight: 'bold', align: 'centre' });
  }
  const x = left + sheet.widthMm * scale + 6;
  const wide = right - x;
  const floor = Math.min(page.floorMm, top + heightMm);
  page.fit(
    x,
    top + 4,
    wide,
    setting.say('packet.sheetOfStock', { material: asWritten(sheet.materialName), number: sheet.number }),
    type.head,
    8,
  );
  const grain = say(sheet.grainMatters ? 'cutPages.allOneWay' : 'cutPages.anyWay');
  const facts = [
    sizeIn(setting, sheet.widthMm, sheet.heightMm),
    setting.say('cutPages.labelled', { label: say('cutPages.cutLikeThis'), value: say('packet.times', { n: sheet.times }) }),
    setting.say('cutPages.leftOverIs', { share: share(1 - sheet.usedShare, 0) }),
    setting.say('cutPages.labelled', { label: say('cutPages.grain'), value: grain }),
    ...(sheet.kerfMm > 0 ? [`${setting.say('cutPages.machineTakes')}: ${lengthIn(setting, sheet.kerfMm, 2)}`] : []),
  ];
  let y = top + 7;
  for (const one of facts) {
    page.fit(x, y + 3, wide, one, type.small, 7);
    y += 4.4;
  }
  y += 2;
  for (const placed of sheet.placed) {
    if (y + 9 > floor) {
      page.fit(x, y + 3, wide, setting.say('cutPages.moreAsDrawn', { n: sheet.placed.length - placed.number + 1 }), type.small, 6.5);
      break;
    }
    const layer = plan.layers.find((l) => l.id === placed.layerId);
    const served = plan.layers.filter((l) => placed.layers.includes(l.id));
    const called = asName(layer?.name ?? '');
    const what =
      served.length > 1
        ? say('cutPages.placedRuns', { layer: called, runs: list(served.map((l) => l.run)) })
        : say('cutPages.placedRun', { layer: called, run: layer?.run ?? 0 });
    const way = say(placed.turned ? 'cutPages.turned' : 'cutPages.upright');
    const lies = served.length > 1 ? say('cutPages.keepPieces', { way, n: served.length - 1 }) : way;
    page.text(x, y + 5.4, String(placed.number), { size: 14, weight: 'bold' });
    page.fit(x + 8, y + 3.2, wide - 8, setting.tell(what), { ...type.strong, size: 10 }, 7);
    page.fit(x + 8, y + 6.8, wide - 8, setting.tell(lies), { size: 8.5 }, 6.5);
    y += 9;
  }
}
