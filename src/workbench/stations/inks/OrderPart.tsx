import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { OrderWishes } from '../../../core/ink/index.ts';
import type { OrdersAnswer } from '../../../core/asks/index.ts';
import { sayNumber } from '../../ui/fields/units.ts';
import { PaperSwitch } from '../../ui/proof/PaperSwitch.tsx';
import { Why } from '../../ui/fields/Why.tsx';
import { sayDelta } from '../../ui/fields/format.ts';
import { listed } from '../../../words/one-language.ts';
import { told, words } from '../../store/words.ts';
import { takeOrder } from './edits.ts';
import { refuse, type InkPartProps } from './state.ts';

/** As many are looked through for orders that come out the same. */
const enoughToGroup = 500;

const wishes = ['nearWanted', 'manyColours', 'lightnessRange', 'clean', 'steady'] as const;

/** Every order of the runs, ranked by what counts. */
export function OrderPart({ bench, plan, paper, job }: InkPartProps) {
  const w = words().inks;
  const weights = useSignal<Required<OrderWishes>>({
    nearWanted: job.wanted.length > 0 ? 2 : 0,
    manyColours: 1,
    lightnessRange: 0,
    clean: 1,
    steady: 0,
  });
  const share = useSignal<number | null>(null);
  const answer = useSignal<OrdersAnswer | null>(null);
  const stop = useRef<AbortController | null>(null);
  const decided = plan.layers.filter((l) => l.inkId !== null);
  const rank = async (): Promise<void> => {
    stop.current = new AbortController();
    share.value = 0;
    try {
      await bench.upToDate();
      answer.value = await bench.ask(
        'orders',
        { paperId: paper.id, wishes: weights.value },
        {
          signal: stop.current.signal,
          onProgress: (done) => {
            share.value = done;
          },
        },
      );
      bench.announce(w.orders(answer.value.orders));
    } catch (error) {
      refuse(bench, error);
    } finally {
      share.value = null;
    }
  };
  const present = decided.map((l) => l.id).join();
  const layerOf = (id: string) => plan.layers.find((l) => l.id === id);
  const saysOf = (v: OrdersAnswer['groups'][number]['values']): string =>
    w.values(
      job.wanted.length > 0 ? sayDelta(v.nearWanted) : null,
      v.manyColours,
      sayNumber(v.lightnessRange, 0, true),
      sayNumber(v.clean, 0, true),
      sayDelta(v.steady),
    );
  return (
    <div class="order-part part-words">
      <h2>
        {w.orderHead}
        <Why of={w.orderHead}>{w.orderWhy}</Why>
      </h2>
      <p>{w.orderText}</p>
      <PaperSwitch bench={bench} />
      <div class="ink-wishes">
        {wishes.map((wish) => (
          <fieldset key={wish} class="ink-wish">
            <legend>{w.wishes[wish]}</legend>
            {w.weights.map((says, weight) => (
              <label key={says} class="ink-chip">
                <input
                  type="radio"
                  name={`wish-${wish}`}
                  checked={weights.value[wish] === weight}
                  onChange={() => {
                    weights.value = { ...weights.value, [wish]: weight };
                  }}
                />
                {says}
              </label>
            ))}
          </fieldset>
        ))}
      </div>
      <div class="row">
        {share.value === null ? (
          <button type="button" class="button button-strong" disabled={decided.length < 2} onClick={() => void rank()}>
            {w.rank}
          </button>
        ) : (
          <>
            <progress value={share.value} aria-label={w.ranking(Math.round(share.value * 100))} />
            <span>{w.ranking(Math.round(share.value * 100))}</span>
            <button type="button" class="button button-box" onClick={() => stop.current?.abort()}>
              {w.stop}
            </button>
          </>
        )}
        {decided.length < 2 && <span>{w.tooFew}</span>}
        {answer.value && share.value === null && <span>{w.orders(answer.value.orders)}</span>}
      </div>
      {answer.value?.noDifference && (
        <p>
          <b>{w.noDifference}</b>
        </p>
      )}
      {answer.value && (
        <ol class="orders">
          {answer.value.groups.slice(0, answer.value.noDifference ? 1 : undefined).map((one, i) => {
            const now = one.layers.join() === present;
            return (
              <li key={one.layers.join()} class="order-card">
                <h3>
                  {w.orderNo(i + 1)}
                  {now && <small>{w.present}</small>}
                </h3>
                <ol class="order-stack" reversed aria-label={w.firstDown}>
                  {one.layers.toReversed().map((id) => (
                    <li key={id}>
                      <i style={{ background: layerOf(id)?.swatch?.srgb }} />
                      {layerOf(id)?.name ?? id}
                    </li>
                  ))}
                </ol>
                <p>{saysOf(one.values)}</p>
                {one.alike > 0 && !answer.value!.noDifference && (
                  <p class="order-alike">{w.alike(one.alike, answer.value!.orders > enoughToGroup)}</p>
                )}
                {one.warnings.ridges + one.warnings.register > 0 && (
                  <p class="needs-line">{w.orderWarns(one.warnings.ridges, one.warnings.register)}</p>
                )}
                <p>{one.loses.length > 0 ? w.loses(told(listed(one.loses, 'semicolon'))) : w.losesNothing}</p>
                {!now && (
                  <button
                    type="button"
                    class={i === 0 ? 'button button-strong' : 'button button-box'}
                    onClick={() => {
                      takeOrder(bench, one.layers);
                      bench.announce(w.orderTaken);
                    }}
                  >
                    {w.takeOrder(i + 1)}
                  </button>
                )}
              </li>
            );
          })}
        </ol>
      )}
    </div>
  );
}
