import { expect, test } from 'vitest';
import { rectangle, takeAway } from '../../form/index.ts';
import { crossOpening } from './cross-opening.ts';

// A square opening of 60 mm with an island of 20 mm in its middle: the paper must be held across 20 mm of air.
const opening = takeAway(rectangle(0, 0, 60, 60), rectangle(20, 20, 20, 20));

test('a bridge asked for beside an island lies straight across to it, and reaches into the paper at both ends', () => {
  const way = crossOpening(opening, [10, 30])!;
  const [from, to] = [way.fromMm, way.toMm].sort((a, b) => a[0] - b[0]);
  expect(from[0]).toBeCloseTo(-0.5);
  expect(to[0]).toBeCloseTo(20.5);
  expect(from[1]).toBeCloseTo(30);
  expect(to[1]).toBeCloseTo(30);
});

test('a longer way that holds an island comes before a shorter one that holds nothing', () => {
  const way = crossOpening(opening, [6, 18])!;
  const ends = [way.fromMm, way.toMm];
  expect(ends.some(([x, y]) => x >= 19 && x <= 41 && y >= 19 && y <= 41)).toBe(true);
});

test('a place on the paper beside the opening is taken as meant for it; one far away is not', () => {
  expect(crossOpening(opening, [22, 30])).not.toBeNull();
  expect(crossOpening(opening, [30, 30])).toBeNull();
  expect(crossOpening(opening, [90, 90])).toBeNull();
});
