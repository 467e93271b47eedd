/** Laydown as a library: read a Job, make its Plan, make its packet. See docs/library.md. */
export {
  checkJob,
  currentSchemaVersion,
  JobSchema,
  parseJob,
  parseJobText,
  readJob,
  readJobFile,
  writeJob,
  writeJobFile,
  writeJobText,
} from './core/job/index.ts';
export type { Job, JobBundle, JobCut, JobForm, JobInk, JobLayer, JobPaper, JobReading, JobScreen } from './core/job/index.ts';
export { prepareDrawings, prepareLetters } from './core/form/index.ts';
export { prepareFaces, preparePictures } from './core/separate/index.ts';
export { createPlanner, plan, readyBundle } from './core/plan/index.ts';
export type { Plan, Planner, PlanInput, ReadyBundle } from './core/plan/index.ts';
export { ProblemError } from './core/problem.ts';
export { tell, tellProblem } from './words/index.ts';
export type { BenchStation, Lead, Problem, Severity } from './core/problem.ts';
export { Cancelled, quietTask } from './core/task.ts';
export type { Task } from './core/task.ts';
export { makePacket } from './packet/index.ts';
export type { PacketFile } from './packet/index.ts';
