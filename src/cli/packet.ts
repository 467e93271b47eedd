import { basename, dirname, resolve } from 'node:path';
import { statSync } from 'node:fs';
import { makePacket } from '../packet/index.ts';
import { jobFileName } from '../core/job/index.ts';
import { fail, ProblemError } from '../core/problem.ts';
import { name as asName, say } from '../words/index.ts';
import { readFonts } from './assets.ts';
import type { Command } from './command.ts';
import { option } from './help.ts';
import { jobOf, planOf, printProblems } from './load.ts';
import { headlines } from './headlines.ts';
import { placeOf } from './options.ts';
import { readerOnPaper, sayHere, tellHere } from './reader.ts';
import { columns } from './table.ts';
import { textOf } from './words.ts';
import { checkFree, writeWhole } from './write-folder.ts';

export const packet: Command = {
  name: 'packet',
  usage: say('help.packetUsage'),
  summary: say('help.packetSummary'),
  help: [
    option('--out', say('help.packetOut'), 'folder'),
    option('--replace', say('help.packetReplace')),
    option('--paper', say('help.packetPaper'), 'size'),
    option('--json', say('help.packetJson')),
  ],
  prints: true,
  options: { out: { type: 'string' }, replace: { type: 'boolean' }, paper: { type: 'string' }, json: { type: 'boolean' } },
  async run(call) {
    const paper = textOf(call.options['paper']) ?? 'a4';
    if (paper !== 'a4' && paper !== 'letter')
      fail('no-such-paper', placeOf('--paper'), say('refusals.noSuchSheet', { text: asName(paper) }), say('refusals.sayA4OrLetter'));
    const bundle = jobOf(call);
    const job = resolve(call.words[0]);
    const isFolder = statSync(job).isDirectory();
    const jobFolder = isFolder ? job : basename(job) === jobFileName ? dirname(job) : undefined;
    const out = textOf(call.options['out']) ?? `${jobFolder ?? job.replace(/\.laydown$/, '')}-packet`;
    const wish = { kind: 'packet', replace: call.options['replace'] === true, jobFolder } as const;
    if (!call.options['json']) checkFree(out, wish);
    const plan = await planOf(bundle);
    const errors = plan.problems.filter((p) => p.severity === 'error');
    if (errors.length > 0) throw new ProblemError(errors);
    const { language } = readerOnPaper(call.language, bundle.job);
    const files = await makePacket(bundle, plan, { fonts: readFonts(), printer: { page: paper, marginMm: 12 }, language });
    if (call.options['json']) {
      const json = files.find((f) => f.path === 'plan.json');
      process.stdout.write(json ? json.bytes : '{}\n');
      return 0;
    }
    writeWhole(out, files, wish);
    console.log(sayHere('answers.files', { folder: asName(basename(out)), n: files.length }));
    for (const line of columns(
      files.map((file) => [file.path, tellHere(file.what)]),
      { indent: '  ' },
    ))
      console.log(line);
    console.log('');
    for (const line of headlines(plan)) console.log(line);
    printProblems(plan.problems, console.log);
    return 0;
  },
};
