import { expect, test } from 'vitest';
import { readFileSync } from 'node:fs';
import { logLine, type NumberedEdition } from '../core/edition/index.ts';
import { countLogName, plan } from '../core/plan/index.ts';
import { inEnglish } from '../../test/said.ts';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { makePacket } from './index.ts';
import { smallJob } from './packet-jobs.ts';

const font = (name: string): Uint8Array => new Uint8Array(readFileSync(new URL(`../../assets/OpenSans-${name}.ttf`, import.meta.url)));
const fonts = { regular: font('Regular'), semibold: font('Semibold'), bold: font('Bold') };

/** Every sheet goes through these runs; A2 is spoiled in the last. */
async function packetAfter(
  runs: readonly string[],
  changes: object = {},
): Promise<{ paths: string[]; text: string; csv: string; marks: string[]; numbered: NumberedEdition | null }> {
  const { job } = smallJob({
    maker: 'A. Printer',
    edition: { target: 2, year: 2026, record: { master: 'cancelled', printer: 'B. Hand' } },
    ...changes,
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
    numbered: made.edition.numbered,
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

test('proofs come from the paper they are wanted on, numbers as wished on each, and the rest is called spare', async () => {
  const paper = smallJob().job.papers[0];
  const made = await packetAfter(['ring', 'block'], {
    papers: [
      { ...paper, id: 'a', name: 'Smooth', count: 9, wantedPrints: 5 },
      { ...paper, id: 'b', name: 'Rough', count: 9 },
    ],
    edition: { target: 7, proofsOn: 'b', artistsProofShare: 0.2, batProofs: 1, printersProofs: 1, horsCommerce: 1, certainty: 0.5 },
  });
  const kinds = (at: string): Record<string, number> => {
    const of: Record<string, number> = {};
    for (const { sheet, kind } of made.numbered?.sheets ?? []) if (sheet.paper === at) of[kind] = (of[kind] ?? 0) + 1;
    return of;
  };
  // A2 was spoiled in the last run.
  expect(kinds('a')).toEqual({ edition: 5, spare: 3, rejected: 1 });
  expect(kinds('b')).toEqual({ bat: 1, edition: 2, artists: 1, printers: 1, 'hors-commerce': 1, spare: 3 });
  expect(made.text).toContain('Smooth: 5 in the edition, from 9 sheets');
  expect(made.text).toContain('Rough: 2 in the edition and 1 B.A.T., 1 A/P, 1 P/P, 1 H.C., from 9 sheets');
  expect(made.text).toMatch(/More good sheets are spare \(about 3 on Smooth, 2 on Rough\)/);
  expect(made.text).toMatch(/A Smooth[^A-Z]*5 0 0 0 0 3 1 B Rough[^A-Z]*2 1 1 1 1 3 0/);
});

test('half-way through the runs no sheet is called rejected yet', async () => {
  const made = await packetAfter(['ring']);
  expect(made.paths).not.toContain('register.csv');
  expect(made.text).not.toContain('Numbers for the pencil');
  expect(made.text).not.toContain('Rejected');
});
