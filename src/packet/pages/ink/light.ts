import { lampName, movesMost, sayPlace, underLamp } from '../../../core/asks/index.ts';
import type { Illuminant } from '../../../core/colour/index.ts';
import { deltaE } from '../../../words/index.ts';
import { drawProof } from '../parts.ts';
import { fitImage, roomOf, startPage, type, type Frame, type Pages, type PlannedPaper, type Setting } from './setting.ts';

/** The light that prints are judged by, a warm lamp and a cold one. */
const shown: readonly Illuminant[] = ['D50', 'A', 'LED-B5'];
const gapMm = 4;
/** A paper's name, and a line for each lamp. */
const wordsMm = 5 + 4.2 * (shown.length - 1);
const mostProofMm = 75;
/** Above a proof: its lamp; below: room before the next paper. */
const lampMm = 8,
  belowMm = 5;
const papersBelow = 3;

/** The print on every paper as it looks where it may hang, and what changes most there. */
export function* lightPages(setting: Setting): Pages {
  let frame: Frame | null = null;
  let y = 0;
  const { papers } = setting.plan;
  const { width, top, bottom } = roomOf(setting);
  const wide = (width - gapMm * (shown.length - 1)) / shown.length;
  const around = wordsMm + lampMm + belowMm;
  const proofMm = fitImage(
    setting.plan,
    wide,
    Math.min(mostProofMm, (bottom - top) / Math.min(papersBelow, papers.length) - around),
  ).heightMm;
  const high = proofMm + around;
  for (const paper of papers) {
    if (!frame || y + high - belowMm > frame.bottom + 0.01) {
      if (frame) yield;
      frame = startPage(setting, { step: 7, title: setting.say('recordPages.otherLight'), side: setting.say('recordPages.otherLightIs') });
      y = frame.top;
    }
    row(setting, frame, paper, y, wide, proofMm);
    y += high;
  }
  if (frame) yield;
}

function row(setting: Setting, frame: Frame, paper: PlannedPaper, top: number, wide: number, proofMm: number): void {
  const { page, left, width } = frame;
  page.fit(left, top + 3, width, paper.name, type.strong, 8);
  let y = top + 3;
  for (const lamp of shown.slice(1)) {
    const most = movesMost(paper, lamp);
    if (!most) continue;
    y += 4.2;
    const what = sayPlace(setting.plan, paper.overlaps, most.code, most.ground);
    const line = setting.say('recordPages.changesMost', { what, lamp: lampName(lamp), deltaE: deltaE(most.moved) });
    page.fit(left, y, width, line, { size: 8 }, 5.5);
  }
  y += 4;
  shown.forEach((lamp, i) => {
    const x = left + i * (wide + gapMm);
    const lit = underLamp(paper, lamp);
    page.fit(x, y + 2.5, wide, setting.tell(lampName(lamp)), type.smallStrong, 6);
    // Pictures are kept by the paper's name.
    drawProof(
      setting,
      page,
      lamp === 'D50' ? paper : { ...lit, id: `${paper.id} ${lamp}` },
      setting.plan.layers.length,
      x,
      y + 4,
      wide,
      proofMm,
    );
  });
}
