import { name as asName, say, sentences } from '../../../words/index.ts';
import { pointsPerMm } from '../../pdf/numbers.ts';
import { wrap } from '../../pdf/type.ts';
import { caution, column, drawProof, drawStencil } from '../parts.ts';
import { roughly, startPage, type, type Frame, type PlannedLayer, type Setting } from '../ink/setting.ts';
import { inkLine, materialOf } from '../words.ts';

/** For a class: this job's own steps and pictures; then the same page blank. */
export function handoutPages(setting: Setting): void {
  materialsPage(setting);
  stepsPage(setting);
  runsPages(setting);
  blankPage(setting);
}

function materialsPage(setting: Setting): void {
  const { plan } = setting;
  const frame = startPage(setting, { step: 8, title: setting.say('handoutPages.handOut'), side: plan.job.title });
  const { page, top } = frame;
  const picture = column(frame, 0, 3),
    words = column(frame, 3, 3);
  const paper = plan.papers[0];
  const size = paper ? drawProof(setting, page, paper, plan.layers.length, picture.x, top, picture.width, 104) : { heightMm: 0 };
  page.text(words.x, top + 3.6, setting.say('handoutPages.onePrint'), type.head);
  const seen = paper?.overlaps.filter((o) => o.areaMm2 > 0).length ?? 0;
  let y =
    page.para(
      words.x,
      top + 9,
      words.width,
      setting.say('handoutPages.filmsMake', { films: plan.layers.filter((l) => l.inkId !== null).length, colours: seen }),
      type.body,
    ) + 5;
  page.text(words.x, y + 3, setting.say('handoutPages.bring'), type.head);
  y += 8;
  const listed = { ...type.body, size: 10, leading: 1.25 };
  for (const line of plan.edition.handout?.bring ?? []) {
    if (y > frame.bottom - 8) break;
    page.rect(words.x, y + 0.1, 2.8, 2.8, { stroke: '#000000', lineMm: 0.25 });
    y = page.para(words.x + 5.5, y, words.width - 5.5, setting.say('handoutPages.bringThis', { thing: line }), listed) + 1;
  }
  y = top + size.heightMm + 6;
  page.text(picture.x, y + 3, setting.say('handoutPages.findOnChart'), type.head);
  page.para(picture.x, y + 8, picture.width, setting.say('handoutPages.questions'), type.body);
}

/** Everything that is no run: cutting, mixing, setting up, cleaning, choosing; cautions where the risk is. */
function stepsPage(setting: Setting): void {
  const handout = setting.plan.edition.handout;
  if (!handout) return;
  const begin = (): Frame => startPage(setting, { step: 8, title: setting.say('handoutPages.stepByStep'), side: setting.plan.job.title });
  let frame = begin();
  let { page } = frame;
  const { left, width } = frame;
  let y = page.para(left, frame.top, width, setting.tell(handout.intro), type.body) + 4;
  const runs = handout.steps.filter((s) => s.picture.kind === 'after').map((s) => s.number);
  for (const step of handout.steps) {
    // A step with its cautions stays together.
    const printing = runs.includes(step.number);
    if (printing && step.number !== runs[0]) continue;
    if (y + (printing ? 12 : 18 + step.cautions.length * 9) > frame.bottom) {
      frame = begin();
      ({ page } = frame);
      y = frame.top;
    }
    if (printing) {
      page.line(left, y, left + width, y, 0.2);
      page.fit(
        left + 14,
        y + 6,
        width - 14,
        runs.length > 1
          ? setting.say('handoutPages.printSteps', { first: runs[0], last: runs[runs.length - 1] })
          : setting.say('handoutPages.printStep'),
        type.strong,
      );
      y += 9.5;
      continue;
    }
    page.line(left, y, left + width, y, 0.2);
    page.text(left, y + 8, String(step.number), { ...type.large, size: 20 });
    page.fit(left + 14, y + 5, width - 14, setting.tell(step.title), type.strong);
    y = page.para(left + 14, y + 7, width - 14, setting.tell(step.text), { size: 10, leading: 1.32 }) + 0.5;
    for (const one of step.cautions) y = caution(page, left + 14, y, width - 14, setting.tell(one.text));
    y += 0.8;
  }
}

function runsPages(setting: Setting): void {
  const { plan } = setting;
  const count = plan.layers.length;
  const perPage = Math.ceil(count / Math.max(1, Math.ceil(count / 4)));
  for (let at = 0; at < plan.layers.length; at += perPage) {
    const frame = startPage(setting, { step: 8, title: setting.say('handoutPages.runByRun'), side: plan.job.title, runs: [] });
    const high = Math.min(76, (frame.bottom - frame.top) / perPage);
    plan.layers.slice(at, at + perPage).forEach((layer, i) => {
      const y = frame.top + i * high;
      const inner = high - 8;
      const { page } = frame;
      if (i > 0) page.line(frame.left, y - 4, frame.right, y - 4, 0.25);
      page.text(frame.left, y + 12, String(layer.run), { size: 36, weight: 'bold' });
      const a = column(frame, 1, 2),
        b = column(frame, 3, 1.5),
        c = column(frame, 4.6, 1.4);
      page.fit(a.x, y + 4, a.width, layer.name, type.head);
      page.fit(a.x, y + 9.5, a.width, setting.tell(inkLine(plan, layer)), type.body, 8);
      // Its words end where the next run begins: smaller, then cut short.
      const { floorMm, faces } = page;
      page.floorMm = Math.min(floorMm, y + high - 5);
      const text = words(setting, layer);
      const room = page.floorMm - y - 13;
      const sizes = [10.5, 9.5, 8.5].map((size) => ({ size, leading: 1.35 }));
      const fits = sizes.find((style) => wrap(faces, text, a.width, style).length * style.leading * (style.size / pointsPerMm) <= room);
      page.para(a.x, y + 13, a.width, text, fits ?? sizes[sizes.length - 1]);
      page.floorMm = floorMm;
      drawStencil(setting, page, layer, b.x, y, b.width, inner);
      const paper = plan.papers[0];
      if (paper) drawProof(setting, page, paper, layer.run, c.x, y, c.width, inner);
    });
  }
}

/** What the heading doesn't say yet: stencil, pot, set-up, what to look for, drying. */
function words(setting: Setting, layer: PlannedLayer): string {
  const { plan } = setting;
  const { facts, day } = plan.edition;
  const recipe = facts.layers[layer.run - 1]?.recipe;
  const material = materialOf(plan, layer);
  const note = plan.job.layers.find((l) => l.id === layer.id)?.note;
  return setting.tell(
    sentences(
      material && say(layer.side === 'window' ? 'handoutPages.windowIs' : 'handoutPages.pieceIs', { material: material.name }),
      say('handoutPages.aboutToCut', { time: roughly(layer.stencil.knife.minutes) }),
      recipe ? say('handoutPages.recipe', { recipe }) : layer.inkId === null && say('handoutPages.chooseInk'),
      say('handoutPages.newsprintFirst', { n: plan.job.edition.setUpSheets }),
      note ? say('handoutPages.lookFor', { note: asName(note) }) : undefined,
      layer.run < plan.layers.length && say('handoutPages.dryFor', { time: roughly(day?.dryMinutes ?? plan.job.day.dryMinutes) }),
    ),
  );
}

/** The same steps with nothing filled in: a class plans its own print. */
function blankPage(setting: Setting): void {
  const frame = startPage(setting, { step: 8, title: setting.say('handoutPages.myOwn'), side: setting.say('handoutPages.firstAtBottom') });
  const { page } = frame;
  const rows = 6;
  const high = (frame.bottom - frame.top) / rows;
  for (let i = 0; i < rows; i++) {
    const floor = frame.bottom - i * high;
    const y = floor - high + 4;
    page.line(frame.left, floor, frame.right, floor, 0.5);
    page.text(frame.left, y + high / 2, String(i + 1), { size: 28, weight: 'bold' });
    const a = column(frame, 1, 2),
      b = column(frame, 3, 1.5),
      c = column(frame, 4.6, 1.4);
    page.line(a.x, y + 8, a.x + a.width, y + 8, 0.2);
    page.text(a.x, y + 11.5, setting.say('handoutPages.shape'), { size: 8 });
    page.line(a.x, y + 22, a.x + a.width, y + 22, 0.2);
    page.text(a.x, y + 25.5, setting.say('handoutPages.inkAndStrength'), { size: 8 });
    for (const [box, label] of [
      [b, 'handoutPages.stencil'],
      [c, 'handoutPages.sheetAfter'],
    ] as const) {
      page.rect(box.x, y, box.width, high - 10, { stroke: '#000000', lineMm: 0.25 });
      page.text(box.x, y + high - 6.8, setting.say(label), { size: 8 });
    }
  }
}
