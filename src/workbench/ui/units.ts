import * as units from '../../core/units/index.ts';
import { inLanguage } from '../store/words.ts';

/** Lengths, films, masses, areas and numbers as core says them, with the decimal mark of the language in use. Reading takes point and comma alike. */
export type { LengthUnits, Reading } from '../../core/units/index.ts';
export { mmPerInch, readNumber, tryReadLength } from '../../core/units/index.ts';

const local =
  <A extends readonly unknown[]>(say: (...values: A) => string) =>
  (...values: A): string =>
    inLanguage(say(...values));

export const sayNumber = local(units.sayNumber);
export const sayLength = local(units.sayLength);
export const saySize = local(units.saySize);
export const sayFilm = local(units.sayFilm);
export const sayMass = local(units.sayMass);
export const sayArea = local(units.sayArea);
export const sayShare = local(units.sayShare);

/** A length as the eye at the press takes it: tenths of a millimetre, hundredths of an inch. */
export function sayFine(mm: number, by: units.LengthUnits): string {
  return sayLength(mm, by, mm !== 0 && Math.abs(mm) < 0.1 ? (by === 'mm' ? 2 : 3) : by === 'mm' ? 1 : 2);
}
