import { away } from './away.ts';
import { compare } from './compare.ts';
import { laydown } from './laydown.ts';
import { overlaps } from './overlaps.ts';
import { forms } from './forms.ts';
import { sheet } from './sheet.ts';
import { edition } from './edition.ts';
import { picture } from './picture.ts';
import { glossary } from './glossary.ts';
import { guide } from './guide.ts';
import { inks } from './inks.ts';
import { press } from './press.ts';
import { prints } from './prints.ts';
import { pulling } from './pulling.ts';
import { shell } from './shell.ts';
import { stencils } from './stencils.ts';
import { steps } from './steps.ts';

/** The text catalogue in English: one file a station. It sets the keys that every other language must have. */
export const en = {
  picture,
  press,
  away,
  prints,
  pulling,
  edition,
  shell,
  steps,
  sheet,
  forms,
  stencils,
  laydown,
  overlaps,
  inks,
  compare,
  glossary,
  guide,
};

export type Words = typeof en;
