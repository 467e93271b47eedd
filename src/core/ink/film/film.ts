import { exp, expm1, pow } from '../../numeric/index.ts';
import { BANDS, type Spectrum } from '../../colour/index.ts';
import { internal, measured } from './surface.ts';
import type { Film, Ink, Surface } from '../types.ts';

/** How strongly an ink works at a volume share of it. */
export function effectiveShare(ink: Ink, share: number): number {
  return ink.gamma === undefined || ink.gamma === 1 || share === 0 ? share : pow(share, ink.gamma);
}

/**
 * A printed film of an ink.
 * @param strength volume share of ink in the pot, the rest clear base
 * @param deposit film thickness against the film the ink was read from
 */
export function filmOf(ink: Ink, strength = 1, deposit = 1): Film {
  const amount = effectiveShare(ink, strength) * deposit;
  const r0 = new Float64Array(BANDS),
    t2 = new Float64Array(BANDS);
  for (let i = 0; i < BANDS; i++) {
    const film = filmOfBand(ink.k[i] * amount, ink.s[i] * amount);
    r0[i] = film.r0;
    t2[i] = film.t * film.t;
  }
  return { r0, t2 };
}

/**
 * One band of a film with absorption K and scattering S (both times thickness): own reflectance and transmittance
 * (Kubelka 1948), written with sinh(x)/x so that S → 0 and K → 0 need no case of their own.
 */
export function filmOfBand(K: number, S: number): { readonly r0: number; readonly t: number } {
  if (S === 0) return { r0: 0, t: exp(-K) };
  const x = Math.sqrt(K * (K + 2 * S));
  // Both divided by e^x, so that thick films don't overflow.
  const sinhc = x < 1e-4 ? (1 + (x * x) / 6) * exp(-x) : -expm1(-2 * x) / (2 * x);
  const cosh = (1 + exp(-2 * x)) / 2;
  const below = (S + K) * sinhc + cosh;
  return { r0: (S * sinhc) / below, t: exp(-x) / below };
}

/** Reflectance of one band of a film over a ground g, all inside: the same physics in one number, for the hottest loops. */
export function overGround(K: number, S: number, g: number): number {
  if (S === 0) return g * exp(-2 * K);
  const x = Math.sqrt(K * (K + 2 * S));
  const e = exp(-2 * x);
  // sinh(x)/x and cosh(x), both divided by e^x.
  const sinhc = x < 1e-3 ? (1 + (x * x) / 6) * (1 - x + (x * x) / 2 - (x * x * x) / 6) : (1 - e) / (2 * x);
  const below = (S + K) * sinhc + (1 + e) / 2;
  const r0 = (S * sinhc) / below;
  return r0 + (e * g) / (below * below * (1 - r0 * g));
}

/** The inverse: K and S of a film with reflectance r0 and transmittance t; r0 + t < 1. */
export function kAndSOfFilm(r0: number, t: number): { readonly k: number; readonly s: number } {
  const lessR0 = 1 - r0,
    moreR0 = 1 + r0;
  // (1 − R0)² − T² is K times something, (1 + R0)² − T² is not: kept as products so that small ones stay exact.
  const absorbs = Math.max(0, (lessR0 - t) * (lessR0 + t));
  const B = 0.5 * Math.sqrt(absorbs * (moreR0 - t) * (moreR0 + t));
  const ratio = B / t;
  const xOverB = ratio < 1e-6 ? 1 / t : Math.asinh(ratio) / B;
  return { k: xOverB * absorbs * 0.5, s: xOverB * r0 };
}

/** A film over a ground, both inside: r = R0 + T² g / (1 − R0 g) (Kubelka 1948). */
export function addFilm(ground: Spectrum, film: Film): Spectrum {
  const out = new Float64Array(BANDS);
  for (let i = 0; i < BANDS; i++) out[i] = film.r0[i] + (film.t2[i] * ground[i]) / (1 - film.r0[i] * ground[i]);
  return out;
}

/** The same film, so many times as thick. */
export function thinned(film: Film, share: number): Film {
  if (share === 1) return film;
  const r0 = new Float64Array(BANDS),
    t2 = new Float64Array(BANDS);
  for (let i = 0; i < BANDS; i++) {
    if (film.r0[i] === 0) {
      t2[i] = pow(film.t2[i], share);
      continue;
    }
    const { k, s } = kAndSOfFilm(film.r0[i], Math.sqrt(film.t2[i]));
    const made = filmOfBand(k * share, s * share);
    r0[i] = made.r0;
    t2[i] = made.t * made.t;
  }
  return { r0, t2 };
}

/** Measured reflectance of films (first down first) on a paper of measured reflectance. */
export function stackReflectance(paper: Spectrum, films: readonly Film[], surface: Surface): Spectrum {
  const { trapping = 1 } = surface;
  return measured(
    films.reduce((ground, film, j) => addFilm(ground, j === 0 ? film : thinned(film, trapping)), internal(paper, surface)),
    surface,
  );
}
