import { BANDS } from '../../colour/index.ts';
import { fail } from '../../problem.ts';
import { figure, say, share as asShare } from '../../../words/say.ts';
import { effectiveShare } from './film.ts';
import type { Ink } from '../types.ts';

export interface InkShare {
  readonly ink: Ink;
  /** Share of the whole by volume; shares that don't reach 1 leave the rest clear base. */
  readonly share: number;
}

/**
 * Ink from parts by volume: K = Σ cᵢ kᵢ, S = Σ cᵢ sᵢ (docs/optics.md 4).
 * @throws ProblemError when a share is negative or the shares exceed the whole
 */
export function mixInks(parts: readonly InkShare[]): Ink {
  const k = new Float64Array(BANDS),
    s = new Float64Array(BANDS);
  let whole = 0;
  for (const { ink, share } of parts) {
    if (!(share >= 0))
      fail('share-out-of-range', say('where.mix'), say('ink.noSuchPart', { part: figure(share, 3, false) }), say('ink.partsFromNought'));
    whole += share;
    const amount = effectiveShare(ink, share);
    for (let i = 0; i < BANDS; i++) {
      k[i] += amount * ink.k[i];
      s[i] += amount * ink.s[i];
    }
  }
  if (whole > 1 + 1e-6)
    fail('shares-exceed-whole', say('where.mix'), say('ink.potOverfull', { whole: asShare(whole, 1) }), say('ink.divideBySum'));
  return { k, s };
}

/** Parts in any measure → shares of the whole. */
export function sharesOfParts(parts: readonly number[]): number[] {
  const sum = parts.reduce((a, b) => a + b, 0);
  if (!(sum > 0) || parts.some((p) => !(p >= 0))) fail('parts-out-of-range', say('where.mix'), say('ink.noParts'), say('ink.enterParts'));
  return parts.map((p) => p / sum);
}
