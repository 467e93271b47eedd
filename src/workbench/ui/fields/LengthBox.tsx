import { useId, useState } from 'preact/hooks';
import { bareLength, bareRange, tryReadLength, type LengthUnits } from './units.ts';

interface Props {
  readonly label: string;
  readonly mm: number | null;
  readonly units: LengthUnits;
  readonly minMm: number;
  readonly maxMm: number;
  /** What stands in an empty field: what is used while nothing is written. */
  readonly hint?: string;
  /** null: the field was emptied. */
  readonly onSet: (mm: number | null) => void;
  /** May be left empty. */
  readonly optional?: boolean;
}

/** A length in the job's units; `3/16 in`, `12,5 mm` and `7 mil` are read too. What can't be is marked and said, and changes nothing. */
export function LengthBox({ label, mm, units, minMm, maxMm, hint, onSet, optional = false }: Props) {
  const [typed, setTyped] = useState<string | null>(null);
  const id = useId();
  const shown = mm === null ? '' : bareLength(mm, units);
  const read = typed === null || typed.trim() === '' ? null : tryReadLength(typed, units);
  const value = read?.ok ? read.value : null;
  const emptied = typed !== null && typed.trim() === '';
  const wrong = typed !== null && (emptied ? !optional : value === null || value < minMm || value > maxMm);
  const commit = (): void => {
    if (typed === null || wrong) return;
    setTyped(null);
    // What was only looked at keeps its last digits.
    if (typed !== shown) onSet(emptied ? null : value);
  };
  return (
    <span class="length-field">
      <label class="length-label" for={`${id}-in`}>
        {label}
      </label>
      <span class="number-field">
        <input
          id={`${id}-in`}
          type="text"
          inputMode={units === 'mm' ? 'decimal' : 'text'}
          aria-invalid={wrong}
          aria-describedby={wrong ? id : undefined}
          placeholder={hint}
          value={typed ?? shown}
          onInput={(e) => setTyped(e.currentTarget.value)}
          onBlur={commit}
          onKeyDown={(e) => {
            if (e.key === 'Enter') commit();
            if (e.key === 'Escape') setTyped(null);
          }}
        />
        <span class="unit">{units}</span>
        {wrong && (
          <span class="field-wrong" id={id} role="alert">
            {bareRange(minMm, maxMm, units)}
          </span>
        )}
      </span>
    </span>
  );
}
