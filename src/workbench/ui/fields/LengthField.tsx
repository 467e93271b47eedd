import { useId, useState } from 'preact/hooks';
import { bareLength, bareRange, tryReadLength, type LengthUnits } from './units.ts';

interface Common {
  readonly label: string;
  readonly units: LengthUnits;
  readonly minMm: number;
  readonly maxMm: number;
}

interface Wished extends Common {
  readonly mm: number | null;
  /** What stands in an empty field: what is used while nothing is written. */
  readonly hint?: string;
  /** null: the field was emptied. */
  readonly onSet: (mm: number | null) => void;
  /** May be left empty. */
  readonly optional?: boolean;
}

/** A length in the job's units, its name given by what stands around it. */
export function LengthField({ valueMm, onSet, ...common }: Common & { readonly valueMm: number; readonly onSet: (mm: number) => void }) {
  return <Written {...common} mm={valueMm} onSet={(mm) => mm !== null && onSet(mm)} />;
}

/** A length in the job's units with its name beside it. */
export function LengthBox(wished: Wished) {
  const id = useId();
  return (
    <span class="length-field">
      <label class="length-label" for={id}>
        {wished.label}
      </label>
      <Written {...wished} id={id} />
    </span>
  );
}

/** `3/16 in`, `12,5 mm` and `7 mil` are read too. What can't be is marked and said, and changes nothing. */
function Written({ label, mm, units, minMm, maxMm, hint, onSet, optional = false, id }: Wished & { readonly id?: string }) {
  const [typed, setTyped] = useState<string | null>(null);
  const wrongId = useId();
  const shown = mm === null ? '' : bareLength(mm, units);
  const emptied = typed !== null && typed.trim() === '';
  const read = typed === null || emptied ? null : tryReadLength(typed, units);
  const value = read?.ok ? read.value : null;
  const wrong = typed !== null && (emptied ? !optional : value === null || value < minMm || value > maxMm);
  const commit = (): void => {
    if (typed === null || wrong) return;
    setTyped(null);
    // What was only looked at keeps its last digits.
    if (typed !== shown) onSet(emptied ? null : value);
  };
  return (
    <span class="number-field">
      <input
        id={id}
        type="text"
        inputMode={units === 'mm' ? 'decimal' : 'text'}
        aria-label={id === undefined ? label : undefined}
        aria-invalid={wrong}
        aria-describedby={wrong ? wrongId : undefined}
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
        <span class="field-wrong" id={wrongId} role="alert">
          {bareRange(minMm, maxMm, units)}
        </span>
      )}
    </span>
  );
}
