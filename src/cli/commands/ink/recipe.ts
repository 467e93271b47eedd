import { askLeftovers, askRecipe, type LeftoversAnswer, type PrintedOn, type PrintedOnAsk } from '../../../core/asks/index.ts';
import type { Job } from '../../../core/job/index.ts';
import { readShelf } from '../../../core/ink/index.ts';
import { fail } from '../../../core/problem.ts';
import { asWritten, deltaE, labColour, list, mass, name as asName, say, share } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { readFileBytes } from '../../disk/disk.ts';
import { exactly, json, option } from '../../say/help.ts';
import { jobOf, planOf, printProblems } from '../../disk/load.ts';
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
    option('--ground N', say('help.recipeGround')),
    option('--layer', say('help.recipeLayer'), 'layer'),
    option('--over', say('help.recipeOver'), 'layers'),
    option('--pots', say('help.recipePots'), 'inks'),
    option('--most N', say('help.recipeMost')),
    option('--retarder', say('help.recipeRetarder'), 'percent'),
    option('--leftovers', say('help.recipeLeftovers')),
    option('--left', say('help.recipeLeft'), 'amounts'),
    option('--shelf', say('help.recipeShelf'), 'file'),
    option('--grams N', say('help.recipeGrams')),
    option('--within N', say('help.recipeWithin')),
    json,
  ],
  options: {
    on: { type: 'string' },
    ground: { type: 'string' },
    layer: { type: 'string' },
    over: { type: 'string' },
    pots: { type: 'string' },
    most: { type: 'string' },
    retarder: { type: 'string' },
    leftovers: { type: 'boolean' },
    left: { type: 'string' },
    shelf: { type: 'string' },
    grams: { type: 'string' },
    within: { type: 'string' },
    json: { type: 'boolean' },
  },
  async run(call) {
    const bundle = jobOf(call);
    const { job } = bundle;
    const text = call.words[1] ?? fail('no-colour', say('where.commandLine'), say('refusals.whichColour'), say('cli.giveLab'));
    const wanted = labOf(text, say('refusals.wantedColour'));
    const ids = (given: unknown): string[] | undefined =>
      textOf(given)
        ?.split(',')
        .map((w) => w.trim());
    const grams = numberOf(call.options['grams'], '--grams', 100, 1, 1_000_000);
    const left = textOf(call.options['left']);
    const shelf = textOf(call.options['shelf']);
    const layer = textOf(call.options['layer']);
    const ground = textOf(call.options['ground']);
    const over = ids(call.options['over']);
    const on: PrintedOnAsk = {
      paperId: textOf(call.options['on']),
      layer,
      over: over?.length === 1 && over[0] === 'below' ? 'below' : over,
      ...(ground === undefined ? {} : { ground: numberOf(ground, '--ground', 1, 1, 100) - 1 }),
    };
    // A run's film and what lies under it, and a sheet's grounds, are the Plan's to say.
    const plan = layer !== undefined || ground !== undefined ? await planOf(bundle) : undefined;
    if (call.options['leftovers'] === true || left !== undefined || shelf !== undefined) {
      const jars = left === undefined ? [] : amountsOf(left, placeOf('--left'));
      const answer = askLeftovers(
        job,
        {
          ...on,
          wanted,
          totalGrams: grams,
          within: numberOf(call.options['within'], '--within', 2, 0.1, 50),
          ...(shelf === undefined ? {} : { shelf: readShelf(new TextDecoder().decode(readFileBytes(shelf)), shelf) }),
          ...(left === undefined ? {} : { left: Object.fromEntries(jars.map((jar) => [jar.id, jar.grams])) }),
        },
        plan,
      );
      if (call.options['json']) {
        printJson(answer);
        return 0;
      }
      sayWhere(job, answer.on);
      sayLeftovers(answer);
      return 0;
    }
    const asked = {
      ...on,
      totalGrams: grams,
      wanted,
      pots: ids(call.options['pots']),
      mostPots: numberOf(call.options['most'], '--most', 3, 1, 4),
      retarderShare: numberOf(call.options['retarder'], '--retarder', 0, 0, 50) / 100,
    };
    const found = askRecipe(job, asked, plan);
    if (call.options['json']) {
      printJson(found);
      return 0;
    }
    printProblems(found.problems, console.log);
    sayWhere(job, found.on);
    for (const one of found.byPots) {
      const parts = one.parts.map((part) => say('inkAnswers.part', { share: share(part.share, 1), ink: asName(part.name) }));
      const line = sayHere('inkAnswers.recipe', { parts: list(parts, 'comma'), deltaE: deltaE(one.deltaE), lab: labColour(one.lab) });
      console.log(`${one === found.best ? '→' : ' '} ${line}`);
    }
    for (const why of found.why) console.log(`  ${tellHere(why)}`);
    return 0;
  },
};

/** Which run prints it, and over what, where either was asked for. */
function sayWhere(job: Job, { layerId, over }: Pick<PrintedOn, 'layerId' | 'over'>): void {
  const nameOf = (id: string): string => job.layers.find((l) => l.id === id)?.name ?? id;
  const under = over.length === 0 ? say('inkAnswers.onTheSheet') : asWritten(over.map(nameOf).join(' + '));
  if (layerId !== null) console.log(sayHere('inkAnswers.printedBy', { layer: asName(nameOf(layerId)), under }));
  else if (over.length > 0) console.log(sayHere('inkAnswers.printedOver', { under }));
}

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
