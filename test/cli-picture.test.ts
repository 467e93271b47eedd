import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { decode as decodePng, encode as encodePng } from 'fast-png';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { readJobAt } from '../src/cli/disk/folder.ts';
import { rasterizeInto } from '../src/core/form/index.ts';
import { checkJob, type Job } from '../src/core/job/index.ts';
import { readPicture } from '../src/core/separate/index.ts';
import { calling, type Answer } from './command.ts';

// A picture on the command line, with all that the Picture station can ask of it: once through the built command with all its
// threads (npm test builds first), then called here without them, which cuts the same.
vi.mock('../src/cli/threads/hands.ts', () => ({ hireHands: () => undefined }));
vi.mock('../src/cli/threads/read-picture.ts', async () => {
  const { preparePictureReaders } = await import('../src/cli/assets.ts');
  return { readPictureApart: async (bytes: Uint8Array, file: string) => (await preparePictureReaders(), readPicture(bytes, file)) };
});
const main = fileURLToPath(new URL('../dist/cli/main.js', import.meta.url));
const tidePool = fileURLToPath(new URL('../examples/tide-pool', import.meta.url));
const home = process.cwd();
let base: string, picture: string;
beforeAll(() => {
  base = mkdtempSync(join(tmpdir(), 'laydown-picture-'));
  process.chdir(base);
  picture = join(base, 'harbour.png');
  writeFileSync(picture, harbour());
});
afterAll(() => {
  process.chdir(home);
  rmSync(base, { recursive: true, force: true });
});

/** 120 × 80: sky, a sun on the right, dark water below. */
function harbour(): Uint8Array {
  const width = 120,
    height = 80,
    data = new Uint8Array(width * height * 3);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      data.set(Math.hypot(x - 90, y - 26) < 14 ? [245, 205, 90] : y > 50 ? [50, 96, 120] : [206, 218, 218], (y * width + x) * 3);
    }
  return encodePng({ width, height, data, channels: 3 });
}

const separate = (...args: string[]): Promise<Answer> => calling(['separate', ...args]);

function built(...args: string[]): Answer {
  const run = spawnSync(process.execPath, [main, 'separate', ...args], {
    encoding: 'utf8',
    env: { ...process.env, LC_ALL: 'C' },
    timeout: 120_000,
    cwd: base,
  });
  return { code: run.status ?? -1, out: run.stdout, err: run.stderr };
}

const jobAt = (name: string): Job => JSON.parse(readFileSync(join(base, name, 'job.json'), 'utf8'));
const quick = ['--with', tidePool, '--effort', '0.05'];

test('a part of a picture becomes a job that keeps the picture and all that was asked of it', () => {
  writeFileSync(join(base, 'marks.txt'), '# the sun\nmore box 60 15 30 35\r\n\nnone brush 8% 5%,5% 40,5\n');
  const { code, out, err } = built(
    picture,
    ...quick,
    '--out',
    'made',
    '--layers',
    '3',
    '--crop',
    '20, 10, 80, 80',
    '--width',
    '60',
    '--marks',
    'marks.txt',
    '--mark',
    'less box 0,75,100,25',
    '--pots',
    'rockpool,Sand yellow,slate',
    '--layer',
    '2=rockpool@40%',
    '--in-place',
    '2',
    '--most-in-pot',
    '1',
    '--least',
    '2',
    '--minutes',
    '30',
    '--material',
    'film',
    '--sigma',
    '0.3',
    '--reach',
    'contrast',
    '--veil',
    '50',
    '--seed',
    '7',
  );
  expect(err).toBe('');
  expect(code).toBe(0);
  const job = jobAt('made');
  // 96 × 64 pixels of the picture: 60 mm wide, 40 mm high.
  expect(job.image).toMatchObject({ widthMm: 60, heightMm: 40 });
  expect(out).toMatch(
    /60 × 40\smm: of the picture 80\s% of its width and 80\s% of its height, from 20\s% left and 10\s% down, 1\.6 pixels/,
  );
  expect(job.picture).toEqual({
    file: 'pictures/harbour.png',
    name: 'harbour',
    layers: 3,
    crop: { x: 0.2, y: 0.1, width: 0.8, height: 0.8 },
    important: [
      { kind: 'box', weight: 4, x: 0.6, y: 0.15, width: 0.3, height: 0.35 },
      {
        kind: 'stroke',
        weight: 0,
        radius: 0.04,
        points: [
          [0.05, 0.05],
          [0.4, 0.05],
        ],
      },
      { kind: 'box', weight: 0.25, x: 0, y: 0.75, width: 1, height: 0.25 },
    ],
    pots: ['rockpool', 'sand', 'slate'],
    wishes: [{ placeFixed: false }, { ink: 'rockpool', strength: 0.4, placeFixed: true }, { placeFixed: false }],
    over: false,
    way: 'near',
    key: false,
    cutPairs: false,
    knife: { leastWidthMm: 2, minutes: 30 },
    material: 'film',
    sigmaMm: 0.3,
    reach: 'contrast',
    mostInPot: 1,
    effort: 0.05,
    veil: 0.5,
    seed: 7,
  });
  expect(readFileSync(join(base, 'made/pictures/harbour.png'))).toEqual(readFileSync(picture));
  expect(readdirSync(join(base, 'made/compare')).sort()).toEqual([
    'detail-lost.png',
    'flat-inks.png',
    'out-of-reach.png',
    'picture.png',
    'print.png',
  ]);
  expect(job.cuts.map((cut) => cut.material)).toEqual(job.cuts.map(() => 'film'));
  expect(job.layers).toContainEqual(expect.objectContaining({ ink: 'rockpool', strength: 0.4 }));
  for (const layer of job.layers) expect(['rockpool', 'sand', 'slate']).toContain(layer.ink);
  expect(out).toMatch(/40\s% Rockpool turquoise/);
}, 180_000);

test('the picture a job keeps is asked the same again, and what is said over it; the same seed cuts the same', async () => {
  const kept = (job: Job): unknown =>
    job.layers.map(({ cut, ink, strength }) => [ink, strength, job.forms[job.cuts.findIndex((one) => one.id === cut)].outline]);
  expect(await separate('--with', 'made', '--out', 'again')).toMatchObject({ code: 0, err: '' });
  expect(jobAt('again').picture).toEqual(jobAt('made').picture);
  expect(kept(jobAt('again'))).toEqual(kept(jobAt('made')));
  const other = await separate(
    '--with',
    'made',
    '--out',
    'changed',
    '--layers',
    '2',
    '--price',
    '9',
    '--mark',
    'more brush 3 50,50',
    '--width',
    '40',
    '--height',
    '40',
  );
  // Of the part that is kept, 96 × 64 pixels, the largest square around its middle.
  expect(other.out).toMatch(/40 × 40\smm: of the picture 53\.3\s% of its width and 80\s% of its height, from 33\.3\s% left and 10\s% down/);
  const { picture: changed } = jobAt('changed');
  expect(changed).toMatchObject({ layers: 2, mostInPot: 1, knife: { leastWidthMm: 2, minutes: 30, priceMm: 9 } });
  expect(changed!.important).toHaveLength(4);
}, 180_000);

test('the example cut from a picture holds together: its photograph, how it was taken, and runs that lie one inside the other', async () => {
  const bundle = readJobAt(fileURLToPath(new URL('../examples/cat', import.meta.url)));
  const { job, attachments } = bundle;
  expect(checkJob(bundle).filter((p) => p.severity === 'error')).toEqual([]);
  expect(job.picture).toMatchObject({ file: 'pictures/cat.jpg', way: 'light', layers: 4 });
  expect(attachments.has('pictures/cat.jpg')).toBe(true);
  expect(job.note).toMatch(/CC0/);
  const grid = { originXMm: 0, originYMm: 0, mmPerPx: 2, width: 120, height: 80 };
  const masks = job.forms.map((form) => {
    const mask = new Uint8Array(grid.width * grid.height);
    rasterizeInto(mask, 0, { rings: form.outline!.map((ring) => Float64Array.from(ring.flat())) }, grid);
    return mask;
  });
  for (let run = 1; run < masks.length; run++)
    expect(masks[run].filter((v, i) => v === 1 && masks[run - 1][i] === 0).length, `run ${run + 1}`).toBeLessThan(0.01 * masks[run].length);
});

test('the ways are drawn small into one file, and the one taken is kept, with a key', async () => {
  const drawn = await separate(picture, ...quick, '--width', '60', '--ways', 'ways.png');
  expect(drawn.err).toBe('');
  expect(drawn.out).toMatch(/ways\.png: from the left the picture, then near the picture, bold, by light and shade\./);
  expect(drawn.out.match(/about \d.* with the knife/g)).toHaveLength(3);
  expect(readFileSync(join(base, 'ways.png')).subarray(1, 4).toString()).toBe('PNG');
  expect((await separate(picture, ...quick, '--ways', 'ways.png')).err).toMatch(/ways\.png/);
  const taken = await separate(picture, ...quick, '--width', '60', '--layers', '3', '--way', 'light', '--key', '--out', 'taken');
  expect(taken.err).toBe('');
  expect(jobAt('taken').picture).toMatchObject({ way: 'light', key: true });
  // The darkest pot of the shelf.
  expect(jobAt('taken').layers.at(-1)).toMatchObject({ ink: 'slate', strength: 1 });
  expect((await separate(picture, ...quick, '--way', 'loud', '--out', 'never')).err).toMatch(/--way: .*loud.*near, bold or light/);
}, 180_000);

test('named anew, a picture is asked nothing that the job kept of another, and takes its place', async () => {
  expect((await separate(picture, '--with', 'made', '--effort', '0.05', '--layers', '1', '--height', '30', '--out', 'anew')).code).toBe(0);
  const job = jobAt('anew');
  expect(job.image).toMatchObject({ widthMm: 45, heightMm: 30 });
  expect(job.picture).toMatchObject({ file: 'pictures/harbour.png', important: [], wishes: [], knife: {} });
  expect(job.picture!.pots).toBeUndefined();
}, 180_000);

test('over printed runs only the pots that were named are used', async () => {
  const { code, out } = await separate(
    picture,
    '--with',
    'made',
    '--effort',
    '0.05',
    '--layers',
    '1',
    '--over',
    '--pots',
    'weed',
    '--out',
    'over',
  );
  expect(code).toBe(0);
  expect(out).toMatch(/new run 1 {2}[A-Z][\w ,()]+? {2,}\w+ +\d+\s% Weed green:/);
  expect(jobAt('over').layers.map((layer) => layer.ink)).toEqual([...jobAt('made').layers.map((layer) => layer.ink), 'weed']);
}, 180_000);

test('with one run to print, the ink is chosen for the place that was marked', async () => {
  const inkFor = async (name: string, ...marks: string[]): Promise<string | null> => {
    expect(
      (
        await separate(
          picture,
          ...quick,
          '--width',
          '60',
          '--layers',
          '1',
          '--most-in-pot',
          '1',
          ...marks.flatMap((mark) => ['--mark', mark]),
          '--out',
          name,
        )
      ).code,
    ).toBe(0);
    return jobAt(name).layers[0].ink;
  };
  expect(await inkFor('sun', 'none box 0,0,100,100', 'more brush 18 75,33')).toBe('sand');
  expect(['rockpool', 'slate', 'dusk']).toContain(await inkFor('water', 'none box 0,0,100,63', 'more box 0,63,100,37'));
}, 180_000);

test('what can’t be asked is said with what to write, before anything is made', async () => {
  writeFileSync(join(base, 'bad.txt'), 'more box 1,2,3,4\nmroe box 1,2,3,4\n');
  const cases: readonly (readonly [readonly string[], RegExp])[] = [
    [['--crop', '0.2,0.1,0.6,0.5'], /--crop: .*per cent of the picture: write 50 for half/],
    [['--marks', 'bad.txt'], /bad\.txt, line 2: .*can’t be read as a mark/],
    [['--layer', '5=slate'], /--layer: There is no layer 5: 4 are asked for/],
    [['--material', 'wood'], /--material: .*newsprint, coated-paper, film/],
    [['--over', '--width', '90'], /--over: .*keeps its size/],
  ];
  for (const [args, said] of cases) {
    const { code, err } = await separate(picture, ...quick, '--out', 'never', ...args);
    expect(err, args.join(' ')).toMatch(said);
    expect(code).toBe(1);
  }
  expect(existsSync(join(base, 'never'))).toBe(false);
}, 180_000);

test('a picture that is not there, or not any more, is asked for', async () => {
  expect((await separate('--with', tidePool)).err).toMatch(/Which picture\?.*with --with a job that keeps one/);
  cpSync(join(base, 'made'), join(base, 'lost'), { recursive: true });
  rmSync(join(base, 'lost/pictures/harbour.png'));
  expect((await separate('--with', 'lost', '--out', 'never')).err).toMatch(
    /pictures\/harbour\.png: The picture is not in the job’s folder any more/,
  );
});

test('a portrait cut small is told to have lost its eyes or its mouth, and what would bring them back', async () => {
  const portrait = fileURLToPath(new URL('pictures/woman.jpg', import.meta.url));
  const { code, out } = await separate(portrait, ...quick, '--layers', '2', '--way', 'bold', '--width', '40', '--out', 'portrait');
  expect(code).toBe(0);
  expect(out).toMatch(/The mouth is lost at this size\. Crop closer, make the image 60\smm wide, or add a run\./);
  expect(out).toMatch(/(eye is|eyes are) lost at this size/);
});

/** A page photographed in slanting light, grain in it, with a ring drawn in ink. */
function page(): Uint8Array {
  const width = 240,
    height = 180,
    data = new Uint8Array(width * height * 3);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const light = 238 - 0.3 * x - ((x * 7 + y * 13) % 5),
        ink = Math.abs(Math.hypot(x - 120, y - 90) - 50) < 4;
      data.set(ink ? [30, 30, 34] : [light, light - 2, light - 6], (y * width + x) * 3);
    }
  return encodePng({ width, height, data, channels: 3 });
}

test('a drawn page is taken as a drawing: its paper prints nothing, whatever shade lies on it, unless it is said to be a photograph', async () => {
  writeFileSync(join(base, 'page.png'), page());
  const asked = ['page.png', '--with', tidePool, '--layers', '1', '--width', '120', '--effort', '0.05'];
  const drawn = await separate(...asked, '--out', 'page-drawn');
  expect(drawn.code).toBe(0);
  expect(drawn.out).toContain('Taken as a drawing');
  const print = decodePng(readFileSync(join(base, 'page-drawn/compare/print.png')));
  const at = (x: number, y: number): number[] => {
    const i = print.channels * (Math.floor(y * print.height) * print.width + Math.floor(x * print.width));
    return [...print.data.subarray(i, i + 3)];
  };
  // Bright corner, shaded corner and the middle of the ring are one: bare paper.
  expect(at(0.97, 0.97)).toEqual(at(0.03, 0.03));
  expect(at(0.5, 0.5)).toEqual(at(0.03, 0.03));
  expect(at(0.5 + 50 / 240, 0.5)).not.toEqual(at(0.03, 0.03));
  const photograph = await separate(...asked, '--taken-as', 'photograph', '--out', 'page-photo');
  expect(photograph.code).toBe(0);
  expect(photograph.out).not.toContain('Taken as a drawing');
  expect(jobAt('page-photo').picture?.takenAs).toBe('photograph');
}, 60_000);
