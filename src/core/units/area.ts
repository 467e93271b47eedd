import { sayNumber, threeFigures } from './number.ts';
import type { LengthUnits } from './length.ts';
import { mmPerInch } from './length.ts';

/** `432 cm²`, `0.43 m²` from a tenth of a square metre on, a bridge's `4.2 mm²`; `67 in²`, `0.007 in²`. */
export function sayArea(mm2: number, units: LengthUnits): string {
  if (units === 'in') {
    const inches = mm2 / mmPerInch ** 2;
    return written(inches, 'in²', Math.abs(inches) < 0.1 ? 3 : 2);
  }
  if (Math.abs(mm2) < 100) return written(mm2, 'mm²', Math.abs(mm2) < 10 ? 1 : 0);
  return Math.abs(mm2) >= 100_000 ? written(mm2 / 1e6, 'm²') : written(mm2 / 100, 'cm²');
}

/** `42 %`, `0.4 %`. */
export function sayShare(share: number, digits?: number): string {
  const percent = share * 100;
  return `${sayNumber(percent, digits ?? (Math.abs(percent) >= 10 ? 0 : 1), digits !== undefined)}\u00a0%`;
}

function written(value: number, unit: string, most = 2): string {
  return `${sayNumber(value, Math.min(most, threeFigures(value)), false)}\u00a0${unit}`;
}
