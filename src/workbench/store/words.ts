import { computed, signal } from '@preact/signals';
import type { Said } from '../../core/problem.ts';
import type { LengthUnits } from '../../core/units/index.ts';
import { tell } from '../../words/index.ts';
import { coreInGerman } from '../words/core/de/index.ts';
import { phrasebook, type Phrasebook } from '../words/core/phrasebook.ts';
import { de } from '../../words/de/bench/index.ts';
import { en } from '../../words/en/bench/index.ts';

/** All texts of the Workbench. Another language is an object of this type; the compiler finds what it lacks. */
export type Words = typeof en;

/** Every language that there is a whole catalogue of. Another one is a line here; the switch shows as soon as there are two. */
export const languages: readonly {
  readonly id: string;
  readonly name: string;
  readonly decimal: '.' | ',';
  readonly words: Words;
  readonly told: Phrasebook;
}[] = [
  { id: 'en', name: 'English', decimal: '.', words: en, told: (text) => text },
  { id: 'de', name: 'Deutsch', decimal: ',', words: de, told: phrasebook(coreInGerman, ',') },
];

/** Which one is spoken: the page's `lang`. */
export const language = signal('en');
const spoken = computed(() => languages.find((l) => l.id === language.value) ?? languages[0]);

/** The texts in the language in use. Read it while drawing, so that a change of language draws anew. */
export function words(): Words {
  return spoken.value.words;
}

/** A text of core (of a problem, of the Plan, of an answer), which speaks English, in the language in use; names in it stay. Read it while drawing. */
export function told(said: Said): string {
  return typeof said === 'string' ? spoken.value.told(said) : tell(said, { language: language.value, units: units.value });
}

/** The units of the job on the bench. */
export const units = signal<LengthUnits>('mm');

/** A number that was written with a point, with the decimal mark of the language in use. */
export function inLanguage(text: string): string {
  return spoken.value.decimal === '.' ? text : text.replace(/(\d)\.(?=\d)/g, `$1${spoken.value.decimal}`);
}

/** A fault of a sheet, kept in the language of when it was seen, in the one in use; a fault in the printmaker's own words stays. */
export function sayFault(fault: string): string {
  const at = languages.map((l) => l.words.pulling.faults.indexOf(fault)).find((i) => i >= 0);
  return at === undefined ? fault : words().pulling.faults[at];
}

export function speak(id: string): void {
  language.value = id;
}

type Steps = Words['steps'];
/** Name of an edit, kept as key and values so that it can be said in any language: `{ key: 'strength', values: ['Kelp'] }`. */
export type Step = { [K in keyof Steps]: { readonly key: K; readonly values: Parameters<Steps[K]> } }[keyof Steps];

export function step<K extends keyof Steps>(key: K, ...values: Parameters<Steps[K]>): Step {
  return { key, values } as unknown as Step;
}

export function sayStep({ key, values }: Step): string {
  return (words().steps[key] as (...values: readonly unknown[]) => string)(...values);
}
