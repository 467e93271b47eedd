import { Films } from '../../ui/proof/Films.tsx';
import { sayDelta } from '../../ui/fields/format.ts';
import { sayShare } from '../../ui/fields/units.ts';
import { Why } from '../../ui/fields/Why.tsx';
import { words } from '../../store/words.ts';
import type { ShownPaper, ShownPlan } from '../../engine/protocol.ts';
import { changedOverlaps, differencesOf, type Difference } from '../../../core/asks/index.ts';

interface Props {
  readonly left: { readonly plan: ShownPlan; readonly paper: ShownPaper };
  readonly right: { readonly plan: ShownPlan; readonly paper: ShownPaper };
}

/** The most overlaps listed: with eight runs there may be hundreds, and the last ones are hardly seen. */
const mostListed = 24;

/** What was decided differently, and what that does to the colours. */
export function Told({ left, right }: Props) {
  const w = words().compare;
  const decided = differencesOf(left.plan.job, right.plan.job);
  const changed = changedOverlaps(left.paper.overlaps, right.paper.overlaps);
  const name = (plan: ShownPlan, ids: readonly string[]): string =>
    ids.length === 0
      ? words().overlaps.barePaper
      : words().overlaps.films(ids.map((id) => plan.layers.find((l) => l.id === id)?.name ?? id));
  return (
    <div class="versus-told">
      <section aria-label={w.differs}>
        <h2>{w.differs}</h2>
        {decided.length === 0 ? (
          <p>{w.nothing}</p>
        ) : (
          <ul class="versus-list">
            {decided.map((d, i) => (
              <li key={i}>{sayDifference(d)}</li>
            ))}
          </ul>
        )}
      </section>
      <section aria-live="polite">
        <h2>
          {changed.length === 0 ? w.noOverlaps : w.overlaps(changed.length)}
          {changed.length > 0 && <Why of={w.overlaps(changed.length)}>{w.whyDelta}</Why>}
        </h2>
        <ul class="versus-overlaps">
          {changed.slice(0, mostListed).map(({ left: a, right: b, deltaE, within }) => {
            const [plan, overlap] = a ? [left.plan, a] : [right.plan, b!];
            return (
              <li key={overlap.layers.join(' ')}>
                <span class="versus-pair">
                  <span class="versus-swatch" style={a ? { background: a.srgb } : undefined} />
                  <span class="versus-swatch" style={b ? { background: b.srgb } : undefined} />
                </span>
                <Films layers={plan.layers} here={overlap.layers} />
                <span>
                  <b>{name(plan, overlap.layers)}</b>{' '}
                  <small>
                    {deltaE === null
                      ? w.only((a ? w.left : w.right).toLowerCase())
                      : `ΔE00 ${sayDelta(deltaE)}, ${within ? w.within : w.seen}`}
                  </small>
                </span>
              </li>
            );
          })}
        </ul>
      </section>
    </div>
  );
}

function sayDifference(d: Difference): string {
  const w = words().compare;
  switch (d.kind) {
    case 'only-left':
      return w.onlyLeft(d.run);
    case 'only-right':
      return w.onlyRight(d.run);
    case 'place':
      return w.place(d.run, d.from, d.to);
    case 'ink':
      return w.ink(d.run, d.from ?? w.open1, d.to ?? w.open1);
    case 'strength':
      return w.strength(d.run, sayShare(d.from), sayShare(d.to));
    case 'side':
      return w.side(d.run, d.to === 'piece');
    case 'ink-figures':
      return w.inkFigures(d.ink);
    case 'paper':
      return w.paperDiffers(d.paper);
    case 'out':
    case 'in':
    case 'cut':
    case 'stencil':
      return w[d.kind](d.run);
    default:
      return w[d.kind];
  }
}
