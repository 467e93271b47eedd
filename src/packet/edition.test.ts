import { expect, test } from 'vitest';
import { readFileSync } from 'node:fs';
import { logLine } from '../core/edition/index.ts';
import { countLogName, plan } from '../core/plan/index.ts';
import { inEnglish } from '../../test/said.ts';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { makePacket } from './index.ts';
import { smallJob } from './packet-jobs.ts';

const font = (name: string): Uint8Array => new Uint8Array(readFileSync(new URL(`../../assets/OpenSans-${name}.ttf`, import.meta.url)));
const fonts = { regular: font('Regular'), semibold: font('Semibold'), bold: font('Bold') };

/** Every sheet goes through these runs; A2 is spoiled in the last. */
async function packetAfter(runs: readonly string[]): Promise<{ paths: string[]; text: string; csv: string; marks: string[] }> {
  const { job } = smallJob({
    maker: 'A. Printer',
    edition: { target: 2, year: 2026, record: { master: 'cancelled', printer: 'B. Hand' } },
  });
  const sheets = plan({ job, attachments: new Map() }).edition.sheetNames;
  let n = 0;
  const log = runs
    .flatMap((run) =>
      sheets.map((s) =>
        logLine(++n, {
          kind: s.id === 'A2' && run === 'block' ? 'spoil' : 'pull',
          run,
          sheet: s.id,
          at: '2026-01-01T10:00:00Z',
          ...(s.id === 'A2' && run === 'block' ? { text: 'smudged' } : {}),
        } as Parameters<typeof logLine>[1]),
      ),
    )
    .join('');
  const bundle = { job, attachments: new Map([[countLogName, new TextEncoder().encode(log)]]) };
  const made = plan(bundle);
  const files = await makePacket(bundle, made, { fonts, printer: { page: 'a4', marginMm: 12 } });
  const book = await getDocument({ data: files[0].bytes.slice(), verbosity: 0 }).promise;
  const pages = await Promise.all(
    Array.from({ length: book.numPages }, async (_, i) =>
      (await (await book.getPage(i + 1)).getTextContent()).items.map((item) => ('str' in item ? item.str : '')).join(' '),
    ),
  );
  const csv = files.find((f) => f.path === 'register.csv');
  return {
    paths: files.map((f) => f.path),
    text: pages.join('\n').replace(/ +/g, ' '),
    csv: csv ? new TextDecoder().decode(csv.bytes) : '',
    marks: made.edition.numbered?.sheets.flatMap((s) => (s.text ? [inEnglish(s.text)] : [])) ?? [],
  };
}

test('when all runs are counted, the packet has the numbers for the pencil, labels, register and colophon', async () => {
  const made = await packetAfter(['ring', 'block']);
  expect(made.marks.length).toBeGreaterThan(1);
  expect(made.paths).toEqual(expect.arrayContaining(['register.csv', 'colophon.txt']));
  const [, pencil = ''] = /Numbers for the pencil([\s\S]*?)Colophon/.exec(made.text) ?? [];
  for (const mark of made.marks) expect(pencil).toContain(mark);
  expect(pencil).toContain('A2 (run 2: smudged)');
  expect(made.text).toContain('for sleeves and frames');
  expect(made.text).toContain('Stencils: cancelled after printing.');
  expect(made.text).toContain('B. Hand');
  expect(made.csv.split('\r\n').filter((line) => /^A\d+,/.test(line)).length).toBeGreaterThan(3);
});

test('half-way through the runs no sheet is called rejected yet', async () => {
  const made = await packetAfter(['ring']);
  expect(made.paths).not.toContain('register.csv');
  expect(made.text).not.toContain('Numbers for the pencil');
  expect(made.text).not.toContain('Rejected');
});
