import type { z } from 'zod';
import { faultOf, valueAt } from '../../faults.ts';
import { problem, type Problem } from '../../problem.ts';

/** `layers[2].ink`, as it stands in the file. */
export function pathOf(path: readonly PropertyKey[]): string {
  return path.reduce<string>(
    (text, key) => (typeof key === 'number' ? `${text}[${key}]` : text === '' ? String(key) : `${text}.${String(key)}`),
    '',
  );
}

/** What the schema found wrong in a job. */
export function sayIssue(issue: z.core.$ZodIssue, document: unknown): Problem {
  const { message, advice } = faultOf(issue, valueAt(issue.path, document));
  return problem('error', `job-${issue.code.replaceAll('_', '-')}`, pathOf(issue.path), message, advice);
}
