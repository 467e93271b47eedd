/** A picture → stencils, inks and their order. */
export {
  cropOf,
  heightOfCrop,
  mostMegapixels,
  pictureRgb,
  preparePictures,
  readPicture,
  scaledLab,
  tidyCrop,
  tidyShare,
} from './picture/index.ts';
export type { Crop, Picture, PictureModules, Pixels } from './picture/index.ts';
export { separate, separated } from './separate.ts';
export { isBlackStripe } from './strike.ts';
export { doErrand } from './errand.ts';
export type { Errand, ErrandDone, Hands } from './errand.ts';
export { importanceOf, markWeights, weightName } from './importance.ts';
export type { Mark, WeightName } from './importance.ts';
export { jobPartsOf } from './job-data.ts';
export type { JobParts } from './job-data.ts';
export type { LayerWish } from './search.ts';
export type { Pot, PotShare } from './recipe.ts';
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
