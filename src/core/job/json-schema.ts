import { z } from 'zod';
import { currentSchemaVersion, JobSchema } from './schema.ts';

/** The Job's JSON Schema (draft 2020-12) as text: what docs/job-schema.json holds. */
export function jobJsonSchema(): string {
  const schema = z.toJSONSchema(JobSchema, { io: 'input' });
  return `${JSON.stringify({ title: `Laydown job, format ${currentSchemaVersion}`, ...schema }, null, 1)}\n`;
}
