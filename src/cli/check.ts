import { checkJob } from '../core/job/index.ts';
import { plan, readyBundle } from '../core/plan/index.ts';
import { say } from '../words/index.ts';
import { prepare } from './assets.ts';
import type { Command } from './command.ts';
import { jobOf, printProblems } from './load.ts';
import { sayHere } from './reader.ts';

export const check: Command = {
  name: 'check',
  usage: say('help.checkUsage'),
  summary: say('help.checkSummary'),
  help: [say('help.checkText')],
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
    console.log(
      problems.length === 0 ? sayHere('answers.nothingToMend') : sayHere('answers.toMend', { errors, others: problems.length - errors }),
    );
    return errors > 0 ? 1 : 0;
  },
};
