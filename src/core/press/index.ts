/** The press: mesh and deposit, fit, taping, off-contact, risers, register. */
export { studioDefaults } from './defaults.ts';
export type { PaperGrowth } from './defaults.ts';
export { completeMesh, meshTable, openingOf, openPercentOf, theoreticalVolume } from './mesh.ts';
export type { CompleteMesh, Mesh, MeshRow, MeshSource } from './mesh.ts';
export { articleDeposit, depositOf, edgeRidge, ridgeMatters, ridgeOver, transferFromWeighing, wetFromWeighing } from './deposit.ts';
export type { Deposit, EdgeRidge, RidgeOver } from './deposit.ts';
export { inkForRun } from './ink-run.ts';
export type { InkForRun, InkForRunInput } from './ink-run.ts';
export { fitScreen, strokeOf } from './fit.ts';
export type { FitInput, Margin, Remedy, ScreenFit, Side, SizeMm } from './fit.ts';
export { tapingPlan } from './taping.ts';
export type { Rect, TapingPlan } from './taping.ts';
export {
  adviseGap,
  growthAlong,
  growthApproximate,
  growthBetween,
  offContact,
  strainAcross,
  strainApproximate,
  strainAt,
} from './off-contact.ts';
export type { GapAdvice, OffContact } from './off-contact.ts';
export { layersOf, risersFor } from './risers.ts';
export type { Layers, Risers } from './risers.ts';
export { ownSigma, registerMethods, sigmaOf, testScaleFor } from './register-methods.ts';
export type { MethodTolerance, OwnRegister, RegisterMethod, RegisterSigma } from './register-methods.ts';
export { paperChange } from './damp.ts';
export type { PaperChange } from './damp.ts';
export { registerBudget, usualOverlapMm } from './budget.ts';
export type { Beneath, BudgetInput, BudgetLayer, PairBudget, RegisterBudget } from './budget.ts';
export { registerShifts } from './shifts.ts';
export type { LayerShift, RegisterDraws, SheetShifts, ShiftSigma } from './shifts.ts';
export { registerTestSheet, shiftOfLine } from './test-sheet.ts';
export type { TestLine, TestPlace, TestSheet } from './test-sheet.ts';
export { readTestSheets, sigmaRange } from './test-reading.ts';
export { driftAdvice, measuredRegister, registerFromLines, sigmaAtCorner } from './tested.ts';
export { lineFromText, readTestTable, testTable } from './test-table.ts';
export type { MeasuredRegister, TestLines } from './tested.ts';
export type { RegisterFound, TestReading } from './test-reading.ts';
export { stopsTemplate } from './stops.ts';
export type { Stop, StopsTemplate } from './stops.ts';
export { adviseMesh } from './mesh-choice.ts';
export type { MeshAdvice, MeshWish } from './mesh-choice.ts';
