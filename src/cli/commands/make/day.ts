import { name as asName, say, time } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { json, option } from '../../say/help.ts';
import { jobOf, planOf, printProblems } from '../../disk/load.ts';
import { printJson, sayHere, tellHere } from '../../reader.ts';
import { columns } from '../../say/table.ts';
import { numberOf } from '../../say/words.ts';

export const day: Command = {
  name: 'day',
  usage: say('help.dayUsage'),
  summary: say('help.daySummary'),
  help: [say('help.dayText'), option('--hands N', say('help.dayHands')), json],
  options: { hands: { type: 'string' }, json: { type: 'boolean' } },
  async run(call) {
    const bundle = jobOf(call);
    const hands = Math.round(numberOf(call.options['hands'], '--hands', bundle.job.day.hands, 1, 6));
    const plan = await planOf({ ...bundle, job: { ...bundle.job, day: { ...bundle.job.day, hands } } });
    const planned = plan.edition.day;
    if (call.options['json']) {
      printJson(planned);
      return planned ? 0 : 1;
    }
    if (!planned) {
      printProblems(plan.edition.problems);
      return 1;
    }
    const lines = columns(
      planned.steps.map((step) => {
        const run = plan.layers.find((l) => l.id === step.run);
        const what = run
          ? sayHere('answers.stepOfRun', { run: say('answers.run', { run: run.run, layer: asName(run.name) }), what: step.text })
          : tellHere(step.text);
        return [
          sayHere('answers.hours', { from: asName(step.start), to: asName(step.end) }),
          ...(hands === 1 ? [] : [step.who > 0 ? sayHere('answers.hand', { n: step.who }) : '']),
          what,
        ];
      }),
      { indent: '  ' },
    );
    planned.steps.forEach((step, i) => {
      const before = planned.steps[i - 1]?.day;
      if (step.day !== before) console.log(`${before === undefined ? '' : '\n'}${sayHere('answers.day', { n: step.day })}`);
      console.log(lines[i]);
    });
    const { days, rackPeak } = planned;
    const [work, wait] = [time(planned.workMinutes), time(planned.waitMinutes)];
    const whole =
      hands === 1 ? sayHere('answers.dayAlone', { days, work, wait }) : sayHere('answers.dayTogether', { days, work, hands, wait });
    console.log(`\n${whole} ${sayHere('answers.dayRack', { peak: rackPeak, dry: time(planned.dryMinutes) })}`);
    console.log(tellHere(planned.openTime.text));
    printProblems(planned.problems, console.log);
    return 0;
  },
};
