/** What a knife can cut: stencils from cuts, what holds them together, and the proof. */
export { islandsBeside } from './least-loss.ts';
export { makeStencil, needsBridges } from './make-stencil.ts';
export { crossOpening, type Crossing } from './proof/cross-opening.ts';
export { certify, type Limits } from './proof/certificate.ts';
export { defaultMaterials } from './materials.ts';
export type { Material } from './materials.ts';
export { cornersOf, knifeWork, sharpDeg } from './knife.ts';
export { defaultRates, knifeRates } from './rates.ts';
export type { Corner } from './knife.ts';
export { cutOrder } from './cut-order.ts';
export { ridgeFromMm, ridgeWarnings } from './raster/ridge.ts';
export type { RidgeLayer } from './raster/ridge.ts';
export { joinRuns, type JoinedRuns } from './raster/label.ts';
export type { RunSource } from './raster/runs.ts';
export type {
  Bridge,
  BridgePin,
  Certificate,
  CostRaster,
  Fault,
  Island,
  KnifeRates,
  KnifeWork,
  LoosePiece,
  Mend,
  InTheWay,
  LocalLoss,
  NoBridge,
  Offer,
  PointMm,
  Stencil,
  Spot,
  StencilRequest,
} from './types.ts';
export { knifeMinutes } from './rates.ts';
