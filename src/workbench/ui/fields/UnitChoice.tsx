import { useId } from 'preact/hooks';
import { words } from '../../store/words.ts';
import type { LengthUnits } from './units.ts';

/** Millimetres or inches. What is written in the job stays the same length. */
export function UnitChoice({ units, onChange }: { readonly units: LengthUnits; readonly onChange: (units: LengthUnits) => void }) {
  const w = words().forms;
  const name = useId();
  return (
    <fieldset class="choices">
      <legend class="unseen">{w.units}</legend>
      {(['mm', 'in'] satisfies LengthUnits[]).map((u) => (
        <label key={u} class="choice-mark">
          <input type="radio" name={name} checked={units === u} onChange={() => onChange(u)} />
          <span>{u === 'mm' ? w.mm : w.inch}</span>
        </label>
      ))}
    </fieldset>
  );
}
