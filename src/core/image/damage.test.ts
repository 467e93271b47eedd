import { createCanvas } from '@napi-rs/canvas';
import { encode as encodePng } from 'fast-png';
import jpegJs from 'jpeg-js';
import { expect, test } from 'vitest';
import { unpackDeflate } from '../numeric/index.ts';
import { ProblemError } from '../problem.ts';
import { checkJpeg } from './check/jpeg-check.ts';
import { checkPng } from './check/png-check.ts';
import { orientationInExif } from './tiff/tags.ts';
import { readTiff, tiffHead } from './tiff/tiff.ts';
import { unpackBits, unpackLzw } from './tiff/unpack.ts';
import { checkWebp } from './check/webp-check.ts';

const rgba = (width: number, height: number): Uint8Array => Uint8Array.from({ length: width * height * 4 }, (_, i) => (i * 37) % 256);
const jpeg = new Uint8Array(jpegJs.encode({ data: rgba(64, 48), width: 64, height: 48 }, 80).data);
const png = encodePng({ width: 30, height: 20, channels: 4, data: rgba(30, 20) });

/** Header and one directory; entries as tag, kind, count, value. */
function tiffOf(entries: readonly (readonly number[])[], more: readonly number[] = []): Uint8Array {
  const bytes = new Uint8Array(8 + 2 + entries.length * 12 + 4 + more.length);
  const view = new DataView(bytes.buffer);
  bytes.set([0x49, 0x49, 42, 0, 8]);
  view.setUint16(8, entries.length, true);
  entries.forEach(([tag, kind, count, value], i) => {
    view.setUint16(10 + i * 12, tag, true);
    view.setUint16(12 + i * 12, kind, true);
    view.setUint32(14 + i * 12, count, true);
    view.setUint32(18 + i * 12, value, true);
  });
  bytes.set(more, bytes.length - more.length);
  return bytes;
}

const codeOf = (work: () => unknown): string => {
  try {
    work();
    return 'read';
  } catch (error) {
    if (error instanceof ProblemError) return error.problems[0].code;
    throw error;
  }
};

test('26 bytes that count four thousand million numbers are no picture, and cost nothing', () => {
  const small = tiffOf([[0x0100, 4, 0xffffffff, 8]]);
  expect(small.length).toBe(26);
  expect(tiffHead(small)).toMatchObject({ width: 0, height: 0 });
  expect(orientationInExif(small)).toBe(1);
  expect(orientationInExif(tiffOf([[0x0112, 3, 1, 6]]))).toBe(6);
  expect(orientationInExif(tiffOf([[0x0112, 3, 0xfffffff0, 6]]))).toBe(1);
  // A directory that names itself as the next one.
  const round = tiffOf([[0x0112, 3, 1, 6]]);
  new DataView(round.buffer).setUint32(22, 8, true);
  expect(tiffHead(round)).toMatchObject({ width: 0 });
});

test('strips that lie outside the file, tiles of no size and lists longer than the file are told, not read', () => {
  const size = [
    [256, 3, 1, 9000],
    [257, 3, 1, 9000],
    [258, 3, 1, 8],
    [259, 3, 1, 1],
    [262, 3, 1, 1],
  ];
  for (const more of [
    [[273, 4, 1, 4_000_000_000]],
    [
      [273, 4, 1, 8],
      [279, 4, 1, 81_000_000],
    ],
    [[273, 4, 1_000_000, 8]],
    [
      [322, 3, 1, 0],
      [323, 3, 1, 16],
      [324, 4, 1, 8],
      [325, 4, 1, 8],
    ],
  ])
    expect(codeOf(() => readTiff(tiffOf([...size, ...more]), 'x.tif'))).toBe('picture-damaged');
});

test('a JPEG cut anywhere is told to be cut, and one with its end is not', () => {
  expect(checkJpeg(jpeg)).toEqual({ width: 64, height: 48, channels: 3, bits: 8 });
  for (let length = 0; length < jpeg.length; length += 7) expect(checkJpeg(jpeg.subarray(0, length)), `${length}`).toBe('damaged');
  // A size that its few bytes can't hold.
  const swollen = jpeg.slice();
  const frame = swollen.findIndex((v, i) => v === 0xff && swollen[i + 1] === 0xc0);
  swollen.set([0x80, 0, 0x80, 0], frame + 5);
  expect(checkJpeg(swollen)).toBe('damaged');
});

test('a PNG cut anywhere, with one byte changed, or that unpacks to more than its size is told', () => {
  expect(checkPng(png)).not.toBeNull();
  for (let length = 8; length < png.length; length += 11) expect(checkPng(png.subarray(0, length))).toBeNull();
  for (let at = 16; at < png.length; at += 13) {
    const changed = png.slice();
    changed[at] ^= 4;
    expect(checkPng(changed), `byte ${at}`).toBeNull();
  }
});

test('a WebP cut anywhere is told', async () => {
  const canvas = createCanvas(40, 30);
  canvas.getContext('2d').fillRect(5, 5, 20, 9);
  const webp = new Uint8Array(await canvas.encode('webp', 80));
  expect(checkWebp(webp)).toMatchObject({ width: 40, height: 30, animated: false });
  for (let length = 0; length < webp.length; length += 3) expect(checkWebp(webp.subarray(0, length))).toBe('damaged');
});

test('what is unpacked never goes beyond its room', () => {
  const room = new Uint8Array(10);
  expect(unpackBits(Uint8Array.of(0x81, 7, 3, 1, 2, 3, 4), room)).toBe(10);
  expect([...room]).toEqual(new Array(10).fill(7));
  // Random bytes: nothing thrown, nothing endless, for LZW.
  for (let seed = 1; seed < 400; seed++) {
    let state = seed;
    const bytes = Uint8Array.from({ length: 300 }, () => (state = (state * 48271) % 2147483647) & 255);
    expect(unpackLzw(bytes, new Uint8Array(2000))).toBeLessThanOrEqual(2000);
  }
  // Five letters, deflated, into a room of three.
  expect(unpackDeflate(Uint8Array.of(0x4b, 0x4c, 0x4a, 0x4e, 0x49, 0x05, 0x00), new Uint8Array(3))).toBeGreaterThan(3);
});

test('LZW as TIFF 6.0, section 13, works it out by hand', () => {
  // The section's own string, 7 7 7 8 8 7 7 6 6, is coded: Clear 7 258 8 8 258 6 6 EOI.
  const codes = [256, 7, 258, 8, 8, 258, 6, 6, 257];
  const bits = codes.map((c) => c.toString(2).padStart(9, '0')).join('');
  const packed = Uint8Array.from({ length: Math.ceil(bits.length / 8) }, (_, i) =>
    parseInt(bits.slice(i * 8, i * 8 + 8).padEnd(8, '0'), 2),
  );
  const room = new Uint8Array(9);
  expect(unpackLzw(packed, room)).toBe(9);
  expect([...room]).toEqual([7, 7, 7, 8, 8, 7, 7, 6, 6]);
});
