import { name as asName, say, type Saying } from '../../../words/say.ts';
import { cleanLine, cleanNote } from '../../plain-text.ts';
import type { z } from 'zod';
import { faultOf, valueAt } from '../../faults.ts';
import { fail, problem, ProblemError, type Problem } from '../../problem.ts';
import { mostDeep } from '../schema/limits.ts';
import { migrate } from './migrate.ts';
import { withToneAreas } from './tone-areas.ts';
import { currentSchemaVersion, JobSchema, type Job } from '../schema/schema.ts';
import { settleProblems, type Document } from '../place/where.ts';

/** The document's name inside a job folder or a `.laydown` file. */
export const jobFileName = 'job.json';

const theFile = (file: string): Saying => say('where.file', { file: asName(file) });

/**
 * A raw document (parsed JSON) → a Job in the current format, with defaults filled in.
 * Throws `ProblemError` with every problem of the schema at once.
 */
export function parseJob(raw: unknown, file = jobFileName): Job {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    fail('job-not-an-object', theFile(file), say('job.notAJob'), say('job.chooseWritten', { file: asName(jobFileName) }));
  }
  const document = raw as Document;
  const deep = tooDeep(document);
  if (deep !== null) fail('job-too-deep', deep, say('job.tooDeep', { most: mostDeep }), say('job.takeOut'));
  try {
    const current = migrate(raw as Record<string, unknown>, currentSchemaVersion);
    const result = JobSchema.safeParse(withToneAreas(current));
    if (result.success) return result.data;
    throw new ProblemError(result.error.issues.map((issue) => sayIssue(issue, current)));
  } catch (error) {
    throw error instanceof ProblemError ? new ProblemError(settleProblems(error.problems, document)) : error;
  }
}

/** Bytes of a job.json as text: some editors begin it with a byte order mark, or write UTF-16. */
export function decodeJobText(bytes: Uint8Array): string {
  const [a, b] = bytes;
  const encoding = a === 0xfe && b === 0xff ? 'utf-16be' : a === 0xff && b === 0xfe ? 'utf-16le' : 'utf-8';
  return new TextDecoder(encoding).decode(bytes);
}

/** Text of a job.json → Job. */
export function parseJobText(text: string, file = jobFileName): Job {
  let raw: unknown;
  try {
    raw = JSON.parse(text.replace(/^\ufeff/, ''));
  } catch (error) {
    const line = lineOf(error, text);
    fail(
      'job-not-json',
      line === null ? theFile(file) : say('where.fileLine', { file: asName(file), line }),
      say('job.notJson'),
      say('job.mendOrGoBack'),
    );
  }
  return parseJob(raw, file);
}

/** Engines tell where JSON breaks off, each in its own way; some do not. */
function lineOf(error: unknown, text: string): number | null {
  const told = error instanceof SyntaxError ? error.message : '';
  const line = /line (\d+)/.exec(told);
  if (line) return Number(line[1]);
  const position = /position (\d+)/.exec(told);
  if (position) return text.slice(0, Number(position[1])).split('\n').length;
  return /end of/i.test(told) ? text.trimEnd().split('\n').length : null;
}

/** The first field with groups in groups without end below it: they could be read, but no longer written. */
function tooDeep(document: Document): string | null {
  const under = (value: unknown, depth: number): boolean =>
    typeof value === 'object' && value !== null && (depth > mostDeep || Object.values(value).some((inner) => under(inner, depth + 1)));
  return Object.entries(document).find(([, value]) => under(value, 1))?.[0] ?? null;
}

const notes = new Set(['note']);
/** Fields of one line, as the schema has them. */
const lines = new Set([
  'name',
  'title',
  'maker',
  'signature',
  'printer',
  'printedFrom',
  'printedTo',
  'otherEditions',
  'workshop',
  'says',
  'date',
  'place',
]);

/**
 * Text of job.json: two spaces, fields as the Job holds them, a newline at the end. Characters that reading would refuse are left out,
 * so that what was written can always be opened again.
 */
export function writeJobText(job: Job): string {
  const written = (key: string, value: unknown): unknown => {
    if (typeof value !== 'string') return value;
    if (lines.has(key)) return cleanLine(value) || (value === '' ? '' : '?');
    return notes.has(key) ? cleanNote(value) : value;
  };
  return `${JSON.stringify(job, written, 2)}\n`;
}

/** `layers[2].ink`, as it stands in the file. */
function pathOf(path: readonly PropertyKey[]): string {
  return path.reduce<string>(
    (text, key) => (typeof key === 'number' ? `${text}[${key}]` : text === '' ? String(key) : `${text}.${String(key)}`),
    '',
  );
}

/** What the schema found wrong in a job. */
function sayIssue(issue: z.core.$ZodIssue, document: unknown): Problem {
  const { message, advice } = faultOf(issue, valueAt(issue.path, document));
  return problem('error', `job-${issue.code.replaceAll('_', '-')}`, pathOf(issue.path), message, advice);
}
