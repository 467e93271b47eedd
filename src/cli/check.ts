import { checkJob } from '../core/job/index.ts';
import { plan, readyBundle } from '../core/plan/index.ts';
import { prepare } from './assets.ts';
import type { Command } from './command.ts';
import { jobOf, printProblems } from './load.ts';

export const check: Command = {
  name: 'check',
  usage: 'check JOB',
  summary: 'says everything that is wrong or doubtful in a job',
  help: 'Lists every problem with its place and what to do. Ends with code 1 if any of them would stop the packet.',
  async run(call) {
    const bundle = jobOf(call);
    let problems = checkJob(bundle);
    // What the rooms find is worth telling only when the job itself holds together.
    if (problems.every((p) => p.severity !== 'error')) {
      await prepare();
      problems = [...plan(await readyBundle(bundle)).problems];
    }
    printProblems(problems, console.log);
    const errors = problems.filter((p) => p.severity === 'error').length;
    console.log(problems.length === 0 ? 'Nothing to mend.' : `${errors} to mend, ${problems.length - errors} to know.`);
    return errors > 0 ? 1 : 0;
  },
};
