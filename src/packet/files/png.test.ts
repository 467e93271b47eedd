import { convertIndexedToRgb, decode } from 'fast-png';
import { expect, test } from 'vitest';
import { indexedPng, rgbPng } from './png.ts';

test('a proof opens at its true size: 300 pixels an inch are told in the file', () => {
  const png = indexedPng(
    {
      width: 3,
      height: 2,
      data: Uint8Array.of(0, 1, 1, 1, 0, 0),
      palette: [
        [250, 240, 230],
        [10, 20, 30],
      ],
    },
    25.4 / 300,
  );
  const read = decode(png, { checkCrc: true });
  expect(read.resolution).toEqual({ x: 11811, y: 11811, unit: 1 });
  // 180 mm at that density is 180 mm again, to a hundredth.
  expect((2126 / read.resolution!.x) * 1000).toBeCloseTo(180, 1);
});

test('every overlap stays one colour: palette and places come back as they were', () => {
  // Up to 16 colours two pixels share a byte; an odd width leaves half of one empty.
  for (const [colours, width] of [
    [3, 2],
    [3, 5],
    [16, 7],
    [17, 7],
    [200, 31],
  ] as const) {
    const palette = Array.from({ length: colours }, (_, i): [number, number, number] => [i, 255 - i, (i * 7) % 256]);
    const data = Uint8Array.from({ length: width * 6 }, (_, i) => (i * 5) % colours);
    const read = decode(indexedPng({ width, height: 6, data, palette }, 0.1), { checkCrc: true });
    expect(read.palette).toEqual(palette);
    expect([...convertIndexedToRgb(read)]).toEqual([...data].flatMap((entry) => palette[entry]));
  }
});

test('a proof over an earlier print keeps every pixel', () => {
  const rgb = Uint8Array.from({ length: 4 * 5 * 3 }, (_, i) => (i * 37) % 256);
  const read = decode(rgbPng(4, 5, rgb, 0.2), { checkCrc: true });
  expect([...read.data]).toEqual([...rgb]);
  expect(read.resolution?.x).toBe(5000);
});
