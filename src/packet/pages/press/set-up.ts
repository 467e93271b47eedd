import { tapeForJob } from '../../../core/plan/index.ts';
import type { Rect, Risers } from '../../../core/press/index.ts';
import { film, length, listed, longLength, name as asName, say, type Saying } from '../../../words/index.ts';
import { caution, cautionHigh, cautionOf, checkNone, column, fact, steps } from '../parts.ts';
import { lengthIn, startPage, type, type Pages, type Setting } from '../ink/setting.ts';

/** What a run's own gap asks for, in boards as they are sold. */
export function risersOfRun({ built }: Risers): Saying {
  return listed(
    [
      say('setUpPages.frontOf', { front: length(built.frontMm) }),
      ...(built.underHingeMm > 0 ? [say('setUpPages.underHinge', { by: length(built.underHingeMm) })] : []),
      ...(built.underPaperMm > 0 ? [say('setUpPages.underPaper', { by: length(built.underPaperMm) })] : []),
    ],
    'comma',
  );
}

/** The part of a strip that no later one along the same side covers. */
function seenOf(strip: Rect, later: readonly Rect[]): Rect {
  let { xMm, yMm, widthMm, heightMm } = strip;
  const lying = widthMm > heightMm;
  for (const over of later) {
    if (lying !== over.widthMm > over.heightMm) continue;
    if (lying) {
      const [from, to] = [over.yMm, over.yMm + over.heightMm];
      if (from <= yMm && to > yMm) [yMm, heightMm] = [to, Math.max(0, yMm + heightMm - to)];
      else if (from > yMm && from < yMm + heightMm) heightMm = from - yMm;
    } else {
      const [from, to] = [over.xMm, over.xMm + over.widthMm];
      if (from <= xMm && to > xMm) [xMm, widthMm] = [to, Math.max(0, xMm + widthMm - to)];
      else if (from > xMm && from < xMm + widthMm) widthMm = from - xMm;
    }
  }
  return { xMm, yMm, widthMm, heightMm };
}

/** Setting up the screen: margins, gap, risers, tape; then the taping drawing at true size. */
export function* setUpPages(setting: Setting): Pages {
  const { press } = setting.plan;
  const { taping, fit } = press;
  const frame = startPage(setting, {
    step: 3,
    title: setting.say('setUpPages.setUpScreen'),
    side: press.screenKnown ? '' : setting.say('setUpPages.noScreen'),
  });
  const { page, top } = frame;
  const picture = column(frame, 0, 3.4),
    words = column(frame, 3.6, 2.4);
  const fine = setting.units === 'mm' ? 2 : 3;
  let y = top;
  y = fact(page, words.x, y, words.width, setting.say('setUpPages.gapUnderMesh'), lengthIn(setting, press.gapMm));
  y = page.para(words.x, y, words.width, setting.tell(press.gap.why), type.small) + 4;
  for (const gap of press.gaps.filter((one) => one.own)) {
    const layer = setting.plan.layers.find((l) => l.id === gap.layerId);
    if (!layer || y >= frame.bottom - 60) continue;
    const values = { run: layer.run, layer: asName(layer.name), gap: length(gap.gapMm) };
    const own = gap.risers
      ? say('setUpPages.ownGapFront', { ...values, risers: risersOfRun(gap.risers) })
      : say('setUpPages.ownGap', values);
    y = page.para(words.x, y - 2, words.width, setting.tell(own), type.strong) + 4;
  }
  for (const { layerId, own, name, deposit } of press.runs) {
    const layer = setting.plan.layers.find((l) => l.id === layerId);
    if (!own || !layer || y >= frame.bottom - 60) continue;
    const values = {
      run: layer.run,
      layer: asName(layer.name),
      mesh: asName(name),
      film: film(deposit.wetMicrons, setting.units === 'mm' ? 0 : 1),
    };
    y = page.para(words.x, y - 2, words.width, setting.say('setUpPages.ownMesh', values), type.strong) + 4;
  }
  if (press.risers) {
    y = fact(page, words.x, y, words.width, setting.say('setUpPages.frontRisers'), lengthIn(setting, press.risers.built.frontMm));
    if (press.risers.built.underHingeMm > 0)
      y = fact(page, words.x, y, words.width, setting.say('setUpPages.hingePacking'), lengthIn(setting, press.risers.built.underHingeMm));
    if (press.risers.built.underPaperMm > 0)
      y = fact(
        page,
        words.x,
        y,
        words.width,
        setting.say('setUpPages.boardUnderPaper'),
        lengthIn(setting, press.risers.built.underPaperMm),
      );
    for (const l of press.risers.layers) {
      const boards = setting.say('setUpPages.boards', {
        n: l.count,
        one: length(l.thicknessMm),
        all: length(l.heightMm),
        ...(l.cardMm > 0 ? { card: length(l.cardMm) } : {}),
      });
      y = page.para(words.x, y, words.width, boards, type.small);
    }
    const { gapMm } = press.risers.built;
    if (Math.abs(gapMm - press.gapMm) > 0.005)
      y = page.para(words.x, y, words.width, setting.say('setUpPages.gapBuilt', { gap: length(gapMm, 2) }), type.small);
    y += 3;
  }
  if (fit) {
    const { bestMm, ownMm } = fit.squeegee;
    const squeegee =
      ownMm === null ? lengthIn(setting, bestMm) : setting.say('setUpPages.squeegeeYours', { best: length(bestMm), own: length(ownMm) });
    y = fact(page, words.x, y, words.width, setting.say('setUpPages.squeegee'), squeegee, type.strong);
    for (const { side, mm, missingMm } of fit.margins) {
      const values = { side: say(`setUpPages.${side}`), free: length(mm) };
      const margin =
        missingMm > 0 ? say('setUpPages.tooLittleFree', { ...values, missing: length(missingMm) }) : say('setUpPages.free', values);
      y = page.para(words.x, y, words.width, setting.tell(margin), type.small);
    }
    y += 3;
  }
  if (taping) {
    const tape = setting.say('setUpPages.tapeAll', {
      tape: longLength(Math.ceil(tapeForJob(setting.plan)) * 1000, 0),
      width: length(taping.tapeWidthMm),
    });
    y = fact(page, words.x, y, words.width, setting.say('setUpPages.tape'), tape, type.strong);
  }
  if (press.offContact) {
    const { alongMm, acrossMm } = press.offContact;
    const grows = setting.say('setUpPages.imageGrows', { along: length(alongMm, fine), across: length(Math.max(...acrossMm), fine) });
    y = page.para(words.x, y, words.width, grows, type.small) + 3;
  }
  if (!taping) {
    checkNone(setting, page, picture.x, top, picture.width);
    return;
  }
  const scale = Math.min(picture.width / taping.frame.widthMm, 150 / taping.frame.heightMm);
  const rect = (r: { xMm: number; yMm: number; widthMm: number; heightMm: number }): [number, number, number, number] => [
    picture.x + r.xMm * scale,
    top + r.yMm * scale,
    r.widthMm * scale,
    r.heightMm * scale,
  ];
  page.rect(...rect(taping.frame), { stroke: '#000000', lineMm: 1.2 });
  taping.strips.forEach((strip, i) => {
    page.rect(...rect(strip), { fill: i % 2 === 0 ? '#e9e9e9' : '#d9d9d9', stroke: '#000000', lineMm: 0.15 });
  });
  page.rect(...rect(taping.aperture), { fill: '#ffffff', stroke: '#000000', lineMm: 0.3 });
  page.rect(...rect(taping.stencil), { stroke: '#000000', lineMm: 0.5, dashMm: [3, 1.5] });
  // Each strip lies on those before it: its number stands where none covers it.
  taping.strips.forEach((strip, i) => {
    const [x, yy, w, h] = rect(seenOf(strip, taping.strips.slice(i + 1)));
    const size = Math.min(7.5, Math.min(w, h) * 2.6);
    if (size >= 3.5)
      page.text(x + (w > h ? 2 : w / 2), yy + Math.min(h, 4) / 2 + size * 0.125, String(i + 1), { size, weight: 'bold', align: 'centre' });
  });
  page.rect(...rect(taping.image), { stroke: '#000000', lineMm: 0.2, dashMm: [1.5, 1] });
  const [ix, iy, iw, ih] = rect(taping.image);
  page.text(ix + iw / 2, iy + ih / 2, setting.say('setUpPages.image'), { ...type.body, align: 'centre' });
  page.text(ix + iw / 2, iy + ih / 2 + 5.5, setting.say('setUpPages.fromSqueegee'), { size: 8.5, align: 'centre' });
  let below = top + taping.frame.heightMm * scale + 8;
  const marginAt = (side: 'top' | 'left'): ReturnType<typeof length> => length(fit?.margins.find((m) => m.side === side)?.mm ?? 0);
  below = steps(page, picture.x, below, picture.width, [
    setting.say('setUpPages.layDrawing', { top: marginAt('top'), left: marginAt('left') }),
    ...taping.steps.slice(1).map((one) => setting.tell(one)),
  ]);
  // Beside the picture where the steps leave no room under it.
  const lift = cautionOf(setting, 'lift');
  const under = below + 2 + cautionHigh(page, picture.width, lift) <= frame.bottom;
  if (under) caution(page, picture.x, below + 2, picture.width, lift);
  else caution(page, words.x, Math.min(y + 2, frame.bottom - cautionHigh(page, words.width, lift)), words.width, lift);
  yield;
}
