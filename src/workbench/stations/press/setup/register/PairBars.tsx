import { sayFine } from '../../../../ui/fields/units.ts';
import type { PairBudget, RegisterBudget } from '../../../../../core/press/index.ts';
import { Pot } from '../../../../ui/Pot.tsx';
import { Why } from '../../../../ui/fields/Why.tsx';
import { told, words } from '../../../../store/words.ts';
import { say as saying } from '../../../../../words/one-language.ts';
import { spreadLayer } from '../edits.ts';
import type { PartProps } from '../part.ts';

interface Props extends PartProps {
  readonly budget: RegisterBudget;
}

/** Pair by pair: how far two runs can fall apart, against how far the drawing lets them overlap. */
export function PairBars({ bench, plan, budget }: Props) {
  const w = words().press;
  const order = { opens: 0, tight: 1, holds: 2, unknown: 3 };
  const meeting = budget.pairs.filter((p) => p.forgivesMm !== null).sort((a, b) => order[a.verdict] - order[b.verdict]);
  const others = budget.pairs.filter((p) => p.forgivesMm === null);
  const most = Math.max(0.1, ...budget.pairs.map((p) => Math.max(p.worstMm, Math.min(p.forgivesMm ?? 0, p.worstMm * 1.5))));
  return (
    <section class="pairs" aria-label={w.meeting}>
      <h3>{w.meeting}</h3>
      {meeting.length === 0 && <p>{w.noneMeet}</p>}
      <ul>
        {meeting.map((pair) => (
          <Pair key={`${pair.first} ${pair.second}`} bench={bench} plan={plan} pair={pair} most={most} />
        ))}
      </ul>
      {others.length > 0 && (
        <p class="field-note">
          {w.otherPairs(others.length)}: {w.canFall(sayFine(Math.max(...others.map((p) => p.likelyMm)), plan.job.units))}
        </p>
      )}
    </section>
  );
}

function Pair({ bench, plan, pair, most }: PartProps & { readonly pair: PairBudget; readonly most: number }) {
  const w = words().press;
  const { units } = plan.job;
  const say = (mm: number): string => sayFine(mm, units);
  const layerOf = (id: string) => plan.layers.find((l) => l.id === id);
  const [first, second] = [layerOf(pair.first), layerOf(pair.second)];
  const nameOf = (id: string): string => layerOf(id)?.name ?? id;
  const jobLayer = (id: string) => bench.job.value!.layers.find((l) => l.id === id);
  const { spreads } = pair;
  const spread = [pair.first, pair.second].map(jobLayer).filter((l) => l !== undefined && l.spreadMm !== 0);
  const share = (mm: number): string => `${Math.min(100, (100 * mm) / most)}%`;
  const forgives = pair.forgivesMm ?? 0;
  // Where a seam bends, spreading by so much overlaps by a little less.
  const byMm = Math.ceil(pair.spreadMm * 11) / 10;
  return (
    <li class={`pair pair-${pair.verdict}`} data-pair={`${pair.first} ${pair.second}`}>
      <div class="pair-head">
        <Pot srgb={first?.swatch?.srgb ?? null} />
        <Pot srgb={second?.swatch?.srgb ?? null} />
        <b>{w.meets(nameOf(pair.first), nameOf(pair.second))}</b>
        <span class="pair-verdict">{pair.verdict === 'opens' ? w.opensBy : pair.verdict === 'tight' ? w.holdsTight : w.holds}</span>
      </div>
      <div class="pair-bars" role="img" aria-label={w.budgetBar(say(pair.likelyMm), say(forgives))}>
        <span class="pair-off" style={{ width: share(pair.likelyMm) }} />
        <span class="pair-worst" style={{ left: share(pair.likelyMm), width: share(Math.max(0, pair.worstMm - pair.likelyMm)) }} />
        <span class="pair-forgives" style={{ width: share(forgives) }} />
      </div>
      <p>
        {w.canFall(say(pair.likelyMm))}, {w.overlapBy(say(forgives))}
        <Why of={w.meets(nameOf(pair.first), nameOf(pair.second))}>
          {w.pairWhy(say(pair.causes.method), say(pair.causes.paper), say(pair.causes.mesh), say(pair.worstMm))} {told(pair.advice)}{' '}
          {pair.verdict === 'opens' && told(saying('register.howToSpread'))} {pair.spreadMm > 0 && w.bends}
        </Why>
      </p>
      <div class="pair-do">
        {pair.spreadMm > 0 && (
          <button
            type="button"
            class="button button-box"
            onClick={() => {
              const now = jobLayer(spreads)?.spreadMm ?? 0;
              spreadLayer(bench, spreads, now + byMm);
              bench.announce(w.spreadDone(nameOf(spreads), say(now + byMm)));
            }}
          >
            {w.spreadBy(nameOf(spreads), say(byMm))}
          </button>
        )}
        {spread.map(
          (layer) =>
            layer && (
              <span key={layer.id} class="spread-now">
                {w.spreadDone(layer.name, say(layer.spreadMm))}
                <button type="button" class="button button-box" onClick={() => spreadLayer(bench, layer.id, 0)}>
                  {w.takeBack}
                </button>
              </span>
            ),
        )}
      </div>
    </li>
  );
}
