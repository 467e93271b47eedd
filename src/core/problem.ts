/** How bad it is: an error stops the packet, a warning is printed in it, a note explains. */
export type Severity = 'error' | 'warning' | 'note';

/** Something wrong or doubtful, in the printmaker's words: where it is, what is wrong, what to do. */
export interface Problem {
  readonly severity: Severity;
  /** Stable and machine-readable, kebab-case: `drawing-has-text`. */
  readonly code: string;
  /** Where in the Job or file: `layers[2].ink`, `kelp.svg line 12`. */
  readonly place: string;
  readonly message: string;
  readonly advice: string;
}

/** Thrown where no result is possible. Holds every problem found, not only the first. */
export class ProblemError extends Error {
  readonly problems: readonly Problem[];
  constructor(problems: readonly Problem[]) {
    super(problems.map(sayProblem).join('\n'));
    this.name = 'ProblemError';
    this.problems = problems;
  }
}

export function problem(severity: Severity, code: string, place: string, message: string, advice: string): Problem {
  return { severity, code, place, message, advice };
}

/** Shorthand for the common case: one error, thrown. */
export function fail(code: string, place: string, message: string, advice: string): never {
  throw new ProblemError([problem('error', code, place, message, advice)]);
}

/** One line for terminal, page and screen. */
export function sayProblem(p: Problem): string {
  return `${p.place}: ${p.message} ${p.advice}`.trim();
}
