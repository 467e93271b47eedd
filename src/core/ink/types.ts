import type { Lab, Spectrum } from '../colour/index.ts';
import type { Problem } from '../problem.ts';
import type { Saying } from '../../words/say.ts';

/**
 * What an instrument or a photograph said. `sigma`: its doubt in ΔE00. XYZ on the usual scale where white is 100.
 * Spectra are reflectance factors 0..1 at 380..730 nm in 10 nm steps.
 */
export type Reading =
  | { readonly kind: 'spectrum'; readonly values: readonly number[]; readonly sigma?: number | undefined }
  | { readonly kind: 'xyz'; readonly xyz: readonly [number, number, number]; readonly sigma?: number | undefined }
  | { readonly kind: 'lab'; readonly lab: Lab; readonly sigma?: number | undefined }
  /** From a photograph: `sigma` is always known. */
  | { readonly kind: 'photo'; readonly lab: Lab; readonly sigma: number };

export type ReadingKind = Reading['kind'];

/** Saunderson 1942: ks is the gloss the instrument still sees, k1 and k2 the surface from outside and from inside. */
export interface Surface {
  readonly ks: number;
  readonly k1: number;
  readonly k2: number;
  /** How thick a film lies on ink against the same film on paper (docs/optics.md 3); left out: as thick. */
  readonly trapping?: number;
}

/** Absorption and scattering times thickness, per band, of a film at strength 1 and deposit 1. */
export interface Ink {
  readonly k: Float64Array;
  readonly s: Float64Array;
  /** Works at share^gamma; 1 when absent (ideal: strength goes with the volume share). From a tint ladder. */
  readonly gamma?: number;
}

/** What a film does to what lies below it: own reflectance r0, transmittance down and up again t2, per band. */
export interface Film {
  readonly r0: Float64Array;
  readonly t2: Float64Array;
}

export interface Trust {
  readonly how: 'one-ground' | 'two-grounds' | 'ladder' | 'mix' | 'clear' | 'learned';
  readonly level: 'good' | 'fair' | 'weak';
  readonly words: Saying;
}

export interface InkFound<T extends Trust = Trust> {
  readonly ink: Ink;
  readonly trust: T;
  readonly problems: readonly Problem[];
}

/** Where a reading stands, for problems: a path in the Job (`papers[0].reading`), or a saying where it is no field of it. */
export type Place = string | Saying;

export interface GroundReading {
  readonly ground: Spectrum;
  readonly over: Spectrum;
}
