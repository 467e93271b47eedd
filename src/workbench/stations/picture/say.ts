import { sayNumber, type LengthUnits } from '../../ui/fields/units.ts';

const feetPerMetre = 1 / 0.3048;

/** Length of cut: metres, or feet where inches are used. */
export function sayKnife(metres: number, units: LengthUnits): string {
  const value = units === 'mm' ? metres : metres * feetPerMetre;
  return `${sayNumber(value, value < 10 ? 1 : 0, true)}\u00a0${units === 'mm' ? 'm' : 'ft'}`;
}

export const knifeUnit = (units: LengthUnits): string => (units === 'mm' ? 'm' : 'ft');
export const knifeIn = (metres: number, units: LengthUnits): number => (units === 'mm' ? metres : metres * feetPerMetre);
export const metresOf = (value: number, units: LengthUnits): number => (units === 'mm' ? value : value / feetPerMetre);
