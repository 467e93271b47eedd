import type { Said } from '../core/problem.ts';
import type { LengthUnits } from '../core/units/index.ts';
import { languageOf, say, tellSaid, type Key, type Reader, type ValuesOf } from '../words/index.ts';

/** Which language the terminal reads: `--lang`, else what the system is set to. Set once, before a command runs. */
let language = 'en';

export function speak(asked: string | undefined, environment: NodeJS.ProcessEnv): void {
  const set = [environment['LC_ALL'], environment['LC_MESSAGES'], environment['LANG']].find((l) => l !== undefined && l !== '');
  language = languageOf(asked ?? set ?? 'en').id;
}

/** Who reads a command's answer: lengths in the units of the job it is about. */
export function readerIn(units: LengthUnits = 'mm'): Reader {
  return { language, units };
}

/** What core said, as a line for the terminal. */
export function tellHere(said: Said, units: LengthUnits = 'mm'): string {
  return tellSaid(said, readerIn(units));
}

/** What a command says itself, by key. */
export function sayHere<K extends Key>(units: LengthUnits, key: K, ...values: ValuesOf<K> extends undefined ? [] : [ValuesOf<K>]): string {
  return tellHere(say(key, ...values), units);
}
