import type { OrderWishes } from '../../../core/ink/index.ts';
import { askOrders } from '../../../core/asks/index.ts';
import { fail } from '../../../core/problem.ts';
import { deltaE, figure, list, name as asName, say, share } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { exactly, json, option } from '../../say/help.ts';
import { jobOf, planOf, printProblems } from '../../disk/load.ts';
import { placeOf } from '../../options.ts';
import { printJson, sayHere, showHere } from '../../reader.ts';
import { numberOf, textOf, textsOf } from '../../say/words.ts';

const wishWords: Record<string, keyof OrderWishes> = {
  wanted: 'nearWanted',
  colours: 'manyColours',
  range: 'lightnessRange',
  clean: 'clean',
  steady: 'steady',
};

export const order: Command = {
  name: 'order',
  usage: say('help.orderUsage'),
  summary: say('help.orderSummary'),
  help: [
    option('--for', say('help.orderFor'), 'wishes'),
    exactly('  wanted', say('help.orderWanted')),
    exactly('  colours', say('help.orderColours')),
    exactly('  range', say('help.orderRange')),
    exactly('  clean', say('help.orderClean')),
    exactly('  steady', say('help.orderSteady')),
    option('--on', say('help.onFirst'), 'paper'),
    option('--keep N', say('help.orderKeep')),
    option('--before A,B', say('help.orderBefore')),
    json,
  ],
  options: {
    for: { type: 'string' },
    on: { type: 'string' },
    keep: { type: 'string' },
    before: { type: 'string', multiple: true },
    json: { type: 'boolean' },
  },
  async run(call) {
    const bundle = jobOf(call),
      { job } = bundle;
    const wishes: { -readonly [K in keyof OrderWishes]: OrderWishes[K] } = {};
    const asked = textOf(call.options['for']) ?? (job.wanted.length > 0 ? 'wanted,colours,clean' : 'colours,range,clean');
    for (const one of asked.split(',')) {
      const [wish, weight = '1'] = one.split('=');
      const key = Object.hasOwn(wishWords, wish.trim()) ? wishWords[wish.trim()] : undefined;
      if (!key)
        fail(
          'no-such-wish',
          placeOf('--for'),
          say('refusals.noSuchWish', { wish: asName(wish) }),
          say('cli.useOneOf', { all: list(Object.keys(wishWords).map(asName), 'or') }),
        );
      wishes[key] = numberOf(weight, '--for', 1, 0, 100);
    }
    const keep = numberOf(call.options['keep'], '--keep', 5, 1, 100);
    const before = textsOf(call.options['before']).map((rule) => {
      const [a, b] = rule.split(',');
      if (!a || !b)
        fail('bad-rule', placeOf('--before'), say('refusals.notTwoLayers', { text: asName(rule) }), say('refusals.writeBefore'));
      return [a.trim(), b.trim()] as const;
    });
    const plan = await planOf(bundle);
    const answer = await askOrders(plan, { paperId: textOf(call.options['on']), wishes, keep, before });
    if (call.options['json']) {
      printJson(answer);
      return 0;
    }
    printProblems(answer.problems);
    const layersOf = (ids: readonly string[]): ReturnType<typeof asName> =>
      asName(ids.map((id) => plan.layers.find((l) => l.id === id)?.name ?? id).join(' → '));
    const paper = asName(plan.papers.find((p) => p.id === answer.paperId)?.name ?? answer.paperId);
    console.log(sayHere('inkAnswers.orders', { n: answer.orders, paper, now: layersOf(answer.present) }));
    if (answer.noDifference) console.log(`\n${sayHere('inkAnswers.noDifference')}`);
    answer.groups.slice(0, answer.noDifference ? 1 : keep).forEach(({ layers, values, loses, alike, warnings }, i) => {
      console.log(`\n${sayHere('inkAnswers.orderNo', { n: i + 1, layers: layersOf(layers) })}`);
      const all = list(
        [
          ...(job.wanted.length > 0 ? [say('inkAnswers.wantedWithin', { deltaE: deltaE(values.nearWanted) })] : []),
          say('inkAnswers.coloursDiffer', { n: values.manyColours }),
          say('inkAnswers.lightnessRange', { range: figure(values.lightnessRange) }),
          say('inkAnswers.meanChroma', { chroma: figure(values.clean) }),
          say('inkAnswers.movedBy', { deltaE: deltaE(values.steady), films: share(0.15) }),
        ],
        'comma',
      );
      console.log(`   ${showHere(all)}`);
      if (loses.length > 0) console.log(`   ${sayHere('inkAnswers.givesUp', { what: list(loses, 'semicolon') })}`);
      if (warnings.ridges + warnings.register > 0) console.log(`   ${sayHere('inkAnswers.orderWarns', warnings)}`);
      if (alike > 0 && !answer.noDifference) console.log(`   ${sayHere('inkAnswers.alikeOrders', { n: alike })}`);
    });
    return 0;
  },
};
