import { sayingsIn, tell } from '../words/index.ts';
import type { Command } from './command.ts';
import { jobOf, planOf, printProblems } from './load.ts';
import { tellHere } from './reader.ts';
import { numberOf } from './words.ts';

export const day: Command = {
  name: 'day',
  usage: 'day JOB [--hands N] [--json]',
  summary: 'the day by the hour: set-up, pulls, cleaning, what to do while ink dries',
  help: 'From the rates in the job (day): pulls an hour, set-up, cleaning, drying, rack, screens, humidity, people.\n--hands N  as if so many were at work: one pulls, the others rack, wash, mix and set up\n--json   as JSON',
  options: { hands: { type: 'string' }, json: { type: 'boolean' } },
  async run(call) {
    const bundle = jobOf(call);
    const hands = Math.round(numberOf(call.options['hands'], '--hands', bundle.job.day.hands, 1, 6));
    const plan = await planOf({ ...bundle, job: { ...bundle.job, day: { ...bundle.job.day, hands } } });
    const planned = plan.edition.day;
    if (call.options['json']) {
      console.log(
        JSON.stringify(
          planned,
          sayingsIn((s) => tell(s)),
          2,
        ),
      );
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
      const run = plan.layers.find((l) => l.id === step.run);
      console.log(
        `  ${step.start}–${step.end}  ${hands === 1 ? '' : step.who > 0 ? `hand ${step.who}  ` : '        '}${run ? `run ${run.run}, ${run.name}: ` : ''}${tellHere(step.text, plan.job.units)}`,
      );
    }
    console.log(
      `\n${planned.days} ${planned.days === 1 ? 'day' : 'days'}, ${(planned.workMinutes / 60).toFixed(1)} hours of work${hands === 1 ? '' : ` for ${hands} together`}, ${(planned.waitMinutes / 60).toFixed(1)} waiting; at most ${planned.rackPeak} sheets on the rack; ${Math.round(planned.dryMinutes)} minutes to dry`,
    );
    console.log(tellHere(planned.openTime.text, plan.job.units));
    printProblems(planned.problems, console.log);
    return 0;
  },
};
