import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { decode, encode } from 'fast-png';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readJobAt } from '../src/cli/disk/folder.ts';
import type { Job } from '../src/core/job/index.ts';
import { calling, type Answer } from './command.ts';

// Tone on the command line, from a picture to films, strips and cut runs.
const letters = fileURLToPath(new URL('../examples/letters', import.meta.url));
let base: string, picture: string;
const laydown = (...args: readonly string[]): Promise<Answer> => calling(args);
const at = (name: string): string => join(base, name);
beforeAll(() => {
  base = mkdtempSync(join(tmpdir(), 'laydown-tone-'));
  picture = at('dusk.png');
  // A soft slope of a warm grey with a dark hill on it.
  const [width, height] = [120, 80];
  const data = new Uint8Array(width * height * 3);
  for (let i = 0; i < width * height; i++) {
    const [x, y] = [i % width, Math.floor(i / width)];
    const light = 235 - y - 110 * Math.exp(-((x - 45) ** 2 + (y - 45) ** 2) / 500);
    data.set([light, light * 0.97, light * 0.9], i * 3);
  }
  writeFileSync(picture, encode({ width, height, data, channels: 3 }));
});
afterAll(() => rmSync(base, { recursive: true, force: true }));

test('a split says what each run takes as a film, as cut lines and in flat strengths, and makes what is asked for', async () => {
  const to = ['--with', letters, '--inks', 'brick,night', '--width', '60', '--material', 'film'];
  const made = await laydown('split', picture, ...to, '--as', 'night=2', '--out', at('flat'));
  expect(made.code).toBe(0);
  expect(made.out).toMatch(
    /Night blue could be printed:\n {2}through a film: .* of it for film and screen\n {2}as cut lines: .* at the knife/,
  );
  expect(made.out).toMatch(/in flat strengths, \d+\D+ and \d+\D+ of ink.*\n.*\n {2}Night blue is printed in two flat strengths\./);
  const { job }: { job: Job } = readJobAt(at('flat'));
  expect(job.layers.map((l) => [l.id, l.ink, l.tone !== undefined])).toEqual([
    ['brick', 'brick', true],
    ['night-1', 'night', false],
    ['night-2', 'night', false],
  ]);
  const [, strengths] = /Night blue could[^]*?in flat strengths, ([^:]*) of ink/.exec(made.out)!;
  expect(strengths.match(/\d+/g)).toEqual(job.layers.slice(1).map((l) => String(Math.round(l.strength * 100))));
  expect(job.cuts.filter((c) => c.id.startsWith('night')).map((c) => c.material)).toEqual(['film', 'film']);
  expect(readdirSync(at('flat/tones'))).toEqual(['brick.png']);

  const odd = await laydown('split', picture, ...to, '--as', 'night=7', '--out', at('never'));
  expect(odd.err).toMatch(/--as: .*film, lines, 2, 3 or least/);
});

test('films of the runs that stay tone, at the resolution asked for, and what their exposure strip showed', async () => {
  const films = await laydown('positive', at('flat'), '--dpi', '150', '--out', at('films'));
  expect(films.out).toMatch(/1-brick\.png: \d+ × \d+ pixels; the dots come out at/);
  expect(readdirSync(at('films'))).toEqual(['1-brick.png']);
  const film = decode(readFileSync(at('films/1-brick.png')));
  expect(film.depth).toBe(1);
  expect(film.resolution).toMatchObject({ unit: 1, x: Math.round(150 / 0.0254) });
  expect(film.width).toBeGreaterThan((60 / 25.4) * 150);
  const exposed = await laydown('wedge', at('flat'), '--exposed', '10-90,5-95,3-97,-', '--keep');
  expect(exposed.out).toMatch(/Expose 120 s, as row 3/);
  expect(readJobAt(at('flat')).job.layers[0].tone!.exposeSeconds).toBe(120);
});

test('a wedge read as a spreadsheet writes it is taken; what cannot be one is refused in words', async () => {
  const rows = ['0;0,05', '20;0,3', '50;0,68', '80;1,12', '100;1,42'];
  writeFileSync(at('german.csv'), ['Stufe;Dichte', ...rows].join('\r\n'));
  const table = await laydown('wedge', at('flat'), 'brick', '--read', at('german.csv'), '--keep');
  expect(table.out).toMatch(/Half a tone comes to 71\s%; .*\n3 steps kept/);
  const kept = readJobAt(at('flat')).job.proofReadings;
  expect(kept.map((r) => [r.layers, r.coverages])).toEqual([0.2, 0.5, 0.8].map((c) => [['brick'], [c]]));
  writeFileSync(at('odd.csv'), 'step,weight\n50,68\n100,142\n');
  const odd = await laydown('wedge', at('flat'), 'brick', '--read', at('odd.csv'));
  expect([odd.code, odd.err]).toEqual([1, expect.stringMatching(/No print has a density of 68\. Write a step a line/)]);
});

test('lines say how dark they come to in their ink on the paper named', async () => {
  const made = await laydown(
    'lines',
    picture,
    '--with',
    letters,
    '--ink',
    'night',
    '--way',
    'parallel',
    '--width',
    '60',
    '--out',
    at('lines'),
  );
  expect(made.out).toMatch(/darkest place comes to a lightness L\* of \d\d; bare paper is 9\d\./);
  const [layer] = readJobAt(at('lines')).job.layers;
  expect([layer.ink, layer.side]).toEqual(['night', 'window']);
});
