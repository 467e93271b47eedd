import { registerRows, writeCsv } from '../core/edition/index.ts';
import { sayingsIn, tell, type Saying } from '../words/index.ts';
import type { Command } from './command.ts';
import { jobOf, planOf, printProblems } from './load.ts';
import { tellHere } from './reader.ts';

export const edition: Command = {
  name: 'edition',
  usage: 'edition JOB [--csv] [--json]',
  summary: 'sheets to start, proofs to hold back, numbers for the pencil, the record',
  help: 'Before printing: how many sheets to start. After counting at the press (press-count.log in the job): every sheet with its mark.\n--csv   the register of sheets as CSV\n--json  everything as JSON',
  options: { csv: { type: 'boolean' }, json: { type: 'boolean' } },
  async run(call) {
    const plan = await planOf(jobOf(call));
    const { sheets, numbered, facts, documentation, colophon } = plan.edition;
    const told = (saying: Saying): string => tellHere(saying, plan.job.units);
    if (call.options['json']) {
      console.log(
        JSON.stringify(
          { sheets, numbered, documentation, colophon },
          sayingsIn((s) => tell(s)),
          2,
        ),
      );
      return 0;
    }
    if (call.options['csv']) {
      if (!numbered) {
        console.error('Nothing has been counted yet: count at the press first.');
        return 1;
      }
      process.stdout.write(writeCsv(registerRows(facts, numbered, told)));
      return 0;
    }
    for (const paper of sheets?.papers ?? []) {
      console.log(
        `${paper.name}${paper.apart ? ' (kept apart)' : ''}: start ${paper.start} for ${paper.wanted} (${paper.edition} of the edition, ${paper.proofs.total} proofs); met in ${Math.floor(paper.certainty * 100)} of 100 cases, likely ${paper.likelyGood.join(' to ')} good`,
      );
    }
    if (sheets) console.log(`Set-up: ${told(sheets.setUp.text)}`);
    for (const run of sheets?.runs ?? [])
      console.log(`  run ${run.run + 1}: ${run.expected.toFixed(0)} sheets on average, be ready for ${run.prepare}`);
    if (numbered) {
      console.log('');
      for (const one of numbered.sheets) console.log(`  ${one.sheet.id.padEnd(6)} ${one.text ? told(one.text) : one.kind}`);
      if (colophon) console.log(`\n${told(colophon)}`);
    }
    printProblems(plan.edition.problems, console.log);
    return sheets ? 0 : 1;
  },
};
