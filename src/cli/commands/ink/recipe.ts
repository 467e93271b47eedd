import { askLeftovers, askRecipe, type LeftoversAnswer } from '../../../core/asks/index.ts';
import { fail } from '../../../core/problem.ts';
import { asWritten, deltaE, labColour, list, mass, name as asName, say, share } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { exactly, json, option } from '../../say/help.ts';
import { jobOf, printProblems } from '../../disk/load.ts';
import { printJson, sayHere, tellHere } from '../../reader.ts';
import { placeOf } from '../../options.ts';
import { amountsOf, labOf, numberOf, textOf } from '../../say/words.ts';

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
    option('--leftovers', say('help.recipeLeftovers')),
    option('--left', say('help.recipeLeft'), 'amounts'),
    option('--grams N', say('help.recipeGrams')),
    option('--within N', say('help.recipeWithin')),
    json,
  ],
  options: {
    on: { type: 'string' },
    over: { type: 'string' },
    pots: { type: 'string' },
    most: { type: 'string' },
    retarder: { type: 'string' },
    leftovers: { type: 'boolean' },
    left: { type: 'string' },
    grams: { type: 'string' },
    within: { type: 'string' },
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
    const grams = numberOf(call.options['grams'], '--grams', 100, 1, 1_000_000);
    const left = textOf(call.options['left']);
    if (call.options['leftovers'] === true || left !== undefined) {
      const jars = left === undefined ? [] : amountsOf(left, placeOf('--left'));
      const answer = askLeftovers(job, {
        wanted,
        paperId: textOf(call.options['on']),
        over: ids(call.options['over']),
        totalGrams: grams,
        within: numberOf(call.options['within'], '--within', 2, 0.1, 50),
        ...(left === undefined ? {} : { left: Object.fromEntries(jars.map((jar) => [jar.id, jar.grams])) }),
      });
      if (call.options['json']) printJson(answer);
      else sayLeftovers(answer);
      return 0;
    }
    const found = askRecipe(job, {
      totalGrams: grams,
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

function sayLeftovers({ best, nearest, freshGrams, jars }: LeftoversAnswer): void {
  const pot = best ?? nearest;
  if (!pot) return;
  console.log(
    best && pot.jarGrams < 0.5
      ? sayHere('inkAnswers.leftoversNoHelp', { deltaE: deltaE(pot.deltaE), lab: labColour(pot.lab) })
      : best
        ? sayHere('inkAnswers.leftovers', { n: jars, deltaE: deltaE(pot.deltaE), lab: labColour(pot.lab) })
        : sayHere('inkAnswers.leftoversFar', { deltaE: deltaE(pot.deltaE), lab: labColour(pot.lab) }),
  );
  for (const part of pot.parts) {
    const values = { mass: mass(part.grams), ink: part.name === '' ? say('ink.transparentBase') : asWritten(part.name) };
    console.log(
      `  ${sayHere(part.from === 'jar' ? 'inkAnswers.fromJar' : part.from === 'new' ? 'inkAnswers.newInk' : 'inkAnswers.ofBase', values)}`,
    );
  }
  console.log(
    best && freshGrams !== null
      ? sayHere('inkAnswers.newAgainst', { mass: mass(pot.newGrams), fresh: mass(freshGrams) })
      : sayHere('inkAnswers.newInAll', { mass: mass(pot.newGrams) }),
  );
}
