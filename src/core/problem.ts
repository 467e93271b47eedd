import type { Saying } from '../words/say.ts';

/** How bad it is: an error stops the packet, a warning is printed in it, a note explains. */
export type Severity = 'error' | 'warning' | 'note';

/** The stations of the bench. */
export type BenchStation = 'forms' | 'picture' | 'stencils' | 'inks' | 'laydown' | 'overlaps' | 'press' | 'pulling' | 'edition';

/** A place on the bench: a station, the part of it that is laid open, and the thing of the Job in hand there, by its id. */
export interface Lead {
  readonly station: BenchStation;
  readonly part?: string;
  readonly id?: string;
}

/** Something wrong or doubtful, in the printmaker's words: where it is, what is wrong, what to do. */
export interface Problem {
  readonly severity: Severity;
  /** Stable and machine-readable, kebab-case: `drawing-has-text`. */
  readonly code: string;
  /** Where in the Job's document, for programs: `layers[2].ink`. Empty where it is no field of the Job. */
  readonly path: string;
  /** Where, as a printmaker says it: `the ink of run 1 (Sky)`. Left out until someone who knows the Job has looked (`job/where.ts`). */
  readonly where?: Saying;
  /** Where on the bench one goes to mend it. Left out where nowhere is. */
  readonly lead?: Lead;
  readonly message: Saying;
  readonly advice: Saying;
}

/** Thrown where no result is possible. Holds every problem found, not only the first. */
export class ProblemError extends Error {
  readonly problems: readonly Problem[];
  constructor(problems: readonly Problem[]) {
    super(problems.map(traceOf).join('\n'));
    this.name = 'ProblemError';
    this.problems = problems;
  }
}

/** `place`: a path in the Job, or a saying where it is no field of it (a file and its line, an option). */
export function problem(severity: Severity, code: string, place: string | Saying, message: Saying, advice: Saying): Problem {
  return typeof place === 'string'
    ? { severity, code, path: place, message, advice }
    : { severity, code, path: '', where: place, message, advice };
}

/** Shorthand for the common case: one error, thrown. */
export function fail(code: string, place: string | Saying, message: Saying, advice: Saying): never {
  throw new ProblemError([problem('error', code, place, message, advice)]);
}

/** Runs a part of something larger; what it refuses goes to `problems`, and the part is missing. */
export function attempt<T>(problems: Problem[], work: () => T): T | null {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    problems.push(...error.problems);
    return null;
  }
}

/** What a stack trace shows a programmer. Printmakers read `tellProblem` (words). */
function traceOf(p: Problem): string {
  const message = `${p.message.key} ${JSON.stringify(p.message.values ?? {})}`;
  return `${p.code}${p.path && ` at ${p.path}`}: ${message}`;
}
