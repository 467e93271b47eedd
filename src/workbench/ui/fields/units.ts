import { mmPerInch, type LengthUnits } from '../../../core/units/index.ts';
import { area, figure, film, length, lengths, mass, share, tellValue, time, type Value } from '../../../words/one-language.ts';
import { reader } from '../../store/words.ts';

/** Lengths, films, masses, areas, times and numbers of the page, told as what core says is: in the language in use. Reading takes point and comma alike. */
export type { LengthUnits, Reading } from '../../../core/units/index.ts';
export { mmPerInch, readNumber, tryReadLength } from '../../../core/units/index.ts';

const say = (value: Value, units?: LengthUnits): string => tellValue(value, reader(units));

/** `digits` after the point in mm; inches get about three figures. */
export const sayLength = (mm: number, units: LengthUnits, digits?: number): string => say(length(mm, digits), units);
export const saySize = (widthMm: number, heightMm: number, units: LengthUnits): string => say(lengths([widthMm, heightMm]), units);
export const sayFilm = (microns: number, units: LengthUnits, digits?: number): string => say(film(microns, digits), units);
export const sayMass = (grams: number, units: LengthUnits, digits?: number): string => say(mass(grams, digits), units);
export const sayArea = (mm2: number, units: LengthUnits): string => say(area(mm2), units);
export const sayShare = (of1: number, digits?: number): string => say(share(of1, digits));
/** A share as it was set: with its tenth of a per cent, where it has one. */
export const saySetShare = (of1: number): string => sayShare(of1, Math.round(of1 * 1000) % 10 === 0 ? 0 : 1);
export const sayNumber = (value: number, digits: number, fixed: boolean): string => say(figure(value, digits, fixed));
/** `45 min`, `7 h 20 min`. */
export const sayMinutes = (minutes: number): string => say(time(minutes));

/** A length as the eye at the press takes it: tenths of a millimetre, and finer where that would be none. */
export function sayFine(mm: number, units: LengthUnits): string {
  return sayLength(mm, units, mm !== 0 && Math.abs(mm) < 0.1 ? 2 : 1);
}

/** A length as it stands in a field that names its unit beside it. */
export function bareLength(mm: number, units: LengthUnits, digits?: number): string {
  if (units === 'in' && digits === undefined) return sayLength(mm, 'in').replace(/\u00a0in$/, '');
  const value = units === 'mm' ? mm : mm / mmPerInch;
  return sayNumber(value, digits ?? (Math.abs(value) >= 1 ? 2 : 3), false);
}

/** From where to where a field takes a length. */
export function bareRange(minMm: number, maxMm: number, units: LengthUnits): string {
  return `${bareLength(minMm, units, 2)}–${bareLength(maxMm, units, 2)}\u00a0${units}`;
}
