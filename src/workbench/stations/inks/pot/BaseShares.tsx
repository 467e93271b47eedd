import type { JobLayer } from '../../../../core/job/index.ts';
import type { Bench } from '../../../store/bench.ts';
import { withLayer } from '../../../store/edits.ts';
import { CountField } from '../../../ui/fields/CountField.tsx';
import { step, words } from '../../../store/words.ts';

/** What the pot is let down with, where the job has more than one base: how much each of the others is of what is no ink. */
export function BaseShares({ bench, layer }: { readonly bench: Bench; readonly layer: JobLayer }) {
  const w = words().inks;
  const bases = (bench.job.value?.inks ?? []).filter((ink) => ink.role === 'transparent-base' || ink.role === 'extender-base');
  if (bases.length < 2 || layer.ink === null || layer.strength >= 1) return null;
  const [first, ...others] = bases;
  const now = layer.bases ?? [{ ink: layer.base ?? first.id, share: 1 }];
  const whole = now.reduce((sum, one) => sum + one.share, 0);
  const shareOf = (id: string): number => (now.find((one) => one.ink === id)?.share ?? 0) / whole;
  const set = (id: string, share: number): void => {
    const rest = others.map((one) => ({ ink: one.id, share: one.id === id ? share : shareOf(one.id) }));
    const taken = rest.reduce((sum, one) => sum + one.share, 0);
    const scale = taken > 1 ? 1 / taken : 1;
    const all = [{ ink: first.id, share: Math.max(0, 1 - taken) }, ...rest.map((one) => ({ ...one, share: one.share * scale }))]
      .map((one) => ({ ...one, share: Math.round(one.share * 1e4) / 1e4 }))
      .filter((one) => one.share > 0);
    bench.edit(step('bases', layer.name), (job) =>
      withLayer(job, layer.id, all.length === 1 ? { base: all[0].ink, bases: undefined } : { base: undefined, bases: all }),
    );
  };
  return (
    <>
      {others.map((base) => (
        <CountField
          key={base.id}
          label={w.ofTheBase(base.name)}
          value={Math.round(shareOf(base.id) * 1000) / 10}
          min={0}
          max={100}
          digits={1}
          unit="%"
          onSet={(v) => set(base.id, v / 100)}
        />
      ))}
    </>
  );
}
