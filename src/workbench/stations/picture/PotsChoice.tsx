import type { JobInk } from '../../../core/job/index.ts';
import type { Bench } from '../../store/bench.ts';
import { words } from '../../store/words.ts';
import { Pot } from '../../ui/Pot.tsx';

interface Props {
  readonly bench: Bench;
  readonly head: string;
  readonly pots: readonly JobInk[];
  readonly chosen: readonly string[];
  /** No more than so many at once; left out: all. */
  readonly most?: number;
  readonly choose: (chosen: readonly string[]) => void;
}

/** Pots of the shelf, each with its colour, to choose some of. */
export function PotsChoice({ bench, head, pots, chosen, most = Infinity, choose }: Props) {
  const swatchOf = (id: string): string | null => bench.plan.value?.inks.find((ink) => ink.id === id)?.swatch.srgb ?? null;
  return (
    <fieldset class="pots-choice">
      <legend>{head}</legend>
      {pots.length === 0 && <p class="needs-line">{words().picture.noPots}</p>}
      <div class="pots-row">
        {pots.map(({ id, name }) => (
          <label key={id} class="shelf-pot">
            <Pot srgb={swatchOf(id)} />
            <span class="tick">
              <input
                type="checkbox"
                checked={chosen.includes(id)}
                disabled={!chosen.includes(id) && chosen.length >= most}
                onChange={(e) => {
                  const on = e.currentTarget.checked;
                  choose(pots.map((p) => p.id).filter((p) => (p === id ? on : chosen.includes(p))));
                }}
              />
              <span>{name}</span>
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
