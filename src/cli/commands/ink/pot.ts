import type { Complaint } from '../../../core/ink/index.ts';
import { askComplaint, askPot, layerOf, inkBench } from '../../../core/asks/index.ts';
import { fail } from '../../../core/problem.ts';
import { deltaE, figure, list, name as asName, say } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { json, option, word } from '../../say/help.ts';
import { jobOf, printProblems } from '../../disk/load.ts';
import { placeOf } from '../../options.ts';
import { printJson, sayHere, tellHere, weight } from '../../reader.ts';
import { columns } from '../../say/table.ts';
import { amountsOf, layerNamed, numberOf, readingOf, textOf, textsOf } from '../../say/words.ts';

const complaints: readonly Complaint[] = ['too weak', 'too strong', 'too warm', 'too cool', 'too dull', 'too clean'];
const sizes = { 'a little': 'inkAnswers.aLittle', clearly: 'inkAnswers.clearly', very: 'inkAnswers.very' } as const;

export const pot: Command = {
  name: 'pot',
  usage: say('help.potUsage'),
  summary: say('help.potSummary'),
  help: [
    word('layer', say('help.layerIs')),
    option('--holds', say('help.potHolds'), 'amounts'),
    option('--reads', say('help.potReads'), 'reading'),
    option('--added', say('help.potAdded'), 'amounts'),
    option('--looks', say('help.potLooks'), 'words'),
    option('--within ΔE', say('help.potWithin')),
    option('--need', say('help.potNeed'), 'grams'),
    option('--on', say('help.onFirst'), 'paper'),
    json,
  ],
  options: {
    holds: { type: 'string' },
    reads: { type: 'string', multiple: true },
    added: { type: 'string', multiple: true },
    looks: { type: 'string' },
    within: { type: 'string' },
    need: { type: 'string' },
    on: { type: 'string' },
    json: { type: 'boolean' },
  },
  run(call) {
    const { job } = jobOf(call);
    const layer = layerOf(inkBench(job), layerNamed(call, job));
    const looks = textOf(call.options['looks']);
    if (looks !== undefined) {
      const complaint =
        complaints.find((c) => c === looks) ??
        fail(
          'no-such-complaint',
          placeOf('--looks'),
          say('refusals.noSuchComplaint', { text: asName(looks) }),
          say('cli.useOneOf', {
            all: list(
              complaints.map((c) => asName(`"${c}"`)),
              'or',
            ),
          }),
        );
      const pictures = askComplaint(job, layer.id, complaint, textOf(call.options['on']));
      if (call.options['json']) printJson(pictures);
      else {
        const typed = ({ reading }: (typeof pictures)[number]): string =>
          reading.kind === 'photo' ? `--reads "${reading.lab.map((v) => v.toFixed(1)).join(' ')}"` : '';
        for (const line of columns(pictures.map((p) => [sayHere(sizes[p.size]), p.srgb, typed(p)]))) console.log(line);
      }
      return 0;
    }
    const contents = amountsOf(
      textOf(call.options['holds']) ?? fail('no-contents', placeOf('--holds'), say('refusals.whatInPot'), say('refusals.writeHolds')),
      placeOf('--holds'),
    );
    const reads = textsOf(call.options['reads']);
    const added = textsOf(call.options['added']);
    if (reads.length !== added.length + 1)
      fail(
        'rounds',
        placeOf('--reads'),
        say('refusals.roundsDiffer', { reads: reads.length, added: added.length }),
        say('refusals.oneReadsMore'),
      );
    const answer = askPot(job, {
      layer: layer.id,
      paperId: textOf(call.options['on']),
      contents,
      within: numberOf(call.options['within'], '--within', 2, 0.1, 50),
      needGrams: call.options['need'] === undefined ? undefined : numberOf(call.options['need'], '--need', 0, 0, 100000),
      rounds: reads.map((reading, i) => ({
        reading: readingOf(reading, reads.length === 1 ? placeOf('--reads') : say('cli.optionNo', { option: asName('--reads'), n: i + 1 })),
        added: i === 0 ? [] : amountsOf(added[i - 1], placeOf('--added')),
      })),
    });
    if (call.options['json']) {
      printJson(answer);
      return 0;
    }
    const { now, after, additions } = answer;
    console.log(sayHere('inkAnswers.potOff', { deltaE: deltaE(now.deltaE), mass: weight(now.grams, 0) }));
    if (additions.length === 0 && answer.reaches) console.log(sayHere('inkAnswers.nearEnough'));
    for (const one of additions) console.log(`  ${sayHere('inkAnswers.add', { mass: weight(one.grams, 1), ink: asName(one.name) })}`);
    if (additions.length > 0)
      console.log(
        sayHere('inkAnswers.afterAdding', { deltaE: deltaE(after.deltaE), mass: weight(after.grams, 0), times: figure(answer.grows, 2) }),
      );
    if (answer.startAgain) console.log(tellHere(answer.startAgain));
    printProblems(answer.problems, console.log);
    return 0;
  },
};
