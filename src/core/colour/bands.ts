/** Every spectrum of the house has 36 bands: 380..730 nm in 10 nm steps. */
export const BANDS = 36;
export const wavelengthsNm: readonly number[] = Array.from({ length: BANDS }, (_, i) => 380 + 10 * i);

/** Reflectance 0..1 in 36 bands (papers with brighteners may go a little above 1). */
export type Spectrum = Float64Array;
/** Tristimulus values; Y of the perfect white is 1. Readings typed on the usual 0..100 scale are converted at the edge. */
export type Xyz = readonly [number, number, number];
/** CIELAB, D50 and the 2° observer unless said otherwise. */
export type Lab = readonly [number, number, number];
