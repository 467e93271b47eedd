import { useSignal } from '@preact/signals';
import type { Job, JobInk } from '../../../../core/job/index.ts';
import type { Bench } from '../../../store/bench.ts';
import { CountField } from '../../../ui/fields/CountField.tsx';
import { Pot } from '../../../ui/Pot.tsx';
import { words } from '../../../store/words.ts';

interface Props {
  readonly bench: Bench;
  readonly job: Job;
  readonly id: string;
  readonly from: (JobInk & { readonly from: 'mix' }) | null;
  readonly onKeep: (parts: { ink: string; parts: number }[]) => void;
}

/** An ink mixed of others: parts by volume. */
export function MixParts({ bench, job, id, from, onKeep }: Props) {
  const w = words().inks;
  const parts = useSignal<ReadonlyMap<string, number>>(new Map(from?.parts.map((p) => [p.ink, p.parts]) ?? []));
  const chosen = [...parts.value].filter(([, n]) => n > 0).map(([ink, n]) => ({ ink, parts: n }));
  return (
    <>
      <h3>{w.mixParts}</h3>
      <ul class="mix-parts">
        {job.inks
          .filter((k) => k.id !== id && k.role !== 'retarder')
          .map((ink) => (
            <li key={ink.id}>
              <Pot srgb={bench.plan.value?.inks.find((k) => k.id === ink.id)?.swatch.srgb ?? null} />
              <CountField
                label={ink.name}
                value={parts.value.get(ink.id) ?? 0}
                min={0}
                max={1000}
                digits={1}
                onSet={(n) => {
                  parts.value = new Map(parts.value).set(ink.id, n);
                }}
              />
            </li>
          ))}
      </ul>
      <button type="button" class="button button-strong" disabled={chosen.length === 0} onClick={() => onKeep(chosen)}>
        {w.keepMix}
      </button>
    </>
  );
}
