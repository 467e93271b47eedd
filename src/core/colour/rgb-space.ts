import { inverse3, pow, product3, times3, turned3, type Matrix3 } from '../numeric/index.ts';
import type { Xyz } from './bands.ts';
import { xyzFromSrgb } from './srgb.ts';

/** How a picture holds its colours: three numbers 0..1 a pixel, all on the curve of IEC 61966-2-1. */
export interface RgbSpace {
  readonly name: 'sRGB' | 'Rec. 2020';
  /** XYZ under D50, Y of white = 1. */
  readonly toXyz: (rgb: readonly [number, number, number]) => Xyz;
}

export const srgbCodes: RgbSpace = { name: 'sRGB', toXyz: xyzFromSrgb };

/** Light of the primaries of ITU-R BT.2020 → XYZ under D65, and Bradford's way from there to D50: both as CSS Color 4 tables them. */
const rec2020: Matrix3 = [
  [0.6369580483012914, 0.14461690358620832, 0.1688809751641721],
  [0.2627002120112671, 0.6779980715188708, 0.05930171646986196],
  [0, 0.028072693049087428, 1.060985057710791],
];
const toD50: Matrix3 = [
  [1.0479297925449969, 0.022946870601609652, -0.05019226628920524],
  [0.02962780877005599, 0.9904344267538799, -0.017073799063418826],
  [-0.009243040646204504, 0.015055191490298152, 0.7518742814281371],
];
const wideLight = product3(toD50, rec2020);

/** Holds whatever inks and paper show. */
export const wideCodes: RgbSpace = {
  name: 'Rec. 2020',
  toXyz: ([r, g, b]) => times3(wideLight, [lightOf(r), lightOf(g), lightOf(b)]),
};

/** XYZ under D50 → light of the primaries: below 0 or above 1 where a colour lies beyond them. */
export const lightFromXyz: Readonly<Record<RgbSpace['name'], Matrix3>> = {
  sRGB: inverse3(turned3([xyzFromSrgb([1, 0, 0]), xyzFromSrgb([0, 1, 0]), xyzFromSrgb([0, 0, 1])])),
  'Rec. 2020': inverse3(wideLight),
};

// IEC 61966-2-1, both ways.
function lightOf(code: number): number {
  return code <= 0.04045 ? code / 12.92 : pow((code + 0.055) / 1.055, 2.4);
}

export function codeOfLight(light: number): number {
  return light <= 0.0031308 ? 12.92 * light : 1.055 * pow(light, 1 / 2.4) - 0.055;
}
