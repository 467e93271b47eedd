import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { calling, type Answer } from './command.ts';

// The command line as it is called, but in this process.
const tidePool = fileURLToPath(new URL('../examples/tide-pool', import.meta.url));
let base: string;
beforeAll(() => {
  base = mkdtempSync(join(tmpdir(), 'laydown-cli-'));
});
afterAll(() => rmSync(base, { recursive: true, force: true }));

const laydown = (...args: readonly string[]): Promise<Answer> => calling(args);

/** tide-pool with a change to its job.json. */
function changedJob(
  name: string,
  change: (job: {
    layers: { ink: string | null }[];
    schemaVersion: number;
    image: { widthMm: number };
    forms: { drawing?: string }[];
  }) => void,
): string {
  const folder = join(base, name);
  cpSync(tidePool, folder, { recursive: true });
  const job = JSON.parse(readFileSync(join(folder, 'job.json'), 'utf8'));
  change(job);
  writeFileSync(join(folder, 'job.json'), JSON.stringify(job));
  return folder;
}

describe('laydown on the command line', () => {
  test('help in plain words, for all commands and for each', async () => {
    const help = await laydown('--help');
    expect(help.code).toBe(0);
    for (const name of ['check', 'forecast', 'packet', 'order', 'recipe', 'mix', 'pot', 'trace', 'separate']) {
      expect(help.out).toMatch(new RegExp(`^  ${name} `, 'm'));
      const one = await laydown(name, '--help');
      expect(one.code).toBe(0);
      expect(one.out).toContain(`laydown ${name}`);
    }
    expect((await laydown('fly')).code).toBe(2);
    expect((await laydown('packet', '--wings')).code).toBe(2);
  });

  test('check: every problem at once, and code 1', async () => {
    const folder = changedJob('broken', (job) => {
      job.layers[0].ink = 'nowhere';
      job.image.widthMm = 600;
      job.forms[0].drawing = 'lost.svg';
    });
    const { code, out } = await laydown('check', folder);
    expect(code).toBe(1);
    expect(out).toContain('an ink the job doesn’t have');
    expect(out).toContain('lost.svg');
    expect(out).toMatch(/hangs .*\smm over the edge/);
    expect((await laydown('check', tidePool)).code).toBe(0);
  });

  test('a job of a newer Laydown, a folder that is none, a file that is none', async () => {
    const newer = await laydown(
      'packet',
      changedJob('newer', (job) => {
        job.schemaVersion = 42;
      }),
    );
    expect(newer.code).toBe(1);
    expect(newer.err).toContain('newer Laydown');
    expect((await laydown('check', base)).err).toContain('no job.json');
    const junk = join(base, 'junk.laydown');
    writeFileSync(junk, 'junk');
    expect((await laydown('check', junk)).err).toContain('cannot be opened');
    for (const { err } of [newer]) expect(err).not.toMatch(/\n\s+at /);
  });

  test('forecast --json has the shape that is promised, bare paper included', async () => {
    const { code, out } = await laydown('forecast', tidePool, '--json');
    expect(code).toBe(0);
    const { papers } = JSON.parse(out) as {
      papers: {
        id: string;
        overlaps: { layers: string[]; lab: number[]; srgb: string; inGamut: boolean; band: number; areaMm2: number }[];
      }[];
    };
    expect(papers.map((p) => p.id)).toEqual(['smooth-white', 'warm-fibre', 'blue-moon']);
    for (const paper of papers) {
      expect(paper.overlaps.filter((o) => o.layers.length === 0)).toHaveLength(1);
      expect(paper.overlaps.reduce((sum, o) => sum + o.areaMm2, 0)).toBeCloseTo(180 * 240, -2);
      for (const o of paper.overlaps) {
        expect(o.srgb).toMatch(/^#[0-9a-f]{6}$/);
        expect(o.lab).toHaveLength(3);
        expect(typeof o.inGamut).toBe('boolean');
        expect(o.band).toBeGreaterThan(0);
      }
    }
    const order = JSON.parse(readFileSync(join(tidePool, 'job.json'), 'utf8')).layers.map((l: { id: string }) => l.id) as string[];
    for (const o of papers[0].overlaps) expect([...o.layers]).toEqual([...o.layers].sort((a, b) => order.indexOf(a) - order.indexOf(b)));
  });

  test('order, recipe, mix, pot answer about the same job', async () => {
    expect((await laydown('order', tidePool, '--keep', '2')).out).toMatch(/120 orders/);
    expect((await laydown('recipe', tidePool, '45 20 -35')).out).toMatch(/→ .*Dusk violet/);
    expect((await laydown('mix', tidePool, 'urchin', '--scale', '0.1')).out).toMatch(/Dusk violet\s+\d+\.\d+\sg/);
    expect((await laydown('pot', tidePool, 'water', '--holds', 'rockpool=60,clear-base=40', '--reads', '78 -28 -15')).out).toMatch(
      /off by ΔE00/,
    );
    expect((await laydown('pot', tidePool, 'water', '--holds', 'rockpool=60', '--reads', '78 -28')).err).toMatch(
      /can’t be read as a colour/,
    );
    expect((await laydown('mix', tidePool, 'nothing')).err).toMatch(/Use one of: sky, water/);
  });

  test('work that is done is marked by run, name or id; a packet that no longer fits is said to; a strict one refuses what is not known', async () => {
    const folder = join(base, 'pear');
    cpSync(fileURLToPath(new URL('../examples/first-print', import.meta.url)), folder, { recursive: true });
    const read = (): { layers: { strength: number; strenght?: number }[]; done?: Record<string, { layer: string }[]> } =>
      JSON.parse(readFileSync(join(folder, 'job.json'), 'utf8'));
    for (const named of ['2', 'Pear', 'pear']) {
      expect((await laydown('done', folder, named, '--mixed')).out).toContain('Pear: mixed');
      expect(read().done!['mixed'].map((one) => one.layer)).toEqual(['pear']);
    }
    expect((await laydown('done', folder, '7', '--cut')).code).toBe(1);
    const made = await laydown('packet', folder, '--only', 'cut');
    expect(made.err).toBe('');
    const job = read();
    Object.assign(job.layers[1], { strength: 0.5, strenght: 0.5 });
    writeFileSync(join(folder, 'job.json'), JSON.stringify(job));
    const checked = await laydown('check', folder);
    expect(checked.code).toBe(0);
    expect(checked.out).toContain('It no longer fits.');
    expect(checked.out).toContain('The pot of Pear is mixed, and the job has changed since');
    const strict = await laydown('packet', folder, '--replace', '--only', 'cut', '--strict');
    expect(strict.code).toBe(1);
    expect(strict.err).toContain('“strenght” is not known here');
    expect(strict.err).not.toContain('risers');
  });

  test('a sheet of stock comes as one file of its own size, or as pages to join; what there is not is said', async () => {
    const [whole, parts] = ['whole.pdf', 'parts.pdf'].map((name) => join(base, name));
    const said = await laydown('cut', tidePool, '--stock', '1', '--out', whole);
    expect(said.code).toBe(0);
    expect(said.out).toMatch(/Sheet 1 of Coated paper, 500 × 700\smm: 4 stencils/);
    expect(said.out).toContain('3: run 2, Water');
    expect((await laydown('cut', tidePool, '--stock', '1', '--out', parts, '--paper', 'letter')).code).toBe(0);
    expect(readFileSync(parts).length).toBeGreaterThan(readFileSync(whole).length);
    expect((await laydown('cut', tidePool, '--stock', '1', '--out', parts, '--paper', 'letter')).err).toContain('already');
    expect((await laydown('cut', tidePool, '--stock', '1', '--out', join(base, 'p.svg'), '--paper', 'a4')).err).toContain(
      'End the file’s name in .pdf',
    );
    expect((await laydown('cut', tidePool, '--stock', '9')).err).toContain('there are sheets 1, 2, 3');
    expect((await laydown('cut', tidePool, 'urchin', '--paper', 'a4')).err).toContain('Say which with --stock');
  });

  test('cut writes a proven stencil, and never over a file', async () => {
    const out = join(base, 'urchin.svg');
    const first = await laydown('cut', tidePool, 'urchin', '--out', out);
    expect(first.code).toBe(0);
    // What bridges and the island show, and what becomes of the sheet.
    expect(first.out).toMatch(/bridge b1 .*ΔE00/);
    expect(first.out).toMatch(/island at .* given up it would print [\d.]+\scm², seen as ΔE00/);
    expect(first.out).toContain('cut “Urchin” once');
    expect((await laydown('cut', tidePool, 'urchin', '--out', join(base, 'urchin.pdf'))).err).toContain('SVG or DXF');
    expect(readFileSync(out, 'utf8')).toMatch(/<svg[^>]*width="250mm"/);
    expect((await laydown('cut', tidePool, 'urchin', '--out', out)).err).toContain('already');
  });
});
