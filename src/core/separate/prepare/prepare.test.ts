import { expect, test } from 'vitest';
import { benchShelf } from '../../../../bench/separate-shelf.ts';
import type { Picture } from '../../image/index.ts';
import { defaultMaterials } from '../../stencil/index.ts';
import { quietTask } from '../../task.ts';
import { separate, separated } from '../separate.ts';
import { prepareWork, sketchWork } from './prepare.ts';
import type { SeparateRequest } from '../types.ts';

const picture: Picture = {
  width: 8,
  height: 8,
  format: 'PNG',
  problems: [],
  pixels: { kind: 'srgb8', data: Uint8Array.from({ length: 192 }, (_, i) => (i * 37) % 256) },
};
const { paper, surface, shelf } = benchShelf();
const asked = (change: Partial<SeparateRequest>): SeparateRequest => ({
  picture,
  sizeMm: { width: 50, height: 50 },
  paper,
  surface,
  shelf,
  layers: 3,
  material: defaultMaterials[0],
  marginMm: 20,
  ...change,
});

test('other runs, inks or knife find the raster of the picture as it was; another part, paper or size do not', () => {
  const first = prepareWork(asked({}));
  const sketch = sketchWork(asked({})).levels,
    coarsest = first.levels[first.levels.length - 1];
  expect(sketch.map(({ width, height, mmPerPx }) => ({ width, height, mmPerPx }))).toEqual([
    { width: coarsest.width, height: coarsest.height, mmPerPx: coarsest.mmPerPx },
  ]);
  const other = prepareWork(asked({ layers: 2, shelf: shelf.slice(2), knife: { priceMm: 9 } }));
  expect(other.levels).toBe(first.levels);
  expect(prepareWork(asked({ crop: { x: 0, y: 0, width: 0.5, height: 0.5 } })).target).not.toEqual(first.target);
  expect(prepareWork(asked({ paper: paper.map((r) => r * 0.8) })).target).not.toEqual(first.target);
  // So large that both have the same pixels: they are not of the same size.
  const [large, larger] = [1000, 2000].map((side) => prepareWork(asked({ sizeMm: { width: side, height: side }, rasterMm: side / 100 })));
  expect(larger.target).toEqual(large.target);
  expect(larger.levels[0].mmPerPx).toBeCloseTo(2 * large.levels[0].mmPerPx);
});

test('the first sketch does not wait for what matters in the picture; what comes after it counts it', async () => {
  const importance = { width: 2, height: 1, weight: Float32Array.of(4, 0.25) },
    small = { layers: 1, rasterMm: 2, effort: 0.1 };
  let times = 0;
  const later = asked({
    ...small,
    matters: () => {
      times++;
      return { importance };
    },
  });
  const drafts = separate(later, quietTask);
  expect((await drafts.next()).value).toMatchObject({ stage: 'sketch' });
  expect(times).toBe(0);
  const result = await separated(later, quietTask);
  expect(times).toBe(1);
  expect(result.codes).toEqual((await separated(asked({ ...small, importance }), quietTask)).codes);
  expect(result.codes).not.toEqual((await separated(asked(small), quietTask)).codes);
});
