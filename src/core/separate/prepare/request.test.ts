import { expect, test } from 'vitest';
import { benchShelf } from '../../../../bench/separate-shelf.ts';
import { inEnglish, refusalOf, refusedBy } from '../../../../test/said.ts';
import { defaultMaterials } from '../../stencil/index.ts';
import type { SeparateRequest } from '../types.ts';
import { checkRequest } from './request.ts';

const request = (change: Partial<SeparateRequest>): SeparateRequest => ({
  picture: { width: 8, height: 8, format: 'PNG', problems: [], pixels: { kind: 'srgb8', data: new Uint8Array(192) } },
  sizeMm: { width: 50, height: 50 },
  ...benchShelf(),
  layers: 3,
  material: defaultMaterials[0],
  ...change,
});

test('all that is wrong is told at once, each with the field of the Job it is in', () => {
  const found = refusedBy(() =>
    checkRequest(
      request({
        layers: 3,
        cutPairs: true,
        sizeMm: { width: 4000, height: 10 },
        registerSigmaMm: 11,
        knife: { metres: -1 },
        wishes: [{ ink: 'nowhere', placeFixed: false }],
      }),
    ),
  );
  expect(found.map((p) => [p.code, p.path])).toEqual([
    ['pairs-need-even', 'picture.layers'],
    ['size-out-of-range', 'image'],
    ['ink-unknown', 'picture.wishes[0].ink'],
    ['register-out-of-range', 'picture.sigmaMm'],
    ['budget-out-of-range', 'picture.knife.metres'],
  ]);
});

test('lengths are told in the units of whoever reads, and counts as the language counts', () => {
  const [{ message, advice }] = refusedBy(() => checkRequest(request({ sizeMm: { width: 0, height: 10 } })));
  expect(inEnglish(message)).toBe('Laydown cannot plan an image of 0 × 10\u00a0mm.');
  expect(inEnglish(advice)).toBe('Give a width and a height of 1 to 3000\u00a0mm.');
  expect(inEnglish(advice, { language: 'de', units: 'in' })).toMatch(/^Breite und Höhe angeben: 0,039 bis 118,1\u00a0in\.$/);
  expect(refusalOf(() => checkRequest(request({ layers: 1, cutPairs: true })))).toContain(
    '1 layer does not make pairs: each cut gives a window and a piece. Ask for 2 layers, or for single cuts.',
  );
});

test('tones and a key are no halves of a cut, and a key needs something to lie on', () => {
  const codes = (change: Partial<SeparateRequest>): string[] => refusedBy(() => checkRequest(request(change))).map((p) => p.code);
  expect(codes({ layers: 4, cutPairs: true, way: 'light', key: true })).toEqual(['tones-in-pairs', 'key-in-pairs']);
  expect(codes({ layers: 1, key: true })).toEqual(['key-alone']);
});
