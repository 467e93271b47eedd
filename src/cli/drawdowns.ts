import { existsSync, writeFileSync } from 'node:fs';
import { makeDrawdownSheets } from '../packet/index.ts';
import { fail } from '../core/problem.ts';
import { readFonts } from './assets.ts';
import type { Command } from './command.ts';
import { readJobAt, sayDiskError } from './folder.ts';
import { readerOnPaper } from './reader.ts';
import { numberOf, textOf } from './words.ts';

export const drawdowns: Command = {
  name: 'drawdowns',
  usage: 'drawdowns [JOB] [--ink NAME …] [--parts 1:0,1:1,1:2] --out FILE.pdf [--replace]',
  summary: 'prints the sheet that inks are drawn down on and photographed',
  help: [
    'A page for each ink: a place for each strength, over white and over a black bar, with marks that a photograph is found by.',
    'JOB            a page for every ink of the job',
    '--ink NAME     a page for this ink; may be said several times',
    '--parts LIST   ink to base by volume, 1 to 7 of them (default 1:0,1:1,1:2,1:4,1:8,1:16)',
    '--out FILE     the PDF to write',
    '--replace      over a file of that name',
  ].join('\n'),
  options: { ink: { type: 'string', multiple: true }, parts: { type: 'string' }, out: { type: 'string' }, replace: { type: 'boolean' } },
  async run(call) {
    const out = textOf(call.options['out']) ?? fail('no-file', '--out', 'Which file is to be written?', 'Say --out drawdowns.pdf.');
    const job = call.words[0] === undefined ? null : readJobAt(call.words[0]).job;
    const named = (call.options['ink'] ?? []) as string[];
    const titles = [...named, ...(job?.inks ?? []).filter((k) => k.from !== 'mix' && k.role === 'ink').map((k) => k.name)];
    const parts = textOf(call.options['parts']);
    const bytes = await makeDrawdownSheets(
      titles,
      readFonts(),
      parts === undefined ? undefined : parts.split(',').map(shareOf),
      readerOnPaper(undefined, job ?? undefined),
    );
    writeNew(out, bytes, call.options['replace'] === true);
    console.log(
      `${out}: ${Math.max(1, titles.length)} ${titles.length > 1 ? 'sheets' : 'sheet'}. Print at true size (100 %), on the paper you print on where your printer takes it.`,
    );
    return 0;
  },
};

/** `1:4` → 0.2: ink to base by volume. */
export function shareOf(text: string): number {
  const [ink, base = '0'] = text.split(':');
  const a = numberOf(ink, '--parts', 1, 0.001, 1000),
    b = numberOf(base, '--parts', 0, 0, 1000);
  return a / (a + b);
}

export function writeNew(path: string, content: Uint8Array | string, replace: boolean): void {
  if (existsSync(path) && !replace)
    fail('file-exists', path, 'There is such a file already.', 'Choose another name with --out, or say --replace.');
  try {
    writeFileSync(path, content);
  } catch (error) {
    fail('cannot-write', path, `It could not be written: ${sayDiskError(error)}`, 'Choose another place with --out.');
  }
}
