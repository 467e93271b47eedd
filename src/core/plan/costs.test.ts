import { expect, test } from 'vitest';
import { rectangle } from '../form/index.ts';
import { layerCodes, proofGrid } from '../print/index.ts';
import { meanOver } from './costs.ts';
import { costTable, extraTable } from './stencils.ts';

const labs = new Float64Array(256 * 3);
// Bare paper, a yellow, a dark blue over it, and the blue alone: the blue hides the yellow almost wholly.
labs.set([95, 0, 2, 85, 0, 70, 25, 15, -40, 26, 15, -38].flat());
const colours = [{ labOfCode: labs }];

test('a bridge costs what its layer’s ink shows there: much on bare paper, hardly anything under a dark later ink', () => {
  const grid = proofGrid(20, 10, 101.6);
  const codes = layerCodes([{ bit: 0, prints: rectangle(0, 0, 20, 10) }, { bit: 1, prints: rectangle(10, 0, 10, 10) }], grid);
  labs.set([25, 15, -40], 2 * 3);
  labs.set([26, 15, -38], 3 * 3);
  const table = costTable(0, colours);
  const open = meanOver(rectangle(2, 2, 5, 2), codes, table), hidden = meanOver(rectangle(12, 2, 5, 2), codes, table);
  expect(open).toBeGreaterThan(20);
  expect(hidden).toBeLessThan(3);
  expect(meanOver(rectangle(7.5, 2, 5, 2), codes, table)).toBeCloseTo((open + hidden) / 2, 5);
});

test('an island dropped costs what the ink adds where the drawing left it out; off the image it costs nothing', () => {
  const codes = layerCodes([{ bit: 1, prints: rectangle(0, 0, 20, 10) }], proofGrid(20, 10, 101.6));
  expect(meanOver(rectangle(2, 2, 5, 5), codes, extraTable(0, colours))).toBeLessThan(3);
  expect(meanOver(rectangle(30, 2, 5, 5), codes, extraTable(0, colours))).toBe(0);
});
