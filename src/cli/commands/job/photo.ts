import { drawdownSheet, readSheetPhoto } from '../../../core/ink/index.ts';
import { inkFromSheet, photographOf } from '../../../core/asks/index.ts';
import { fail } from '../../../core/problem.ts';
import { deltaE, figure, say, type Saying } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { fileAt, readFileBytes } from '../../disk/disk.ts';
import { shareOf } from '../ink/drawdowns.ts';
import { option, replaceFile } from '../../say/help.ts';
import { printProblems } from '../../disk/load.ts';
import { placeOf } from '../../options.ts';
import { printJson, sayHere, tellHere } from '../../reader.ts';
import { columns } from '../../say/table.ts';
import { labCells, labColumns, labOf, textOf } from '../../say/words.ts';
import { readPictureApart } from '../../threads/read-picture.ts';
import { tellPrintPhoto } from './print-photo.ts';

export const photo: Command = {
  name: 'photo',
  usage: say('help.photoUsage'),
  summary: say('help.photoSummary'),
  help: [
    say('help.photoText'),
    option('--ink', say('help.photoInk'), 'name'),
    option('--parts', say('help.photoParts'), 'parts'),
    option('--paper "L a b"', say('help.photoPaper')),
    option('--grey "L a b"', say('help.photoGrey')),
    option('--json', say('help.photoJson')),
    { heading: say('help.photoOfPrint') },
    say('help.photoPrintText'),
    option('--print', say('help.photoPrint'), 'job'),
    option('--on', say('help.onFirst'), 'paper'),
    option('--corners "x,y …"', say('help.photoCorners')),
    option('--image', say('help.photoImage')),
    option('--lens', say('help.traceLens'), 'file'),
    option('--out', say('help.photoOut'), 'file'),
    option('--keep', say('help.photoKeep')),
    replaceFile,
  ],
  options: {
    ink: { type: 'string' },
    parts: { type: 'string' },
    paper: { type: 'string' },
    grey: { type: 'string' },
    json: { type: 'boolean' },
    print: { type: 'string' },
    on: { type: 'string' },
    corners: { type: 'string' },
    image: { type: 'boolean' },
    lens: { type: 'string' },
    out: { type: 'string' },
    keep: { type: 'boolean' },
    replace: { type: 'boolean' },
  },
  async run(call) {
    const path = call.words[0] ?? fail('no-photo', say('where.commandLine'), say('cli.whichPhoto'), say('cli.namePicture'));
    const job = textOf(call.options['print']);
    if (job !== undefined) return tellPrintPhoto(call, path, job);
    const name = textOf(call.options['ink']) ?? fail('no-ink-named', placeOf('--ink'), say('refusals.whichInk'), say('refusals.writeInk'));
    const parts = textOf(call.options['parts']),
      paper = textOf(call.options['paper']),
      grey = textOf(call.options['grey']);
    const picture = await readPictureApart(readFileBytes(path), path);
    const read = readSheetPhoto(drawdownSheet(name, parts?.split(',').map(shareOf)), photographOf(picture), {
      place: fileAt(path),
      ...(paper === undefined ? {} : { paperLab: labOf(paper, placeOf('--paper')) }),
      ...(grey === undefined ? {} : { greyLab: labOf(grey, placeOf('--grey')) }),
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
      printJson(ink);
      return 0;
    }
    const row = (what: Saying, lab: readonly number[], sigma?: number): string[] => [
      tellHere(what),
      ...labCells(lab),
      ...(sigma === undefined ? [] : [sayHere('inkAnswers.doubt', { sigma: deltaE(sigma, 0) })]),
    ];
    const rows = [
      row(say('inkAnswers.sheetPaper'), read.white),
      row(say('inkAnswers.blackBar'), read.black.reading.lab, read.black.reading.sigma),
      ...read.boxes.map((box) => row(box.name, box.reading.lab, box.reading.sigma)),
    ];
    for (const line of columns(rows, { indent: '  ', right: labColumns(1) })) console.log(line);
    const taken = ink.from === 'ladder' ? sayHere('inkAnswers.takenAsLadder', { n: ink.steps.length }) : sayHere('inkAnswers.takenAsTwo');
    console.log(`${sayHere('inkAnswers.lightEven', { times: figure(read.unevenness, 2) })} ${taken}`);
    return 0;
  },
};
