interface Props {
  readonly label: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  /** How the value is read out: `60 %`. */
  readonly text: string;
  /** While it moves. */
  readonly onMove: (value: number) => void;
  /** When it is let go. */
  readonly onSettle: () => void;
}

export function Slider({ label, value, min, max, step, text, onMove, onSettle }: Props) {
  return (
    <input
      class="slider"
      type="range"
      aria-label={label}
      aria-valuetext={text}
      min={min}
      max={max}
      step={step}
      value={value}
      onInput={(e) => onMove(e.currentTarget.valueAsNumber)}
      onChange={onSettle}
    />
  );
}
