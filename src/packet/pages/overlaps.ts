import type { PlannedOverlap } from '../../core/plan/index.ts';
import { deltaE, labColour, name as asName, say, sentences } from '../../words/index.ts';
import { bandInWords, drawProof, drawStack, drawSwatch, shareInWords } from './parts.ts';
import { startPage, type, type Frame, type Pages, type PlannedPaper, type Setting } from './setting.ts';

const perRow = 4;
/** Lower cells where that saves a page. */
const cellHigh = 45;
const leastHigh = 40;

/** Every overlap that covers area, largest first: pictures, then few numbers. */
export function* overlapPages(setting: Setting): Pages {
  for (const paper of setting.plan.papers) yield* chart(setting, paper);
}

function* chart(setting: Setting, paper: PlannedPaper): Pages {
  const { plan } = setting;
  const whole = plan.job.image.widthMm * plan.job.image.heightMm;
  const seen = paper.overlaps.filter((o) => o.areaMm2 > 0).sort((a, b) => b.areaMm2 - a.areaMm2 || a.code - b.code);
  let at = 0;
  for (let sheet = 0; sheet === 0 || at < seen.length; sheet++) {
    const frame = startPage(setting, {
      step: 7,
      title: setting.say('recordPages.overlapsOn', { paper: asName(paper.name) }),
      side: sheet === 0 ? setting.say('recordPages.coverArea', { n: seen.length }) : setting.say('packet.continued'),
    });
    let y = frame.top;
    if (sheet === 0) y = heading(setting, frame, paper);
    const room = frame.bottom - y + 4;
    const wanted = Math.ceil((seen.length - at) / perRow);
    const high = wanted * leastHigh <= room ? Math.min(cellHigh, room / Math.max(1, wanted)) : cellHigh;
    const rows = Math.max(1, Math.floor(room / high + 1e-6));
    const gap = 5;
    const width = (frame.width - gap * (perRow - 1)) / perRow;
    seen.slice(at, at + rows * perRow).forEach((overlap, i) => {
      const at = [frame.left + (i % perRow) * (width + gap), y + Math.floor(i / perRow) * high] as const;
      cell(setting, frame, paper, overlap, at, width, high - 18, whole);
    });
    at += rows * perRow;
    yield;
  }
}

function heading(setting: Setting, frame: Frame, paper: PlannedPaper): number {
  const { page, left, width, top } = frame;
  const { plan } = setting;
  const size = drawProof(setting, page, paper, plan.layers.length, left, top, 60, 56);
  const x = left + size.widthMm + 7;
  page.text(x, top + 3.4, setting.say('recordPages.howToReadIt'), type.head);
  // The key: the whole stack with names, first run at the bottom.
  const n = plan.layers.length;
  const stackHigh = Math.min(44, n * 7);
  drawStack(
    page,
    plan.layers,
    plan.layers.map((l) => l.id),
    x,
    top + 8,
    13,
    stackHigh,
  );
  const names = 40;
  plan.layers.forEach((layer, i) => {
    page.fit(
      x + 16,
      top + 8 + stackHigh - (i + 0.5) * (stackHigh / n) + 1.2,
      names,
      layer.inkId === null
        ? setting.say('recordPages.layerOpen', { run: layer.run, layer: asName(layer.name) })
        : `${layer.run}  ${layer.name}`,
      { size: Math.min(9.5, (stackHigh / n) * 2.2) },
    );
  });
  const note = { size: 8, leading: 1.3 };
  // Beside the key where there is room, else under picture and key.
  const beside = left + width - (x + 16 + names + 4) >= 38;
  const [nx, ny] = beside ? [x + 16 + names + 4, top + 8] : [left, top + Math.max(size.heightMm, stackHigh + 8) + 3];
  const w = left + width - nx;
  const y = page.para(nx, ny, w, setting.say('recordPages.readingTheChart'), note);
  const said = sentences(paper.bandNote, paper.overPicture && say('recordPages.unprintedParts'));
  const end = page.para(nx, y + 1.5, w, setting.tell(said), note);
  return Math.max(top + size.heightMm, end) + 6;
}

function cell(
  setting: Setting,
  frame: Frame,
  paper: PlannedPaper,
  overlap: PlannedOverlap,
  [x, y]: readonly [number, number],
  w: number,
  high: number,
  whole: number,
): void {
  const { page } = frame;
  const { plan } = setting;
  drawStack(page, plan.layers, overlap.layers, x, y, 7, high);
  // Below it, the colours that the overlap may come out as.
  const strip = overlap.possible.length > 1 ? Math.min(6, high / 4) : 0;
  drawSwatch(setting, page, overlap.srgb, x + 9, y, w - 9, high - strip);
  const step = (w - 9) / Math.max(1, overlap.possible.length);
  if (strip > 0) overlap.possible.forEach((srgb, i) => page.rect(x + 9 + i * step, y + high - strip, step, strip, { fill: srgb }));
  if (strip > 0) page.rect(x + 9, y + high - strip, w - 9, strip, { stroke: '#000000', lineMm: 0.15 });
  page.fit(x, y + high + 4.6, w * 0.42, setting.show(shareInWords(overlap.areaMm2, whole)), type.strong, 8);
  page.fit(x + w, y + high + 4.6, w * 0.56, setting.say('packet.lab', { lab: labColour(overlap.lab) }), { size: 8.5, align: 'right' }, 6.5);
  const names =
    overlap.layers.length === 0
      ? setting.say(paper.overPicture ? 'recordPages.sheetAsItIs' : 'recordPages.barePaper')
      : overlap.layers.map((id) => plan.layers.find((l) => l.id === id)?.name ?? id).join(' + ');
  page.fit(x, y + high + 8.8, w, names, { size: 8.5 }, 6.5);
  const band = overlap.measured
    ? say('recordPages.measured', { band: deltaE(overlap.band) })
    : say('recordPages.band', { how: bandInWords(overlap.band), band: deltaE(overlap.band, overlap.band < 10 ? 1 : 0) });
  const known = overlap.inGamut ? band : say('recordPages.richer', { band });
  page.fit(x, y + high + 12.8, w, setting.tell(known), { size: 8.5 }, 6.5);
}
