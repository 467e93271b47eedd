import { words } from '../../../store/words.ts';

export { sayFine } from '../../../ui/units.ts';

/** `45 min`, `7 h 20 min`. */
export function sayMinutes(minutes: number): string {
  const w = words().press;
  const whole = Math.round(minutes);
  if (whole < 60) return `${whole}\u00a0${w.minutes}`;
  const rest = whole % 60;
  return `${Math.floor(whole / 60)}\u00a0${w.hour}${rest > 0 ? ` ${rest}\u00a0${w.minutes}` : ''}`;
}
