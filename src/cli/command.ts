import type { ParseArgsConfig } from 'node:util';
import type { Saying } from '../words/index.ts';

/** One command of `laydown`. Its `run` prints to the terminal and returns the exit code. */
export interface Command {
  readonly name: string;
  /** How to call it, after `laydown`: `packet JOB [--out DIR]`. */
  readonly usage: Saying;
  /** One line for the list. */
  readonly summary: Saying;
  /** For `laydown NAME --help`. */
  readonly help: readonly HelpPart[];
  readonly options?: ParseArgsConfig['options'];
  /** It writes what is printed on paper: that has a language of its own. */
  readonly prints?: boolean;
  run(call: Call): Promise<number> | number;
}

/** A paragraph, a heading over what follows, or a row: what is typed, and what it does. */
export type HelpPart = Saying | { readonly heading: Saying } | HelpRow;

export interface HelpRow {
  /** The option that it is about: `--out`. */
  readonly option?: string;
  readonly typed: Saying;
  readonly does: Saying;
}

export interface Call {
  readonly words: readonly string[];
  readonly options: Readonly<Record<string, string | boolean | undefined | (string | boolean)[]>>;
  /** The language asked for with `--lang`. */
  readonly language?: string;
}
