import { z } from 'zod';
import { tell } from '../../../words/index.ts';
import { explainOne, allFields } from './explain.ts';
import { currentSchemaVersion, JobSchema } from './schema.ts';

type Json = Record<string, unknown>;

/** The Job's JSON Schema (draft 2020-12) as text: what docs/job-schema.json holds. Each field says what it means, its unit, an example. */
export function jobJsonSchema(): string {
  const schema = z.toJSONSchema(JobSchema, { io: 'input' }) as Json;
  const said = new Map([...allFields()].map((field) => [field.path, explainOne(field)]));
  describe(schema, '', said);
  return `${JSON.stringify({ title: `Laydown job, format ${currentSchemaVersion}`, ...schema }, null, 1)}\n`;
}

function describe(node: Json, path: string, said: ReadonlyMap<string, ReturnType<typeof explainOne>>): void {
  for (const [name, property] of Object.entries((node['properties'] ?? {}) as Record<string, Json>)) {
    const at = path === '' ? name : `${path}.${name}`;
    const explained = said.get(at);
    if (explained) {
      property['description'] = tell(explained.means);
      if (explained.unit) property['unit'] = explained.unit.name;
      const example: unknown = Object.values(JSON.parse(`{${explained.example}}`) as Json)[0];
      property['examples'] = [example];
    }
    describe(property, at, said);
  }
  if (node['items'] && !Array.isArray(node['items'])) describe(node['items'] as Json, path, said);
  for (const key of ['oneOf', 'anyOf', 'allOf']) for (const one of (node[key] ?? []) as Json[]) describe(one, path, said);
}
