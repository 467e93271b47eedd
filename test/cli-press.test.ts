import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { calling, type Answer } from './command.ts';
import type { Job } from '../src/core/job/index.ts';

// The command line as it is called, but in this process.
const tidePool = fileURLToPath(new URL('../examples/tide-pool', import.meta.url));
let base: string;
beforeAll(() => {
  base = mkdtempSync(join(tmpdir(), 'laydown-press-'));
});
afterAll(() => rmSync(base, { recursive: true, force: true }));

const laydown = (...args: readonly string[]): Promise<Answer> => calling(args);

describe('the press on the command line', () => {
  test('test sheets: an empty table, read back filled, and a job that is planned with what they tell', async () => {
    const form = (await laydown('register', tidePool, '--form')).out;
    expect(form.split('\r\n')[1]).toBe('1,top left,,');
    // Ten sheets, read at two corners each: half a line to the right of one another; written as a spreadsheet in another country would.
    const filled = form
      .trim()
      .split('\r\n')
      .map((row, i) =>
        i === 0
          ? 'sheet;place;across;down'
          : row.replace(
              /^(\d+),(.*),,$/,
              (_, sheet: string, place: string) =>
                `${sheet};${place};${['1,5', '2', '−1', '0', '3', '2.4 mm', '1', '0', '-2', '2'][Number(sheet) - 1]};${Number(sheet) % 3}`,
            ),
      );
    const table = join(base, 'readings.csv');
    writeFileSync(table, filled.join('\n'));
    const read = await laydown('register', tidePool, table, '--out', join(base, 'measured'));
    expect(read.err).toContain('Written');
    expect(read.out).toMatch(/10 sheets read/);
    expect(read.out).toMatch(/σ \d\.\d\d\smm across, \d\.\d\d\smm down/);
    const job = JSON.parse(readFileSync(join(base, 'measured', 'job.json'), 'utf8')) as Job;
    expect(job.register.testSheets!.readings).toHaveLength(20);
    expect(job.register.measured!.sheets).toBe(10);
    expect((await laydown('press', join(base, 'measured'))).out).toMatch(/Measured here: σ/);
    const bad = join(base, 'bad.csv');
    writeFileSync(bad, 'sheet,place,across,down\n1,top left,two,1\nx,top left,1,1\n2,top left,1\n');
    const refused = await laydown('register', tidePool, bad);
    expect(refused.code).toBe(1);
    for (const line of ['line 2', 'line 3', 'line 4']) expect(refused.err).toContain(line);
  });

  test('a run with a gap of its own is told with its growth, and what it costs; two people shorten the day', async () => {
    const folder = join(base, 'gaps');
    cpSync(tidePool, folder, { recursive: true });
    const job = JSON.parse(readFileSync(join(folder, 'job.json'), 'utf8')) as { layers: { id: string; offContactMm?: number }[] };
    job.layers.find((l) => l.id === 'kelp')!.offContactMm = 12;
    writeFileSync(join(folder, 'job.json'), JSON.stringify(job));
    const { out } = await laydown('press', folder);
    expect(out).toMatch(/run 4, Kelp: gap 12\smm, grows \d\.\d\d\smm along/);
    expect(out).toMatch(/Run 4 \(Kelp\) prints with a gap of 12\.0\smm, the others with 3\.0\smm/);
    const [alone, two] = [(await laydown('day', tidePool)).out, (await laydown('day', tidePool, '--hands', '2')).out];
    const work = (text: string): number =>
      text
        .trim()
        .split('\n')
        .filter((line) => /^ {2}\d\d:\d\d–/.test(line) && !/Wait|Night|Ink dries|Too late|Rest/.test(line)).length;
    expect(alone).not.toContain('hand 2');
    expect(two).toMatch(/hand 2 {2}run 1, Sky: Hand the sheets in/);
    expect(work(two)).toBeGreaterThan(work(alone));
    expect((await laydown('day', tidePool, '--hands', '0')).code).toBe(1);
  });
});
