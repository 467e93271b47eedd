export * from './schema.ts';
export { migrate, migrations, type Migration } from './migrate.ts';
export { parseJob, parseJobText, writeJobText, sayPath } from './parse.ts';
export { checkJob } from './check.ts';
export { jobFileName, readJob, readJobFile, writeJob, writeJobFile } from './files.ts';
export { jobJsonSchema } from './json-schema.ts';
