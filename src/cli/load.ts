import { checkJob, type JobBundle } from '../core/job/index.ts';
import { plan, readyBundle, type Plan } from '../core/plan/index.ts';
import { fail, ProblemError, type Problem } from '../core/problem.ts';
import { tellProblem } from '../words/index.ts';
import { prepare } from './assets.ts';
import type { Call } from './command.ts';
import { readJobAt } from './folder.ts';

/** The job named on the command line. */
export function jobOf(call: Call): JobBundle {
  const path = call.words[0];
  if (path === undefined) fail('no-job-named', 'the command', 'Which job?', 'Name a folder with job.json in it, or a .laydown file.');
  return readJobAt(path);
}

/** Job → Plan; throws all errors of the job at once when there are any. */
export async function planOf(bundle: JobBundle): Promise<Plan> {
  const errors = checkJob(bundle).filter((p) => p.severity === 'error');
  if (errors.length > 0) throw new ProblemError(errors);
  await prepare();
  return plan(await readyBundle(bundle));
}

export function printProblems(problems: readonly Problem[], to: (line: string) => void = console.error): void {
  for (const p of problems) to(`${p.severity}: ${tellProblem(p)}`);
}
