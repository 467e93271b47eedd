import type { Complaint } from '../core/ink/index.ts';
import { askComplaint, askPot, layerOf, inkBench } from '../core/asks/index.ts';
import { fail } from '../core/problem.ts';
import { sayingsIn, tell } from '../words/index.ts';
import type { Command } from './command.ts';
import { jobOf, printProblems } from './load.ts';
import { tellHere } from './reader.ts';
import { amountsOf, numberOf, readingOf, textOf } from './words.ts';

const complaints: readonly Complaint[] = ['too weak', 'too strong', 'too warm', 'too cool', 'too dull', 'too clean'];

export const pot: Command = {
  name: 'pot',
  usage:
    'pot JOB LAYER --holds INK=GRAMS,… --reads READING [--added INK=GRAMS,… --reads READING …] [--within DE] [--need GRAMS] | --looks "too weak"',
  summary: 'saves a pot whose drawdown is off',
  help: [
    '--holds AMOUNTS    what was weighed in: rockpool=70,clear-base=30',
    '--reads READING    the dry drawdown: Lab in quotes, or a file of readings; again after each --added',
    '--added AMOUNTS    what has been added since, in rounds; each round needs its own --reads',
    '--looks WORDS      without an instrument: too weak, too strong, too warm, too cool, too dull, too clean; shows pictures to compare and the reading each stands for',
    '--within DE        how near is near enough (default ΔE00 2)',
    '--need GRAMS       what the run still needs',
    '--json             as JSON',
  ].join('\n'),
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
    const layer = layerOf(
      inkBench(job),
      call.words[1] ??
        fail('no-layer-named', 'the command', 'The pot of which layer?', `Name one of: ${job.layers.map((l) => l.id).join(', ')}.`),
    );
    const looks = textOf(call.options['looks']);
    if (looks !== undefined) {
      const complaint =
        complaints.find((c) => c === looks) ??
        fail('no-such-complaint', '--looks', `“${looks}” is not among the words understood.`, `Use ${complaints.join(', ')}.`);
      const pictures = askComplaint(job, layer.id, complaint, textOf(call.options['on']));
      if (call.options['json']) console.log(JSON.stringify(pictures, null, 2));
      else
        for (const p of pictures)
          console.log(
            `${p.size.padEnd(9)} ${p.srgb}   --reads "${p.reading.kind === 'photo' ? p.reading.lab.map((v) => v.toFixed(1)).join(' ') : ''}"`,
          );
      return 0;
    }
    const contents = amountsOf(
      textOf(call.options['holds']) ?? fail('no-contents', '--holds', 'What is in the pot?', 'Write --holds rockpool=70,clear-base=30.'),
      '--holds',
    );
    const reads = (call.options['reads'] ?? []) as string[];
    const added = (call.options['added'] ?? []) as string[];
    if (reads.length !== added.length + 1)
      fail(
        'rounds',
        '--reads',
        `There are ${reads.length} drawdowns for ${added.length} additions.`,
        'Give one --reads for the pot as first mixed, and one more after each --added.',
      );
    const answer = askPot(job, {
      layer: layer.id,
      paperId: textOf(call.options['on']),
      contents,
      within: numberOf(call.options['within'], '--within', 2, 0.1, 50),
      needGrams: call.options['need'] === undefined ? undefined : numberOf(call.options['need'], '--need', 0, 0, 100000),
      rounds: reads.map((reading, i) => ({
        reading: readingOf(reading, `--reads ${i + 1}`),
        added: i === 0 ? [] : amountsOf(added[i - 1], '--added'),
      })),
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
    console.log(`The pot is off by ΔE00 ${answer.now.deltaE.toFixed(1)} (${answer.now.grams.toFixed(0)} g).`);
    if (answer.additions.length === 0 && answer.reaches) console.log('Near enough: leave it as it is.');
    for (const a of answer.additions) console.log(`  add ${a.grams.toFixed(1)} g ${a.name}`);
    if (answer.additions.length > 0)
      console.log(
        `Then off by ΔE00 ${answer.after.deltaE.toFixed(1)}; the pot grows to ${answer.after.grams.toFixed(0)} g (× ${answer.grows.toFixed(2)}).`,
      );
    if (answer.startAgain) console.log(tellHere(answer.startAgain, job.units));
    printProblems(answer.problems, console.log);
    return 0;
  },
};
