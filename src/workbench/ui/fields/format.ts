import { deltaE as difference, labColour, tellValue } from '../../../words/one-language.ts';
import { reader, words } from '../../store/words.ts';
import { sayShare } from './units.ts';

export function sayPercent(share: number): string {
  if (share > 0 && share < 0.001) return words().overlaps.tiny;
  return sayShare(share, share < 0.1 ? 1 : 0);
}

export function sayLab(lab: readonly [number, number, number]): string {
  return tellValue(labColour(lab), reader());
}

export function sayDelta(deltaE: number): string {
  return tellValue(difference(deltaE), reader());
}
