import { expect, test } from 'vitest';
import { importanceOf, markWeights, weightName, type Mark } from './importance.ts';
import type { ImportanceMap } from '../types.ts';

const picture = { width: 400, height: 200 };
const all = { x: 0, y: 0, width: 1, height: 1 };

/** Weight at a place in shares of what is printed. */
function at(map: ImportanceMap, x: number, y: number): number {
  return map.weight[Math.floor(y * map.height) * map.width + Math.floor(x * map.width)];
}

test('without marks there is no map; a box counts inside and nowhere else', () => {
  expect(importanceOf([], all, picture)).toBeUndefined();
  const map = importanceOf([{ kind: 'box', weight: markWeights.more, x: 0.25, y: 0.5, width: 0.25, height: 0.25 }], all, picture)!;
  expect(map.width / map.height).toBeCloseTo(2, 1);
  expect([at(map, 0.3, 0.6), at(map, 0.3, 0.4), at(map, 0.6, 0.6)]).toEqual([4, 1, 1]);
});

test('a dot is round in the picture, and a later mark lies over an earlier one', () => {
  const dot: Mark = { kind: 'stroke', weight: 4, radius: 0.1, points: [[0.5, 0.5]] };
  const map = importanceOf([dot, { kind: 'box', weight: 0, x: 0.5, y: 0, width: 0.5, height: 1 }], all, picture)!;
  expect([at(map, 0.42, 0.5), at(map, 0.38, 0.5), at(map, 0.55, 0.5)]).toEqual([4, 1, 0]);
  // A tenth of the width is a fifth of the height here.
  const alone = importanceOf([dot], all, picture)!;
  expect([at(alone, 0.5, 0.32), at(alone, 0.5, 0.28)]).toEqual([4, 1]);
});

test('marks lie on the picture: in a crop they stay at their place of it', () => {
  const stroke: Mark = {
    kind: 'stroke',
    weight: 0.25,
    radius: 0.02,
    points: [
      [0.5, 0.1],
      [0.5, 0.9],
    ],
  };
  const map = importanceOf([stroke], { x: 0.5, y: 0, width: 0.5, height: 1 }, picture)!;
  expect([at(map, 0.01, 0.5), at(map, 0.5, 0.5)]).toEqual([0.25, 1]);
});

test('a weight goes by the name a printmaker gives it', () => {
  expect([4, 3, 1, 0.25, 0].map(weightName)).toEqual(['more', 'more', 'less', 'less', 'none']);
});

test('what the picture itself says lies under the marks, as far as it is let', () => {
  const own = { width: 2, height: 1, weight: Float32Array.of(0.5, 3) };
  const half = importanceOf([], all, picture, { map: own, share: 0.5 })!;
  expect([at(half, 0.25, 0.5), at(half, 0.75, 0.5)]).toEqual([0.75, 2]);
  expect(importanceOf([], all, picture, { map: own, share: 0 })).toBeUndefined();
  const marked = importanceOf([{ kind: 'box', weight: 4, x: 0, y: 0, width: 1, height: 0.5 }], all, picture, { map: own, share: 1 })!;
  expect([at(marked, 0.25, 0.2), at(marked, 0.75, 0.2), at(marked, 0.75, 0.8)]).toEqual([4, 12, 3]);
});
