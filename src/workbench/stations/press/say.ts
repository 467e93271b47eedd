import { sayLength, type LengthUnits } from '../../ui/units.ts';
import { words } from '../../words/index.ts';

/** `45 min`, `7 h 20 min`. */
export function sayMinutes(minutes: number): string {
  const w = words().press;
  const whole = Math.round(minutes);
  if (whole < 60) return `${whole}\u00a0${w.minutes}`;
  const rest = whole % 60;
  return `${Math.floor(whole / 60)}\u00a0${w.hour}${rest > 0 ? ` ${rest}\u00a0${w.minutes}` : ''}`;
}

/** A length as the eye at the press takes it: tenths of a millimetre, hundredths of an inch. */
export function sayFine(mm: number, units: LengthUnits): string {
  return sayLength(mm, units, mm !== 0 && Math.abs(mm) < 0.1 ? (units === 'mm' ? 2 : 3) : units === 'mm' ? 1 : 2);
}
