import { sayDelta, sayPercent } from '../../../ui/fields/format.ts';
import { words } from '../../../store/words.ts';
import { comparing, struck } from '../state.ts';
import type { ShownSeparation } from '../worker/protocol.ts';

/** How the pictures are compared, and what is struck through on the print. */
export function CompareBar({ result }: { readonly result: ShownSeparation }) {
  const w = words().picture;
  const strikes = {
    nothing: w.showNothing,
    reach: w.showReach(sayPercent(result.outOfReachShare)),
    lost: w.showLost(sayDelta(result.detailLostDeltaE)),
  };
  return (
    <div class="compare-bar">
      <fieldset class="choices">
        <legend class="unseen">{w.compare}</legend>
        {(['side', 'wipe'] as const).map((way) => (
          <label key={way} class="choice-mark">
            <input
              type="radio"
              name="comparing"
              checked={comparing.value === way}
              onChange={() => {
                comparing.value = way;
              }}
            />
            <span>{way === 'side' ? w.sideBySide : w.wipe}</span>
          </label>
        ))}
      </fieldset>
      <fieldset class="choices">
        <legend>{w.show}</legend>
        {(['nothing', 'reach', 'lost'] as const).map((what) => (
          <label key={what} class="choice-mark">
            <input
              type="radio"
              name="struck"
              checked={struck.value === what}
              onChange={() => {
                struck.value = what;
              }}
            />
            <span>{strikes[what]}</span>
          </label>
        ))}
      </fieldset>
    </div>
  );
}
