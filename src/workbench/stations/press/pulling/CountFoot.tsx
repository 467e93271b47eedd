import { useSignal } from '@preact/signals';
import type { Bench } from '../../../store/bench.ts';
import { words } from '../../../store/words.ts';
import type { Count } from './count.ts';
import { shared, type Shared } from './share.ts';
import { guarded, setGuarded } from './taps.ts';

/** How the count is kept, whether the screen stays on, and beginning anew. */
export function CountFoot({ bench, count, awake }: { readonly bench: Bench; readonly count: Count; readonly awake: boolean }) {
  const w = words().pulling;
  const asking = useSignal(false);
  const begin = async (): Promise<void> => {
    await count.startOver();
    asking.value = false;
    bench.announce(w.startedOver);
  };
  return (
    <footer class="count-foot">
      <p>
        {count.kept.value === 'one' ? w.keptOnce : w.keptTwice} {awake ? w.awake : w.asleep}
      </p>
      {count.damaged.value > 0 && (
        <p role="alert">
          <b>{w.damaged(count.damaged.value)}</b>
        </p>
      )}
      <label class="tick">
        <input type="checkbox" checked={guarded.value} onChange={(e) => setGuarded(e.currentTarget.checked)} />
        <span>{words().away.guard}</span>
      </label>
      {shared.value === 'gone' && <p role="status">{words().away.gone}</p>}
      {shared.value !== null && shared.value !== 'gone' && <SharePart shared={shared.value} />}
      <a class="button" href="#press">
        {w.backToBench}
      </a>
      {count.state.value.standing.length > 0 &&
        (asking.value ? (
          <p class="row">
            {w.startOverAsk}
            <button type="button" class="button" onClick={() => void begin()}>
              {w.startOverYes}
            </button>
            <button
              type="button"
              class="button"
              onClick={() => {
                asking.value = false;
              }}
            >
              {w.startOverNo}
            </button>
          </p>
        ) : (
          <button
            type="button"
            class="button"
            onClick={() => {
              asking.value = true;
            }}
          >
            {w.startOver}
          </button>
        ))}
    </footer>
  );
}

/** How another device comes to count: the square code with the address, and what goes over the network unprotected. */
function SharePart({ shared }: { readonly shared: Shared }) {
  const w = words().away;
  return (
    <section class="share-part">
      <img src={`data:image/svg+xml;charset=utf-8,${encodeURIComponent(shared.qr)}`} alt={w.shareQr} width="160" height="160" />
      <div>
        <h3>{w.shareTitle}</h3>
        <p>{w.shareText(shared.address, shared.code)}</p>
        <p>{w.devices(shared.devices)}</p>
        <p>{w.notPrivate}</p>
      </div>
    </section>
  );
}
