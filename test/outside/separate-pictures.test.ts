import { inEnglish } from '../said.ts';
import Color from 'colorjs.io';
import { encode as encodePng } from 'fast-png';
import jpegJs from 'jpeg-js';
import UTIF from 'utif2';
import { beforeAll, expect, test } from 'vitest';
import { prepareReaders, testPicture } from '../../bench/separate-tools.ts';
import { whitePoints } from '../../src/core/colour/index.ts';
import { ProblemError } from '../../src/core/problem.ts';
import { readPicture, scaledLab, type Picture } from '../../src/core/separate/index.ts';
import { matrixProfile } from './matrix-profile.ts';

/**
 * Pictures in: what our readers say is held against other programs' encoders (jpeg-js, UTIF, fast-png), against colorjs.io (sRGB, Display P3
 * and CIELAB by CSS Color 4) and against the profile model of ICC.1:2010 (matrix and curve) worked out here.
 */
const white = whitePoints.D50;
const whole = { x: 0, y: 0, width: 1, height: 1 };

/** Four colours in quarters, 16 × 12 pixels. */
const quarters = [
  [200, 60, 40],
  [30, 120, 200],
  [240, 230, 60],
  [20, 20, 24],
];
function quartered(width: number, height: number, channels: 3 | 4): Uint8Array {
  const data = new Uint8Array(width * height * channels).fill(255);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const colour = quarters[(x < width / 2 ? 0 : 1) + (y < height / 2 ? 0 : 2)];
      for (let c = 0; c < 3; c++) data[(y * width + x) * channels + c] = colour[c];
    }
  return data;
}

function labAt(picture: Picture, x: number, y: number): number[] {
  const lab = scaledLab(picture, whole, picture.width, picture.height, white);
  return [...lab.subarray((y * picture.width + x) * 3, (y * picture.width + x) * 3 + 3)];
}

function expected(rgb: readonly number[], space = 'srgb'): number[] {
  return new Color(space, rgb.map((v) => v / 255) as [number, number, number]).to('lab').coords.map(Number);
}

function near(got: readonly number[], wanted: readonly number[], within: number): void {
  got.forEach((v, i) => expect(Math.abs(v - wanted[i]), `${got} against ${wanted}`).toBeLessThan(within));
}

async function refusal(bytes: Uint8Array): Promise<string> {
  const error = await readPicture(bytes, 'harbour.jpg').then(
    () => undefined,
    (e: unknown) => e,
  );
  expect(error).toBeInstanceOf(ProblemError);
  const { problems } = error as ProblemError;
  for (const p of problems) {
    expect(inEnglish(p.message).length).toBeGreaterThan(10);
    expect(inEnglish(p.advice).length).toBeGreaterThan(10);
  }
  return problems[0].code;
}

beforeAll(prepareReaders);

test('a PNG keeps its colours: Lab as CSS Color 4 has it', async () => {
  const picture = await readPicture(encodePng({ width: 16, height: 12, data: quartered(16, 12, 3), channels: 3 }), 'q.png');
  near(labAt(picture, 2, 2), expected(quarters[0]), 0.02);
  near(labAt(picture, 13, 2), expected(quarters[1]), 0.02);
  near(labAt(picture, 2, 10), expected(quarters[2]), 0.02);
});

test('16-bit PNG, grey PNG and TIFF say the same as 8-bit colour', async () => {
  const deep = await readPicture(
    encodePng({ width: 16, height: 12, data: Uint16Array.from(quartered(16, 12, 3), (v) => v * 257), channels: 3, depth: 16 }),
    'deep.png',
  );
  near(labAt(deep, 13, 2), expected(quarters[1]), 0.02);
  const grey = await readPicture(encodePng({ width: 4, height: 4, data: new Uint8Array(16).fill(119), channels: 1 }), 'grey.png');
  near(labAt(grey, 1, 1), expected([119, 119, 119]), 0.02);
  const tiff = await readPicture(new Uint8Array(UTIF.encodeImage(quartered(16, 12, 4), 16, 12)), 'q.tif');
  expect([tiff.format, tiff.width, tiff.height]).toEqual(['TIFF', 16, 12]);
  near(labAt(tiff, 13, 10), expected(quarters[3]), 0.02);
});

test('a JPEG by another encoder comes back within its own loss', async () => {
  const { data } = jpegJs.encode({ width: 64, height: 48, data: quartered(64, 48, 4) }, 96);
  const picture = await readPicture(new Uint8Array(data), 'q.jpg');
  expect([picture.width, picture.height]).toEqual([64, 48]);
  near(labAt(picture, 8, 8), expected(quarters[0]), 1.5);
  near(labAt(picture, 56, 40), expected(quarters[3]), 1.5);
});

test('a WebP drawing is read with its transparency as bare paper', async () => {
  const picture = await readPicture(await testPicture('fish.webp'), 'fish.webp');
  expect(picture.format).toBe('WebP');
  expect(picture.coverage).toBeDefined();
  near(labAt(picture, 0, 0), [100, 0, 0], 0.02);
  expect(picture.problems.map((p) => p.code)).toContain('picture-see-through');
});

/** Exif block with nothing but an orientation (CIPA DC-008). */
function withOrientation(jpeg: Uint8Array, orientation: number): Uint8Array {
  const exif = [
    0x45,
    0x78,
    0x69,
    0x66,
    0,
    0,
    0x49,
    0x49,
    42,
    0,
    8,
    0,
    0,
    0,
    1,
    0,
    0x12,
    0x01,
    3,
    0,
    1,
    0,
    0,
    0,
    orientation,
    0,
    0,
    0,
    0,
    0,
    0,
    0,
  ];
  return Uint8Array.from([0xff, 0xd8, 0xff, 0xe1, 0, exif.length + 2, ...exif, ...jpeg.subarray(2)]);
}

test('all eight orientations of a camera come out upright', async () => {
  const { data } = jpegJs.encode({ width: 64, height: 48, data: quartered(64, 48, 4) }, 96);
  // Which stored quarter is shown at the top left (Exif: the stored row 0 and column 0 are at …).
  const topLeft: Readonly<Record<number, number>> = { 1: 0, 2: 1, 3: 3, 4: 2, 5: 0, 6: 2, 7: 3, 8: 1 };
  for (const [orientation, quarter] of Object.entries(topLeft)) {
    const picture = await readPicture(withOrientation(new Uint8Array(data), Number(orientation)), 'turned.jpg');
    expect([picture.width, picture.height]).toEqual(Number(orientation) >= 5 ? [48, 64] : [64, 48]);
    near(labAt(picture, 6, 6), expected(quarters[quarter]), 1.5);
  }
});

test('the colour profile in the file is honoured: a wide-gamut green is greener than sRGB can say', async () => {
  // Primaries of Display P3 adapted to D50 as colorjs.io has them; gamma 2.2.
  const columns = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ].map((rgb) => new Color('p3', rgb as [number, number, number]).to('xyz-d50').coords.map(Number));
  const profile = matrixProfile(columns, 2.2);
  const rgb = [60, 220, 70];
  const { data } = jpegJs.encode(
    { width: 32, height: 32, data: Uint8Array.from({ length: 32 * 32 * 4 }, (_, i) => (i % 4 === 3 ? 255 : rgb[i % 4])) },
    100,
  );
  const plain = new Uint8Array(data);
  const app2 = [...'ICC_PROFILE'].map((c) => c.charCodeAt(0));
  const size = 2 + 14 + profile.length;
  const bytes = Uint8Array.from([0xff, 0xd8, 0xff, 0xe2, size >> 8, size & 255, ...app2, 0, 1, 1, ...profile, ...plain.subarray(2)]);
  const picture = await readPicture(bytes, 'wide.jpg');
  expect(picture.profile).toBe('Our own test profile');
  // The profile model by hand, on the bytes as the JPEG gives them back.
  const stored = (await readPicture(plain, 'plain.jpg')).pixels.data;
  const linear = [0, 1, 2].map((c) => (stored[c] / 255) ** 2.19921875);
  const xyz = [0, 1, 2].map((c) => linear[0] * columns[0][c] + linear[1] * columns[1][c] + linear[2] * columns[2][c]);
  const lab = new Color('xyz-d50', xyz as [number, number, number]).to('lab').coords.map(Number);
  near(labAt(picture, 10, 10), lab, 0.5);
  expect(labAt(picture, 10, 10)[1]).toBeLessThan(expected(rgb)[1] - 3);
});

test('a picture is scaled in light, not in code values: fine black and white stripes print as a mid tone of half the light', async () => {
  const stripes = Uint8Array.from({ length: 40 * 40 * 3 }, (_, i) => (Math.floor(i / 3) % 2 === 0 ? 255 : 0));
  const picture = await readPicture(encodePng({ width: 40, height: 40, data: stripes, channels: 3 }), 'stripes.png');
  const lab = scaledLab(picture, whole, 10, 10, white);
  near([...lab.subarray(0, 3)], new Color('xyz-d50', [white[0] / 2, 0.5, white[2] / 2]).to('lab').coords.map(Number), 0.02);
});

test('what is no picture, damaged, in press colours or far too large is told plainly, before it is decoded', async () => {
  expect(await refusal(new Uint8Array(0))).toBe('picture-empty');
  expect(await refusal(new TextEncoder().encode('Dear printer, please find enclosed'))).toBe('not-a-picture');
  const png = encodePng({ width: 16, height: 12, data: quartered(16, 12, 3), channels: 3 });
  expect(await refusal(png.slice(0, 60))).toBe('picture-damaged');
  const huge = png.slice();
  new DataView(huge.buffer, huge.byteOffset).setUint32(16, 20000);
  new DataView(huge.buffer, huge.byteOffset).setUint32(20, 20000);
  expect(await refusal(huge)).toBe('picture-too-large');
  const jpeg = new Uint8Array(jpegJs.encode({ width: 16, height: 12, data: quartered(16, 12, 4) }, 80).data);
  expect(await refusal(jpeg.slice(0, 200))).toBe('picture-damaged');
  const cmyk = jpeg.slice();
  for (let i = 0; i < cmyk.length - 9; i++) if (cmyk[i] === 0xff && cmyk[i + 1] === 0xc0) cmyk[i + 9] = 4;
  expect(await refusal(cmyk)).toBe('picture-cmyk');
});

test('a large picture, looked at small, has the same averages as its pixels in linear light', () => {
  const width = 3300,
    height = 24,
    data = Uint8Array.from(
      { length: width * height * 3 },
      (_, k) => (((Math.floor(k / 3) % width) * 7 + Math.floor(k / 3 / width) * 31 + (k % 3) * 50) % 251) + 2,
    );
  const picture: Picture = { width, height, format: 'PNG', problems: [], pixels: { kind: 'srgb8', data } };
  const lab = scaledLab(picture, whole, 330, 2, white);
  const linear = (v: number): number => (v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4);
  for (const x of [0, 1, 164, 328, 329]) {
    const sums = [0, 0, 0];
    for (let v = 0; v < 12; v++)
      for (let u = 0; u < 10; u++) for (let c = 0; c < 3; c++) sums[c] += linear(data[(v * width + x * 10 + u) * 3 + c]) / 120;
    near([...lab.subarray(x * 3, x * 3 + 3)], new Color('srgb-linear', sums as [number, number, number]).to('lab').coords.map(Number), 0.3);
  }
});
