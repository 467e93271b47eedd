import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { expect, test } from 'vitest';
import { prepare, readFonts } from '../src/cli/assets.ts';
import { readJobAt } from '../src/cli/folder.ts';
import { plan, readyBundle, type ReadyBundle } from '../src/core/plan/index.ts';
import { makePacket } from '../src/packet/index.ts';
import { speechOf } from '../src/workbench/words/core/speech.ts';

/** All lines of the packet of tide-pool, as a studio gets it that measures in inches. */
async function linesOf(language: string): Promise<string[]> {
  await prepare();
  const { job, ...rest } = readJobAt(new URL('../examples/tide-pool', import.meta.url).pathname);
  const layers = job.layers.map((layer, i) => (i === 1 ? { ...layer, offContactMm: 5, note: 'leave 2 mm of sky' } : layer));
  const bundle: ReadyBundle = await readyBundle({ ...rest, job: { ...job, units: 'in', layers } });
  const files = await makePacket(bundle, plan(bundle), {
    fonts: readFonts(),
    printer: { page: 'letter', marginMm: 12 },
    speech: speechOf(language),
  });
  const read = await getDocument({ data: new Uint8Array(files[0].bytes), verbosity: 0 }).promise;
  const lines: string[] = [];
  for (let page = 1; page <= read.numPages; page++) {
    const { items } = await (await read.getPage(page)).getTextContent();
    lines.push(...items.flatMap((item) => ('str' in item && item.str !== '' ? [item.str.replaceAll('\u00a0', ' ')] : [])));
  }
  return lines;
}

test.each([
  ['en', /^100 mm = 3\.94 in on the ruler/, '0.146'],
  ['de', /^100 mm = 3,94 in/, '0,146'],
])(
  'a job in inches has its packet in inches (%s): only the check line and what was written by hand name millimetres',
  async (language, check, gap) => {
    const lines = await linesOf(language);
    expect(lines.length).toBeGreaterThan(1000);
    expect(lines.some((line) => check.test(line))).toBe(true);
    expect(lines.filter((line) => /\d\s(?:mm|cm|m)(?:²|\b)(?!inute)/u.test(line) && !check.test(line) && !line.includes('2 mm'))).toEqual(
      [],
    );
    // The gap over the image, from a sentence of the plan.
    expect(lines.some((line) => line.includes(gap))).toBe(true);
    expect(lines.some((line) => line.includes('leave 2 mm'))).toBe(true);
  },
  120_000,
);
