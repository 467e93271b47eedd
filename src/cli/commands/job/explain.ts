import { explainField } from '../../../core/job/index.ts';
import { fail } from '../../../core/problem.ts';
import { list, name as asName, say } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { json } from '../../say/help.ts';
import { printJson, sayHere, tellHere } from '../../reader.ts';
import { columns } from '../../say/table.ts';

/** What a field of the job means, its unit, what it may be, and an example. */
export const explain: Command = {
  name: 'explain',
  usage: say('help.explainUsage'),
  summary: say('help.explainSummary'),
  help: [say('help.explainText'), json],
  options: { json: { type: 'boolean' } },
  run(call) {
    const asked = call.words[0] ?? '';
    const answer = explainField(asked);
    if (answer.found.length === 0)
      fail(
        'no-such-field',
        say('where.commandLine'),
        say('cli.noSuchField', { field: asName(asked) }),
        answer.near.length > 0
          ? say('job.didYouMean', { meant: asName(answer.near[0]) })
          : say('cli.fieldsAre', { all: list(answer.top.map(asName), 'and') }),
      );
    if (call.options['json'] === true) {
      printJson(answer.found);
      return 0;
    }
    for (const one of answer.found) {
      console.log(one.path === '' ? sayHere('where.job') : one.path);
      console.log(`  ${tellHere(one.means)}`);
      if (one.unit) console.log(`  ${sayHere('begin.unitIs', { unit: one.unit })}`);
      if (one.range !== '') console.log(`  ${sayHere('begin.mayBe', { what: asName(one.range) })}`);
      if (one.standard !== undefined) console.log(`  ${sayHere('begin.leftOut', { value: asName(one.standard) })}`);
      console.log(`  ${sayHere('begin.example', { example: asName(one.example) })}`);
      if (one.fields.length > 0)
        for (const line of columns(
          one.fields.map((field) => [field.name, tellHere(field.means)]),
          { indent: '    ' },
        ))
          console.log(line);
    }
    return 0;
  },
};
