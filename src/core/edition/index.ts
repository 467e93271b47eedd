/** The edition: sheets and spoilage, the day, the count at the press, numbering, the record. */
export { studioDefaults } from './defaults.ts';
export { binomialAt, binomialAtLeast, binomialQuantile } from './binomial.ts';
export { certaintyOf, planSheets, proofsFor, shareWhole, sheetsToStart, throughRuns } from './sheets.ts';
export type { PaperForSheets, PaperSheets, ProofCounts, ProofWishes, RunSheets, SheetPlan, SheetsToStart } from './sheets.ts';
export { dryingFactor, openTimeAdvice } from './open-time.ts';
export type { OpenTime } from './open-time.ts';
export { planDay } from './day.ts';
export type { DayInput, DayPlan, DayRun, SheetTime } from './day.ts';
export { clock } from './day-bench.ts';
export type { DayStep, DayWhat } from './day-bench.ts';
export { foldLog, logLine, readLog } from './count-log.ts';
export type { Counted, CountEvent, CountState, ReadLog, RunCount, SheetCount } from './count-log.ts';
export { isGood, numberEdition, roman } from './numbering.ts';
export type { MarkKind, NumberedEdition, NumberedSheet, NumberingInput, Sheet, SheetFault } from './numbering.ts';
