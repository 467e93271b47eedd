import { askSpread } from '../../../core/asks/index.ts';
import { asWritten, deltaE, say, share } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { json, option } from '../../say/help.ts';
import { jobOf, planOf } from '../../disk/load.ts';
import { printJson, sayHere } from '../../reader.ts';
import { columns } from '../../say/table.ts';
import { numberOf, textOf } from '../../say/words.ts';

export const spread: Command = {
  name: 'spread',
  usage: say('help.spreadUsage'),
  summary: say('help.spreadSummary'),
  help: [say('help.spreadText'), option('--on', say('help.onFirst'), 'paper'), option('--hand N', say('help.spreadHand')), json],
  options: { on: { type: 'string' }, hand: { type: 'string' }, json: { type: 'boolean' } },
  async run(call) {
    const plan = await planOf(jobOf(call));
    const answer = askSpread(plan, {
      paperId: textOf(call.options['on']),
      hand: numberOf(call.options['hand'], '--hand', 15, 1, 100) / 100,
    });
    if (call.options['json']) {
      printJson(answer);
      return 0;
    }
    const nameOf = (ids: readonly string[], by: string): string =>
      ids.map((id) => plan.layers.find((l) => l.id === id)?.name ?? id).join(by);
    console.log(sayHere('inkAnswers.spreadHead', { hand: share(answer.hand, 0), deltaE: deltaE(answer.meanBand) }));
    const rows = answer.overlaps.map((o) => [
      sayHere('answers.within', { band: deltaE(o.band) }),
      o.srgb
        .map((hex) =>
          process.stdout.isTTY ? `\u001b[48;2;${[1, 3, 5].map((k) => parseInt(hex.slice(k, k + 2), 16)).join(';')}m  \u001b[0m` : hex,
        )
        .join(' '),
      nameOf(o.layers, ' + '),
    ]);
    for (const line of columns(rows, { indent: '  ', right: [0] })) console.log(line);
    if (answer.ways.length === 0) console.log(sayHere('inkAnswers.spreadNoWay'));
    for (const way of answer.ways) {
      const values = { deltaE: deltaE(way.meanBand), moved: deltaE(way.moved) };
      console.log(
        way.kind === 'order'
          ? sayHere('inkAnswers.spreadOrder', { ...values, layers: asWritten(nameOf(way.layers, ' → ')) })
          : sayHere('inkAnswers.spreadStrength', {
              ...values,
              layer: asWritten(nameOf([way.layer], '')),
              strength: share(way.strength, 0),
            }),
      );
    }
    return 0;
  },
};
