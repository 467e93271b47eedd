import { useSignal } from '@preact/signals';
import { sayLength, sayNumber, type LengthUnits } from '../fields/units.ts';
import { words } from '../../store/words.ts';
import { NumberField } from '../fields/NumberField.tsx';
import { cardMm, leastPxPerMm, mostPxPerMm, screenScale, setScreenScale } from './screen-scale.ts';
import { Slider } from '../fields/Slider.tsx';

/** Lays a bank card or a ruler on the screen, so that true size is true. */
export function Calibrate({ units }: { readonly units: LengthUnits }) {
  const w = words().sheet;
  const by = useSignal<'card' | 'ruler'>('card');
  const { pxPerMm, isMeasured } = screenScale.value;
  const rulerMm = units === 'mm' ? 100 : 4 * 25.4;
  const lengthMm = by.value === 'card' ? cardMm.width : rulerMm;
  return (
    <details class="fold calibrate">
      <summary>{isMeasured ? w.screenMeasured : w.screenNotMeasured}</summary>
      <div class="calibrate-body">
        <fieldset class="choices">
          <legend class="unseen">{w.measureWith}</legend>
          <label class="choice-mark">
            <input
              type="radio"
              name="measure-with"
              checked={by.value === 'card'}
              onChange={() => {
                by.value = 'card';
              }}
            />
            <span>{w.card}</span>
          </label>
          <label class="choice-mark">
            <input
              type="radio"
              name="measure-with"
              checked={by.value === 'ruler'}
              onChange={() => {
                by.value = 'ruler';
              }}
            />
            <span>{w.ruler}</span>
          </label>
        </fieldset>
        <p>{by.value === 'card' ? w.cardHow : w.rulerHow(sayLength(rulerMm, units))}</p>
        <div class="calibrate-scroll">
          {by.value === 'card' ? (
            <div class="calibrate-card" style={{ width: `${cardMm.width * pxPerMm}px`, height: `${cardMm.height * pxPerMm}px` }} />
          ) : (
            <div class="calibrate-ruler" style={{ width: `${rulerMm * pxPerMm}px` }} />
          )}
        </div>
        <div class="row">
          <Slider
            label={w.slideUntilItFits}
            value={pxPerMm}
            min={leastPxPerMm}
            max={12}
            step={0.005}
            text={sayNumber(pxPerMm, 2, true)}
            onMove={setScreenScale}
            onSettle={() => undefined}
          />
          <NumberField
            label={w.lengthInPixels}
            value={lengthMm * pxPerMm}
            min={Math.ceil(lengthMm * leastPxPerMm)}
            max={Math.floor(lengthMm * mostPxPerMm)}
            digits={1}
            unit="px"
            onSet={(px) => setScreenScale(px / lengthMm)}
          />
        </div>
      </div>
    </details>
  );
}
