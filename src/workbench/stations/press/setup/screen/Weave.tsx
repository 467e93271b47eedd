interface Props {
  readonly perCm: number;
  readonly threadMicrons: number;
}

/** A square millimetre of mesh from above, plain weave; black is thread. */
export function Weave({ perCm, threadMicrons }: Props) {
  const pitch = 10_000 / perCm;
  let d = '';
  for (let at = pitch / 2; at < 1000; at += pitch) d += `M${at.toFixed(1)} 0V1000M0 ${at.toFixed(1)}H1000`;
  return (
    <svg class="weave" viewBox="0 0 1000 1000" aria-hidden="true">
      <rect width="1000" height="1000" />
      <path d={d} stroke-width={threadMicrons} />
    </svg>
  );
}
