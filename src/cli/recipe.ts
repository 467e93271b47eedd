import { askRecipe } from '../core/asks/index.ts';
import { fail } from '../core/problem.ts';
import { deltaE, labColour, list, name as asName, say, share } from '../words/index.ts';
import type { Command } from './command.ts';
import { exactly, json, option } from './help.ts';
import { jobOf, printProblems } from './load.ts';
import { printJson, sayHere, tellHere } from './reader.ts';
import { labOf, numberOf, textOf } from './words.ts';

export const recipe: Command = {
  name: 'recipe',
  usage: say('help.recipeUsage'),
  summary: say('help.recipeSummary'),
  help: [
    exactly('"L a b"', say('help.recipeColour')),
    option('--on', say('help.onFirst'), 'paper'),
    option('--over', say('help.recipeOver'), 'layers'),
    option('--pots', say('help.recipePots'), 'inks'),
    option('--most N', say('help.recipeMost')),
    option('--retarder', say('help.recipeRetarder'), 'percent'),
    json,
  ],
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
    const text = call.words[1] ?? fail('no-colour', say('where.commandLine'), say('refusals.whichColour'), say('cli.giveLab'));
    const wanted = labOf(text, say('refusals.wantedColour'));
    const ids = (given: unknown): string[] | undefined =>
      textOf(given)
        ?.split(',')
        .map((w) => w.trim());
    const found = askRecipe(job, {
      wanted,
      paperId: textOf(call.options['on']),
      over: ids(call.options['over']),
      pots: ids(call.options['pots']),
      mostPots: numberOf(call.options['most'], '--most', 3, 1, 4),
      retarderShare: numberOf(call.options['retarder'], '--retarder', 0, 0, 50) / 100,
    });
    if (call.options['json']) {
      printJson(found);
      return 0;
    }
    printProblems(found.problems, console.log);
    for (const one of found.byPots) {
      const parts = one.parts.map((part) => say('inkAnswers.part', { share: share(part.share, 1), ink: asName(part.name) }));
      const line = sayHere('inkAnswers.recipe', { parts: list(parts, 'comma'), deltaE: deltaE(one.deltaE), lab: labColour(one.lab) });
      console.log(`${one === found.best ? '→' : ' '} ${line}`);
    }
    for (const why of found.why) console.log(`  ${tellHere(why)}`);
    return 0;
  },
};
