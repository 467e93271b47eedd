import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { boardSquares } from '../src/core/form/index.ts';
import { calling } from './command.ts';
import { withExif } from './exif.ts';

// Real photographs: see outside/data/checked-board/README.md for their source.

test('at the command: the board to print, and a lens from two photographs', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'lens-'));
  const file = (name: string): string => join(folder, name);
  const photos = ['01', '14'].map((name) => fileURLToPath(new URL(`./outside/data/checked-board/left${name}.jpg`, import.meta.url)));
  try {
    expect((await calling(['lens', '--board', 'letter', '--out', file('board.pdf')])).code).toBe(0);
    // Letter is 612 × 792 points.
    expect(readFileSync(file('board.pdf'), 'latin1')).toMatch(/MediaBox\s*\[\s*0 0 612(\.\d+)? 792(\.\d+)?\s*\]/);
    const read = await calling(['lens', ...photos, '--out', file('lens.json')]);
    expect([read.code, read.err]).toEqual([0, '']);
    expect(read.out).toContain('three and more');
    const [lens] = (JSON.parse(readFileSync(file('lens.json'), 'utf8')) as { cameras: { bend: number }[] }).cameras;
    expect(lens.bend).toBeGreaterThan(0.14);
    expect(lens.bend).toBeLessThan(0.17);
    expect((await calling(['lens', '--board', 'a5', '--out', file('no.pdf')])).code).toBe(1);
    // With the camera's name in the photographs, the job keeps the lens, and knows the camera again.
    const named = (name: string, model: string): string => {
      const path = file(`${model}-${name}.jpg`);
      writeFileSync(
        path,
        withExif(readFileSync(new URL(`./outside/data/checked-board/left${name}.jpg`, import.meta.url)), { make: 'Maker', model }),
      );
      return path;
    };
    const job = ['--with', 'examples/first-print', '--out', file('job')];
    const kept = await calling(['lens', named('14', 'Box One'), named('12', 'Box Two'), ...job]);
    expect([kept.code, kept.err]).toEqual([0, expect.stringContaining('another camera')]);
    expect(kept.out).toContain('Maker Box One');
    const { cameras } = JSON.parse(readFileSync(join(file('job'), 'job.json'), 'utf8')) as { cameras: { bend: number; boards: number }[] };
    expect(cameras).toHaveLength(1);
    expect([cameras[0].boards, cameras[0].bend]).toEqual([1, expect.closeTo(lens.bend, 1)]);
    const traced = await calling(['trace', named('02', 'Box One'), '--board', '25', '--with', file('job'), '--out', file('02.svg')]);
    expect(traced.out).toContain('Maker Box One');
    // The board fits both papers with room to hold it.
    const { columns, rows, squareMm } = boardSquares;
    expect(columns * squareMm).toBeLessThanOrEqual(210 - 30);
    expect(rows * squareMm).toBeLessThanOrEqual(279.4 - 38);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
