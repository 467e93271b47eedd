import { sayLength } from '../../ui/fields/units.ts';
import type { JobLayer } from '../../../core/job/index.ts';
import { withLayer } from '../../store/edits.ts';
import { sayDelta } from '../../ui/fields/format.ts';
import { step, words } from '../../store/words.ts';
import { pinOf, withAllowed, withoutPin, withPin } from './edits.ts';
import { costInWords, type PartProps } from './parts.ts';
import { bridgeAt, placing } from './state.ts';
import { bridgeInHand, forbidAt, forbidRadius, middleOf } from './StencilDrawing.tsx';

const ways: readonly JobLayer['bridgesBy'][] = ['least-seen', 'shortest'];

/** The bridges of a stencil, what each costs in the print, and everything that can be done to them. */
export function Bridges({ bench, layer, planned }: PartProps) {
  const w = words().stencils;
  const { units, image } = bench.job.value!;
  const { bridges } = planned.stencil;
  const held = bridgeInHand(planned);
  const pin = held ? pinOf(layer, held) : -1;
  const start = (what: 'add' | 'forbid'): void => {
    placing.value = { for: what, at: [image.widthMm / 2, image.heightMm / 2] };
  };
  return (
    <section class="beside" aria-labelledby="bridges">
      <h2 id="bridges">{w.bridges}</h2>
      {bridges.length === 0 && <p>{planned.stencil.islands.length > 0 ? w.bridgesUnused : w.bridgesCount(0)}</p>}
      {bridges.length > 0 && (
        <>
          <ul class="bridge-list">
            {bridges.map((bridge) => (
              <li key={bridge.id}>
                <button
                  type="button"
                  class="bridge-tag"
                  aria-pressed={bridge === held}
                  onClick={() => {
                    bridgeAt.value = bridge === held ? null : middleOf(bridge);
                  }}
                >
                  <b>{bridge.id}</b>
                  <span>{bridge.costDeltaE === undefined ? '–' : w.bridgeCost(sayDelta(bridge.costDeltaE))}</span>
                  <small>
                    {bridge.costDeltaE === undefined ? '' : costInWords(bridge.costDeltaE)}
                    {bridge.pinned ? ` · ${w.pinned.toLowerCase()}` : ''}
                  </small>
                </button>
              </li>
            ))}
          </ul>
          {planned.inkId === null && <p>{w.costUnknown}</p>}
          <details class="fold">
            <summary>{words().sheet.why}</summary>
            <p>{w.costWhy}</p>
          </details>
        </>
      )}
      {held && (
        <div class="bridge-held-facts">
          <p>
            <b>{w.bridge(held.id)}</b> · {w.wide(sayLength(held.widthMm, units))} · {held.pinned ? w.pinned : w.laid}
          </p>
          <div class="row">
            {pin < 0 ? (
              <button
                type="button"
                class="button button-line"
                onClick={() =>
                  bench.edit(step('pinBridge', layer.name), (job) =>
                    withPin(job, layer.id, -1, { fromMm: [...held.from], toMm: [...held.to] }),
                  )
                }
              >
                {w.pinHere}
              </button>
            ) : (
              <button
                type="button"
                class="button button-line"
                onClick={() => bench.edit(step('removeBridge', layer.name), (job) => withoutPin(job, layer.id, pin))}
              >
                {w.letGo}
              </button>
            )}
            <button
              type="button"
              class="button button-line"
              onClick={() => forbidAt(bench, layer, middleOf(held), forbidRadius(held), pin)}
            >
              {w.forbid}
            </button>
          </div>
        </div>
      )}
      {bridges.length > 0 && !held && <p class="num-note">{w.bridgeHint}</p>}
      <div class="row">
        {(layer.pinnedBridges?.length ?? 0) > 0 && (
          <button
            type="button"
            class="button button-line"
            onClick={() => bench.edit(step('removeBridge', layer.name), (job) => withLayer(job, layer.id, { pinnedBridges: undefined }))}
          >
            {w.letAllGo}
          </button>
        )}
        <button type="button" class="button button-line" onClick={() => start('add')}>
          {w.add}
        </button>
        <button type="button" class="button button-line" onClick={() => start('forbid')}>
          {w.forbidPlace}
        </button>
        {layer.noBridge?.map((_, i) => (
          <button
            key={i}
            type="button"
            class="button button-line"
            onClick={() => bench.edit(step('allowBridge', layer.name), (job) => withAllowed(job, layer.id, i))}
          >
            {w.allow(i + 1)}
          </button>
        ))}
      </div>
      <fieldset class="choices">
        <legend>{w.by}</legend>
        {ways.map((by) => (
          <label key={by} class="choice-mark">
            <input
              type="radio"
              name="bridges-by"
              checked={layer.bridgesBy === by}
              onChange={() => bench.edit(step('bridgesBy', layer.name), (job) => withLayer(job, layer.id, { bridgesBy: by }))}
            />
            <span>{w.byKinds[by]}</span>
          </label>
        ))}
      </fieldset>
    </section>
  );
}
