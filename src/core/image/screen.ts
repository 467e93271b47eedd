import { srgbFromXyz, xyzFromLab } from '../colour/index.ts';

/**
 * A picture's Lab as sRGB bytes, 3 a pixel, for a screen or a PNG. Colours nearer than half a unit share one: an eye can't tell, and it is
 * ten times as quick.
 * @param lab 3 a pixel
 */
export function pictureRgb(lab: Float32Array): Uint8Array {
  const known = new Map<number, readonly [number, number, number]>();
  const out = new Uint8Array(lab.length);
  let last = NaN,
    rgb: readonly [number, number, number] | undefined;
  for (let i = 0; i < lab.length; i += 3) {
    const l = Math.round(lab[i] * 2),
      a = Math.round(lab[i + 1] * 2),
      b = Math.round(lab[i + 2] * 2);
    const key = (l * 1024 + a + 512) * 1024 + b + 512;
    if (key !== last || rgb === undefined) rgb = known.get((last = key));
    if (rgb === undefined) known.set(key, (rgb = srgbFromXyz(xyzFromLab([l / 2, a / 2, b / 2])).rgb));
    out[i] = rgb[0];
    out[i + 1] = rgb[1];
    out[i + 2] = rgb[2];
  }
  return out;
}
