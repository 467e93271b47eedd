import { beforeAll, expect, test } from 'vitest';
import { prepareReaders, testPicture } from '../../bench/separate-tools.ts';
import { findFaces, readPicture, veilOf, type Picture } from '../../src/core/separate/index.ts';

/**
 * Faces in two portraits (`test/pictures/SOURCES.md`), none of which the networks were set by here: where eyes and mouth lie was marked by eye in
 * each picture, px of the file.
 */
const portraits = [
  {
    file: 'woman.jpg',
    eyes: [
      [114, 81],
      [157, 82],
    ],
    mouth: [132, 125],
  },
  {
    file: 'hopper.jpg',
    eyes: [
      [134, 152],
      [214, 148],
    ],
    mouth: [177, 240],
  },
] as const;

beforeAll(prepareReaders);

const read = async (file: string): Promise<Picture> => readPicture(await testPicture(file), file);

function middle(outline: readonly number[], { width, height }: Picture): readonly [number, number] {
  const mean = (axis: number): number => {
    const values = outline.filter((_, i) => i % 2 === axis);
    return values.reduce((a, b) => a + b, 0) / values.length;
  };
  return [mean(0) * width, mean(1) * height];
}

test.each(portraits)('the eyes and the mouth of $file are where they are', async ({ file, eyes, mouth }) => {
  const picture = await read(file),
    faces = findFaces(picture);
  expect(faces).toHaveLength(1);
  const found = (part: string): (readonly [number, number])[] =>
    faces[0].parts.filter((p) => p.part === part).map((p) => middle(p.outline, picture));
  const apart = Math.hypot(eyes[1][0] - eyes[0][0], eyes[1][1] - eyes[0][1]),
    off = ([x, y]: readonly [number, number], [u, v]: readonly [number, number]): number => Math.hypot(x - u, y - v) / apart;
  for (const [k, eye] of found('eye').entries()) expect(off(eye, eyes[k]), 'eye').toBeLessThan(0.12);
  expect(off(found('mouth')[0], mouth), 'mouth').toBeLessThan(0.15);
  // They count more than anything about them.
  const { width, height, weight } = veilOf(picture),
    at = ([x, y]: readonly [number, number]): number =>
      weight[Math.floor((y / picture.height) * height) * width + Math.floor((x / picture.width) * width)];
  for (const place of [...eyes, mouth]) expect(at(place)).toBeGreaterThan(3);
});

test.each(['flower.jpg', 'panda.png'])('no face is seen in %s', async (file) => {
  expect(findFaces(await read(file))).toEqual([]);
});
