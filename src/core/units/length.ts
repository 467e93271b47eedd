import { say, type Saying } from '../../words/say.ts';
import { sayNumber, threeFigures } from './number.ts';
import { read, tryRead } from './read.ts';
import type { Reading, UnitFamily } from './read.ts';

/** The two systems a Job can speak. */
export type LengthUnits = 'mm' | 'in';

/** One inch is 25.4 mm exactly (international yard, 1959). */
export const mmPerInch = 25.4;

const lengths: UnitFamily = {
  kind: 'length',
  noun: say('units.length'),
  advice: say('units.writeLength'),
  units: [
    { words: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'], inBase: 1 },
    { words: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'], inBase: 10 },
    { words: ['m', 'metre', 'metres', 'meter', 'meters'], inBase: 1000 },
    { words: ['in', 'inch', 'inches', '"', '″', '”', "''"], inBase: mmPerInch },
    { words: ['ft', 'foot', 'feet', "'", '′', '’'], inBase: 12 * mmPerInch },
    { words: ['mil', 'mils', 'thou'], inBase: mmPerInch / 1000 },
    { words: ['µm', 'μm', 'um', 'micron', 'microns', 'µ', 'μ'], inBase: 0.001 },
    { words: ['pt', 'point', 'points'], inBase: mmPerInch / 72 },
  ],
};

/**
 * Length in mm from what was written: `7 mil`, `3/16 in`, `1 1/2"`, `0.18 mm`, `12,5 cm`, `1 ft 6 in`. A bare number is
 * in `defaultUnit`. Negative lengths are read; whether one makes sense is the caller's matter. Throws ProblemError.
 */
export function readLength(text: string, defaultUnit: LengthUnits | 'cm' = 'mm', place: string | Saying = ''): number {
  return read(lengths, text, defaultUnit, place);
}

/** Same as a result, for a field that is still being typed in. */
export function tryReadLength(text: string, defaultUnit: LengthUnits | 'cm' = 'mm'): Reading {
  return tryRead(lengths, text, defaultUnit);
}

/** `180 mm`, `7.09 in`. Without `digits`: about three figures, no trailing noughts. With it: exactly so many. */
export function sayLength(mm: number, units: LengthUnits, digits?: number): string {
  const value = units === 'mm' ? mm : mm / mmPerInch;
  const usual =
    units === 'mm'
      ? Math.min(threeFigures(value), 2) + (Math.abs(value) < 1 ? 1 : 0)
      : threeFigures(value) + (Math.abs(value) >= 10 ? 1 : 0);
  return `${sayNumber(value, digits ?? (Math.abs(value) >= 100 ? 1 : usual), digits !== undefined)}\u00a0${units}`;
}

/** On a ruler: `3/16 in`, `1 1/2 in`. Rounded to the nearest part (16: sixteenths). */
export function sayInchFraction(mm: number, parts = 16): string {
  const steps = Math.round(Math.abs(mm / mmPerInch) * parts);
  const whole = Math.floor(steps / parts);
  let over = parts;
  let left = steps % parts;
  while (left > 0 && left % 2 === 0 && over % 2 === 0) {
    left /= 2;
    over /= 2;
  }
  const text = left === 0 ? `${whole}` : whole === 0 ? `${left}/${over}` : `${whole} ${left}/${over}`;
  return `${mm < 0 && steps > 0 ? '-' : ''}${text}\u00a0in`;
}

/**
 * Inches without their sign, as a ruler says them where it can: `3/16`, `7 1/2`; else about three figures, `0.118`. A length that is a
 * sixteenth to half a thousandth is one: nothing in this trade is measured finer in inches.
 */
export function bareInches(mm: number, fixed = false): string {
  const value = mm / mmPerInch;
  const size = Math.abs(value);
  const sixteenths = Math.round(size * 16);
  if (sixteenths % 16 !== 0 && size < 100 && Math.abs(size - sixteenths / 16) < 0.0005) return sayInchFraction(mm).replace(/\u00a0in$/, '');
  return sayNumber(value, size >= 100 ? 1 : size >= 10 ? 2 : 3, fixed && size > 0);
}

/** `180 × 240 mm`. */
export function saySize(widthMm: number, heightMm: number, units: LengthUnits, digits?: number): string {
  return `${sayLength(widthMm, units, digits).replace(/\u00a0.*$/, '')} × ${sayLength(heightMm, units, digits)}`;
}

/** A film or a sheet: `24 µm`, `0.9 mil`. */
export function sayFilm(microns: number, units: LengthUnits, digits?: number): string {
  const value = units === 'mm' ? microns : microns / 25.4;
  return `${sayNumber(value, digits ?? Math.min(1, threeFigures(value)), digits !== undefined)}\u00a0${units === 'mm' ? 'µm' : 'mil'}`;
}
