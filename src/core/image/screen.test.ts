import { expect, test } from 'vitest';
import { labFromXyz, xyzFromSrgb } from '../colour/index.ts';
import { seeded } from '../random.ts';
import { pictureRgb } from './screen.ts';

test('colours of a screen come back within a step or two of 255', () => {
  const random = seeded(3),
    rgb = Array.from({ length: 900 }, () => random.below(256));
  const lab = new Float32Array(rgb.length);
  for (let i = 0; i < rgb.length; i += 3) lab.set(labFromXyz(xyzFromSrgb([rgb[i] / 255, rgb[i + 1] / 255, rgb[i + 2] / 255])), i);
  const off = [...pictureRgb(lab)].map((v, i) => Math.abs(v - rgb[i])).sort((a, b) => a - b);
  expect(off[Math.floor(off.length * 0.95)]).toBeLessThanOrEqual(2);
});
