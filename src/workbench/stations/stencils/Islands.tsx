import type { JobLayer } from '../../../core/job/index.ts';
import { sayArea } from '../../ui/units.ts';
import { withLayer } from '../../store/edits.ts';
import { sayDelta } from '../../ui/format.ts';
import { step, words } from '../../words/index.ts';
import type { PartProps } from './parts.ts';

const kinds: readonly NonNullable<JobLayer['islands']>[] = ['bridge', 'loose', 'drop'];

/** What becomes of the parts that nothing holds: bridged, laid loose, or given up at their cost. */
export function Islands({ bench, layer, planned }: PartProps) {
  const w = words().stencils;
  const { units } = bench.job.value!;
  const { islands } = planned.stencil;
  // A window's islands are bridged and a piece's laid loose unless the printmaker says otherwise (core/plan/stencils.ts).
  const now = layer.islands ?? (layer.side === 'window' ? 'bridge' : 'loose');
  const priced = islands.filter((i) => i.costDeltaE !== undefined);
  const area = priced.reduce((sum, i) => sum + i.areaMm2, 0);
  const cost = area > 0 ? priced.reduce((sum, i) => sum + i.costDeltaE! * i.areaMm2, 0) / area : null;
  return (
    <section class="beside" aria-labelledby="islands">
      <h2 id="islands">{w.islands}</h2>
      {islands.length === 0 ? <p>{w.islandsNone}</p> : <p>{w.islandsFound(islands.length, sayArea(Math.min(...islands.map((i) => i.areaMm2)), units))}. {cost !== null && (now === 'drop' ? w.dropped(sayDelta(cost)) : w.dropCost(sayDelta(cost), islands.length))}</p>}
      <fieldset class="choices">
        <legend>{w.islandsAre}</legend>
        {kinds.map((kind) => (
          <label key={kind} class="choice-mark">
            <input type="radio" name="islands" checked={now === kind} onChange={() => bench.edit(step('islands', layer.name), (job) => withLayer(job, layer.id, { islands: kind }))} />
            <span>{w.islandKinds[kind]}</span>
          </label>
        ))}
      </fieldset>
      {now === 'loose' && islands.length > 0 && <p class="num-note">{w.looseNote}</p>}
    </section>
  );
}
