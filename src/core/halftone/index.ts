/** Tone: what dots, grain and lines of several inks look like, how a picture is split into them, and how they are printed. */
export { curveAt, curveInverse, curveThrough, type ToneCurve } from './model/curve.ts';
export { gainAtHalf, gainCurve, type DotShape, type GainAsk } from './model/gain.ts';
export { overlapShares } from './model/neugebauer.ts';
export { usualN, type RampStep } from './model/ramps.ts';
export { toneForesight, toneModel, type ToneAsk, type ToneForesight, type ToneInk, type ToneModel } from './model/tone-model.ts';
export { bestAngles, moireOf, seen, worstSeen, type AngleAsk, type Moire, type Raster } from './mesh/moire.ts';
export { moirePicture, type FilmLaid, type TonePatch } from './mesh/moire-picture.ts';
export { onPixels } from './mesh/on-pixels.ts';
export { edgeSpreadMicrons, finestRuling, leastDotMicrons, threadsADot, usualRuling, type MeshThreads } from './mesh/limits.ts';
export { screener, type ScreenAsk, type Screener } from './screen/screener.ts';
export { supercellFor, type Supercell } from './screen/supercell.ts';
export { splitPicture, usualInkLimit, type Split, type SplitAsk } from './split/split.ts';
export type { ToneReach } from './split/invert.ts';
export { directionField, type Direction, type ToneGrid } from './lines/flow-field.ts';
export { lineWays, toneCut, toneEnds, type LineWay, type ToneCut, type ToneCutAsk } from './lines/tone-cut.ts';
export { leastSpanL, openTones, type OpenTones } from './lines/open-share.ts';
export { stepCuts, type StepCutsAsk } from './steps/step-cuts.ts';
export { toneSteps, type StepsAsk, type ToneSteps } from './steps/step-strengths.ts';
export { wedgeSheet, wedgeSteps, type WedgeField, type WedgeSheet } from './wedge/wedge-sheet.ts';
export { coverSeen, filterOf, lightShares, spectrumAtCover, type SeenShare } from './wedge/seen-cover.ts';
export {
  bestExposure,
  exposureStrip,
  stripFactor,
  stripRows,
  stripSeconds,
  stripTints,
  type ExposedRow,
  type ExposureFound,
  type ExposureStrip,
} from './wedge/exposure.ts';
