import type { ShownPlan } from '../../engine/protocol.ts';
import { words } from '../../store/words.ts';
import type { Falling, FallKind } from './falling.ts';
import { sayFine } from '../fields/units.ts';
import { Why } from '../fields/Why.tsx';

interface Props {
  readonly falling: Falling;
  readonly plan: ShownPlan;
}

/** Chooses a sheet of the draw, and says how far off its layers lie. */
export function FallChoice({ falling: { kind, turn, sheet }, plan }: Props) {
  const w = words().press;
  const { draws } = plan.register;
  const choices: readonly (readonly [FallKind, string])[] = [
    ['register', w.proofInRegister],
    ['typical', w.proofTypical],
    ['worst', w.proofWorst],
  ];
  const say = (mm: number): string => sayFine(mm, plan.job.units);
  return (
    <>
      <fieldset class="sheet-kinds">
        <legend class="unseen">{w.proofChoice}</legend>
        {choices.map(([id, name]) => (
          <label key={id} class="sheet-kind">
            <input
              type="radio"
              name="sheet-kind"
              checked={kind.value === id}
              onChange={() => {
                kind.value = id;
                turn.value = 0;
              }}
            />
            <span>{name}</span>
          </label>
        ))}
        <button
          type="button"
          class="button button-box"
          disabled={sheet === null}
          onClick={() => {
            turn.value++;
          }}
        >
          {w.another}
        </button>
      </fieldset>
      <p class="fall-says" aria-live="polite">
        {sheet === null ? w.sheetInRegister : w.sheetOff(say(draws.sheets[sheet].offMm))}
        <Why of={w.proofChoice}>{w.sheetWhy(draws.sheets.length, say(draws.medianMm), say(draws.p95Mm))}</Why>
      </p>
    </>
  );
}
