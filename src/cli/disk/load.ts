import { checkJob, type JobBundle } from '../../core/job/index.ts';
import { plan, readyBundle, type Plan } from '../../core/plan/index.ts';
import { fail, ProblemError, type Problem } from '../../core/problem.ts';
import { say } from '../../words/index.ts';
import { prepare } from '../assets.ts';
import type { Call } from '../command.ts';
import { readJobAt } from './folder.ts';
import { problemHere, speakOf } from '../reader.ts';
import { readPictureApart } from '../threads/read-picture.ts';

/** The job named on the command line: from now on it is the one that is spoken of. */
export function jobOf(call: Call): JobBundle {
  const path = call.words[0];
  if (path === undefined) fail('no-job-named', say('where.commandLine'), say('cli.whichJob'), say('cli.nameJob'));
  return takeJob(path);
}

/** The job at a path, and the one that is spoken of. */
export function takeJob(path: string): JobBundle {
  const bundle = readJobAt(path);
  speakOf(bundle.job);
  return bundle;
}

/** Job → Plan; throws all errors of the job at once when there are any. */
export async function planOf(bundle: JobBundle): Promise<Plan> {
  const errors = checkJob(bundle).filter((p) => p.severity === 'error');
  if (errors.length > 0) throw new ProblemError(errors);
  await prepare();
  return plan(await readyBundle(bundle, readPictureApart));
}

export function printProblems(problems: readonly Problem[], to: (line: string) => void = console.error): void {
  for (const p of problems) to(problemHere(p));
}
