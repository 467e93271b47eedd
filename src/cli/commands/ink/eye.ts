import { staircase, labOfHex, readingByEye, type Reading } from '../../../core/ink/index.ts';
import { colourInPicture, guessesOf, inkByEye, photographOf } from '../../../core/asks/index.ts';
import { srgbFromXyz, xyzFromLab, type Lab } from '../../../core/colour/index.ts';
import { fail } from '../../../core/problem.ts';
import { deltaE, labColour, name as asName, say } from '../../../words/index.ts';
import type { Call, Command } from '../../command.ts';
import { readFileBytes } from '../../disk/disk.ts';
import { option } from '../../say/help.ts';
import { jobOf } from '../../disk/load.ts';
import { placeOf } from '../../options.ts';
import { printJson, sayHere, tellHere } from '../../reader.ts';
import { readPictureApart } from '../../threads/read-picture.ts';
import { labOf, textOf } from '../../say/words.ts';

/** An ink without an instrument: typed, from a photograph, or compared with patches on the screen. */
export const eye: Command = {
  name: 'eye',
  usage: say('help.eyeUsage'),
  summary: say('help.eyeSummary'),
  help: [
    say('help.eyeText'),
    option('--chose N,N,…', say('help.eyeChose')),
    option('--at X,Y', say('help.eyeAt')),
    option('--paper "L a b"', say('help.eyePaper')),
    option('--ink', say('help.eyeInk'), 'name'),
    option('--json', say('help.eyeJson')),
  ],
  options: {
    chose: { type: 'string' },
    at: { type: 'string' },
    paper: { type: 'string' },
    ink: { type: 'string' },
    json: { type: 'boolean' },
  },
  async run(call) {
    const what =
      call.words[0] ?? fail('no-colour', say('where.commandLine'), say('refusals.whichColourOrPhoto'), say('refusals.nameColourOrPhoto'));
    const isHex = /^#?([0-9a-f]{3}|[0-9a-f]{6})$/i.test(what);
    const place = textOf(call.options['at']);
    if (!isHex && place === undefined) return sayGuesses(call);
    const reading = isHex ? readingByEye(labOfHex(what, say('where.commandLine')), 'typed') : await onPhoto(what, place!);
    const chose = textOf(call.options['chose']);
    return sayColour(call, reading, chose === undefined ? null : choices(chose));
  },
};

async function onPhoto(path: string, place: string): Promise<Extract<Reading, { kind: 'lab' }>> {
  const [x, y, ...more] = place.split(/[,;\s]+/).map(Number);
  if (more.length > 0 || ![x, y].every((v) => v >= 0 && v <= 100))
    fail('bad-place', placeOf('--at'), say('refusals.notAPlace', { text: asName(place) }), say('refusals.writePlace'));
  return colourInPicture(photographOf(await readPictureApart(readFileBytes(path), path)), x / 100, y / 100);
}

function choices(text: string): number[] {
  const all = text
    .split(/[,;\s]+/)
    .filter((w) => w !== '')
    .map(Number);
  if (all.length > 100 || !all.every((n) => Number.isInteger(n) && n >= 0 && n <= 6))
    fail('bad-choices', placeOf('--chose'), say('refusals.notChoices', { text: asName(text) }), say('refusals.writeChoices'));
  return all;
}

const patchNames = ['Middle', 'Lighter', 'Darker', 'Stronger', 'Duller', 'Turned', 'TurnedBack'] as const;

function sayColour(call: Call, reading: Extract<Reading, { kind: 'lab' }>, chosen: readonly number[] | null): number {
  const stand = chosen && staircase(reading.lab, chosen);
  const over: Extract<Reading, { kind: 'lab' }> =
    stand && chosen.length > 0 ? { kind: 'lab', lab: stand.lab, sigma: stand.sigma } : reading;
  const paper = textOf(call.options['paper']);
  const ground: Reading = { kind: 'lab', lab: paper === undefined ? [95, 0, 2] : labOf(paper, placeOf('--paper')), sigma: 3 };
  if (call.options['json']) {
    const name = textOf(call.options['ink']) ?? hexOf(over.lab);
    const id =
      name
        .toLowerCase()
        .normalize('NFD')
        .replace(/[^a-z0-9]+/g, '-')
        .replace(/^-+|-+$/g, '')
        .slice(0, 60) || 'ink';
    printJson(stand ? { ...inkByEye({ id, name }, ground, over), comparing: stand } : inkByEye({ id, name }, ground, over));
    return 0;
  }
  console.log(
    `${block(over.lab)}${hexOf(over.lab)}  ${sayHere('inkAnswers.byEye', { lab: labColour(over.lab), sigma: deltaE(over.sigma ?? 0) })}`,
  );
  if (!stand) return 0;
  if (stand.done) console.log(sayHere('inkAnswers.choicesDone'));
  else {
    stand.patches.forEach(({ lab, srgb }, n) =>
      console.log(`${block(lab)}${srgb}  ${sayHere('inkAnswers.patchNo', { n, what: say(`inkAnswers.patch${patchNames[n]}`) })}`),
    );
    console.log(sayHere('inkAnswers.nextChoice'));
  }
  return 0;
}

function sayGuesses(call: Call): number {
  const guesses = guessesOf(jobOf(call).job);
  if (call.options['json']) {
    printJson(guesses);
    return 0;
  }
  for (const guess of guesses) {
    const head = guess.guessed ? sayHere('inkAnswers.guessed', { ink: asName(guess.name), lab: labColour(guess.guessed) }) : guess.name;
    console.log(`${head}. ${guess.compared ? tellHere(guess.compared.words) : sayHere('inkAnswers.notReadYet')}`);
  }
  const read = guesses.flatMap((g) => g.compared ?? []);
  if (guesses.length === 0) console.log(sayHere('inkAnswers.noGuesses'));
  if (read.length > 1) console.log(sayHere('ink.guessesKept', { within: read.filter((c) => c.off <= c.sigma).length, n: read.length }));
  return 0;
}

const hexOf = (lab: Lab): string => srgbFromXyz(xyzFromLab(lab)).hex;

/** A patch of the colour itself, where a terminal shows colours. */
function block(lab: Lab): string {
  return process.stdout.isTTY ? `\u001b[48;2;${srgbFromXyz(xyzFromLab(lab)).rgb.join(';')}m      \u001b[0m ` : '';
}
