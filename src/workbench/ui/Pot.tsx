interface Props {
  /** Colour of what is in it, `#rrggbb`; null: empty, nothing chosen. */
  readonly srgb: string | null;
  readonly label?: string;
}

/** A pot of ink seen from above. */
export function Pot({ srgb, label }: Props) {
  return (
    <svg class="pot" viewBox="0 0 64 64" {...(label === undefined ? { 'aria-hidden': true } : { role: 'img', 'aria-label': label })}>
      <circle class="pot-wall" cx="32" cy="32" r="31" />
      {srgb === null ? <circle class="pot-empty" cx="32" cy="32" r="25.5" /> : <circle cx="32" cy="32" r="26.5" fill={srgb} />}
    </svg>
  );
}
