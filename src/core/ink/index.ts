/** Ink films: readings → inks, mixing, overlaps, recipes, correcting, learning. */
export type { Film, GroundReading, Ink, InkFound, Reading, ReadingKind, Surface, Trust } from './types.ts';
export { checkShare, readingProblems, sigmaOf, spectrumFromReading } from './reading.ts';
export { defaultSurface, internal, measured } from './surface.ts';
export { addFilm, effectiveShare, filmOf, filmOfBand, kAndSOfFilm, stackReflectance } from './film.ts';
export { clearInk, inkOverOneGround, inkOverTwoGrounds } from './from-drawdown.ts';
export type { TwoGroundTrust } from './from-drawdown.ts';
export { inkFromLadder } from './ladder.ts';
export type { LadderStep, LadderTrust } from './ladder.ts';
export { mixInks, sharesOfParts } from './mix.ts';
export type { InkShare } from './mix.ts';
export { overlapColours, overlapSpectra } from './overlaps.ts';
export type { OverlapColours } from './overlaps.ts';
export { modelBand } from './model-band.ts';
export type { ModelBand } from './model-band.ts';
export { readCgats, readCsv, readCxf, readReadings, readTyped } from './import/index.ts';
export type { ReadFile, ReadPatch } from './import/index.ts';
