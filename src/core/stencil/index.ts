/** What a knife can cut: stencils from cuts, what holds them together, and the proof. */
export { makeStencil } from './make-stencil.ts';
export { crossOpening, type Crossing } from './cross-opening.ts';
export { certify, type Limits } from './certificate.ts';
export { defaultMaterials } from './materials.ts';
export type { Material } from './materials.ts';
export { cornersOf, knifeWork, sharpDeg } from './knife.ts';
export { defaultRates, knifeRates } from './rates.ts';
export type { Corner } from './knife.ts';
export { cutOrder } from './cut-order.ts';
export { ridgeFromMm, ridgeWarnings } from './ridge.ts';
export type { RidgeLayer } from './ridge.ts';
export { joinRuns, type JoinedRuns } from './label.ts';
export type { RunSource } from './runs.ts';
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
  NoBridge,
  Offer,
  PointMm,
  Stencil,
  StencilRequest,
} from './types.ts';
export { knifeMinutes } from './rates.ts';
