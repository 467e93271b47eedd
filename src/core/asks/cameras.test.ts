import { readFileSync } from 'node:fs';
import jpeg from 'jpeg-js';
import { expect, test } from 'vitest';
import { withExif } from '../../../test/exif.ts';
import { boardSeen, type Photo } from '../form/index.ts';
import { takenWith } from '../image/index.ts';
import type { JobCamera } from '../job/index.ts';
import { cameraOf, lensOfCamera, readCameras, withBoard, withCamera, writeCameras } from './cameras.ts';

const file = readFileSync('test/outside/data/checked-board/left14.jpg');
const { width, height, data } = jpeg.decode(file, { useTArray: true });
const photo: Photo = { width, height, channels: 4, data };

test('what a photograph says of its camera, and what it does not', () => {
  expect(takenWith(file)).toEqual({ orientation: 1 });
  const said = withExif(file, { make: 'Maker', model: 'Number One', focalMm: 35.5, orientation: 6 });
  expect(takenWith(said)).toEqual({ camera: 'Maker Number One', focalMm: 35.5, orientation: 6 });
  expect(takenWith(withExif(file, { make: 'Maker', model: 'MAKER Two' })).camera).toBe('MAKER Two');
  // Cut anywhere it is read as far as it goes, or not at all.
  for (let length = 0; length < 280; length += 7) expect(takenWith(said.subarray(0, length)).orientation).toBeGreaterThan(0);
});

const camera: JobCamera = {
  name: 'Maker One',
  focalMm: 35,
  aspect: 4 / 3,
  lensMiddle: [0.52, 0.49],
  bend: 0.15,
  bendFar: 0.01,
  boards: 5,
};

test('a lens is that of the same camera, zoomed alike, and of whole photographs', () => {
  const taken = { camera: 'Maker One', focalMm: 35.2, orientation: 1 };
  const known = [camera];
  expect(cameraOf(known, taken, { width: 4000, height: 3000 })).toBe(camera);
  expect(cameraOf(known, { ...taken, orientation: 8 }, { width: 3000, height: 4000 })).toBe(camera);
  expect(cameraOf(known, taken, { width: 3000, height: 4000 })).toBeUndefined();
  expect(cameraOf(known, { ...taken, focalMm: 50 }, { width: 4000, height: 3000 })).toBeUndefined();
  expect(cameraOf(known, { ...taken, camera: 'Maker Two' }, { width: 4000, height: 3000 })).toBeUndefined();
  expect(cameraOf(known, { orientation: 1 }, { width: 4000, height: 3000 })).toBeUndefined();
  const better = { ...camera, boards: 9 };
  expect(withCamera([camera, { ...camera, name: 'Other' }], better).map((c) => [c.name, c.boards])).toEqual([
    ['Other', 5],
    ['Maker One', 9],
  ]);
  expect(readCameras(writeCameras([camera]))).toEqual([camera]);
  expect(readCameras('{"cameras":[{"bend":"much"}]}')).toBeUndefined();
});

test('held upright the lens is turned with the photograph', () => {
  const { middle } = lensOfCamera(camera, { orientation: 6 }, { width: 3000, height: 4000 });
  // Stored 4000 × 3000 with its middle at 2080, 1470; shown a quarter turn clockwise.
  expect(middle.map(Math.round)).toEqual([1530, 2080]);
});

test('a board seen from a camera held upright gives the same lens', () => {
  const turned: Photo = { width: height, height: width, channels: 4, data: new Uint8Array(data.length) };
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      for (let c = 0; c < 4; c++) (turned.data as Uint8Array)[4 * (x * height + (height - 1 - y)) + c] = data[4 * (y * width + x) + c];
  const flat = withBoard([], boardSeen(photo)!, { orientation: 1 })!,
    upright = withBoard([], boardSeen(turned)!, { orientation: 6 })!;
  expect(upright.aspect).toBe(flat.aspect);
  expect(upright.bend).toBeCloseTo(flat.bend, 2);
  expect(Math.hypot(upright.lensMiddle[0] - flat.lensMiddle[0], upright.lensMiddle[1] - flat.lensMiddle[1])).toBeLessThan(0.01);
  // A second board adds to the first; the same photograph once more does not.
  expect(withBoard([flat], boardSeen(photo)!, { orientation: 1 })!.boards).toBe(1);
  expect(withBoard([flat], boardSeen(turned)!, { orientation: 6 })!.boards).toBe(2);
});
