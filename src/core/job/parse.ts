import type { z } from 'zod';
import { problem, ProblemError, type Problem } from '../problem.ts';
import { migrate } from './migrate.ts';
import { currentSchemaVersion, JobSchema, type Job } from './schema.ts';

/** `layers[2].ink`, as a printmaker would point at it in the file. */
export function sayPath(path: readonly PropertyKey[]): string {
  return (
    path.reduce<string>(
      (text, key) => (typeof key === 'number' ? `${text}[${key}]` : text === '' ? String(key) : `${text}.${String(key)}`),
      '',
    ) || 'job'
  );
}

const advice: Partial<Record<string, string>> = {
  invalid_type: 'Write it in, or correct its kind; docs/job-schema.json lists every field.',
  invalid_value: 'Use one of the words it allows.',
  too_small: 'Use a larger value.',
  too_big: 'Use a smaller value.',
  invalid_union: 'Use one of the forms that docs/job-schema.json lists for it.',
};

function sayIssue(issue: z.core.$ZodIssue): Problem {
  const place = sayPath(issue.path);
  const last = String(issue.path.at(-1) ?? 'job');
  let message = issue.message;
  if (issue.code === 'invalid_type') {
    message =
      issue.input === undefined && /received undefined/.test(issue.message)
        ? `“${last}” is missing.`
        : `“${last}” should be ${issue.expected === 'array' ? 'a list' : `a ${issue.expected}`}.`;
  } else if (issue.code === 'invalid_value') {
    message = `“${last}” must be ${issue.values.map((v) => JSON.stringify(v)).join(' or ')}.`;
  } else if (issue.code === 'too_small') {
    message =
      issue.origin === 'number' || issue.origin === 'int'
        ? `“${last}” must be ${issue.inclusive ? 'at least' : 'more than'} ${issue.minimum}.`
        : `“${last}” must not be empty (at least ${issue.minimum}).`;
  } else if (issue.code === 'too_big') {
    message = `“${last}” must be ${issue.inclusive ? 'at most' : 'less than'} ${issue.maximum}.`;
  } else if (issue.code === 'invalid_format') {
    message = `“${last}” ${issue.message}.`;
  }
  return problem('error', `job-${issue.code.replaceAll('_', '-')}`, place, message, advice[issue.code] ?? 'Correct it in the job.');
}

/**
 * A raw document (parsed JSON) → a Job in the current format, with defaults filled in.
 * Throws `ProblemError` with every problem of the schema at once.
 */
export function parseJob(raw: unknown): Job {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    throw new ProblemError([
      problem(
        'error',
        'job-not-an-object',
        'job.json',
        'This is not a job: it holds no fields.',
        'Choose the job.json that Laydown wrote.',
      ),
    ]);
  }
  const current = migrate(raw as Record<string, unknown>, currentSchemaVersion);
  const result = JobSchema.safeParse(current);
  if (!result.success) throw new ProblemError(result.error.issues.map(sayIssue));
  return result.data;
}

/** Text of a job.json → Job. */
export function parseJobText(text: string, place = 'job.json'): Job {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch (error) {
    throw new ProblemError([
      problem(
        'error',
        'job-not-json',
        place,
        `The file cannot be read as JSON (${error instanceof Error ? error.message : String(error)}).`,
        'It may have been cut short or edited by hand: mend that place, or go back to an earlier copy.',
      ),
    ]);
  }
  return parseJob(raw);
}

/** Text of job.json: two spaces, fields as the Job holds them, a newline at the end. */
export function writeJobText(job: Job): string {
  return `${JSON.stringify(job, null, 2)}\n`;
}
