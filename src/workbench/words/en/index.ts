import { laydown } from './laydown.ts';
import { overlaps } from './overlaps.ts';
import { shell } from './shell.ts';
import { steps } from './steps.ts';

/** The text catalogue in English: one file a station. It sets the keys that every other language must have. */
export const en = { shell, steps, laydown, overlaps };
