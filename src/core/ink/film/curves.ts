import { srgbFromXyz, labFromSpectrum, wavelengthsNm, xyzFromSpectrum, type Lab, type Spectrum } from '../../colour/index.ts';
import { filmOf, stackReflectance } from './film.ts';
import type { Ink, Surface } from '../types.ts';

/** What a plot of an ink shows; packet and screen draw it. */
export interface InkCurves {
  readonly wavelengthsNm: readonly number[];
  /** Absorption and scattering times thickness at strength 1. */
  readonly k: readonly number[];
  readonly s: readonly number[];
  /** Reflectance over the paper for each strength, with its colour. */
  readonly strengths: readonly {
    readonly share: number;
    readonly reflectance: readonly number[];
    readonly lab: Lab;
    readonly srgb: string;
    readonly inGamut: boolean;
  }[];
}

/** Curves of an ink: spectrum at several strengths, K, S. */
export function inkCurves(
  ink: Ink,
  paper: Spectrum,
  surface: Surface,
  shares: readonly number[] = [1, 0.5, 0.25, 0.125, 0.0625],
): InkCurves {
  return {
    wavelengthsNm,
    k: [...ink.k],
    s: [...ink.s],
    strengths: shares.map((share) => {
      const r = stackReflectance(paper, [filmOf(ink, share)], surface);
      const shown = srgbFromXyz(xyzFromSpectrum(r));
      return { share, reflectance: [...r], lab: labFromSpectrum(r), srgb: shown.hex, inGamut: shown.inGamut };
    }),
  };
}
