import { decode } from 'fast-png';
import { expect, test } from 'vitest';
import { indexedPng, rgbPng } from './png.ts';

test('a proof opens at its true size: 300 pixels an inch are told in the file', () => {
  const png = indexedPng({ width: 3, height: 2, data: Uint8Array.of(0, 1, 1, 1, 0, 0), palette: [[250, 240, 230], [10, 20, 30]] }, 25.4 / 300);
  const read = decode(png, { checkCrc: true });
  expect(read.resolution).toEqual({ x: 11811, y: 11811, unit: 1 });
  // 180 mm at that density is 180 mm again, to a hundredth.
  expect((2126 / read.resolution!.x) * 1000).toBeCloseTo(180, 1);
});

test('every overlap stays one colour: palette and places come back as they were', () => {
  const palette: [number, number, number][] = [[250, 240, 230], [10, 20, 30], [200, 0, 0]];
  const data = Uint8Array.of(0, 1, 2, 2, 1, 0);
  const read = decode(indexedPng({ width: 2, height: 3, data, palette }, 0.1));
  expect([...read.data]).toEqual([...data]);
  expect(read.palette).toEqual(palette);
});

test('a proof over an earlier print keeps every pixel', () => {
  const rgb = Uint8Array.from({ length: 4 * 5 * 3 }, (_, i) => (i * 37) % 256);
  const read = decode(rgbPng(4, 5, rgb, 0.2), { checkCrc: true });
  expect([...read.data]).toEqual([...rgb]);
  expect(read.resolution?.x).toBe(5000);
});
