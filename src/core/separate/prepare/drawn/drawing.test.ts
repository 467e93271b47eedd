import { expect, test } from 'vitest';
import { benchShelf } from '../../../../../bench/separate-shelf.ts';
import { seeded } from '../../../random.ts';
import { defaultMaterials } from '../../../stencil/index.ts';
import { quietTask } from '../../../task.ts';
import { cutRulesOf } from '../../finish/cuttable.ts';
import { separated } from '../../separate.ts';
import type { SeparateRequest } from '../../types.ts';
import { drawingOf } from './drawing.ts';
import { isDrawn } from './is-drawn.ts';
import { onBarePaper } from './paper.ts';

const width = 240,
  height = 160,
  mmPerPx = 0.25,
  white = [95, 0, 2];
type Colour = readonly number[];
const raster = (colour: (x: number, y: number) => Colour) => {
  const lab = new Float32Array(width * height * 3);
  for (let i = 0; i < width * height; i++) lab.set(colour(i % width, Math.floor(i / width)), 3 * i);
  return { lab, width, height };
};
const black: Colour = [10, 0, 0],
  red: Colour = [50, 60, 40];
const inside = (x: number, y: number): boolean => x > 30 && x < 210 && y > 25 && y < 135;
/** A red shape with a black outline and a black dot on paper. */
const shape = (x: number, y: number): Colour => {
  if (Math.hypot(x - 15, y - 80) < 4) return black;
  return !inside(x, y) ? white : x < 35 || x > 205 || y < 30 || y > 130 ? black : red;
};
/** The same on a page with a grain and a shade across it. */
const photographed = () => {
  const random = seeded(3);
  return raster((x, y) => {
    const light = 0.95 - 0.28 * (x / width) - 0.05 * (y / height),
      grain = 0.8 * (random.next() - 0.5);
    const [l, a, b] = shape(x, y);
    return [(l + 16) * light - 16 + grain, a * light, b * light + 1];
  });
};
const { material } = { material: defaultMaterials.find(({ id }) => id === 'film')! };
const rules = (() => {
  const { openingPx, paperPx, leastInkPx, leastIslandPx } = cutRulesOf({ material } as SeparateRequest, mmPerPx);
  return { inkPx: openingPx, paperPx, sparePx: 1, leastInkPx, leastIslandPx };
})();
const at = (lab: Float32Array, x: number, y: number): number[] => [...lab.subarray(3 * (y * width + x), 3 * (y * width + x) + 3)];

test('flat colours with crisp edges are a drawing, on a shaded page too; slow changes of tone are a photograph', () => {
  expect(isDrawn(raster(shape))).toBe(true);
  expect(isDrawn(photographed())).toBe(true);
  expect(isDrawn(raster((x, y) => [50 + 40 * Math.sin(x / 25) * Math.cos(y / 19), 0, 0]))).toBe(false);
  const random = seeded(5);
  expect(isDrawn(raster(() => [50 + 30 * random.next(), 0, 0]))).toBe(false);
});

test('a shade across the page is not drawn: its paper is bare; a ground that was chosen on a screen stays', () => {
  const { page, aim } = drawingOf(photographed(), mmPerPx, white, rules)!;
  for (const [x, y] of [
    [5, 5],
    [235, 5],
    [5, 155],
    [235, 155],
  ]) {
    expect(Math.hypot(...at(page, x, y).map((v, c) => v - white[c]))).toBeLessThan(2);
    for (const [c, v] of at(aim, x, y).entries()) expect(v).toBeCloseTo(white[c], 4);
  }
  // One red all over.
  expect(at(aim, 60, 80)).toEqual(at(aim, 190, 80));
  const cream: Colour = [90, 2, 9];
  expect(
    onBarePaper(
      raster((x, y) => (inside(x, y) ? red : cream)),
      white,
    ),
  ).toBeUndefined();
});

test('a white line and a dot become as broad as they can be cut; lines too close together leave what can be cut between them', () => {
  // Lines 1 mm broad, one alone, two 2 mm apart; a dot 2 mm across.
  const lines = (x: number, y: number): boolean =>
    x > 50 &&
    x < 190 &&
    [
      [50, 54],
      [90, 94],
      [102, 106],
    ].some(([from, to]) => y >= from && y < to);
  const { aim } = drawingOf(
    raster((x, y) => (lines(x, y) ? white : inside(x, y) || Math.hypot(x - 15, y - 80) < 4 ? black : white)),
    mmPerPx,
    white,
    rules,
  )!;
  const column = Array.from({ length: height }, (_, y) => (at(aim, 120, y)[0] > 50 ? 1 : 0)),
    runs = column
      .join('')
      .split(/(?<=0)(?=1)|(?<=1)(?=0)/)
      .map((run) => run.length);
  // Paper, black, line, black, line, black, line, black, paper.
  expect(runs).toHaveLength(9);
  expect(runs[2]).toBeGreaterThanOrEqual(rules.paperPx);
  expect(runs[2]).toBeLessThan(1.5 * rules.paperPx + 2);
  expect(runs[5]).toBeGreaterThanOrEqual(Math.floor(rules.inkPx));
  const dot = Array.from({ length: 30 * height }, (_, i) => at(aim, i % 30, Math.floor(i / 30))[0]).filter((l) => l < 50).length;
  expect(dot).toBeGreaterThan(rules.leastInkPx);
});

test('a white line 1 mm broad in black is printed bare along its length, and a dot too small to be made larger is named', async () => {
  const side = 400,
    cutOut = (x: number, y: number): boolean =>
      Math.hypot(x - 200, y - 200) < 170 && !(Math.abs(y - 200) < 5 && x > 90 && x < 310) && Math.hypot(x - 200, y - 270) > 6;
  const result = await separated(
    {
      ...benchShelf(),
      picture: {
        width: side,
        height: side,
        format: 'PNG',
        problems: [],
        pixels: {
          kind: 'srgb8',
          data: Uint8Array.from({ length: side * side * 3 }, (_, k) =>
            cutOut(Math.floor(k / 3) % side, Math.floor(k / 3 / side)) ? 20 : 255,
          ),
        },
      },
      sizeMm: { width: 40, height: 40 },
      layers: 2,
      material,
      registerSigmaMm: 0.5,
      effort: 0.1,
      seed: 1,
    },
    quietTask,
  );
  const row = Math.round(result.height / 2);
  for (let x = 12; x < 28; x += 0.5) expect(result.codes[row * result.width + Math.round(x / result.mmPerPx)]).toBe(0);
  expect(result.lost.map(({ part }) => part)).toContain('dot');
});

test('what is said to be a drawing is taken as one, and only that', () => {
  const soft = raster((x, y) => [50 + 40 * Math.sin(x / 25) * Math.cos(y / 19), 0, 0]);
  expect(drawingOf(soft, mmPerPx, white, rules)).toBeUndefined();
  const said = drawingOf(soft, mmPerPx, white, rules, true)!;
  expect(new Set(Array.from({ length: width * height }, (_, i) => said.aim[3 * i])).size).toBeLessThan(25);
});
