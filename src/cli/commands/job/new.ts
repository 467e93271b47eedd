import { randomUUID } from 'node:crypto';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { beginJob, jobFileName, parseJob } from '../../../core/job/index.ts';
import { starterInks } from '../../../core/asks/index.ts';
import { fail } from '../../../core/problem.ts';
import { asWritten, name as asName, say } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { diskError, folderAt } from '../../disk/disk.ts';
import { option } from '../../say/help.ts';
import { sayHere, tellHere } from '../../reader.ts';
import { textOf } from '../../say/words.ts';

/** The smallest job that plans, so that nobody begins from a schema. */
export const begin: Command = {
  name: 'new',
  usage: say('help.newUsage'),
  summary: say('help.newSummary'),
  help: [say('help.newText'), option('--inks LIST', say('help.newInks'))],
  options: { inks: { type: 'string' } },
  run(call) {
    const folder = call.words[0] ?? fail('no-folder-named', say('where.commandLine'), say('cli.whichFolder'), say('cli.nameFolder'));
    const file = join(resolve(folder), jobFileName);
    if (existsSync(file)) fail('job-exists', folderAt(folder), say('cli.jobExists'), say('cli.otherFolder'));
    const asked = textOf(call.options['inks'])
      ?.split(/[,;\s]+/)
      .filter((id) => id !== '');
    const shelf = starterInks(tellHere, asked);
    // Printed first: two that make a third; or the two that were asked for first.
    const first = asked ?? ['blue', 'orange'];
    const place = (id: string): number => (first.includes(id) ? first.indexOf(id) : first.length);
    const inks = shelf.toSorted((a, b) => place(a.id) - place(b.id));
    const document = beginJob(
      {
        title: basename(resolve(folder)),
        form: sayHere('begin.form'),
        first: sayHere('begin.first'),
        second: sayHere('begin.second'),
        paper: sayHere('begin.paper'),
        stock: sayHere('begin.stock'),
        note: sayHere('begin.note'),
      },
      inks,
    );
    const begun = { ...document, print: randomUUID() };
    parseJob(begun);
    try {
      mkdirSync(resolve(folder), { recursive: true });
      writeFileSync(file, `${JSON.stringify(begun, null, 2)}\n`);
    } catch (error) {
      fail('cannot-write', folderAt(folder), say('cli.cannotWrite', { why: diskError(error) }), say('cli.otherPlace'));
    }
    console.log(sayHere('begin.written', { file: asName(join(folder, jobFileName)) }));
    for (const path of firstFields) console.log(`  ${path}`);
    console.log(
      sayHere('begin.next', { check: asWritten(`laydown check ${folder}`), explain: asWritten('laydown explain layers.strength') }),
    );
    return 0;
  },
};

/** What one touches first. */
const firstFields = [
  'image.widthMm',
  'forms.outline',
  'layers.ink',
  'layers.strength',
  'inks.over',
  'papers.widthMm',
  'papers.count',
  'screen.mesh',
  'edition.target',
];
