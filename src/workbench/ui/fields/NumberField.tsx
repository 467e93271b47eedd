import { useId, useState } from 'preact/hooks';
import { readNumber, sayNumber } from './units.ts';

interface Props {
  readonly label: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly digits?: number;
  readonly unit: string;
  readonly onSet: (value: number) => void;
}

/** A number with its unit. Decimal comma and fractions are read; what can't be is marked and said, and changes nothing. */
export function NumberField({ label, value, min, max, digits = 0, unit, onSet }: Props) {
  const [typed, setTyped] = useState<string | null>(null);
  const id = useId();
  const read = typed === null ? value : readNumber(typed.replace(unit, ''));
  const wrong = Number.isNaN(read) || read < min || read > max;
  const commit = (): void => {
    if (typed === null || wrong) return;
    setTyped(null);
    onSet(read);
  };
  return (
    <span class="number-field">
      <input
        type="text"
        inputMode="decimal"
        aria-label={label}
        aria-invalid={wrong}
        aria-describedby={wrong ? id : undefined}
        value={typed ?? sayNumber(value, digits, false)}
        onInput={(e) => setTyped(e.currentTarget.value)}
        onBlur={commit}
        onKeyDown={(e) => {
          if (e.key === 'Enter') commit();
          if (e.key === 'Escape') setTyped(null);
        }}
      />
      <span class="unit">{unit}</span>
      {wrong && (
        <span class="field-wrong" id={id} role="alert">
          {`${sayNumber(min, 6, false)}–${sayNumber(max, 6, false)}`}
        </span>
      )}
    </span>
  );
}
