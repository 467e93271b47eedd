import type { en } from '../en/index.ts';
import { shown } from './shown.ts';
import { cli } from './cli/cli.ts';
import { help } from './cli/help.ts';
import { refusals } from './cli/refusals.ts';
import { answers } from './cli/answers.ts';
import { begin } from './cli/begin.ts';
import { inkAnswers } from './cli/ink-answers.ts';

/** Deutsch, wie eine Siebdruckwerkstatt spricht; Anweisungen stehen im Infinitiv. */
export const de: typeof en = {
  ...shown,
  cli,
  help,
  refusals,
  answers,
  begin,
  inkAnswers,
};
