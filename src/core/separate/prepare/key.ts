import { bytesOf, emptyBits, fillBits, type Bits } from '../kernels/bits.ts';
import { blurPlane, gaussTaps } from '../kernels/blur.ts';
import { cuttableMask, rulesOn, type CutRules } from '../finish/cuttable.ts';
import { metresOf } from '../finish/figures.ts';
import { defaultRates } from '../../stencil/index.ts';
import type { SeparateRequest } from '../types.ts';
import type { Ground } from './regions.ts';

/** Lines count so much more than the dark they lie in, and how dark a place is black: between the picture's own darks and lights. */
const lineWeight = 9,
  blackBelow = 0.36;
/** The eye takes lines of about the least width: blurred by this share of it. */
const blurShare = 0.28,
  wider = 1.6,
  evenShare = 0.35;

/**
 * The drawing of a picture in black: its dark masses, and the lines that are darker than what lies around them, as a key block carries them
 * (extended difference of Gaussians: H. Winnemöller, J. E. Kyprianidis, S. C. Olsen, XDoG, Computers and Graphics 36, 2012), with nothing in it
 * that the knife could not follow.
 */
export function keyOf({ lab, width, height, mmPerPx }: Ground, rules: CutRules): Bits {
  const lightness = Float32Array.from({ length: width * height }, (_, i) => lab[3 * i]);
  const soft = (mm: number): Float32Array => {
    const out = new Float32Array(lightness.length);
    blurPlane(lightness, width, height, gaussTaps(Math.max(0.6, mm / mmPerPx)), out);
    return out;
  };
  const near = soft(blurShare * rules.openingPx * mmPerPx),
    far = soft(blurShare * wider * rules.openingPx * mmPerPx);
  const sorted = near.slice().sort(),
    dark = sorted[Math.floor(0.02 * sorted.length)],
    light = sorted[Math.floor(0.98 * sorted.length)];
  const edge = dark + blackBelow * (light - dark);
  const drawn = Float32Array.from(near, (v, i) => (v + lineWeight * (v - far[i]) < edge ? 1 : 0)),
    even = drawn.slice();
  // Fur and grain leave a ragged edge, which no knife should follow.
  blurPlane(drawn, width, height, gaussTaps(evenShare * rules.openingPx), even);
  const mask = emptyBits(width, height);
  for (let i = 0; i < even.length; i++) if (even[i] > 0.5) fillBits(mask, i, i + 1, 1);
  return cuttableMask(mask, rules);
}

/** No more of a budget than this is the key's before anything else is drawn. */
const shareOfBudget = 0.5;
/** The brush gets broader step by step; broader than the last, it would be no drawing. */
const broader = 1.25;
export const broadestBrush = 6;

/** The key, drawn with a brush broad enough for half of the budget, if there is one. */
export function keyWithin(
  ground: Ground,
  rules: CutRules,
  { knife, rates = defaultRates }: Pick<SeparateRequest, 'knife' | 'rates'>,
): { readonly mask: Bits; readonly brush: number } {
  const most = shareOfBudget * Math.min(knife?.metres ?? Infinity, (knife?.minutes ?? Infinity) * rates.metresPerMinute);
  for (let brush = 1; ; brush *= broader) {
    const mask = keyOf(ground, rulesOn(rules, brush));
    if (brush * broader > broadestBrush || metresOf(bytesOf(mask), mask.width, mask.height, 1, ground.mmPerPx) <= most)
      return { mask, brush };
  }
}
