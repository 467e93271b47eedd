import type { JobLayer } from '../../../core/job/index.ts';
import type { PlannedLayer } from '../../../core/plan/index.ts';
import type { Bench } from '../../store/bench.ts';
import { withLayer } from '../../store/edits.ts';
import { NumberField } from '../../ui/fields/NumberField.tsx';
import { Pot } from '../../ui/Pot.tsx';
import { saySetShare } from '../../ui/fields/units.ts';
import { Slider } from '../../ui/fields/Slider.tsx';
import { step, words } from '../../store/words.ts';
import { PotRow } from './PotRow.tsx';

interface Props {
  readonly bench: Bench;
  readonly layer: JobLayer;
  /** Missing while the layer is left out or can't be planned. */
  readonly planned: Pick<PlannedLayer, 'inkId' | 'swatch'> | undefined;
}

/** The pot of a run: which ink, how strong; for an open run a row of pots to try. */
export function PotControls({ bench, layer, planned }: Props) {
  const w = words().laydown;
  const inks = (bench.job.value?.inks ?? []).filter((ink) => ink.role === 'ink');
  const nameOf = (id: string | null): string => bench.job.value?.inks.find((ink) => ink.id === id)?.name ?? '';
  const percent = Math.round(layer.strength * 1000) / 10;
  const shownInk = planned?.inkId ?? layer.ink;

  const setStrength = (value: number, mark?: string): void =>
    bench.edit(
      step('strength', layer.name),
      (job) => withLayer(job, layer.id, { strength: Math.min(1, Math.max(0, value / 100)) }),
      mark === undefined ? {} : { mark },
    );
  const setInk = (id: string): void => {
    bench.tryInk(layer.id, null);
    if (id === '') bench.edit(step('leaveOpen', layer.name), (job) => withLayer(job, layer.id, { ink: null }));
    else bench.edit(step('ink', layer.name, nameOf(id)), (job) => withLayer(job, layer.id, { ink: id }));
  };

  return (
    <>
      <Pot
        srgb={planned?.swatch?.srgb ?? null}
        label={shownInk === null ? w.potOpen : w.pot(nameOf(shownInk), saySetShare(layer.strength))}
      />
      {layer.ink === null ? (
        <PotRow bench={bench} layer={layer} inks={inks} onKeep={setInk} />
      ) : (
        <select class="choice" aria-label={w.inkOf(layer.name)} value={layer.ink} onChange={(e) => setInk(e.currentTarget.value)}>
          {inks.map((ink) => (
            <option key={ink.id} value={ink.id}>
              {ink.name}
            </option>
          ))}
          {!inks.some((ink) => ink.id === layer.ink) && <option value={layer.ink}>{nameOf(layer.ink) || layer.ink}</option>}
          <option value="">{w.open}</option>
        </select>
      )}
      <div class="strength">
        <Slider
          label={w.strengthOf(layer.name)}
          value={percent}
          min={0}
          max={100}
          step={1}
          text={saySetShare(layer.strength)}
          onMove={(v) => setStrength(v, `strength:${layer.id}`)}
          onSettle={() => bench.settle()}
        />
        <NumberField label={w.strengthOf(layer.name)} value={percent} min={0} max={100} digits={1} unit="%" onSet={(v) => setStrength(v)} />
      </div>
    </>
  );
}
