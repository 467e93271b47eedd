import type { Command } from './command.ts';
import { jobOf, planOf, printProblems } from './load.ts';

export const day: Command = {
  name: 'day',
  usage: 'day JOB [--json]',
  summary: 'the day by the hour: set-up, pulls, cleaning, what to do while ink dries',
  help: 'From the rates in the job (day): pulls an hour, set-up, cleaning, drying, rack, screens, humidity.\n--json  as JSON',
  options: { json: { type: 'boolean' } },
  async run(call) {
    const plan = await planOf(jobOf(call));
    const planned = plan.edition.day;
    if (call.options['json']) {
      console.log(JSON.stringify(planned, null, 2));
      return planned ? 0 : 1;
    }
    if (!planned) {
      printProblems(plan.edition.problems);
      return 1;
    }
    let last = 0;
    for (const step of planned.steps) {
      if (step.day !== last) console.log(`${last === 0 ? '' : '\n'}Day ${step.day}`);
      last = step.day;
      console.log(`  ${step.start}–${step.end}  ${step.text}`);
    }
    console.log(`\n${planned.days} ${planned.days === 1 ? 'day' : 'days'}, ${(planned.workMinutes / 60).toFixed(1)} hours of work, ${(planned.waitMinutes / 60).toFixed(1)} waiting; at most ${planned.rackPeak} sheets on the rack; ${Math.round(planned.dryMinutes)} minutes to dry`);
    console.log(planned.openTime.text);
    printProblems(planned.problems, console.log);
    return 0;
  },
};
