import { basename, resolve } from 'node:path';
import { statSync } from 'node:fs';
import { makePacket } from '../packet/index.ts';
import { ProblemError } from '../core/problem.ts';
import { readFonts } from './assets.ts';
import type { Command } from './command.ts';
import { writeWhole } from './folder.ts';
import { jobOf, planOf, printProblems } from './load.ts';
import { headlines } from './headlines.ts';
import { tellHere } from './reader.ts';

export const packet: Command = {
  name: 'packet',
  usage: 'packet JOB [--out DIR] [--replace] [--paper a4|letter] [--json]',
  summary: 'makes the printed matter: proofs, cut sheets, cards, record',
  help: [
    '--out DIR        where to put it (default: a folder beside the job, NAME-packet)',
    '--replace        put it in the place of an earlier packet',
    '--paper SIZE     the paper in your printer: a4 (default) or letter',
    '--json           print the plan.json instead, write nothing',
  ].join('\n'),
  options: { out: { type: 'string' }, replace: { type: 'boolean' }, paper: { type: 'string' }, json: { type: 'boolean' } },
  async run(call) {
    const bundle = jobOf(call);
    const plan = await planOf(bundle);
    const errors = plan.problems.filter((p) => p.severity === 'error');
    if (errors.length > 0) throw new ProblemError(errors);
    const page = call.options['paper'] === 'letter' ? 'letter' : 'a4';
    const files = await makePacket(bundle, plan, { fonts: readFonts(), printer: { page, marginMm: 12 } });
    if (call.options['json']) {
      const json = files.find((f) => f.path === 'plan.json');
      process.stdout.write(json ? json.bytes : '{}\n');
      return 0;
    }
    const job = resolve(call.words[0]);
    const out =
      typeof call.options['out'] === 'string'
        ? call.options['out']
        : `${statSync(job).isDirectory() ? job : job.replace(/\.laydown$/, '')}-packet`;
    writeWhole(out, files, call.options['replace'] === true);
    console.log(`${basename(out)}: ${files.length} files`);
    for (const file of files) console.log(`  ${file.path.padEnd(44)} ${tellHere(file.what)}`);
    console.log('');
    for (const line of headlines(plan)) console.log(line);
    printProblems(plan.problems, console.log);
    return 0;
  },
};
