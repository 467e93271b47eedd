import { signal } from '@preact/signals';
import { en } from './en/index.ts';

/** All texts of the Workbench. Another language is an object of this type; the compiler finds what it lacks. */
export type Words = typeof en;

const language = signal<Words>(en);

/** The texts in the language in use. Read it while drawing, so that a change of language draws anew. */
export function words(): Words {
  return language.value;
}

export function speak(next: Words): void {
  language.value = next;
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
