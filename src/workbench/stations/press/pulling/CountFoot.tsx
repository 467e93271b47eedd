import { useSignal } from '@preact/signals';
import type { Bench } from '../../../store/bench.ts';
import { words } from '../../../store/words.ts';
import type { Count } from './count.ts';

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
