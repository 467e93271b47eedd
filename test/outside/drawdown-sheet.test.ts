import { beforeAll, describe, expect, test } from 'vitest';
import { prepare, preparePictureReaders } from '../../src/cli/assets.ts';
import { deltaE00, type Lab } from '../../src/core/colour/index.ts';
import { emptyShelf, readSheetPhoto, readShelf, writeShelf, usualLadder } from '../../src/core/ink/index.ts';
import { parseJob } from '../../src/core/job/index.ts';
import { askInks, inkFromSheet, inkFromShelf, photographOf, shelfWithJob } from '../../src/core/asks/index.ts';
import { ProblemError } from '../../src/core/problem.ts';
import { readPicture } from '../../src/core/separate/index.ts';
import { readJobAt } from '../../src/cli/disk/folder.ts';
import { name as asName, say } from '../../src/words/index.ts';
import { inEnglish } from '../said.ts';
import { photographOfSheet, type Drawn } from './drawdown-photo.ts';

// Outside: the sheet is rendered by pdf.js (Mozilla) and photographed into a JPEG by a general canvas library (Skia);
// what is read back is held against the colours that were laid down.
const paper: Lab = [95, 0.5, 2];
const full: Lab = [52, 38, 20];
/** A drawdown of less ink: part of the way to the paper. */
const drawn = (share: number, over: 'white' | 'black'): Lab => {
  const part = share ** 0.8;
  const under: Lab = over === 'white' ? paper : [12, 0, 0];
  const ink: Lab = over === 'white' ? full : [20, 9, 5];
  return [0, 1, 2].map((i) => under[i] + part * (ink[i] - under[i])) as unknown as Lab;
};

let photographed: Drawn;
beforeAll(async () => {
  await prepare();
  await preparePictureReaders();
  photographed = await photographOfSheet('Brick red', usualLadder, paper, drawn);
}, 120_000);

describe('a drawdown sheet printed, drawn down on, photographed askew', () => {
  test('is found in the JPEG, and every strength reads as it was laid down', async () => {
    const picture = await readPicture(photographed.jpeg, 'sheet.jpg');
    const read = readSheetPhoto(photographed.sheet, photographOf(picture), {
      place: say('where.file', { file: asName('sheet.jpg') }),
      paperLab: paper,
    });
    const errors = read.boxes.map((box) => deltaE00(box.reading.lab, drawn(box.share, box.over)));
    console.log(
      `drawdown sheet through pdf.js and JPEG: over white worst ΔE00 ${Math.max(...errors.filter((_, i) => read.boxes[i].over === 'white')).toFixed(2)}, over black ${Math.max(...errors.filter((_, i) => read.boxes[i].over === 'black')).toFixed(2)}`,
    );
    read.boxes.forEach((box, i) => expect(errors[i], inEnglish(box.name)).toBeLessThan(box.over === 'white' ? 1.5 : 3));
    expect(read.unevenness).toBeGreaterThan(1.1);
  });

  test('makes a ladder whose steps are those that were drawn down; empty boxes count for nothing', async () => {
    const half = await photographOfSheet('Brick red', usualLadder, paper, (share, over) => (share < 0.3 ? null : drawn(share, over)));
    const read = readSheetPhoto(half.sheet, photographOf(await readPicture(half.jpeg, 'half.jpg')), {
      place: say('where.file', { file: asName('half.jpg') }),
      paperLab: paper,
    });
    const ink = inkFromSheet(read, { id: 'brick', name: 'Brick red' }, 'half.jpg');
    expect(ink.from === 'ladder' && ink.steps.map((s) => s.share)).toEqual([1, 1 / 2, 1 / 3]);
    const job = parseJob({ ...readJobAt('examples/tide-pool').job, inks: [ink], layers: [] });
    const [sheet] = askInks(job);
    expect(sheet.problems.filter((p) => p.severity === 'error')).toEqual([]);
    expect(deltaE00(sheet.curves.strengths[0].lab, full)).toBeLessThan(6);
  });

  test('one strength over white and black makes an ink over two grounds', async () => {
    const one = await photographOfSheet('Brick red', [1], paper, drawn);
    const read = readSheetPhoto(one.sheet, photographOf(await readPicture(one.jpeg, 'one.jpg')), {
      place: say('where.file', { file: asName('one.jpg') }),
      paperLab: paper,
    });
    expect(inkFromSheet(read, { id: 'brick', name: 'Brick red' }, 'one.jpg').from).toBe('two-grounds');
  });

  test('a sheet that nothing was drawn down on says so', async () => {
    const bare = await photographOfSheet('Brick red', usualLadder, paper, () => null);
    const read = readSheetPhoto(bare.sheet, photographOf(await readPicture(bare.jpeg, 'bare.jpg')), {
      place: say('where.file', { file: asName('bare.jpg') }),
      paperLab: paper,
    });
    try {
      inkFromSheet(read, { id: 'brick', name: 'Brick red' }, 'bare.jpg');
      expect.unreachable();
    } catch (error) {
      expect(error instanceof ProblemError && error.problems[0].code).toBe('nothing-drawn-down');
    }
  });
});

describe('the studio’s shelf', () => {
  test('takes a job’s inks and papers, is written and read, and gives the same inks back', () => {
    const { job } = readJobAt('examples/tide-pool');
    const { shelf, problems } = shelfWithJob(null, job);
    expect(problems.map((p) => p.code)).toEqual(['mix-stays']);
    const again = readShelf(writeShelf(shelf));
    for (const ink of again.inks) {
      expect(inkFromShelf(ink)).toEqual(job.inks.find((k) => k.id === ink.id));
    }
    expect(again.papers.map((p) => p.id)).toEqual(['smooth-white', 'warm-fibre']);
  });

  test('the same job twice puts no second lot; new readings are a new lot, the last in use', () => {
    const { job } = readJobAt('examples/tide-pool');
    const once = shelfWithJob(emptyShelf('Harbour'), job).shelf;
    expect(shelfWithJob(once, job).shelf.inks.every((k) => k.lots.length === 1)).toBe(true);
    const newer = {
      ...job,
      inks: job.inks.map((k) =>
        k.id === 'rockpool' && k.from === 'one-ground'
          ? { ...k, over: { kind: 'lab' as const, lab: [63, -36, -18] as [number, number, number] } }
          : k,
      ),
    };
    const twice = shelfWithJob(once, newer).shelf;
    const rockpool = twice.inks.find((k) => k.id === 'rockpool')!;
    expect(rockpool.lots.map((l) => l.lot)).toEqual(['Tide pool', 'Tide pool 2']);
    const taken = inkFromShelf(rockpool);
    expect(taken.from === 'one-ground' && taken.over).toMatchObject({ lab: [63, -36, -18] });
    expect(twice.studio).toBe('Harbour');
  });
});
