export * from './schema.ts';
export { migrate, migrations, type Migration } from './migrate.ts';
export { jobFileName, parseJob, parseJobText, writeJobText } from './parse.ts';
export { settleProblems, whereIn, type Document } from './where.ts';
export { checkJob } from './check.ts';
export { readJob, readJobFile, writeJob, writeJobFile } from './files.ts';
export { doneKinds, isDone, markDone, sayTouched, touchesDone, withCutBridges, type DoneKind } from './done.ts';
export { fingerprintOf } from './fingerprint.ts';
export { jobJsonSchema } from './json-schema.ts';
