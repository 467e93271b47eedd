import { basename, dirname, resolve } from 'node:path';
import { statSync } from 'node:fs';
import { fingerprintOf, jobFileName } from '../../../core/job/index.ts';
import { fail, ProblemError } from '../../../core/problem.ts';
import { makePacket, packetParts, printerPages, readParts, type PrinterPage } from '../../../packet/index.ts';
import { list, name as asName, say } from '../../../words/index.ts';
import { readFonts } from '../../assets.ts';
import type { Command } from '../../command.ts';
import { option } from '../../say/help.ts';
import { jobOf, planOf, printProblems } from '../../disk/load.ts';
import { headlines } from '../../say/headlines.ts';
import { placeOf } from '../../options.ts';
import { usualPacketFolder } from '../../disk/packet-folder.ts';
import { readerOnPaper, sayHere, tellHere } from '../../reader.ts';
import { columns } from '../../say/table.ts';
import { textOf } from '../../say/words.ts';
import { checkFree, writeWhole } from '../../disk/write-folder.ts';

export const packet: Command = {
  name: 'packet',
  usage: say('help.packetUsage'),
  summary: say('help.packetSummary'),
  help: [
    option('--out', say('help.packetOut'), 'folder'),
    option('--replace', say('help.packetReplace')),
    option('--paper', say('help.packetPaper'), 'size'),
    option('--only', say('help.packetOnly', { all: list(packetParts.map(asName), 'and') }), 'parts'),
    option('--black', say('help.packetBlack')),
    option('--large', say('help.packetLarge')),
    option('--split', say('help.packetSplit')),
    option('--strict', say('help.checkStrict')),
    option('--json', say('help.packetJson')),
  ],
  prints: true,
  options: {
    out: { type: 'string' },
    replace: { type: 'boolean' },
    paper: { type: 'string' },
    only: { type: 'string' },
    black: { type: 'boolean' },
    large: { type: 'boolean' },
    split: { type: 'boolean' },
    strict: { type: 'boolean' },
    json: { type: 'boolean' },
  },
  async run(call) {
    const page = printerPage(call.options['paper']);
    const only = typeof call.options['only'] === 'string' ? readParts(call.options['only']) : undefined;
    const bundle = jobOf(call);
    const job = resolve(call.words[0]);
    const isFolder = statSync(job).isDirectory();
    const jobFolder = isFolder ? job : basename(job) === jobFileName ? dirname(job) : undefined;
    const out = textOf(call.options['out']) ?? usualPacketFolder(call.words[0]);
    const wish = { kind: 'packet', replace: call.options['replace'] === true, jobFolder } as const;
    if (!call.options['json']) checkFree(out, wish);
    const plan = await planOf(bundle);
    const refused = plan.problems.map((p) =>
      call.options['strict'] === true && p.code === 'unknown-field' ? { ...p, severity: 'error' as const } : p,
    );
    const errors = refused.filter((p) => p.severity === 'error');
    if (errors.length > 0) throw new ProblemError(errors);
    const { language } = readerOnPaper(call.language, bundle.job);
    const files = await makePacket(bundle, plan, {
      fonts: readFonts(),
      printer: { page, marginMm: 12 },
      language,
      only,
      black: call.options['black'] === true,
      large: call.options['large'] === true,
      split: call.options['split'] === true,
    });
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
    console.log(`\n${sayHere('answers.jobMark', { mark: asName(fingerprintOf(bundle)) })}`);
    for (const line of headlines(plan)) console.log(line);
    printProblems(plan.problems, console.log);
    return 0;
  },
};

/** The paper in the printer; a name that is none is refused, not taken for A4. */
function printerPage(asked: unknown): PrinterPage {
  if (asked === undefined) return 'a4';
  const page = printerPages.find((one) => one === String(asked).toLowerCase());
  return (
    page ??
    fail(
      'no-such-page',
      placeOf('--paper'),
      say('cli.cannotUse', { text: asName(String(asked)) }),
      say('cli.useOneOf', { all: list(printerPages.map(asName), 'or') }),
    )
  );
}
