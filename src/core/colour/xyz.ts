import type { Spectrum, Xyz } from './bands.ts';
import { weights, type Illuminant } from './weights.ts';

const tables = Object.fromEntries(
  Object.entries(weights).map(([name, rows]) => [name, rows.map((row) => Float64Array.from(row))]),
) as Record<Illuminant, Float64Array[]>;

/** Tristimulus values of a reflectance under an illuminant, 2° observer; Y of the perfect white is 1. */
export function xyzFromSpectrum(r: Spectrum, illuminant: Illuminant = 'D50'): Xyz {
  return xyzAt(r, 0, illuminant);
}

/** The same for one spectrum inside a longer array that starts at `from`. */
export function xyzAt(r: Float64Array, from: number, illuminant: Illuminant = 'D50'): Xyz {
  const [wx, wy, wz] = tables[illuminant];
  let x = 0,
    y = 0,
    z = 0;
  for (let i = 0; i < wx.length; i++) {
    const v = r[from + i];
    x += wx[i] * v;
    y += wy[i] * v;
    z += wz[i] * v;
  }
  return [x, y, z];
}
