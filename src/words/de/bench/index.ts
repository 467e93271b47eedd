import type { Words } from '../../en/bench/index.ts';
import { away } from './away.ts';
import { compare } from './compare.ts';
import { edition } from './edition.ts';
import { forms } from './forms.ts';
import { glossary } from './glossary.ts';
import { guide } from './guide.ts';
import { inks } from './inks.ts';
import { laydown } from './laydown.ts';
import { overlaps } from './overlaps.ts';
import { picture } from './picture.ts';
import { press } from './press.ts';
import { prints } from './prints.ts';
import { pulling } from './pulling.ts';
import { sheet } from './sheet.ts';
import { shell } from './shell.ts';
import { stencils } from './stencils.ts';
import { steps } from './steps.ts';

/** The text catalogue in German, as a screenprint studio speaks; instructions stand in the infinitive. */
export const de = {
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
} satisfies Words;
