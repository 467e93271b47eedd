import type { PlannedLayer } from '../../../../core/plan/index.ts';
import type { ShownPlan } from '../../../engine/protocol.ts';
import { words } from '../../../store/words.ts';

/** What to look for in this run, the most telling first. */
export function lookFor(plan: ShownPlan, layer: PlannedLayer): readonly string[] {
  const w = words().pulling.look;
  const { stencil } = layer;
  const under = plan.layers.some((l) => l.run < layer.run && l.inkId !== null);
  return [
    plan.job.layers.find((l) => l.id === layer.id)?.note ?? '',
    layer.run === 1 ? w.stops : w.marks,
    under ? w.dry : '',
    stencil.loosePieces.length > 0 ? w.pieces(stencil.loosePieces.length) : '',
    stencil.bridges.length > 0 ? w.bridges : '',
    layer.coverage > 0.4 ? w.flat : w.edges,
    layer.ridge.timesTheFilm > 2 ? w.ridge : '',
    w.light,
  ]
    .filter((point) => point !== '')
    .slice(0, 5);
}
