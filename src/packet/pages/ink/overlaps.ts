import { overlapRamp, sayParting, type ToneRamp } from '../../../core/asks/index.ts';
import type { PlannedOverlap } from '../../../core/plan/index.ts';
import { deltaE, isSaying, labColour, listed, name as asName, say, sentences, share, type Saying } from '../../../words/index.ts';
import { bandInWords, drawProof, drawStack, drawSwatch, shareInWords } from '../parts.ts';
import { startPage, type, type Frame, type Pages, type PlannedPaper, type Setting } from './setting.ts';

/** Papers side by side on one chart: more would leave no room for a colour. */
const papersAside = 3;
const leastRowMm = 9.6;
const mostRowMm = 18;
/** Overlaps that match under one lamp only: so many lines, so high each. */
const mostParting = 4;
const partingMm = 4;

/** Every overlap that covers area, largest first: a row each, with its colour on every paper side by side. */
export function* overlapPages(setting: Setting): Pages {
  const { papers } = setting.plan;
  for (let i = 0; i < papers.length; i += papersAside) yield* chart(setting, papers.slice(i, i + papersAside));
}

/** Every overlap on each colour of the sheets that are printed already. */
export function* groundPages(setting: Setting): Pages {
  for (const paper of setting.plan.papers) {
    const grounds = groundsAside(setting, paper);
    for (let i = 0; i < grounds.length; i += papersAside) yield* chart(setting, grounds.slice(i, i + papersAside), paper);
  }
}

/** What covers less of the image has no row of its own on a ground. */
const leastOnGround = 0.001;

/** The colours that a printed sheet is made of, each as if it were a paper. */
function groundsAside(setting: Setting, paper: PlannedPaper): PlannedPaper[] {
  const { widthMm, heightMm } = setting.plan.job.image;
  const whole = widthMm * heightMm;
  return (paper.grounds?.colours ?? []).map((ground, i) => ({
    ...paper,
    name: setting.say('recordPages.ground', { n: i + 1, share: share(ground.areaMm2 / whole, 0) }),
    parting: [],
    // Tones are foreseen on the bare paper alone.
    tones: null,
    overlaps: ground.overlaps
      .filter((one) => one.areaMm2 >= whole * leastOnGround)
      .map((one) => ({ ...one, layers: paper.overlaps.find((o) => o.code === one.code)?.layers ?? [], possible: [], measured: false })),
  }));
}

interface Row {
  readonly code: number;
  readonly layers: readonly string[];
  readonly areaMm2: number;
  readonly on: readonly (PlannedOverlap | undefined)[];
}

function rowsOf(papers: readonly PlannedPaper[]): Row[] {
  const codes = new Map<number, Row>();
  papers.forEach((paper, i) => {
    for (const overlap of paper.overlaps) {
      if (overlap.areaMm2 <= 0) continue;
      const known = codes.get(overlap.code);
      const on = known ? [...known.on] : papers.map(() => undefined as PlannedOverlap | undefined);
      on[i] = overlap;
      codes.set(overlap.code, { code: overlap.code, layers: overlap.layers, areaMm2: Math.max(known?.areaMm2 ?? 0, overlap.areaMm2), on });
    }
  });
  return [...codes.values()].sort((a, b) => b.areaMm2 - a.areaMm2 || a.code - b.code);
}

/** @param grounds the printed sheet whose grounds the papers are */
function* chart(setting: Setting, papers: readonly PlannedPaper[], grounds?: PlannedPaper): Pages {
  const rows = rowsOf(papers);
  let at = 0;
  for (let sheet = 0; sheet === 0 || at < rows.length; sheet++) {
    const frame = startPage(setting, {
      step: 7,
      title: grounds
        ? setting.say('recordPages.overlapsOnGrounds', { paper: asName(grounds.name) })
        : papers.length === 1
          ? setting.say('recordPages.overlapsOn', { paper: asName(papers[0].name) })
          : setting.say('recordPages.overlaps'),
      side: sheet === 0 ? setting.say('recordPages.coverArea', { n: rows.length }) : setting.say('packet.continued'),
    });
    let y = sheet === 0 ? heading(setting, frame, papers) : frame.top;
    y = columnHeads(frame, papers, y);
    const left = rows.length - at;
    // Overlaps that part under a lamp are told at the foot of the last page, where they add none.
    const parting = papers
      .flatMap((paper) => paper.parting.map((pair) => sayParting(setting.plan, paper.overlaps, pair)))
      .slice(0, mostParting);
    const foot = parting.length === 0 ? 0 : 6 + parting.length * partingMm;
    const told = foot > 0 && left <= Math.floor((frame.bottom - y - foot) / leastRowMm);
    const room = frame.bottom - y - (told ? foot : 0);
    const fits = Math.max(1, Math.floor(room / leastRowMm));
    const high = Math.min(mostRowMm, room / Math.min(fits, Math.max(1, left)));
    for (const one of rows.slice(at, at + fits)) {
      row(setting, frame, papers, one, y, high);
      y += high;
    }
    at += fits;
    if (told) {
      frame.page.fit(frame.left, y + 4, frame.width, setting.say('recordPages.partingHead'), type.strong, 8);
      parting.forEach((one, i) =>
        frame.page.fit(frame.left, y + 4 + (i + 1) * partingMm, frame.width, setting.tell(one), { size: 8 }, 5.5),
      );
    }
    yield;
  }
}

/** The proof small, the stack with its names, and how to read the chart. */
function heading(setting: Setting, frame: Frame, papers: readonly PlannedPaper[]): number {
  const { page, left, width, top } = frame;
  const { plan } = setting;
  const n = Math.max(1, plan.layers.length);
  const size = drawProof(setting, page, papers[0], plan.layers.length, left, top, 34, 38);
  const x = left + size.widthMm + 6;
  const stackHigh = Math.min(38, n * 6);
  drawStack(
    page,
    plan.layers,
    plan.layers.map((l) => l.id),
    x,
    top,
    11,
    stackHigh,
  );
  plan.layers.forEach((layer, i) => {
    page.fit(
      x + 14,
      top + stackHigh - (i + 0.5) * (stackHigh / n) + 1.2,
      38,
      layer.inkId === null
        ? setting.say('recordPages.layerOpen', { run: layer.run, layer: asName(layer.name) })
        : `${layer.run}  ${layer.name}`,
      { size: Math.min(9.5, (stackHigh / n) * 2.2) },
    );
  });
  const note = { size: 8, leading: 1.28 };
  const beside = left + width - (x + 54) >= 45;
  const [nx, ny] = beside ? [x + 54, top] : [left, top + Math.max(size.heightMm, stackHigh) + 3];
  const texts = [
    setting.say('recordPages.readingTheChart'),
    ...(papers.some((p) => p.tones) ? [setting.say('recordPages.rampsOfTone')] : []),
    ...notesOf(papers).map((one) => setting.tell(one)),
  ];
  let y = ny;
  for (const text of texts) y = page.para(nx, y, left + width - nx, text, note) + 1;
  return Math.max(top + Math.max(size.heightMm, stackHigh), y) + 3;
}

/** Where the bands come from: what holds for every paper once, then what each has of its own, under its name. */
function notesOf(papers: readonly PlannedPaper[]): Saying[] {
  const notes = papers.map((paper) => sentencesIn(sentences(paper.bandNote)));
  const has = (note: readonly Saying[], one: Saying): boolean => note.some((other) => JSON.stringify(other) === JSON.stringify(one));
  const shared = notes[0].filter((one) => notes.every((note) => has(note, one)));
  const own = papers.flatMap((paper, i) => {
    const rest = notes[i].filter((one) => !has(shared, one));
    return rest.length > 0 ? [say('recordPages.notedOf', { paper: asName(paper.name), note: sentences(...rest) })] : [];
  });
  return shared.length > 0 ? [sentences(...shared), ...own] : own;
}

/** A text of sentences taken apart again. */
function sentencesIn(said: Saying): Saying[] {
  const all = said.key === 'common.listed' ? said.values?.all : undefined;
  if (all === undefined || typeof all !== 'object' || !('kind' in all) || all.kind !== 'list' || all.by !== 'sentences') return [said];
  return all.items.flatMap((item) => (isSaying(item) ? sentencesIn(item) : [listed([item])]));
}

const namesShare = 0.3;

/** Where the colours of each paper stand. */
function columnsOf(frame: Frame, papers: readonly PlannedPaper[]): { x: number; width: number }[] {
  const from = frame.left + frame.width * (papers.length === 1 ? 0.45 : namesShare);
  const each = (frame.right - from) / papers.length;
  return papers.map((_, i) => ({ x: from + i * each, width: each - 3 }));
}

function columnHeads(frame: Frame, papers: readonly PlannedPaper[], y: number): number {
  if (papers.length > 1)
    columnsOf(frame, papers).forEach(({ x, width }, i) => frame.page.fit(x, y + 3, width, papers[i].name, type.smallStrong, 6.5));
  return y + (papers.length > 1 ? 5 : 0);
}

function row(setting: Setting, frame: Frame, papers: readonly PlannedPaper[], one: Row, y: number, highMm: number): void {
  const { page, left } = frame;
  const { plan } = setting;
  const whole = plan.job.image.widthMm * plan.job.image.heightMm;
  const high = highMm - 1.6;
  page.line(left, y - 0.6, frame.right, y - 0.6, 0.12);
  drawStack(page, plan.layers, one.layers, left, y, 7, high);
  const columns = columnsOf(frame, papers);
  const words = columns[0].x - left - 12;
  const names =
    one.layers.length === 0
      ? setting.say(papers.every((paper) => paper.overPicture) ? 'recordPages.sheetAsItIs' : 'recordPages.barePaper')
      : one.layers.map((id) => plan.layers.find((l) => l.id === id)?.name ?? id).join(' + ');
  page.fit(left + 9.5, y + 3.8, words, setting.show(shareInWords(one.areaMm2, whole)), type.strong, 8);
  const floor = page.floorMm;
  page.floorMm = Math.min(floor, y + high + 0.5);
  page.para(left + 9.5, y + 5.4, words, names, { size: 8, leading: 1.2 });
  page.floorMm = floor;
  columns.forEach(({ x, width }, i) => {
    const overlap = one.on[i];
    if (!overlap) return;
    const swatch = Math.min(22, width * 0.42);
    // Below it, the colours that the overlap may come out as.
    const strip = overlap.possible.length > 1 ? Math.min(4, high / 3) : 0;
    drawSwatch(setting, page, overlap.srgb, x, y, swatch, high - strip);
    drawRamp(page, overlapRamp(papers[i], overlap), x, y, swatch, high - strip);
    const step = swatch / Math.max(1, overlap.possible.length);
    if (strip > 0) {
      overlap.possible.forEach((srgb, k) => page.rect(x + k * step, y + high - strip, step, strip, { fill: srgb }));
      page.rect(x, y + high - strip, swatch, strip, { stroke: '#000000', lineMm: 0.15 });
    }
    const tx = x + swatch + 1.8,
      tw = width - swatch - 1.8;
    page.fit(tx, y + 3.4, tw, setting.say('packet.lab', { lab: labColour(overlap.lab) }), { size: 8 }, 5.5);
    const band = overlap.measured
      ? say('recordPages.measured', { band: deltaE(overlap.band) })
      : say('recordPages.band', { how: bandInWords(overlap.band), band: deltaE(overlap.band, overlap.band < 10 ? 1 : 0) });
    page.fit(tx, y + 7.2, tw, setting.tell(overlap.inGamut ? band : say('recordPages.richer', { band })), { size: 8 }, 5.5);
  });
}

/** Each step reaches to the right end, below those that follow: no seams between them. */
function drawRamp(page: Frame['page'], ramp: ToneRamp | null, x: number, y: number, widthMm: number, heightMm: number): void {
  if (!ramp) return;
  const each = widthMm / ramp.steps.length;
  ramp.steps.forEach((fill, i) => page.rect(x + i * each, y, widthMm - i * each, heightMm, { fill }));
  page.rect(x, y, widthMm, heightMm, { stroke: '#000000', lineMm: 0.15 });
}
