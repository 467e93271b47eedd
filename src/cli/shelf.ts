import { existsSync } from 'node:fs';
import {
  defaultSurface,
  inkCurves,
  inkOfLot,
  mergeShelves,
  readShelf,
  spectrumFromReading,
  writeShelf,
  type InkShelf,
} from '../core/ink/index.ts';
import { shelfWithJob } from '../core/asks/index.ts';
import { fail, ProblemError, type Problem } from '../core/problem.ts';
import type { Command } from './command.ts';
import { writeNew } from './drawdowns.ts';
import { readJobAt } from './folder.ts';
import { printProblems } from './load.ts';
import { tellHere } from './reader.ts';
import { readFileBytes, textOf } from './words.ts';

export const shelf: Command = {
  name: 'shelf',
  usage: 'shelf FILE [FILE …] [--from JOB] [--out FILE] [--replace] [--json]',
  summary: 'shows the studio’s ink shelf, puts shelves together, takes a job’s inks onto it',
  help: [
    'Lists inks, lots, papers and pots of a shelf file. Several files are put together: the same ink gets the lots of both.',
    '--from JOB     a job’s inks and papers go onto the shelf (FILE may be missing still)',
    '--out FILE     writes the shelf that comes of it',
    '--replace      over a file of that name',
    '--json         as JSON',
  ].join('\n'),
  options: { from: { type: 'string' }, out: { type: 'string' }, replace: { type: 'boolean' }, json: { type: 'boolean' } },
  run(call) {
    const job = textOf(call.options['from']);
    if (call.words.length === 0 && job === undefined)
      fail('no-file', 'the command', 'Which shelf?', 'Name a shelf file, or a job with --from.');
    const problems: Problem[] = [];
    let whole: InkShelf | null = null;
    for (const path of call.words) {
      if (job !== undefined && !existsSync(path)) continue;
      const read = readShelf(new TextDecoder().decode(readFileBytes(path)), path);
      if (!whole) whole = read;
      else {
        const merged = mergeShelves(whole, read);
        problems.push(...merged.problems);
        whole = merged.shelf;
      }
    }
    if (job !== undefined) {
      const put = shelfWithJob(whole, readJobAt(job).job);
      problems.push(...put.problems);
      whole = put.shelf;
    }
    printProblems(problems);
    const out = textOf(call.options['out']);
    if (out !== undefined) writeNew(out, writeShelf(whole!), call.options['replace'] === true);
    if (call.options['json']) console.log(JSON.stringify(whole, null, 2));
    else say(whole!);
    if (out !== undefined) console.error(`Written: ${out}`);
    return 0;
  },
};

function say(shelf: InkShelf): void {
  const paper = shelf.papers[0] ? spectrumFromReading(shelf.papers[0].reading, shelf.papers[0].name) : new Float64Array(36).fill(0.9);
  const surface = defaultSurface([], false);
  for (const ink of shelf.inks) {
    console.log(
      `${ink.id.padEnd(16)} ${ink.name}${ink.role === 'ink' ? '' : ` (${ink.role.replace('-', ' ')})`}, ${ink.densityGPerMl} g/mL`,
    );
    for (const lot of ink.lots) {
      try {
        const found = inkOfLot(lot, surface, ink.name);
        const lab = inkCurves(found.ink, paper, surface, [1]).strengths[0].lab;
        console.log(
          `  lot ${lot.lot.padEnd(18)} ${lot.source.from.padEnd(12)} ${lab
            .map((v) => v.toFixed(1))
            .join(' ')
            .padEnd(18)} ${tellHere(found.trust.words)}`,
        );
        printProblems(found.problems, (line) => console.log(`    ${line}`));
      } catch (error) {
        if (!(error instanceof ProblemError)) throw error;
        printProblems(error.problems, (line) => console.log(`    ${line}`));
      }
    }
  }
  for (const p of shelf.papers) console.log(`${p.id.padEnd(16)} ${p.name} (paper)`);
  for (const p of shelf.pots) console.log(`${p.id.padEnd(16)} ${p.name} (pot, ${p.rounds.length} drawdowns)`);
  console.log(`${shelf.inks.length} inks, ${shelf.papers.length} papers, ${shelf.pots.length} pots`);
}
