import { list, name as asName, say, share } from '../../words/index.ts';
import { drawSwatch } from './parts.ts';
import { massIn, startPage, type Setting } from './setting.ts';
import { inkName } from './words.ts';

/** Labels for the pots: cut apart, stuck on, so that what is left over is known next year. */
export function labelPages(setting: Setting): void {
  const { plan } = setting;
  const pots = plan.layers.filter((l) => l.mix !== null);
  const high = 46,
    perPage = 10;
  for (let from = 0; from < pots.length; from += perPage) {
    const frame = startPage(setting, { step: 1, title: setting.say('cards.potLabels'), side: setting.say('cards.cutApart') });
    const { page } = frame;
    const wide = (frame.width - 4) / 2;
    pots.slice(from, from + perPage).forEach((layer, i) => {
      const x = frame.left + (i % 2) * (wide + 4),
        y = frame.top + Math.floor(i / 2) * (high + 2);
      page.rect(x, y, wide, high, { stroke: '#000000', lineMm: 0.15, dashMm: [2, 2] });
      drawSwatch(setting, page, layer.swatch?.srgb ?? null, x + 4, y + 4, 18, high - 8);
      const words = x + 26,
        room = wide - 30;
      page.fit(words, y + 9, room, setting.tell(inkName(plan, layer)), { size: 14, weight: 'bold' }, 8);
      page.fit(
        words,
        y + 14.5,
        room,
        setting.say('cards.potOf', { title: asName(plan.job.title), run: layer.run, layer: asName(layer.name) }),
        { size: 9 },
        7,
      );
      const parts = (layer.mix?.parts ?? []).map((p) => say('cards.part', { name: p.name, share: share(p.share, 0) }));
      const mass = massIn(setting, layer.mix?.totalGrams ?? 0, 'about');
      page.para(words, y + 17.5, room, setting.say('cards.potHolds', { parts: list(parts, 'comma'), mass }), {
        size: 8.5,
        leading: 1.25,
      });
      page.line(words, y + high - 7, x + wide - 4, y + high - 7, 0.2);
      page.text(words, y + high - 3.8, setting.say('cards.mixedOn'), { size: 7 });
    });
  }
}
