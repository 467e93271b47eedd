import type { JobInk, JobLayer } from '../../../core/job/index.ts';
import type { Bench } from '../../store/bench.ts';
import { Pot } from '../../ui/Pot.tsx';
import { words } from '../../store/words.ts';
import { lookAtReach } from '../inks/state.ts';

interface Props {
  readonly bench: Bench;
  readonly layer: JobLayer;
  readonly inks: readonly JobInk[];
  readonly onKeep: (inkId: string) => void;
}

/** All pots on the shelf, to try an open run in at a touch; the one tried can be kept. */
export function PotRow({ bench, layer, inks, onKeep }: Props) {
  const w = words().laydown;
  const tried = bench.trials.value.get(layer.id) ?? null;
  const choose = (id: string | null, said: string): void => {
    bench.tryInk(layer.id, id);
    bench.announce(said);
  };
  const swatchOf = (id: string): string | null => bench.plan.value?.inks.find((ink) => ink.id === id)?.swatch.srgb ?? null;
  const triedInk = inks.find((ink) => ink.id === tried);
  return (
    <>
      <fieldset class="pot-row">
        <legend class="unseen">{w.pots(layer.name)}</legend>
        <label class="pot-choice" title={w.open}>
          <input
            type="radio"
            name={`try-${layer.id}`}
            checked={tried === null}
            aria-label={w.open}
            onChange={() => choose(null, w.leaveOpen)}
          />
          <Pot srgb={null} />
        </label>
        {inks.map((ink) => (
          <label key={ink.id} class="pot-choice" title={ink.name}>
            <input
              type="radio"
              name={`try-${layer.id}`}
              checked={tried === ink.id}
              aria-label={ink.name}
              onChange={() => choose(ink.id, w.trying(ink.name))}
            />
            <Pot srgb={swatchOf(ink.id)} />
          </label>
        ))}
      </fieldset>
      {triedInk ? (
        <button
          type="button"
          class="button button-strong pot-keep"
          onClick={() => {
            onKeep(triedInk.id);
            bench.announce(w.saidKept(triedInk.name));
          }}
        >
          {w.keep(triedInk.name)}
        </button>
      ) : (
        <span class="pot-keep">
          {w.openHint}{' '}
          <a class="whole-reach" href="#inks" onClick={() => lookAtReach(layer.id)}>
            {w.wholeReach}
          </a>
        </span>
      )}
    </>
  );
}
