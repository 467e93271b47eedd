import { expect, test } from 'vitest';
import { lostDetails } from './readable.ts';
import { edgesOf, metBy, structureOf } from './structure.ts';

const width = 200,
  height = 160,
  mmPerPx = 0.25;

function drawn(light: (x: number, y: number) => number): Float32Array {
  return Float32Array.from({ length: width * height }, (_, i) => light((i % width) + 0.5, Math.floor(i / width) + 0.5));
}

const disc = (x: number, y: number): boolean => Math.hypot(x - 60, y - 60) < 30;
/** Two strokes, as of an eye and its brow. */
const strokes = (x: number, y: number): boolean => Math.abs(x - 140) < 12 && (Math.abs(y - 100) < 1.5 || Math.abs(y - 112) < 1.5);
const picture = edgesOf(
  drawn((x, y) => (disc(x, y) || strokes(x, y) ? 30 : 80)),
  width,
  height,
  mmPerPx,
);

test('a print that is the picture keeps all of it and makes nothing up; in fewer tones too', () => {
  expect(structureOf(picture, picture)).toEqual({ kept: 1, invented: 0 });
  const flat = edgesOf(
    drawn((x, y) => (disc(x, y) || strokes(x, y) ? 42 : 75)),
    width,
    height,
    mmPerPx,
  );
  expect(structureOf(picture, flat).kept).toBeGreaterThan(0.95);
  expect(structureOf(picture, flat).invented).toBeLessThan(0.05);
});

test('what is left out is not kept, what is added is made up, and a line turned round counts as neither', () => {
  const without = edgesOf(
    drawn((x, y) => (disc(x, y) ? 30 : 80)),
    width,
    height,
    mmPerPx,
  );
  const { kept, invented } = structureOf(picture, without);
  expect(kept).toBeLessThan(0.8);
  expect(invented).toBeLessThan(0.02);
  expect(structureOf(without, picture).invented).toBeGreaterThan(0.2);
  const turned = edgesOf(
    drawn((x, y) => (disc(x, y) ? 80 : 30)),
    width,
    height,
    mmPerPx,
  );
  expect(structureOf(without, turned).kept).toBeLessThan(0.1);
});

test('the place of lost strokes is told, and how large the image would have to be for a knife to cut them', () => {
  const without = edgesOf(
    drawn((x, y) => (disc(x, y) ? 30 : 80)),
    width,
    height,
    mmPerPx,
  );
  const [place, ...more] = lostDetails(picture, metBy(picture, without).lost, undefined, 1.5, width * mmPerPx);
  expect(more).toEqual([]);
  expect(Math.hypot(place.atMm[0] - 140 * mmPerPx, place.atMm[1] - 106 * mmPerPx)).toBeLessThan(4);
  // Strokes of 0.75 mm, seen blurred as about 1 mm; 1.5 mm can be cut.
  expect(place.imageWidthMm).toBeGreaterThan(width * mmPerPx);
  expect(place.imageWidthMm).toBeLessThanOrEqual(width * mmPerPx * 2.2);
  expect(lostDetails(picture, metBy(picture, picture).lost, undefined, 1.5, width * mmPerPx)).toEqual([]);
});

test('a mouth whose strokes are lost is told as a mouth, before any other place; one that is kept is not', () => {
  const without = edgesOf(
    drawn((x, y) => (disc(x, y) ? 30 : 80)),
    width,
    height,
    mmPerPx,
  );
  const box = [128, 98, 152, 98, 152, 114, 128, 114].map((px) => px * mmPerPx),
    told = (lost: Uint8Array) => lostDetails(picture, lost, undefined, 1.5, width * mmPerPx, [{ face: 0, part: 'mouth', outlineMm: box }]);
  const { lost } = metBy(picture, without);
  expect(told(lost).map(({ part }) => part)).toEqual(['mouth']);
  expect(told(metBy(picture, picture).lost)).toEqual([]);
});
