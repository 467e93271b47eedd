import { words } from '../../store/words.ts';
import { later } from '../../ui/later.tsx';
import { sayMinutes } from '../../ui/fields/units.ts';
import { unplanned, type Station } from '../station.ts';
import { chosenLayer } from './state.ts';

export const stencilStation: Station = {
  id: 'stencils',
  title: () => words().stencils.title,
  state(bench) {
    const w = words().stencils;
    const plan = bench.plan.value;
    if (!plan) return unplanned(bench);
    const { layers } = plan;
    const minutes = plan.cuts.reduce((sum, c) => sum + c.knifeMinutes, 0);
    const films = layers.filter((l) => l.tone).length;
    const cut = w.knows(layers.length - films, sayMinutes(Math.max(1, minutes)));
    const weak = layers.filter((l) => !l.stencil.certificate.holds);
    return {
      knows: films === 0 ? cut : w.knowsFilms(films, films === layers.length ? null : cut),
      needs: layers.length === 0 ? w.needsCut : weak.length > 0 ? w.needsMend(weak.map((l) => l.name)) : null,
    };
  },
  lookAt: ({ part, id }) => {
    if (part === 'layer' && id !== undefined) chosenLayer.value = id;
  },
  view: later(() => import('./StencilsView.tsx').then((m) => m.StencilsView)),
};
