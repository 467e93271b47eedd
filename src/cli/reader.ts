import { type Job, settleProblems } from '../core/job/index.ts';
import type { Problem } from '../core/problem.ts';
import {
  figure,
  languageOf,
  length,
  listed,
  mass,
  say,
  sayingsIn,
  tell,
  tellProblem,
  tellValue,
  type Key,
  type Quantity,
  type Reader,
  type Saying,
  type Value,
  type ValuesOf,
} from '../words/index.ts';

/** Which language the terminal reads: `--lang`, else what the system is set to. Set once, before a command runs. */
let language = 'en';
/** The job that a command is about: lengths are told in its units, and what is wrong with it by the names in it. */
let job: Job | undefined;

export function speak(asked: string | undefined, environment: NodeJS.ProcessEnv): void {
  const set = [environment['LC_ALL'], environment['LC_MESSAGES'], environment['LANG']].find((l) => l !== undefined && l !== '');
  language = languageOf(asked ?? set ?? 'en').id;
  job = undefined;
}

/** From now on this is the job that is spoken of. */
export function speakOf(one: Job): void {
  job = one;
}

/** Who reads a command's answer. */
export function readerHere(): Reader {
  return { language, units: job?.units ?? 'mm' };
}

/** Who reads what a command prints on paper: as asked on the command line, else as the job has it, else as the terminal. */
export function readerOnPaper(asked: string | undefined, of?: Job): Reader {
  return { language: languageOf(asked ?? of?.language ?? language).id, units: of?.units ?? 'mm' };
}

/** What core said, as text for the terminal. */
export function tellHere(saying: Saying): string {
  return tell(saying, readerHere());
}

/** What a command says itself, by key. */
export function sayHere<K extends Key>(key: K, ...values: ValuesOf<K> extends undefined ? [] : [ValuesOf<K>]): string {
  return tellHere(say(key, ...values));
}

/** A value that stands alone in its column. */
export function showHere(value: Value): string {
  return tellValue(value, readerHere());
}

const kinds = { error: 'cli.error', warning: 'cli.warning', note: 'cli.note' } as const;

/** A problem as a line: how bad, where, what, what to do. */
export function problemHere(problem: Problem): string {
  const [settled] = settleProblems([problem], job ?? {});
  return sayHere(kinds[problem.severity], { problem: { kind: 'name', name: tellProblem(settled, readerHere()) } });
}

/** For programs: paths and codes as they are, what is said in English. */
export function printJson(answer: unknown): void {
  console.log(
    JSON.stringify(
      answer,
      sayingsIn((saying) => tell(saying)),
      2,
    ),
  );
}

/** What the knife runs along: metres, or inches. */
export function knifeLength(metres: number, digits = 2): Saying {
  return readerHere().units === 'in' ? listed([length(metres * 1000, 0)]) : say('answers.metres', { metres: figure(metres, digits) });
}

/** What is weighed, to so many digits of a gram; ounces and kilograms get as many as that takes. */
export function weight(grams: number, digits = 0): Quantity & { kind: 'mass' } {
  if (readerHere().units === 'in') return mass(grams, digits + 2);
  return mass(grams, Math.abs(grams) < 1000 ? digits : digits === 0 ? undefined : digits + 3);
}
