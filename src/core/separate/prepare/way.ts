import type { Ground } from './regions.ts';
import { flatRegions } from './regions.ts';

/** How a picture is taken: near to it; bold, in fewer and larger regions; by light and shade, in tones laid one on the other. */
export const ways = ['near', 'bold', 'light'] as const;
export type Way = (typeof ways)[number];

/** What a mm of outline must save (ΔE00·mm²) when nothing is said: a bold print has fewer of them. */
export const usualPrice: Readonly<Record<Way, number>> = { near: 2, bold: 8, light: 3 };

/** What a mm between two regions of a bold print must save, ΔE²·mm². */
const regionPrice = 250;
/** L* over which tones borrow their hue from each other. */
const hueBlur = 8;

/** The picture as it is aimed at. */
export function asDrawn(ground: Ground, way: Way): Float32Array {
  if (way === 'bold') return flatRegions(ground, regionPrice);
  return way === 'light' ? inTones(ground) : ground.lab;
}

/** Every place at its own lightness, in the hue that places of that lightness have on average. */
function inTones({ lab, weight }: Ground): Float32Array {
  const steps = 101,
    a = new Float64Array(steps),
    b = new Float64Array(steps),
    count = new Float64Array(steps);
  const at = (l: number): number => Math.max(0, Math.min(steps - 1, Math.round(l)));
  for (let i = 0; i < lab.length; i += 3) {
    const k = at(lab[i]),
      w = weight ? weight[i / 3] : 1;
    a[k] += w * lab[i + 1];
    b[k] += w * lab[i + 2];
    count[k] += w;
  }
  const hue = Array.from({ length: steps }, (_, k): readonly [number, number] => {
    let sumA = 0,
      sumB = 0,
      all = 0;
    for (let j = 0; j < steps; j++) {
      const near = 1 / (1 + ((j - k) / hueBlur) ** 4);
      sumA += near * a[j];
      sumB += near * b[j];
      all += near * count[j];
    }
    return all > 0 ? [sumA / all, sumB / all] : [0, 0];
  });
  const out = lab.slice();
  for (let i = 0; i < out.length; i += 3) [out[i + 1], out[i + 2]] = hue[at(lab[i])];
  return out;
}

/** Overlaps of tones laid one on the other: each run prints inside the one before. @param free as many runs, from the bottom */
export function nestedCodes(from: number, free: number): number[] {
  return Array.from({ length: free + 1 }, (_, k) => ((1 << k) - 1) << from);
}
