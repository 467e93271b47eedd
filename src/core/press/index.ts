/** The press: mesh and deposit, fit, taping, off-contact, risers, register. */
export { studioDefaults } from './defaults.ts';
export type { PaperGrowth } from './defaults.ts';
export { calledPerInch, completeMesh, meshTable, openingOf, openPercentOf, theoreticalVolume } from './screen/mesh.ts';
export type { CompleteMesh, Mesh, MeshRow, MeshSource } from './screen/mesh.ts';
export { articleDeposit, depositOf, edgeRidge, ridgeMatters, ridgeOver, transferFromWeighing, wetFromWeighing } from './screen/deposit.ts';
export type { Deposit, EdgeRidge, RidgeOver } from './screen/deposit.ts';
export { inkForRun } from './screen/ink-run.ts';
export type { InkForRun, InkForRunInput } from './screen/ink-run.ts';
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
} from './screen/off-contact.ts';
export type { GapAdvice, OffContact } from './screen/off-contact.ts';
export { layersOf, risersFor } from './screen/risers.ts';
export type { Layers, Risers } from './screen/risers.ts';
export { ownSigma, registerMethods, sigmaOf, testScaleFor } from './register/register-methods.ts';
export type { MethodTolerance, OwnRegister, RegisterMethod, RegisterSigma } from './register/register-methods.ts';
export { paperChange } from './screen/damp.ts';
export type { PaperChange } from './screen/damp.ts';
export { registerBudget } from './budget.ts';
export type { Beneath, BudgetInput, BudgetLayer, PairBudget, RegisterBudget } from './budget.ts';
export { registerShifts } from './register/shifts.ts';
export type { LayerShift, RegisterDraws, SheetShifts, ShiftSigma } from './register/shifts.ts';
export { registerTestSheet, shiftOfLine } from './register/test-sheet.ts';
export type { TestLine, TestPlace, TestSheet } from './register/test-sheet.ts';
export { readTestSheets, sigmaRange } from './register/test-reading.ts';
export { driftAdvice, measuredRegister, registerFromLines, sigmaAtCorner } from './register/tested.ts';
export { lineFromText, readTestTable, testTable } from './register/test-table.ts';
export type { MeasuredRegister, TestLines } from './register/tested.ts';
export type { RegisterFound, TestReading } from './register/test-reading.ts';
export { stopsTemplate } from './stops.ts';
export type { Stop, StopsTemplate } from './stops.ts';
export { adviseMesh } from './screen/mesh-choice.ts';
export type { MeshAdvice, MeshWish } from './screen/mesh-choice.ts';
