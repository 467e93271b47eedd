import type { Problem } from '../core/problem.ts';
import { say, tell, tellValue, type Key, type Reader, type Value, type ValuesOf } from '../words/index.ts';

/** Whoever reads a page or a file, and what is said as text for them. Names and notes come through it as they were written. */
export interface Voice {
  readonly reader: Reader;
  /** What core said. */
  tell(said: Problem['message']): string;
  /** What the packet says itself, by key. */
  say<K extends Key>(key: K, ...values: ValuesOf<K> extends undefined ? [] : [ValuesOf<K>]): string;
  /** A value that stands alone: a length, a mass, a count. */
  show(value: Value): string;
}

export function voiceOf(reader: Reader): Voice {
  return {
    reader,
    tell: (said) => tell(said, reader),
    say: (key, ...values) => tell(say(key, ...values), reader),
    show: (value) => tellValue(value, reader),
  };
}

/** Files for machines are in millimetres, whatever the job speaks. */
export function fileVoice(language: string): Voice {
  return voiceOf({ language, units: 'mm' });
}
