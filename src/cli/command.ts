import type { ParseArgsConfig } from 'node:util';

/** One command of `laydown`. Its `run` prints to the terminal and returns the exit code. */
export interface Command {
  readonly name: string;
  /** How to call it, after `laydown`: `packet JOB [--out DIR]`. */
  readonly usage: string;
  /** One line for the list. */
  readonly summary: string;
  /** Lines for `laydown NAME --help`. */
  readonly help: string;
  readonly options?: ParseArgsConfig['options'];
  run(call: Call): Promise<number> | number;
}

export interface Call {
  readonly words: readonly string[];
  readonly options: Readonly<Record<string, string | boolean | undefined | (string | boolean)[]>>;
}
