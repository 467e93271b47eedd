import { shown } from './shown.ts';
import { cli } from './cli/cli.ts';
import { help } from './cli/help.ts';
import { refusals } from './cli/refusals.ts';
import { answers } from './cli/answers.ts';
import { begin } from './cli/begin.ts';
import { inkAnswers } from './cli/ink-answers.ts';

/** English. It sets the keys, and the values of each, that every other language must have. */
export const en = {
  ...shown,
  cli,
  help,
  refusals,
  answers,
  begin,
  inkAnswers,
};
