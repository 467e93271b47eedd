/** A picture → stencils, inks and their order. */
export {
  cropOf,
  findFaces,
  heightOfCrop,
  mostMegapixels,
  pictureRgb,
  prepareFaces,
  preparePictures,
  readPicture,
  scaledLab,
  scaledSrgb,
  tidyCrop,
  tidyShare,
} from '../image/index.ts';
export type { Crop, Face, FacePart, ImageMm, Picture, PictureModules, Pixels, SizePx } from '../image/index.ts';
export { separate, separated } from './separate.ts';
export { lookAtWays } from './look.ts';
export type { WayLook } from './look.ts';
export { isBlackStripe } from './finish/strike.ts';
export { doErrand } from './search/errand.ts';
export type {
  Answers,
  BaselineErrand,
  Errand,
  ErrandDone,
  FlatErrand,
  Hands,
  JudgeErrand,
  SearchErrand,
  StencilErrand,
  TradeOffErrand,
} from './search/errand.ts';
export { importanceOf, markWeights, weightName } from './prepare/importance.ts';
export { veilAtHand, veilOf } from './prepare/veil.ts';
export { usualPrice, ways } from './prepare/way.ts';
export type { Way } from './prepare/way.ts';
export type { Structure } from './finish/structure.ts';
export type { LostDetail, LostPart } from './finish/readable.ts';
export type { Mark, WeightName } from './prepare/importance.ts';
export { jobPartsOf } from './finish/job-data.ts';
export type { JobNaming, JobParts } from './finish/job-data.ts';
export { printing, runNames } from './finish/run-names.ts';
export type { LayerWish } from './search/search.ts';
export type { Pot, PotShare } from './search/recipe.ts';
export type {
  Baseline,
  Difference,
  Draft,
  GamutIntent,
  ImportanceMap,
  KnifeBudget,
  PrintedLayer,
  SeparatedLayer,
  SeparateRequest,
  Separation,
  SeparationFigures,
} from './types.ts';
