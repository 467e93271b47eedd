import { list, name as asName, say, share } from '../../../words/index.ts';
import { drawSwatch, paraHigh } from '../parts.ts';
import { massIn, startPage, type, type Frame, type PlannedLayer, type Setting } from '../ink/setting.ts';
import { inkName } from '../words.ts';

const gapMm = 2;
const small = { highMm: 26.5, across: 3 };
const usual = { highMm: 46, across: 2 };

/** Labels for the pots on a page of their own: cut apart, stuck on, so that what is left over is known next year. */
export function labelPages(setting: Setting): void {
  const pots = setting.plan.layers.filter((l) => l.mix !== null);
  let at = 0;
  while (at < pots.length) {
    const frame = startPage(setting, { step: 1, title: setting.say('cards.potLabels'), side: setting.say('cards.cutApart') });
    const rows = Math.max(1, Math.floor((frame.bottom - frame.top + gapMm) / (usual.highMm + gapMm)));
    draw(setting, frame, pots.slice(at, at + rows * usual.across), frame.top, usual);
    at += rows * usual.across;
  }
}

/** The same, smaller, under the last card. False where they don't fit: nothing is drawn. */
export function labelsUnder(setting: Setting, frame: Frame, y: number): boolean {
  const pots = setting.plan.layers.filter((l) => l.mix !== null);
  if (pots.length === 0) return true;
  const rows = Math.ceil(pots.length / small.across);
  if (y + 8 + rows * (small.highMm + gapMm) > frame.bottom) return false;
  const { page, left, right } = frame;
  page.text(left, y + 4, setting.say('cards.potLabels'), type.head);
  page.text(right, y + 4, setting.say('cards.cutApart'), { ...type.small, align: 'right' });
  draw(setting, frame, pots, y + 8, small);
  return true;
}

function draw(setting: Setting, frame: Frame, pots: readonly PlannedLayer[], top: number, { highMm, across }: typeof small): void {
  const { page } = frame;
  const { plan } = setting;
  const wide = (frame.width - gapMm * (across - 1)) / across;
  const swatch = Math.min(18, wide * 0.2);
  pots.forEach((layer, i) => {
    const x = frame.left + (i % across) * (wide + gapMm),
      y = top + Math.floor(i / across) * (highMm + gapMm);
    page.rect(x, y, wide, highMm, { stroke: '#000000', lineMm: 0.15, dashMm: [2, 2] });
    drawSwatch(setting, page, layer.swatch?.srgb ?? null, x + 3, y + 3, swatch, highMm - 6);
    const words = x + swatch + 5.5,
      room = wide - swatch - 8.5;
    page.fit(words, y + 6.5, room, setting.tell(inkName(plan, layer)), { size: highMm > 40 ? 14 : 11, weight: 'bold' }, 7);
    page.fit(
      words,
      y + 10.5,
      room,
      setting.say('cards.potOf', { title: asName(plan.job.title), run: layer.run, layer: asName(layer.name) }),
      { size: 8.5 },
      6,
    );
    const parts = (layer.mix?.parts ?? []).map((p) => say('cards.part', { name: p.name, share: share(p.share, 0) }));
    const mass = massIn(setting, layer.mix?.totalGrams ?? 0, 'about');
    // Nothing of what is in the pot may be missing: smaller where there is much.
    const holds = setting.say('cards.potHolds', { parts: list(parts, 'comma'), mass });
    let size = 8;
    while (size > 4.5 && paraHigh(page, room, holds, { size, leading: 1.15 }) > highMm - 6.7 - 12.2) size -= 0.25;
    page.para(words, y + 12.2, room, holds, { size, leading: 1.15 });
    page.line(words, y + highMm - 6, x + wide - 3, y + highMm - 6, 0.2);
    page.fit(words, y + highMm - 3, room, setting.say('cards.mixedOn'), { size: 7 }, 5);
  });
}
