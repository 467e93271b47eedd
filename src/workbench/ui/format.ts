import { sayNumber } from './units.ts';
import { words } from '../store/words.ts';

export function sayPercent(share: number): string {
  const percent = share * 100;
  if (percent > 0 && percent < 0.1) return words().overlaps.tiny;
  return `${sayNumber(percent, percent < 10 ? 1 : 0, true)}\u00a0%`;
}

export function sayLab(lab: readonly [number, number, number]): string {
  return lab.map((v) => sayNumber(v, 0, true).replace('-', '−')).join('\u2002');
}

export function sayDelta(deltaE: number): string {
  return sayNumber(deltaE, 1, true);
}
