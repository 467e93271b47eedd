// Makes docs/job-schema.json from the one typed description of the Job. A test holds the file to it.
import { writeFileSync } from 'node:fs';
import { jobJsonSchema } from '../src/core/job/index.ts';

writeFileSync(new URL('../docs/job-schema.json', import.meta.url), jobJsonSchema());
