import type { ReadonlySignal, Signal } from '@preact/signals';
import { Films } from '../../ui/proof/Films.tsx';
import { sayDelta, sayPercent } from '../../ui/fields/format.ts';
import { Why } from '../../ui/fields/Why.tsx';
import { words } from '../../store/words.ts';
import type { ShownPaper, ShownPlan } from '../../engine/protocol.ts';
import { nameOverlap } from './names.ts';

interface Props {
  readonly plan: ShownPlan;
  readonly paper: ShownPaper;
  readonly shown: ReadonlySignal<number | null>;
  readonly held: Signal<number | null>;
  readonly region: Signal<number | null>;
}

/** What covers less has no swatch of its own; pointing at the proof still tells of it. */
const leastShown = 0.001;

/** What each overlap becomes on each of the colours that the sheet carries already. */
export function Grounds({ plan, paper, shown, held, region }: Props) {
  const w = words().overlaps;
  if (!paper.grounds) return null;
  const whole = plan.job.image.widthMm * plan.job.image.heightMm;
  return (
    <section class="grounds" aria-label={w.grounds}>
      <h2>
        {w.grounds}
        <Why of={w.grounds}>{w.groundsWhy}</Why>
      </h2>
      {paper.grounds.colours.map((ground, at) => (
        <div key={ground.srgb + at} class={region.value === at ? 'ground ground-shown' : 'ground'}>
          <p>
            <i class="ground-colour" style={{ background: ground.srgb }} /> {w.ground(at + 1, sayPercent(ground.areaMm2 / whole))}
          </p>
          <ul>
            {ground.overlaps
              .filter((one) => one.code !== 0 && one.areaMm2 >= whole * leastShown)
              .toSorted((a, b) => b.areaMm2 - a.areaMm2)
              .map((one) => {
                const overlap = paper.overlaps.find((o) => o.code === one.code);
                if (!overlap) return null;
                return (
                  <li key={one.code}>
                    <button
                      type="button"
                      class={`overlap${shown.value === one.code && region.value === at ? ' overlap-shown' : ''}`}
                      aria-pressed={held.value === one.code && region.value === at}
                      onClick={() => {
                        held.value = held.value === one.code && region.value === at ? null : one.code;
                        region.value = at;
                      }}
                    >
                      <span class="overlap-colour ground-overlap" style={{ background: one.srgb }} />
                      <span class="overlap-facts">
                        <Films layers={plan.layers} here={overlap.layers} />
                        <span class="unseen">{w.onGround(nameOverlap(plan, overlap), at + 1)} </span>
                        <span>{sayPercent(one.areaMm2 / whole)}</span>
                        <small>± {sayDelta(one.band)}</small>
                      </span>
                    </button>
                  </li>
                );
              })}
          </ul>
        </div>
      ))}
    </section>
  );
}
