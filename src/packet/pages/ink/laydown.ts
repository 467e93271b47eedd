import { share } from '../../../words/index.ts';
import { drawProof, drawStencil, drawSwatch } from '../parts.ts';
import { fitImage, startPage, type, type Setting } from './setting.ts';
import { inkLine, wayOf } from '../words.ts';

/** The laydown as shelves: stencil, pot and the sheet after that run; first run at the bottom, as ink lies on paper. */
export function laydownPage(setting: Setting): void {
  const { plan } = setting;
  const paper = plan.papers[0];
  const frame = startPage(setting, { title: setting.say('cards.laydown'), side: setting.say('cards.readUpwards'), runs: [] });
  const { page, left, right, top, bottom } = frame;
  const shelves = Math.max(1, plan.layers.length);
  const height = Math.min(62, (bottom - top) / shelves);
  plan.layers.forEach((layer, i) => {
    const floor = bottom - i * height;
    const inner = height - 7;
    const y = floor - height + 3;
    page.line(left, floor, right, floor, 0.6);
    page.text(left, y + inner / 2 + 5, String(layer.run), { size: Math.min(34, inner * 1.1), weight: 'bold' });
    drawSwatch(setting, page, layer.swatch?.srgb ?? null, left + 15, y, 16, inner);
    // The pictures leave the words half a line of the page, however wide the image.
    const size = fitImage(plan, 37, inner);
    const words = left + 35,
      stencil = right - 2 * size.widthMm - 7,
      wide = stencil - words - 4;
    page.fit(words, y + inner / 2 - 2.5, wide, layer.name, type.head, 8);
    page.fit(words, y + inner / 2 + 3.4, wide, setting.tell(inkLine(plan, layer)), type.body, 8);
    page.fit(
      words,
      y + inner / 2 + 8.6,
      wide,
      setting.say('cards.prints', { side: wayOf(layer), share: share(layer.coverage, 0) }),
      type.small,
    );
    if (paper) drawProof(setting, page, paper, layer.run, right - size.widthMm, y, size.widthMm, inner);
    drawStencil(setting, page, layer, stencil, y, size.widthMm + 3, inner);
  });
}
