import { drawProof, drawStencil, drawSwatch, sideInWords } from './parts.ts';
import { startPage, type, type Setting } from './setting.ts';
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
    drawSwatch(page, layer.swatch?.srgb ?? null, words, y + inner / 2 - 8, 16, 16);
    page.fit(words + 21, y + inner / 2 - 2.5, 54, layer.name, type.head);
    page.fit(words + 21, y + inner / 2 + 3, 54, inkLine(plan, layer), type.small);
    page.fit(words + 21, y + inner / 2 + 7.6, 54, `${sideInWords(layer)}, prints ${(layer.coverage * 100).toFixed(0)} % of the image`, type.small);
    drawStencil(page, layer, right - 62, y, 30, inner);
    if (paper) drawProof(setting, page, paper, layer.run, right - 27, y, 27, inner);
  });
}
