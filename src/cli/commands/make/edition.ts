import { registerRows, writeCsv, type NumberedSheet } from '../../../core/edition/index.ts';
import { fail } from '../../../core/problem.ts';
import { figure, name as asName, say, type Saying } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { option } from '../../say/help.ts';
import { jobOf, planOf, printProblems } from '../../disk/load.ts';
import { printJson, sayHere, tellHere } from '../../reader.ts';
import { columns } from '../../say/table.ts';

export const edition: Command = {
  name: 'edition',
  usage: say('help.editionUsage'),
  summary: say('help.editionSummary'),
  help: [say('help.editionText'), option('--csv', say('help.editionCsv')), option('--json', say('help.pressJson'))],
  options: { csv: { type: 'boolean' }, json: { type: 'boolean' } },
  async run(call) {
    const plan = await planOf(jobOf(call));
    const { sheets, numbered, facts, documentation, colophon } = plan.edition;
    if (call.options['json']) {
      printJson({ sheets, numbered, documentation, colophon });
      return 0;
    }
    if (call.options['csv']) {
      if (!numbered) fail('nothing-counted', say('where.count'), say('refusals.nothingCounted'), say('refusals.countFirst'));
      process.stdout.write(writeCsv(registerRows(facts, numbered, tellHere)));
      return 0;
    }
    for (const { apart, name, start, wanted, edition: numbers, proofs, certainty, likelyGood } of sheets?.papers ?? []) {
      const paper = apart ? say('answers.keptApart', { paper: asName(name) }) : say('common.asWritten', { text: asName(name) });
      console.log(
        `${sayHere('answers.start', { paper, start, wanted, edition: numbers, proofs: proofs.total })} ${sayHere('answers.enough', {
          inHundred: Math.floor(certainty * 100),
          low: likelyGood[0],
          high: likelyGood[1],
        })}`,
      );
    }
    if (sheets) console.log(sayHere('answers.setUp', { what: sheets.setUp.text }));
    const runs = (sheets?.runs ?? []).map((run) => [
      sayHere('answers.runNo', { run: run.run + 1 }),
      sayHere('answers.onAverage', { n: figure(run.expected) }),
      sayHere('answers.beReady', { n: run.prepare }),
    ]);
    for (const line of columns(runs, { indent: '  ' })) console.log(line);
    if (numbered) {
      console.log('');
      for (const line of columns(
        numbered.sheets.map((one) => [one.sheet.id, tellHere(one.text ?? unsigned(one.kind))]),
        { indent: '  ' },
      ))
        console.log(line);
      if (colophon) console.log(`\n${tellHere(colophon)}`);
    }
    printProblems(plan.edition.problems, console.log);
    return sheets ? 0 : 1;
  },
};

/** What is said of a sheet that the pencil leaves alone. */
function unsigned(kind: NumberedSheet['kind']): Saying {
  return say(kind === 'spare' ? 'answers.spare' : kind === 'set-up' ? 'answers.setUpSheet' : 'answers.notSigned');
}
