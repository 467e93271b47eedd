import type { VersionName } from './keep/keep.ts';
import { computed, signal } from '@preact/signals';
import type { LengthUnits } from '../../core/units/index.ts';
import { catalogueOf, languageOf, languages, tell, type Catalogue, type Reader, type Saying } from '../../words/one-language.ts';

export { languages };

/** All texts of the Workbench's own. Another language is an object of this type; the compiler finds what it lacks. */
export type Words = Catalogue['bench'];

/** Which one is spoken: the page's `lang`. */
export const language = signal('en');
const spoken = computed(() => catalogueOf(languageOf(language.value)).bench);

/** The texts in the language in use. Read it while drawing, so that a change of language draws anew. */
export function words(): Words {
  return spoken.value;
}

/** The units of the job on the bench. */
export const units = signal<LengthUnits>('mm');

/** Who reads: the language in use, and the units of the job on the bench unless others are given. */
export function reader(by: LengthUnits = units.value): Reader {
  return { language: language.value, units: by };
}

/** What core says (of a problem, of the Plan, of an answer), in the language and units in use. Say it while drawing, never earlier: kept is the saying. */
export function told(saying: Saying): string {
  return tell(saying, reader());
}

/** What a version is called. */
export function sayVersion({ name, putAside, otherTab }: VersionName): string {
  if (otherTab) return words().shell.fromOtherTab(name);
  return putAside ? words().shell.beforeOpening(name) : name;
}

/** Its words must have been learned (`keep/remember-language.ts`). */
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
