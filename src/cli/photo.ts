import { drawdownSheet, readSheetPhoto } from '../core/ink/index.ts';
import { inkFromSheet, photographOf } from '../core/asks/index.ts';
import { fail } from '../core/problem.ts';
import { name as asName, say } from '../words/index.ts';
import { readPicture } from '../core/separate/index.ts';
import { prepare } from './assets.ts';
import type { Command } from './command.ts';
import { shareOf } from './drawdowns.ts';
import { printProblems } from './load.ts';
import { tellHere } from './reader.ts';
import { labOf, readFileBytes, textOf } from './words.ts';

export const photo: Command = {
  name: 'photo',
  usage: 'photo PICTURE --ink NAME [--parts 1:0,1:1,1:2] [--paper "L a b"] [--grey "L a b"] [--json]',
  summary: 'reads a photograph of a drawdown sheet',
  help: [
    'The sheet is found by its four corner marks; the light is evened out over the bare paper. --json writes the ink as job.json takes it.',
    '--ink NAME     what was drawn down',
    '--parts LIST   strengths of the sheet, as it was printed (default 1:0,1:1,1:2,1:4,1:8,1:16)',
    '--paper LAB    the sheet’s own colour, where it was ever read',
    '--grey LAB     the colour of the grey card on the sheet: sets the scale better than paper does',
  ].join('\n'),
  options: {
    ink: { type: 'string' },
    parts: { type: 'string' },
    paper: { type: 'string' },
    grey: { type: 'string' },
    json: { type: 'boolean' },
  },
  async run(call) {
    const path = call.words[0] ?? fail('no-photo', 'the command', 'Which photograph?', 'Name a JPEG, PNG, WebP or TIFF file.');
    const name = textOf(call.options['ink']) ?? fail('no-ink-named', '--ink', 'Which ink was drawn down?', 'Say --ink "Weed green".');
    const parts = textOf(call.options['parts']),
      paper = textOf(call.options['paper']),
      grey = textOf(call.options['grey']);
    await prepare();
    const picture = await readPicture(readFileBytes(path), path);
    const read = readSheetPhoto(drawdownSheet(name, parts?.split(',').map(shareOf)), photographOf(picture), {
      place: say('where.file', { file: asName(path) }),
      ...(paper === undefined ? {} : { paperLab: labOf(paper, '--paper') }),
      ...(grey === undefined ? {} : { greyLab: labOf(grey, '--grey') }),
    });
    const id =
      name
        .toLowerCase()
        .normalize('NFD')
        .replace(/[^a-z0-9]+/g, '-')
        .replace(/^-+|-+$/g, '')
        .slice(0, 60) || 'ink';
    const ink = inkFromSheet(read, { id, name }, path);
    printProblems([...picture.problems, ...read.problems, ...read.boxes.flatMap((box) => box.problems)]);
    if (call.options['json']) {
      console.log(JSON.stringify(ink, null, 2));
      return 0;
    }
    const line = (what: string, lab: readonly number[], sigma?: number): void =>
      console.log(
        `  ${what.padEnd(20)} L ${lab[0].toFixed(1).padStart(5)}  a ${lab[1].toFixed(1).padStart(6)}  b ${lab[2].toFixed(1).padStart(6)}${sigma === undefined ? '' : `   ± ${sigma.toFixed(0)} ΔE00`}`,
      );
    line('paper', read.white);
    line('black bar', read.black.reading.lab, read.black.reading.sigma);
    for (const box of read.boxes) line(tellHere(box.name), box.reading.lab, box.reading.sigma);
    console.log(
      `Light uneven by a factor of ${read.unevenness.toFixed(2)}, evened out. Taken as: ${ink.from === 'ladder' ? `a ladder of ${ink.steps.length}` : 'white and black'}.`,
    );
    return 0;
  },
};
