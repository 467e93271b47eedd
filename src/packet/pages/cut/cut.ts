import { name as asName, say } from '../../../words/index.ts';
import { cutCards } from './cut-cards.ts';
import { drawTrueSize, toTile } from './cut-drawing.ts';
import type { Pages, Setting } from '../ink/setting.ts';
import { trueSizePages } from './true-size.ts';
import { sideOf } from '../words.ts';

/** Cards for the stencils, then each stencil at true size. */
export function* cutPages(setting: Setting): Pages {
  yield* cutCards(setting);
  for (const layer of setting.plan.layers) {
    if (layer.tone) continue;
    yield* trueSizePages(setting, {
      ...toTile(setting, layer),
      name: say('cutPages.drawing', { layer: asName(layer.name), run: layer.run, side: sideOf(layer.side) }),
      says: say('cutPages.greyDropsOut'),
      draw: (page, placing, at, box) => drawTrueSize(setting, layer, page, placing, at, box),
    });
  }
}
