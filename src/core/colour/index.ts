/** Spectra, tristimulus values, Lab, what a screen can show, and colour difference. */
export { BANDS, wavelengthsNm } from './bands.ts';
export type { Lab, Spectrum, Xyz } from './bands.ts';
export { whitePoints } from './weights.ts';
export type { Illuminant } from './weights.ts';
export { xyzAt, xyzFromSpectrum } from './xyz.ts';
export { adaptedToD50, labUnderLamp, lamps } from './lamps.ts';
export { chromaOf, hueDegOf, labFromSpectrum, labFromXyz, xyzFromLab } from './lab.ts';
export { srgbFromXyz, xyzFromSrgb } from './srgb.ts';
export type { Srgb } from './srgb.ts';
export { codeOfLight, lightFromXyz, srgbCodes, wideCodes, type RgbSpace } from './rgb-space.ts';
export { deltaE00, deltaE00Of } from './delta-e.ts';
export { smoothestSpectrum, smoothestSpectrumNear } from './smoothest.ts';
