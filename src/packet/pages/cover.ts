import { longLength, name as asName } from '../../words/index.ts';
import type { Page } from '../pdf/page.ts';
import { sheetGroups } from '../sheets.ts';
import { column, drawProof, fact } from './parts.ts';
import { massIn, roughly, sizeIn, startPage, type, type Frame, type Setting } from './ink/setting.ts';

/** The cover's page is taken first and filled last, when it is known on which page each step begins. */
export function startCover(setting: Setting): Frame {
  return startPage(setting, { title: setting.plan.job.title, side: setting.plan.job.maker });
}

export function fillCover(setting: Setting, frame: Frame): void {
  const { plan } = setting;
  const { page, top } = frame;
  const large = column(frame, 0, 4),
    small = column(frame, 4, 2);
  const paper = plan.papers[0];
  const size = paper
    ? drawProof(setting, page, paper, plan.layers.length, large.x, top, large.width, Math.min(146, frame.bottom - top - 96))
    : { heightMm: 0, widthMm: 0 };
  if (paper)
    page.fit(large.x, top + size.heightMm + 4.6, large.width, setting.say('packet.foreseenOn', { paper: asName(paper.name) }), {
      size: 8.5,
    });
  const sideX = Math.max(small.x, large.x + size.widthMm + 6);
  const factsEnd = facts(setting, page, sideX, top, frame.right - sideX);

  const others = plan.papers.slice(1, 4);
  let y = top + size.heightMm + 12;
  const listTop = y;
  const list = column(frame, 0, others.length > 0 ? 4 : 6);
  page.text(list.x, y + 3.6, setting.say('packet.workInOrder'), type.head);
  y += 8;
  for (const step of setting.steps) {
    page.line(list.x, y - 1.6, list.x + list.width, y - 1.6, 0.2);
    if (step.step > 0) page.text(list.x, y + 3.4, String(step.step), type.strong);
    page.fit(list.x + 8, y + 3.4, 20, step.title, type.strong, 8);
    page.fit(list.x + 29, y + 3.4, list.width - 39, step.what, { size: 9 }, 7);
    page.text(list.x + list.width, y + 3.4, String(step.firstPage), { ...type.strong, align: 'right' });
    y += 7;
  }
  if (others.length > 0) {
    const width = frame.right - sideX;
    const othersTop = Math.max(listTop, factsEnd + 2);
    const each = Math.min((frame.bottom - othersTop) / others.length - 8, 54);
    others.forEach((other, i) => {
      const at = othersTop + i * (each + 8);
      const drawn = drawProof(setting, page, other, plan.layers.length, sideX, at, width, each);
      page.fit(sideX, at + drawn.heightMm + 4.2, width, setting.say('packet.onPaper', { paper: asName(other.name) }), { size: 8.5 });
    });
  }
  page.para(list.x, Math.max(y + 1, frame.bottom - 9), list.width, setting.say('packet.judgeByDrawdowns'), {
    ...type.small,
    weight: 'semibold',
  });
}

function facts(setting: Setting, page: Page, x: number, top: number, width: number): number {
  const { plan } = setting;
  const { image, edition } = plan.job;
  const runs = plan.layers.length;
  const metres = plan.cuts.reduce((sum, c) => sum + c.knifeMetres, 0);
  const minutes = plan.cuts.reduce((sum, c) => sum + c.knifeMinutes, 0);
  const grams = plan.layers.reduce((sum, l) => sum + (l.mix?.totalGrams ?? 0), 0);
  const open = plan.layers.filter((l) => l.inkId === null).length;
  const sheets = sheetGroups(plan).reduce((sum, g) => sum + g.sheets.length, 0);
  const warnings = plan.problems.filter((p) => p.severity !== 'note').length;
  let y = top;
  y = fact(page, x, y, width, setting.say('packet.image'), sizeIn(setting, image.widthMm, image.heightMm));
  y = fact(page, x, y, width, setting.say('packet.runs'), open > 0 ? setting.say('packet.runsOpen', { runs, open }) : setting.show(runs));
  y = fact(page, x, y, width, setting.say('packet.sheetsToStart'), setting.show(sheets));
  y = fact(page, x, y, width, setting.say('packet.wanted'), setting.say('packet.wantedWithProofs', { n: edition.target }));
  y = fact(
    page,
    x,
    y,
    width,
    setting.say('packet.toCut'),
    setting.say('packet.lengthAndTime', { length: longLength(metres * 1000, 1), time: roughly(minutes) }),
  );
  y = fact(page, x, y, width, setting.say('packet.inkToMix'), setting.show(massIn(setting, grams, 'about')));
  if (warnings > 0)
    y = fact(page, x, y, width, setting.say('packet.beforeYouStart'), setting.say('packet.thingsFirst', { n: warnings }), type.strong);
  return y;
}
