interface Props {
  readonly label: string;
  readonly value: string;
  readonly most: number;
  readonly hint?: string;
  readonly onSet: (text: string) => void;
}

/** A line of words with its name beside it; taken when the field is left. */
export function TextField({ label, value, most, hint, onSet }: Props) {
  return (
    <label class="length-field text-field">
      <span class="length-label">{label}</span>
      <input
        class="text"
        maxLength={most}
        placeholder={hint}
        value={value}
        onChange={(e) => {
          const text = e.currentTarget.value.trim();
          if (text !== value) onSet(text);
        }}
      />
    </label>
  );
}
