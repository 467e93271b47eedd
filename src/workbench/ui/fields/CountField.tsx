import { NumberField } from './NumberField.tsx';

interface Props {
  readonly label: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly digits?: number;
  readonly unit?: string;
  readonly onSet: (value: number) => void;
}

/** A number with its name beside it. */
export function CountField({ label, unit = '', ...field }: Props) {
  return (
    <span class="length-field">
      <span class="length-label" aria-hidden="true">
        {label}
      </span>
      <NumberField {...field} label={label} unit={unit} />
    </span>
  );
}
