import { Films } from '../../ui/proof/Films.tsx';
import { sayDelta } from '../../ui/fields/format.ts';
import { Why } from '../../ui/fields/Why.tsx';
import { words } from '../../store/words.ts';
import type { ShownPaper, ShownPlan } from '../../engine/protocol.ts';
import { nameOverlap } from './names.ts';

interface Props {
  readonly plan: ShownPlan;
  readonly paper: ShownPaper;
  readonly held: number | null;
  readonly onShow: (code: number) => void;
}

/** The overlaps whose measurement would narrow this print's colours most; a press shows where they lie. */
export function WorthReading({ plan, paper, held, onShow }: Props) {
  const w = words().overlaps;
  const worth = paper.worthReading;
  if (!worth) return null;
  return (
    <section class="worth-reading" aria-label={w.worth}>
      <h2>
        {w.worth}
        <Why of={w.worth}>{w.worthWhy}</Why>
      </h2>
      <ol>
        {worth.picks.map((pick) => {
          const overlap = paper.overlaps.find((o) => o.code === pick.code);
          if (!overlap) return null;
          const name = nameOverlap(plan, overlap);
          return (
            <li key={pick.code}>
              <button
                type="button"
                class="button"
                aria-pressed={held === pick.code}
                title={w.showWorth(name)}
                onClick={() => onShow(pick.code)}
              >
                <span class="worth-swatch" style={{ background: overlap.srgb }} />
                <Films layers={plan.layers} here={overlap.layers} />
                <span>{name}</span> <small>{w.worthThen(sayDelta(pick.meanBand))}</small>
              </button>
            </li>
          );
        })}
      </ol>
      <p>
        <small>{w.worthNow(sayDelta(worth.meanBand))}</small>
      </p>
    </section>
  );
}
