export const pointsPerMm = 72 / 25.4;

/** A number as PDF takes it: no exponent, no more digits than a printer can show (0.0001 pt is 35 nm). */
export function say(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError('A page can only be drawn with finite numbers.');
  const text = value.toFixed(4);
  const short = text.replace(/\.?0+$/, '');
  return short === '-0' || short === '' ? '0' : short;
}
