// 70 drawings of two open icon packages (bootstrap-icons, MIT; lucide-static, ISC): each becomes a form and both its
// stencils, whose certificates, of the outline as written, are held against a flood fill. All of them: npm run corpus.
import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, expect, test } from 'vitest';
import { prepareDrawings } from '../../src/core/form/index.ts';
import { judgeDrawing } from '../corpus.ts';

beforeAll(() => prepareDrawings(readFileSync('node_modules/@resvg/resvg-wasm/index_bg.wasm')));

test('70 drawings: no crash, no false certificate, nearly all can be cut', { timeout: 240_000 }, () => {
  const picked = ['bootstrap-icons', 'lucide-static'].flatMap((name) => {
    const folder = `node_modules/${name}/icons/`;
    return readdirSync(folder)
      .filter((file) => file.endsWith('.svg'))
      .filter((_, i) => i % 41 === 5)
      .slice(0, 35)
      .map((file) => folder + file);
  });
  expect(picked).toHaveLength(70);
  let whole = 0;
  for (const path of picked) {
    const found = judgeDrawing(readFileSync(path, 'utf8'), path);
    expect([path, found.lie]).toEqual([path, undefined]);
    whole += found.whole;
  }
  expect(whole / 140).toBeGreaterThan(0.97);
});
