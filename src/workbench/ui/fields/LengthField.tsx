import { useId, useState } from 'preact/hooks';
import { bareLength, bareRange, tryReadLength, type LengthUnits } from './units.ts';

interface Props {
  readonly label: string;
  readonly valueMm: number;
  readonly minMm: number;
  readonly maxMm: number;
  readonly units: LengthUnits;
  readonly onSet: (mm: number) => void;
}

/** A length in the job's units, its name given by what stands around it; `3/16 in`, `12,5 cm` and `7 mil` are read too. What can't be is marked and said, and changes nothing. */
export function LengthField({ label, valueMm, minMm, maxMm, units, onSet }: Props) {
  const [typed, setTyped] = useState<string | null>(null);
  const id = useId();
  const shown = bareLength(valueMm, units, units === 'mm' ? 2 : 3);
  const read = typed === null ? null : tryReadLength(typed, units);
  const wrong = read !== null && (!read.ok || read.value < minMm || read.value > maxMm);
  const commit = (): void => {
    if (read === null || wrong || !read.ok) return;
    setTyped(null);
    // What was only looked at keeps its last digits.
    if (typed !== shown) onSet(read.value);
  };
  return (
    <span class="number-field">
      <input
        type="text"
        inputMode={units === 'mm' ? 'decimal' : 'text'}
        aria-label={label}
        aria-invalid={wrong}
        aria-describedby={wrong ? id : undefined}
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
  );
}
