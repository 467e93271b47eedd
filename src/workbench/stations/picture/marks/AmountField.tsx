import { useId, useState } from 'preact/hooks';
import { readNumber, sayNumber } from '../../../ui/fields/units.ts';

interface Props {
  readonly label: string;
  readonly value: number | null;
  readonly unit: string;
  readonly digits?: number;
  readonly min: number;
  readonly max: number;
  readonly hint: string;
  /** null: emptied. */
  readonly onSet: (value: number | null) => void;
}

/** A number that may be left open. Decimal comma and fractions are read; what can't be is marked and said, and changes nothing. */
export function AmountField({ label, value, unit, digits = 0, min, max, hint, onSet }: Props) {
  const [typed, setTyped] = useState<string | null>(null);
  const id = useId();
  const shown = value === null ? '' : sayNumber(value, digits, true);
  const bare = typed === null ? '' : typed.replace(unit, '').trim();
  const read = bare === '' ? null : readNumber(bare);
  const wrong = read !== null && (Number.isNaN(read) || read < min || read > max);
  const commit = (): void => {
    if (typed === null || wrong) return;
    setTyped(null);
    if (typed !== shown) onSet(read);
  };
  return (
    <label class="length-field">
      <span class="length-label">{label}</span>
      <span class="number-field">
        <input
          type="text"
          inputMode="decimal"
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
        <span class="unit">{unit}</span>
        {wrong && <span class="field-wrong" id={id} role="alert">{`${min}–${max} ${unit}`}</span>}
      </span>
    </label>
  );
}
