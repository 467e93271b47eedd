/** The press: mesh and deposit, fit, taping, off-contact, risers, register. */
export { studioDefaults } from './defaults.ts';
export type { PaperGrowth } from './defaults.ts';
export { completeMesh, meshTable, openingOf, openPercentOf, theoreticalVolume } from './mesh.ts';
export type { CompleteMesh, Mesh, MeshRow, MeshSource } from './mesh.ts';
export { articleDeposit, depositOf, edgeRidge, transferFromWeighing, wetFromWeighing } from './deposit.ts';
export type { Deposit, EdgeRidge } from './deposit.ts';
export { inkForRun } from './ink-run.ts';
export type { InkForRun, InkForRunInput } from './ink-run.ts';
export { fitScreen, strokeOf } from './fit.ts';
export type { FitInput, Margin, Remedy, ScreenFit, Side, SizeMm } from './fit.ts';
export { tapingPlan } from './taping.ts';
export type { Rect, TapingPlan } from './taping.ts';
export { adviseGap, growthAlong, growthApproximate, growthBetween, offContact, strainAcross, strainApproximate, strainAt } from './off-contact.ts';
export type { GapAdvice, OffContact } from './off-contact.ts';
export { layersOf, risersFor } from './risers.ts';
export type { Layers, Risers } from './risers.ts';
