import { say, share } from '../../../words/say.ts';
import { fail } from '../../problem.ts';
import { studioDefaults } from '../defaults.ts';
import type { PaperGrowth } from '../defaults.ts';
import type { SizeMm } from '../fit.ts';

export interface PaperChange {
  /** Change of a length of 1 mm, along x and y: least, most. */
  readonly xShare: readonly [number, number];
  readonly yShare: readonly [number, number];
  /** Over the given size. */
  readonly xMm: readonly [number, number];
  readonly yMm: readonly [number, number];
}

/**
 * Paper that moves with damp between two runs: percent for a span of humidity (published for bond: 0.10..0.20 along,
 * 0.20..0.40 across the grain; the span, 33 to 66 %, is assumed, common practice), in proportion to the change. With the
 * grain unknown, either way is possible and the whole range stands. Positive when the paper grows.
 */
export function paperChange(
  sizeMm: SizeMm,
  grain: 'along-width' | 'along-height' | 'unknown',
  humidityFrom: number,
  humidityTo: number,
  growth: PaperGrowth = studioDefaults.paperGrowth,
): PaperChange {
  for (const value of [humidityFrom, humidityTo]) {
    if (!(value >= 0 && value <= 100))
      fail(
        'humidity',
        'register.humidityPercent',
        say('register.humidityImpossible', { humidity: share(value / 100) }),
        say('register.readHygrometer'),
      );
  }
  if (!(growth.overPoints > 0)) fail('paper-growth', say('register.growth'), say('register.growthNeedsSpan'), say('register.giveSpan'));
  const points = (humidityTo - humidityFrom) / growth.overPoints / 100;
  const along = growth.alongPercent;
  const across = growth.acrossPercent;
  const either = [Math.min(along[0], across[0]), Math.max(along[1], across[1])] as const;
  const [x, y] = grain === 'unknown' ? [either, either] : grain === 'along-width' ? [along, across] : [across, along];
  const scaled = (range: readonly [number, number], lengthMm: number): readonly [number, number] => {
    const ends = [range[0] * points * lengthMm, range[1] * points * lengthMm];
    return [Math.min(...ends) + 0, Math.max(...ends) + 0];
  };
  return { xShare: scaled(x, 1), yShare: scaled(y, 1), xMm: scaled(x, sizeMm[0]), yMm: scaled(y, sizeMm[1]) };
}
