import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { calling, type Answer } from './command.ts';
import { usualLadder } from '../src/core/ink/index.ts';
import { rgbPng } from '../src/packet/index.ts';
import { photographOfSheet } from './outside/drawdown-photo.ts';

// The command line as it is called, but in this process.
const tidePool = fileURLToPath(new URL('../examples/tide-pool', import.meta.url));
let base: string;
beforeAll(() => {
  base = mkdtempSync(join(tmpdir(), 'laydown-inks-'));
});
afterAll(() => rmSync(base, { recursive: true, force: true }));

const laydown = (...args: readonly string[]): Promise<Answer> => calling(args);

describe('inks on the command line', () => {
  test('drawdown sheets are printed, a page an ink, and never over another file', async () => {
    const out = join(base, 'sheets.pdf');
    expect(await laydown('drawdowns', tidePool, '--out', out)).toMatchObject({ code: 0 });
    const first = readFileSync(out);
    expect(first.subarray(0, 5).toString()).toBe('%PDF-');
    const second = await laydown('drawdowns', '--ink', 'Brick red', '--parts', '1:0,1:3', '--out', out);
    expect(second.code).toBe(1);
    expect(readFileSync(out).equals(first)).toBe(true);
    expect((await laydown('drawdowns', '--parts', '1,1:1,1:2,1:3,1:4,1:5,1:6,1:7', '--out', join(base, 'many.pdf'))).err).toContain(
      'Use a second sheet for more.',
    );
    expect(existsSync(join(base, 'many.pdf'))).toBe(false);
  });

  test('the photograph of a sheet becomes an ink; a picture of something else is refused in words', async () => {
    const { jpeg } = await photographOfSheet('Brick red', usualLadder, [95, 0.5, 2], (share, over) =>
      over === 'white' ? [95 - 43 * share, 38 * share, 20 * share] : [12 + 8 * share, 9 * share, 5 * share],
    );
    writeFileSync(join(base, 'sheet.jpg'), jpeg);
    const read = await laydown('photo', join(base, 'sheet.jpg'), '--ink', 'Brick red', '--paper', '95 0,5 2', '--json');
    const ink = JSON.parse(read.out);
    expect(ink).toMatchObject({ id: 'brick-red', from: 'ladder', ground: { kind: 'photo' } });
    expect(Math.abs(ink.steps[0].over.lab[1] - 38)).toBeLessThan(2);
    const other = await laydown('photo', join(tidePool, 'blue-moon.png'), '--ink', 'Brick red');
    expect(other.code).toBe(1);
    expect(other.err).toContain('corner marks');
  });

  test('a photograph of the print: the sheet is found and squared up, what differs is said, and readings are kept when asked for', async () => {
    // A bare sheet of 260 × 330 mm on a dark table: all that was foreseen is missing, and each overlap must read as paper.
    const [width, height] = [340, 410];
    const rgb = Uint8Array.from({ length: width * height * 3 }, (_, i) => {
      const x = Math.floor(i / 3) % width,
        y = Math.floor(i / 3 / width);
      return x >= 40 && x < 300 && y >= 40 && y < 370 ? [226, 220, 205][i % 3] : 60;
    });
    const photo = join(base, 'print.png'),
      folder = join(base, 'printed'),
      squared = join(base, 'squared.png');
    writeFileSync(photo, rgbPng(width, height, rgb, 1));
    cpSync(tidePool, folder, { recursive: true });
    const before = readFileSync(join(folder, 'job.json'), 'utf8');
    const told = await laydown('photo', photo, '--print', folder, '--corners', '40,40 300,40 300,370 40,370', '--out', squared);
    expect(told).toMatchObject({ code: 0 });
    expect(told.out).toContain('more than photograph and forecast may be off');
    expect(readFileSync(join(folder, 'job.json'), 'utf8')).toBe(before);
    expect(readFileSync(squared).subarray(1, 4).toString()).toBe('PNG');
    const read = JSON.parse((await laydown('photo', photo, '--print', folder, '--json', '--keep')).out);
    expect(read.seen.length).toBeGreaterThan(5);
    for (const { reading } of read.seen) {
      expect(reading).toMatchObject({ kind: 'photo', sigma: 7 });
      expect(Math.hypot(reading.lab[0] - 95.6, reading.lab[1] - 0.1, reading.lab[2] + 1.4)).toBeLessThan(1);
    }
    const { proofReadings } = JSON.parse(readFileSync(join(folder, 'job.json'), 'utf8'));
    expect(proofReadings.filter((r: { reading: { kind: string } }) => r.reading.kind === 'photo')).toHaveLength(read.seen.length);
  });

  test('a job’s inks go onto a shelf; two shelves are put together; a broken one is left as it is', async () => {
    const shelf = join(base, 'shelf.json');
    expect((await laydown('shelf', '--from', tidePool, '--out', shelf)).code).toBe(0);
    const both = await laydown('shelf', shelf, shelf);
    expect(both.out).toContain('9 inks, 2 papers, 0 pots');
    writeFileSync(join(base, 'half.json'), readFileSync(shelf, 'utf8').slice(0, 900));
    const broken = await laydown('shelf', join(base, 'half.json'));
    expect(broken.code).toBe(1);
    expect(broken.err).toContain('cut short');
  });

  test('an old pot is matched with a weaker lot: more of it, and nearer than unchanged', async () => {
    const answer = JSON.parse((await laydown('again', tidePool, 'water', '--lot', 'rockpool=66 -33 -17', '--json')).out);
    const part = answer.corrected.parts.find((p: { id: string }) => p.id === 'rockpool');
    expect(part.share).toBeGreaterThan(0.65);
    expect(answer.corrected.deltaE).toBeLessThan(answer.unchanged.deltaE);
    expect((await laydown('again', tidePool, 'water', '--lot', 'mauve=1 2 3')).err).toContain('The job has no ink “mauve”');
    expect((await laydown('again', tidePool, 'water')).err).toContain('Which ink has a new lot?');
    const same = JSON.parse((await laydown('again', tidePool, 'water', '--lot', 'rockpool=60.5 -39 -19', '--json')).out);
    expect(same.unchanged.deltaE).toBeLessThan(0.01);
  });

  test('inks without an instrument: the starter shelf, a colour by eye, and how guesses compare', async () => {
    const folder = join(base, 'begun');
    expect((await laydown('new', folder, '--inks', 'yellow,cyan')).code).toBe(0);
    const file = join(folder, 'job.json');
    const job = JSON.parse(readFileSync(file, 'utf8'));
    expect(job.layers.map((l: { ink: string }) => l.ink)).toEqual(['yellow', 'cyan']);
    expect((await laydown('check', folder)).out).toContain(
      'Process yellow and Process cyan are starter inks from published values, not yours.',
    );
    expect((await laydown('new', join(base, 'other'), '--inks', 'mauve')).err).toContain('The starter shelf has no ink “mauve”');
    const shelf = join(base, 'starter.json');
    expect((await laydown('shelf', '--starter', '--out', shelf, '--lang', 'de')).out).toContain('Nicht die eigene');
    expect(JSON.parse(readFileSync(shelf, 'utf8')).inks[0]).toMatchObject({ name: 'Prozesscyan', lots: [{ known: 'published' }] });
    const ink = JSON.parse((await laydown('eye', '#c0392b', '--ink', 'Brick red', '--json')).out);
    expect(ink).toMatchObject({ id: 'brick-red', known: 'by-eye', over: { kind: 'lab', sigma: 8 } });
    const compared = await laydown('eye', '#c0392b', '--chose', '2,0,0,0');
    expect(compared.out).toContain('turned the other');
    expect(Number(/± ([\d.]+)/.exec(compared.out)?.[1])).toBeLessThan(8);
    expect((await laydown('eye', '#c0392b', '--chose', '7')).err).toContain('no choices');
    expect((await laydown('eye', 'nothing.jpg', '--at', '50')).err).toContain('no place on a photograph');
    // Read later: the guess is kept and told against the reading.
    const cyan = job.inks.find((k: { id: string }) => k.id === 'cyan');
    cyan.guess = { known: cyan.known, over: cyan.over };
    cyan.over = { kind: 'lab', lab: [52, -35, -45] };
    delete cyan.known;
    writeFileSync(file, JSON.stringify(job));
    expect((await laydown('eye', folder)).out).toMatch(
      /Process cyan: guessed as Lab 57 −32 −46\. The guess before was off by ΔE00 [45]\.\d: within/,
    );
    expect((await laydown('eye', folder)).out).toContain('Process yellow: guessed as Lab 89 −3 86. Not read yet.');
  });

  test('the same print under another lamp', async () => {
    const folder = join(base, 'under-lamps');
    await laydown('new', folder, '--inks', 'cyan,yellow');
    const judged = JSON.parse((await laydown('forecast', folder, '--json')).out).papers[0];
    const lit = JSON.parse((await laydown('forecast', folder, '--lamp', 'a', '--json')).out).papers[0];
    expect(lit.lamp).toBe('A');
    expect(lit.parting).toEqual([]);
    // A cyan turns greener under a bulb.
    const of = (paper: typeof lit): number[] => paper.overlaps.find((o: { layers: string[] }) => o.layers.join() === 'below').lab;
    expect(of(lit)[1]).not.toBeCloseTo(of(judged)[1], 0);
    expect((await laydown('forecast', folder, '--lamp', 'neon')).err).toContain('There is no lamp “neon”');
    expect((await laydown('forecast', folder, '--lamp', 'LED-B5', '--lang', 'de')).out).toContain('Kalte LED (B5)');
  });

  test('orders that come out the same are said once, with what check would warn of', async () => {
    const { groups } = JSON.parse((await laydown('order', tidePool, '--json')).out);
    expect(groups.some((g: { alike: number }) => g.alike > 0)).toBe(true);
    // Kelp's thick film leaves a ridge wherever it lies, as check says of the job's own order.
    for (const g of groups) expect(g.warnings).toMatchObject({ ridges: expect.any(Number), register: expect.any(Number) });
    expect(groups.some((g: { warnings: { ridges: number } }) => g.warnings.ridges > 0)).toBe(true);
    const flat = join(base, 'flat');
    await laydown('new', flat, '--inks', 'grey,cyan');
    expect((await laydown('order', flat)).out).toContain('The order makes no difference');
    expect((await laydown('order', flat)).out.match(/mean chroma/g)).toHaveLength(1);
  });

  test('a recipe from jars opens less new ink; jars without anything are asked for', async () => {
    const answer = JSON.parse((await laydown('recipe', tidePool, '60 10 -20', '--left', 'rockpool=30', '--json')).out);
    expect(answer.best.newGrams).toBeLessThan(answer.freshGrams);
    expect(answer.best.deltaE).toBeLessThanOrEqual(2);
    expect((await laydown('recipe', tidePool, '60 10 -20', '--left', 'rockpool=30')).out).toContain('from its jar');
    expect((await laydown('recipe', tidePool, '60 10 -20', '--leftovers')).err).toContain('No jar has anything left in it.');
  });

  test('ten sheets by an uneven hand, and what lessens it', async () => {
    const folder = join(base, 'sheets-by-hand');
    await laydown('new', folder, '--inks', 'blue,yellow');
    const even = JSON.parse((await laydown('spread', folder, '--hand', '5', '--json')).out);
    const uneven = JSON.parse((await laydown('spread', folder, '--json')).out);
    expect(uneven.overlaps[0].srgb).toHaveLength(10);
    expect(uneven.meanBand).toBeGreaterThan(2 * even.meanBand);
    expect((await laydown('spread', folder, '--lang', 'de')).out).toContain('Filme schwanken von Zug zu Zug um 15');
  });
});
