import { drawProof, drawStencil, drawSwatch, sideInWords } from './parts.ts';
import { fitImage, startPage, type, type Setting } from './setting.ts';
import { inkLine } from './words.ts';

/** The laydown as shelves: stencil, pot and the sheet after that run; first run at the bottom, as ink lies on paper. */
export function laydownPage(setting: Setting): void {
  const { plan } = setting;
  const paper = plan.papers[0];
  const frame = startPage(setting, { title: 'Laydown', side: 'read upwards: run 1 is printed first', runs: [] });
  const { page, left, right, top, bottom } = frame;
  const shelves = Math.max(1, plan.layers.length);
  const height = Math.min(62, (bottom - top) / shelves);
  plan.layers.forEach((layer, i) => {
    const floor = bottom - i * height;
    const inner = height - 7;
    const y = floor - height + 3;
    page.line(left, floor, right, floor, 0.6);
    page.text(left, y + inner / 2 + 5, String(layer.run), { size: Math.min(34, inner * 1.1), weight: 'bold' });
    const words = left + 18;
    drawSwatch(page, layer.swatch?.srgb ?? null, words, y, 24, inner);
    page.fit(words + 29, y + inner / 2 - 2.5, 58, layer.name, type.head);
    page.fit(words + 29, y + inner / 2 + 3.4, 58, inkLine(plan, layer), type.body, 8);
    page.fit(words + 29, y + inner / 2 + 8.6, 58, `${sideInWords(layer)}, prints ${(layer.coverage * 100).toFixed(0)} % of the image`, type.small);
    const size = fitImage(plan, 60, inner);
    if (paper) drawProof(setting, page, paper, layer.run, right - size.widthMm, y, size.widthMm, inner);
    drawStencil(page, layer, right - 2 * size.widthMm - 7, y, size.widthMm + 3, inner);
  });
}
