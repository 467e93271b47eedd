import type { JobPart } from '../../../../core/job/index.ts';
import { step, words } from '../../../store/words.ts';
import { LengthField } from '../../../ui/fields/LengthField.tsx';
import { NumberField } from '../../../ui/fields/NumberField.tsx';
import { withPart, withParts } from '../edits.ts';
import { mirrorPart, movePart, scalePart, takePartOff, turnPart, type PartInHand } from './place.ts';
import { RepeatNumbers } from './RepeatNumbers.tsx';
import { draft, takePart } from '../state.ts';

const hows: readonly JobPart['how'][] = ['add', 'takeAway', 'common'];

/** The part in hand in numbers: the same things that pointer and keys do, exactly. */
export function PartNumbers(hand: PartInHand) {
  const { bench, cutId, index, form } = hand;
  const w = words().forms;
  const { units } = bench.job.value!;
  const part = draft.value?.part === index ? draft.value.placed : hand.part;
  const again = (): void => {
    bench.edit(step('putForm', form.name, bench.job.value?.cuts.find((c) => c.id === cutId)?.name ?? ''), (j) =>
      withParts(j, cutId, (parts) => [
        ...parts.slice(0, index + 1),
        { ...hand.part, xMm: hand.part.xMm + 5, yMm: hand.part.yMm + 5 },
        ...parts.slice(index + 1),
      ]),
    );
    takePart(index + 1);
  };
  const scatter = part.repeat?.kind === 'scatter';
  return (
    <div class="part-numbers">
      <fieldset class="choices">
        <legend>{w.howTitle}</legend>
        {hows.map((how) => (
          <label key={how} class="choice-mark">
            <input
              type="radio"
              name="how"
              checked={part.how === how}
              onChange={() => bench.edit(step('howForm', form.name), (j) => withPart(j, cutId, index, { how }))}
            />
            <span>{w.how[how]}</span>
          </label>
        ))}
      </fieldset>
      <div class="nums">
        {!scatter && (
          <label class="num">
            <span>{w.x}</span>
            <LengthField
              label={w.x}
              valueMm={part.xMm}
              minMm={-5000}
              maxMm={5000}
              units={units}
              onSet={(v) => movePart(hand, v, hand.part.yMm)}
            />
          </label>
        )}
        {!scatter && (
          <label class="num">
            <span>{w.y}</span>
            <LengthField
              label={w.y}
              valueMm={part.yMm}
              minMm={-5000}
              maxMm={5000}
              units={units}
              onSet={(v) => movePart(hand, hand.part.xMm, v)}
            />
          </label>
        )}
        <label class="num">
          <span>{w.width}</span>
          <LengthField
            label={w.width}
            valueMm={form.widthMm * part.scale}
            minMm={0.5}
            maxMm={5000}
            units={units}
            onSet={(v) => scalePart(hand, v / form.widthMm)}
          />
        </label>
        <label class="num">
          <span>{w.height}</span>
          <LengthField
            label={w.height}
            valueMm={form.heightMm * part.scale}
            minMm={0.5}
            maxMm={5000}
            units={units}
            onSet={(v) => scalePart(hand, v / form.heightMm)}
          />
        </label>
        <label class="num">
          <span>{w.scale}</span>
          <NumberField
            label={w.scale}
            value={part.scale * 100}
            min={1}
            max={100000}
            digits={1}
            unit="%"
            onSet={(v) => scalePart(hand, v / 100)}
          />
        </label>
        <label class="num">
          <span>{w.angle}</span>
          <NumberField label={w.angle} value={part.angleDeg} min={-3600} max={3600} digits={1} unit="°" onSet={(v) => turnPart(hand, v)} />
        </label>
        <label class="tick">
          <input type="checkbox" checked={part.mirror} onChange={() => mirrorPart(hand)} />
          <span>{w.mirror}</span>
        </label>
      </div>
      <RepeatNumbers {...hand} />
      <div class="row">
        <button type="button" class="button button-line" onClick={again}>
          {w.again}
        </button>
        <button type="button" class="button button-line" onClick={() => takePartOff(hand)}>
          {w.takeOff}
        </button>
      </div>
    </div>
  );
}
