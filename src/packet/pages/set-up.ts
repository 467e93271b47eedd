import { caution, checkNone, column, fact, steps } from './parts.ts';
import { lengthIn, startPage, type, type Pages, type Setting } from './setting.ts';
import { trueSizePages } from './true-size.ts';

/** Setting up the screen: margins, gap, risers, tape; then the taping drawing at true size. */
export function* setUpPages(setting: Setting): Pages {
  const { press } = setting.plan;
  const { taping, fit } = press;
  const frame = startPage(setting, { step: 3, title: 'Set up the screen', side: press.screenKnown ? '' : 'no screen chosen yet' });
  const { page, top } = frame;
  const picture = column(frame, 0, 3.4),
    words = column(frame, 3.6, 2.4);
  const fine = setting.units === 'mm' ? 2 : 3;
  let y = top;
  y = fact(page, words.x, y, words.width, 'Gap under the mesh', lengthIn(setting, press.gapMm));
  y = page.para(words.x, y, words.width, setting.tell(press.gap.why), type.small) + 4;
  for (const gap of press.gaps.filter((one) => one.own)) {
    const layer = setting.plan.layers.find((l) => l.id === gap.layerId);
    if (layer && y < frame.bottom - 60)
      y =
        page.para(
          words.x,
          y - 2,
          words.width,
          `Run ${layer.run}, ${layer.name}: ${lengthIn(setting, gap.gapMm)}${gap.risers ? `, front ${lengthIn(setting, gap.risers.frontMm)}` : ''}`,
          type.strong,
        ) + 4;
  }
  if (press.risers) {
    y = fact(page, words.x, y, words.width, 'Risers at the front', lengthIn(setting, press.risers.frontMm));
    if (press.risers.underHingeMm > 0)
      y = fact(page, words.x, y, words.width, 'Packing under the hinge', lengthIn(setting, press.risers.underHingeMm));
    if (press.risers.underPaperMm > 0)
      y = fact(page, words.x, y, words.width, 'Board under the paper', lengthIn(setting, press.risers.underPaperMm));
    for (const l of press.risers.layers)
      y = page.para(
        words.x,
        y,
        words.width,
        `${l.count} × ${lengthIn(setting, l.thicknessMm)} gives ${lengthIn(setting, l.heightMm)}.`,
        type.small,
      );
    y += 3;
  }
  if (fit) {
    y = fact(
      page,
      words.x,
      y,
      words.width,
      'Squeegee',
      `${lengthIn(setting, fit.squeegee.bestMm)}${fit.squeegee.ownMm === null ? '' : ` (yours: ${lengthIn(setting, fit.squeegee.ownMm)})`}`,
      type.strong,
    );
    for (const margin of fit.margins)
      y = page.para(
        words.x,
        y,
        words.width,
        `${margin.side}: ${lengthIn(setting, margin.mm)} free${margin.missingMm > 0 ? `, ${lengthIn(setting, margin.missingMm)} less than one wants` : ''}`,
        type.small,
      );
    y += 3;
  }
  if (press.offContact)
    y =
      page.para(
        words.x,
        y,
        words.width,
        `The mesh stretches: the image grows by ${lengthIn(setting, press.offContact.alongMm, fine)} along the stroke, ${lengthIn(setting, Math.max(...press.offContact.acrossMm), fine)} across. Keep screen and place the same for all runs.`,
        type.small,
      ) + 3;
  if (!taping) {
    checkNone(page, picture.x, top, picture.width);
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
    const [x, yy, w, h] = rect(strip);
    page.rect(x, yy, w, h, { fill: i % 2 === 0 ? '#e9e9e9' : '#d9d9d9', stroke: '#000000', lineMm: 0.15 });
    // Each strip lies on the one before: its number stands where none covers it.
    page.text(x + 0.8, yy + 3.2, String(i + 1), { size: 7.5, weight: 'bold' });
  });
  page.rect(...rect(taping.aperture), { fill: '#ffffff', stroke: '#000000', lineMm: 0.3 });
  page.rect(...rect(taping.image), { stroke: '#000000', lineMm: 0.2, dashMm: [1.5, 1] });
  const [ix, iy, iw, ih] = rect(taping.image);
  page.text(ix + iw / 2, iy + ih / 2, 'image', { ...type.body, align: 'centre' });
  page.text(ix + iw / 2, iy + ih / 2 + 5.5, 'from the squeegee side', { size: 8.5, align: 'centre' });
  let below = top + taping.frame.heightMm * scale + 8;
  const margin = (side: string): string => lengthIn(setting, fit?.margins.find((m) => m.side === side)?.mm ?? 0);
  below = steps(page, picture.x, below, picture.width, [
    `Lay the true-size drawing (next pages) under the dry screen: image ${margin('top')} from the frame at the top, ${margin('left')} at the left.`,
    ...taping.steps.slice(1),
  ]);
  caution(page, picture.x, below + 2, picture.width, 'Two lift a large frame.');
  yield;
  yield* trueSizePages(setting, {
    name: 'Taping drawing',
    say: 'Lay it under the screen, printed side up.',
    extent: {
      minX: taping.aperture.xMm - 12,
      minY: taping.aperture.yMm - 12,
      maxX: taping.aperture.xMm + taping.aperture.widthMm + 12,
      maxY: taping.aperture.yMm + taping.aperture.heightMm + 12,
    },
    draw: (sheet, placing, at) => {
      const box = (r: typeof taping.frame, paint: Parameters<typeof sheet.rect>[4]): void => {
        const [ax, ay] = at(r.xMm, r.yMm),
          [bx, by] = at(r.xMm + r.widthMm, r.yMm + r.heightMm);
        sheet.rect(Math.min(ax, bx), Math.min(ay, by), Math.abs(bx - ax), Math.abs(by - ay), paint);
      };
      box(taping.aperture, { stroke: '#000000', lineMm: 0.6 });
      box(taping.image, { stroke: '#000000', lineMm: 0.2, dashMm: [1.5, 1.5] });
      const [cx, cy] = at(taping.centreMm[0], taping.centreMm[1]);
      sheet.line(cx - 15, cy, cx + 15, cy, 0.2);
      sheet.line(cx, cy - 15, cx, cy + 15, 0.2);
      for (const share of [0.25, 0.75]) {
        const [x, y] = at(taping.aperture.xMm + taping.aperture.widthMm * share, taping.aperture.yMm - 3);
        sheet.text(x, y, 'top — tape outside the thick line', { size: 9, weight: 'semibold', align: 'centre', turned: placing.turned });
      }
    },
  });
}
