export * from './schema.ts';
export { migrate, migrations, type Migration } from './migrate.ts';
export { jobFileName, parseJob, parseJobText, writeJobText } from './parse.ts';
export { settleProblems, whereIn, type Document } from './where.ts';
export { checkJob, copiesOf } from './check.ts';
export { readJob, readJobFile, writeJob, writeJobFile } from './files.ts';
export { madeKinds, usualShape } from './usual-shape.ts';
export { jobJsonSchema } from './json-schema.ts';
