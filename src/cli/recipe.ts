import { askRecipe } from '../core/asks/index.ts';
import { fail } from '../core/problem.ts';
import { sayingsIn, tell } from '../words/index.ts';
import type { Command } from './command.ts';
import { jobOf, printProblems } from './load.ts';
import { tellHere } from './reader.ts';
import { labOf, numberOf, textOf } from './words.ts';

export const recipe: Command = {
  name: 'recipe',
  usage: 'recipe JOB "L a b" [--on PAPER] [--over LAYER,…] [--pots INK,…] [--most N] [--retarder PERCENT] [--json]',
  summary: 'finds what to mix for a wanted colour, fewest pots first',
  help: [
    '"L a b"            the wanted colour: Lab, D50, 2°',
    '--on PAPER         on this paper (default: the first)',
    '--over LAYERS      over these layers, already printed',
    '--pots INKS        from these pots only (default: all inks of the job)',
    '--most N           at most so many pots (default 3)',
    '--retarder P       percent of the pot kept for retarder',
    '--json             as JSON',
  ].join('\n'),
  options: {
    on: { type: 'string' },
    over: { type: 'string' },
    pots: { type: 'string' },
    most: { type: 'string' },
    retarder: { type: 'string' },
    json: { type: 'boolean' },
  },
  run(call) {
    const { job } = jobOf(call);
    const wanted = labOf(
      call.words[1] ?? fail('no-colour', 'the command', 'Which colour is wanted?', 'Give its Lab in quotes: "62 -38.5 12".'),
      'the wanted colour',
    );
    const list = (text: unknown): string[] | undefined =>
      textOf(text)
        ?.split(',')
        .map((w) => w.trim());
    const found = askRecipe(job, {
      wanted,
      paperId: textOf(call.options['on']),
      over: list(call.options['over']),
      pots: list(call.options['pots']),
      mostPots: numberOf(call.options['most'], '--most', 3, 1, 4),
      retarderShare: numberOf(call.options['retarder'], '--retarder', 0, 0, 50) / 100,
    });
    if (call.options['json']) {
      console.log(
        JSON.stringify(
          found,
          sayingsIn((s) => tell(s)),
          2,
        ),
      );
      return 0;
    }
    printProblems(found.problems, console.log);
    for (const r of found.byPots) {
      const chosen = r === found.best ? '→' : ' ';
      console.log(
        `${chosen} ${r.parts.map((p) => `${(p.share * 100).toFixed(1)} % ${p.name}`).join(' + ')}, rest base: off by ΔE00 ${r.deltaE.toFixed(1)} (Lab ${r.lab.map((v) => v.toFixed(1)).join(' ')})`,
      );
    }
    for (const why of found.why) console.log(`  ${tellHere(why, job.units)}`);
    return 0;
  },
};
