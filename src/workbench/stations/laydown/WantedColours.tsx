import type { Job } from '../../../core/job/index.ts';
import { srgbOfLab, wantedHere, wantedName } from '../../../core/asks/index.ts';
import { Films } from '../../ui/proof/Films.tsx';
import { sayDelta } from '../../ui/fields/format.ts';
import { Why } from '../../ui/fields/Why.tsx';
import { words } from '../../store/words.ts';
import type { ShownPaper, ShownPlan } from '../../engine/protocol.ts';
import { at } from '../inks/state.ts';

interface Props {
  readonly plan: ShownPlan;
  readonly paper: ShownPaper;
  readonly wanted: Job['wanted'];
}

/** Colours pinned to overlaps, each beside what it is now: follows the sliders. */
export function WantedColours({ plan, paper, wanted }: Props) {
  const w = words().laydown;
  if (wanted.length === 0) return null;
  return (
    <section class="wanted-here" aria-label={w.wanted}>
      <h2>
        {w.wanted}
        <Why of={w.wanted}>
          {w.whyWanted}{' '}
          <a
            href="#inks"
            onClick={() => {
              at.part.value = 'wanted';
            }}
          >
            {w.wantedMore}
          </a>
        </Why>
      </h2>
      <ul>
        {wanted.map((one, i) => {
          const name = wantedName(one, plan.layers);
          const on = plan.papers.find((p) => p.id === one.paper) ?? paper;
          const { now, deltaE } = wantedHere(one, on);
          return (
            <li key={i}>
              <span class="wanted-pair" aria-hidden="true">
                <i style={{ background: srgbOfLab(one.lab) }} />
                <i style={now ? { background: now.srgb } : undefined} />
              </span>
              <Films layers={plan.layers} here={one.layers} />
              <span>
                {deltaE === null ? w.wantedOpen(name) : w.wantedHere(name, sayDelta(deltaE), words().overlaps.bandWords(deltaE))}
                <small>{on.name}</small>
              </span>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
