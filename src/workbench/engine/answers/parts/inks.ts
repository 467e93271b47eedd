import { wedgeAnswer } from '../cut/wedge.ts';
import { inkAnswers } from '../ink/inks.ts';

/** Inks, and what is read of them. */
export const answers = { ...inkAnswers, wedge: wedgeAnswer };
