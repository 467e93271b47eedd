import { cbrt } from '../numeric/index.ts';
import type { Lab, Spectrum, Xyz } from './bands.ts';
import { whitePoints, type Illuminant } from './weights.ts';
import { xyzFromSpectrum } from './xyz.ts';

// CIE 15:2004: the two constants as exact fractions.
const epsilon = 216 / 24389;
const kappa = 24389 / 27;

const f = (t: number): number => (t > epsilon ? cbrt(t) : (kappa * t + 16) / 116);
const fInverse = (u: number): number => (u ** 3 > epsilon ? u ** 3 : (116 * u - 16) / kappa);

/** XYZ (Y of white = 1) → CIELAB for the white point of the illuminant. */
export function labFromXyz(xyz: Xyz, illuminant: Illuminant = 'D50'): Lab {
  const [xn, yn, zn] = whitePoints[illuminant];
  const fx = f(xyz[0] / xn),
    fy = f(xyz[1] / yn),
    fz = f(xyz[2] / zn);
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
}

/** CIELAB → XYZ (Y of white = 1). */
export function xyzFromLab(lab: Lab, illuminant: Illuminant = 'D50'): Xyz {
  const [xn, yn, zn] = whitePoints[illuminant];
  const fy = (lab[0] + 16) / 116;
  return [xn * fInverse(fy + lab[1] / 500), yn * fInverse(fy), zn * fInverse(fy - lab[2] / 200)];
}

/** Reflectance → CIELAB. */
export function labFromSpectrum(r: Spectrum, illuminant: Illuminant = 'D50'): Lab {
  return labFromXyz(xyzFromSpectrum(r, illuminant), illuminant);
}

/** Chroma and hue angle (degrees, 0..360) of a Lab colour. */
export function chromaOf(lab: Lab): number {
  return Math.hypot(lab[1], lab[2]);
}

export function hueDegOf(lab: Lab): number {
  const deg = (Math.atan2(lab[2], lab[1]) * 180) / Math.PI;
  return deg < 0 ? deg + 360 : deg;
}
