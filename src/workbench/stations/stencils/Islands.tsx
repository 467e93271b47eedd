import type { JobLayer } from '../../../core/job/index.ts';
import { shownBy, type Shown } from '../../../core/plan/index.ts';
import { withLayer } from '../../store/edits.ts';
import { sayDelta } from '../../ui/fields/format.ts';
import { step, words } from '../../store/words.ts';
import { sayPatch, type PartProps } from './parts.ts';

const kinds: readonly NonNullable<JobLayer['islands']>[] = ['bridge', 'loose', 'drop'];

/** Several places as one; null when none has a price. */
const priced = (places: Parameters<typeof shownBy>[0]): Shown | null => {
  const shown = shownBy(places);
  return shown.count > 0 ? shown : null;
};

/** What becomes of the parts that nothing holds: bridged, laid loose, or given up, each with what it costs in the print. */
export function Islands({ bench, layer, planned }: PartProps) {
  const w = words().stencils;
  const { units } = bench.job.value!;
  const { islands, bridges, loosePieces } = planned.stencil;
  // A window's islands are bridged and a piece's laid loose unless the printmaker says otherwise (core/plan/stencils.ts).
  const now = layer.islands ?? (layer.side === 'window' ? 'bridge' : 'loose');
  const dropped = priced(islands),
    bridged = now === 'bridge' ? priced(bridges) : null;
  const cost = (shown: Shown | null): string =>
    shown
      ? w.wayCost(words().overlaps.apartWords(shown.deltaE), sayDelta(shown.deltaE), sayPatch(shown.areaMm2, units))
      : planned.inkId === null
        ? w.wayNoInk
        : w.wayUnknown;
  const says = (kind: typeof now): string =>
    kind === 'bridge' ? cost(bridged) : kind === 'drop' ? cost(dropped) : w.wayLoose(loosePieces.length || islands.length);
  const none = islands.length === 0;
  return (
    <section class="beside" aria-labelledby="islands">
      <h2 id="islands">{w.islands}</h2>
      <p>{none ? w.islandsNone : `${w.islandsFound(islands.length, sayPatch(Math.min(...islands.map((i) => i.areaMm2)), units))}.`}</p>
      <fieldset class={none ? 'choices' : 'island-ways'}>
        <legend>{w.islandsAre}</legend>
        {kinds.map((kind) => (
          <label key={kind} class="choice-mark">
            <input
              type="radio"
              name="islands"
              checked={now === kind}
              onChange={() => bench.edit(step('islands', layer.name), (job) => withLayer(job, layer.id, { islands: kind }))}
            />
            <span>
              {w.islandKinds[kind]}
              {!none && (
                <>
                  {' '}
                  <small>{says(kind)}</small>
                </>
              )}
            </span>
          </label>
        ))}
      </fieldset>
      {bridged && dropped && (
        <p>
          <b>{dropped.deltaE * dropped.areaMm2 < bridged.deltaE * bridged.areaMm2 ? w.dropShowsLess : w.bridgesShowLess}</b>
        </p>
      )}
      {!none && planned.inkId !== null && (
        <details class="fold">
          <summary>{words().sheet.why}</summary>
          <p>{w.islandCostWhy}</p>
        </details>
      )}
      {now === 'drop' && dropped && <p>{w.dropped(words().overlaps.apartWords(dropped.deltaE), sayDelta(dropped.deltaE))}</p>}
      {now === 'loose' && !none && <p class="num-note">{w.looseNote}</p>}
    </section>
  );
}
