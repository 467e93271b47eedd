import { expect, test } from 'vitest';
import { mapRegion, rectangle, regionBox, strip, takeAway, unite, type Region } from '../../form/index.ts';
import { makeStencil } from '../make-stencil.ts';
import { defaultMaterials } from '../materials.ts';

const disc = (x: number, y: number, r: number): Region => strip([x, y, x + 0.002, y], 2 * r, 'round');
const bridgesOf = (shape: Region) =>
  makeStencil({
    shape,
    side: 'window',
    aperture: { minX: 0, minY: 0, maxX: 120, maxY: 120 },
    sheet: { minX: -20, minY: -20, maxX: 140, maxY: 140 },
    material: defaultMaterials[3],
    islands: 'bridge',
  }).bridges.map(({ region }) => {
    const box = regionBox(region);
    return [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
  });

test('one bridge of a ring lies on its axis', () => {
  const found = bridgesOf(takeAway(disc(60, 60, 14), disc(60, 60, 9)));
  expect(found).toHaveLength(1);
  expect(Math.abs(found[0][0] - 60)).toBeLessThan(0.5);
});

test('two bridges of a heavy island lie on either side of the axis', () => {
  const [a, b] = bridgesOf(takeAway(disc(60, 60, 25), disc(60, 60, 15)));
  expect(Math.abs((a[0] + b[0]) / 2 - 60)).toBeLessThan(0.5);
  expect(Math.abs(a[1] - b[1])).toBeLessThan(0.5);
});

test('bridges of two islands that answer one another do so too', () => {
  // Each island is nearest to the frame at one corner only; the right one is the image of the left.
  const half = (sign: number): Region =>
    takeAway(rectangle(sign < 0 ? 20 : 62, 30, 38, 40), rectangle(sign < 0 ? 26 : 62 + 14, 37, 18, 26));
  const found = bridgesOf(unite([half(-1), half(1)])).sort((a, b) => a[0] - b[0]);
  expect(found).toHaveLength(2);
  expect(Math.abs((found[0][0] + found[1][0]) / 2 - 60)).toBeLessThan(0.5);
  expect(Math.abs(found[0][1] - found[1][1])).toBeLessThan(0.5);
});

test('four islands that answer one another by quarter turns have one bridge, turned', () => {
  // A pinwheel of four frames: no axis. Each frame is as thin on two of its sides, so that any of them could have the bridge.
  const frame = takeAway(rectangle(30, 36, 22, 20), rectangle(35, 41, 12, 10));
  const turned = (quarters: number): Region => {
    let now = frame;
    for (let i = 0; i < quarters; i++) now = mapRegion(now, (x, y) => [60 - (y - 60), 60 + (x - 60)]);
    return now;
  };
  const found = bridgesOf(unite([0, 1, 2, 3].map(turned)));
  expect(found).toHaveLength(4);
  // Turned back, all four lie in one place.
  const back = found.map(([x, y]) => {
    let at = [x, y];
    while (at[0] > 60 || at[1] > 60) at = [60 - (at[1] - 60), 60 + (at[0] - 60)];
    return at;
  });
  for (const at of back) expect(Math.hypot(at[0] - back[0][0], at[1] - back[0][1])).toBeLessThan(0.5);
});

test('a drawing without an axis keeps its shortest bridges', () => {
  // An island near the left side: the bridge goes there, axis or not.
  const [[x, y]] = bridgesOf(takeAway(rectangle(20, 20, 60, 40), rectangle(24, 30, 20, 15)));
  expect(x).toBeLessThan(25);
  expect(y).toBeGreaterThan(28);
});
