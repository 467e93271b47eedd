import type { OrderWishes } from '../core/ink/index.ts';
import { askOrders } from '../core/asks/index.ts';
import { fail } from '../core/problem.ts';
import { listed, sayingsIn, tell } from '../words/index.ts';
import type { Command } from './command.ts';
import { jobOf, planOf, printProblems } from './load.ts';
import { tellHere } from './reader.ts';
import { numberOf, textOf } from './words.ts';

const wishWords: Record<string, keyof OrderWishes> = {
  wanted: 'nearWanted',
  colours: 'manyColours',
  range: 'lightnessRange',
  clean: 'clean',
  steady: 'steady',
};

export const order: Command = {
  name: 'order',
  usage: 'order JOB [--for wanted,colours,range,clean,steady] [--on PAPER] [--keep N] [--before A,B] [--json]',
  summary: 'ranks every order of the layers by what you want of it',
  help: [
    '--for WISHES   what counts, alike unless weighed (clean=2): wanted (nearest to the wanted overlaps of the job), colours (most colours that',
    '               differ), range (widest range of lightness), clean (most chroma), steady (least moved by a heavy or light hand)',
    '--on PAPER     judged on this paper (default: the first)',
    '--keep N       how many to show (default 5)',
    '--before A,B   A must be printed before B; may be said several times',
    '--json         as JSON',
  ].join('\n'),
  options: {
    for: { type: 'string' },
    on: { type: 'string' },
    keep: { type: 'string' },
    before: { type: 'string', multiple: true },
    json: { type: 'boolean' },
  },
  async run(call) {
    const plan = await planOf(jobOf(call));
    const wishes: { -readonly [K in keyof OrderWishes]: OrderWishes[K] } = {};
    for (const word of (textOf(call.options['for']) ?? (plan.job.wanted.length > 0 ? 'wanted,colours,clean' : 'colours,range,clean')).split(
      ',',
    )) {
      const [wish, weight = '1'] = word.split('=');
      const key = wishWords[wish.trim()];
      if (!key) fail('no-such-wish', '--for', `“${wish}” is no wish.`, `Use ${Object.keys(wishWords).join(', ')}.`);
      wishes[key] = numberOf(weight, '--for', 1, 0, 100);
    }
    const rules = (call.options['before'] ?? []) as string[];
    const answer = await askOrders(plan, {
      paperId: textOf(call.options['on']),
      wishes,
      keep: numberOf(call.options['keep'], '--keep', 5, 1, 100),
      before: rules.map((rule) => {
        const [a, b] = rule.split(',');
        if (!a || !b) fail('bad-rule', '--before', `“${rule}” names no two layers.`, 'Write --before sky,water.');
        return [a.trim(), b.trim()] as const;
      }),
    });
    if (call.options['json']) {
      console.log(
        JSON.stringify(
          answer,
          sayingsIn((s) => tell(s)),
          2,
        ),
      );
      return 0;
    }
    printProblems(answer.problems);
    console.log(`${answer.orders} orders on ${answer.paperId}; now: ${answer.present.join(' → ')}`);
    answer.ranked.forEach((ranked, i) => {
      const v = ranked.values;
      console.log(`\n${i + 1}. ${ranked.layers.join(' → ')}`);
      console.log(
        `   ${plan.job.wanted.length > 0 ? `wanted within ${v.nearWanted.toFixed(1)} ΔE00, ` : ''}${v.manyColours} colours that differ, lightness range ${v.lightnessRange.toFixed(0)}, mean chroma ${v.clean.toFixed(0)}, moved by ${v.steady.toFixed(1)} ΔE00 when films vary by 15 %`,
      );
      if (ranked.loses.length > 0) console.log(`   gives up: ${tellHere(listed(ranked.loses, 'semicolon'), plan.job.units)}`);
    });
    return 0;
  },
};
