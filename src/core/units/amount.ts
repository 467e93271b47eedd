import { say, type Saying } from '../../words/say.ts';
import { sayNumber, threeFigures } from './number.ts';
import { read, tryRead } from './read.ts';
import type { Reading, UnitFamily } from './read.ts';
import type { LengthUnits } from './length.ts';

/** Avoirdupois ounce: 1/16 of 453.59237 g exactly (international pound, 1959). */
export const gramsPerOunce = 453.59237 / 16;
/** US fluid ounce: 1/128 of a gallon of 231 cubic inches, so 29.5735295625 mL exactly. */
export const millilitresPerFluidOunce = (231 * 25.4 ** 3) / 128 / 1000;

const masses: UnitFamily = {
  kind: 'mass',
  noun: say('units.mass'),
  advice: say('units.writeMass'),
  units: [
    { words: ['g', 'gr', 'gram', 'grams', 'gramme', 'grammes'], inBase: 1 },
    { words: ['kg', 'kilogram', 'kilograms', 'kilo', 'kilos'], inBase: 1000 },
    { words: ['mg', 'milligram', 'milligrams'], inBase: 0.001 },
    { words: ['oz', 'ounce', 'ounces'], inBase: gramsPerOunce },
    { words: ['lb', 'lbs', 'pound', 'pounds'], inBase: 16 * gramsPerOunce },
  ],
};

const volumes: UnitFamily = {
  kind: 'volume',
  noun: say('units.volume'),
  advice: say('units.writeVolume'),
  units: [
    { words: ['ml', 'millilitre', 'millilitres', 'milliliter', 'milliliters', 'cm³', 'cc'], inBase: 1 },
    { words: ['cl', 'centilitre', 'centilitres'], inBase: 10 },
    { words: ['l', 'litre', 'litres', 'liter', 'liters'], inBase: 1000 },
    { words: ['fl oz', 'floz', 'fluid ounce', 'fluid ounces', 'fl. oz'], inBase: millilitresPerFluidOunce },
    { words: ['tsp', 'teaspoon', 'teaspoons'], inBase: 5 },
    { words: ['tbsp', 'tablespoon', 'tablespoons'], inBase: 15 },
  ],
};

/** Grams from `120 g`, `4 oz`, `1 lb 2 oz`. Throws ProblemError. */
export function readMass(text: string, defaultUnit: 'g' | 'oz' = 'g', place: string | Saying = ''): number {
  return read(masses, text, defaultUnit, place);
}

export function tryReadMass(text: string, defaultUnit: 'g' | 'oz' = 'g'): Reading {
  return tryRead(masses, text, defaultUnit);
}

/** Millilitres from `60 mL`, `4 fl oz` (US); spoons are metric ones, 5 and 15 mL. Throws ProblemError. */
export function readVolume(text: string, defaultUnit: 'ml' | 'fl oz' = 'ml', place: string | Saying = ''): number {
  return read(volumes, text, defaultUnit, place);
}

export function tryReadVolume(text: string, defaultUnit: 'ml' | 'fl oz' = 'ml'): Reading {
  return tryRead(volumes, text, defaultUnit);
}

/** `112 g`, `2.7 g`, from a kilogram on `1.25 kg`; `3.95 oz` where the Job speaks inches. */
export function sayMass(grams: number, units: LengthUnits = 'mm', digits?: number): string {
  if (units === 'in') return written(grams / gramsPerOunce, 'oz', digits);
  return Math.abs(grams) >= 1000 ? written(grams / 1000, 'kg', digits ?? 2) : written(grams, 'g', digits, 1);
}

/** `60 mL`, from a litre on `1.25 L`; `2.03 fl oz` where the Job speaks inches. */
export function sayVolume(millilitres: number, units: LengthUnits = 'mm', digits?: number): string {
  if (units === 'in') return written(millilitres / millilitresPerFluidOunce, 'fl\u00a0oz', digits);
  return Math.abs(millilitres) >= 1000 ? written(millilitres / 1000, 'L', digits ?? 2) : written(millilitres, 'mL', digits, 1);
}

function written(value: number, unit: string, digits: number | undefined, most = 2): string {
  return `${sayNumber(value, digits ?? Math.min(most, threeFigures(value)), digits !== undefined)}\u00a0${unit}`;
}
