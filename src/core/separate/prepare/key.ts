import { fillBits, emptyBits, type Bits } from '../kernels/bits.ts';
import { blurPlane, gaussTaps } from '../kernels/blur.ts';
import { cuttableMask, type CutRules } from '../finish/cuttable.ts';
import type { Ground } from './regions.ts';

/** Lines count so much more than the dark they lie in, and how dark a place is black: between the picture's own darks and lights. */
const lineWeight = 9,
  blackBelow = 0.36;
/** The eye takes lines of about the least width: blurred by this share of it. */
const blurShare = 0.28,
  wider = 1.6;

/**
 * The drawing of a picture in black: its dark masses, and the lines that are darker than what lies around them, as a key block carries them
 * (extended difference of Gaussians: H. Winnemöller, J. E. Kyprianidis, S. C. Olsen, XDoG, Computers and Graphics 36, 2012), with nothing in it
 * that the knife could not follow.
 */
export function keyOf({ lab, width, height, mmPerPx }: Ground, rules: CutRules): Bits {
  const lightness = Float32Array.from({ length: width * height }, (_, i) => lab[3 * i]);
  const soft = (mm: number): Float32Array => {
    const out = new Float32Array(lightness.length);
    blurPlane(lightness, width, height, gaussTaps(Math.max(0.6, mm / mmPerPx)), out, new Float32Array(lightness.length));
    return out;
  };
  const near = soft(blurShare * rules.openingPx * mmPerPx),
    far = soft(blurShare * wider * rules.openingPx * mmPerPx);
  const sorted = near.slice().sort(),
    dark = sorted[Math.floor(0.02 * sorted.length)],
    light = sorted[Math.floor(0.98 * sorted.length)];
  const edge = dark + blackBelow * (light - dark);
  const mask = emptyBits(width, height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      if (near[i] + lineWeight * (near[i] - far[i]) < edge) fillBits(mask, i, i + 1, 1);
    }
  return cuttableMask(mask, rules);
}
