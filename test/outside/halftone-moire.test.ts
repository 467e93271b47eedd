import { createRequire } from 'node:module';
import type * as Vision from '@techstark/opencv-js';
import { beforeAll, expect, test } from 'vitest';
import { moireOf, moirePicture, type FilmLaid, type Raster } from '../../src/core/halftone/index.ts';

// Periods in closed form, against the peak of a discrete Fourier transform of the two rasters on one another: that of OpenCV
// (@techstark/opencv-js, Apache-2.0), which shares no code with the room.
type Cv = typeof Vision;
let cv: Cv;
beforeAll(async () => {
  const loaded = createRequire(import.meta.url)('@techstark/opencv-js') as Cv | Promise<Cv>;
  // It looks like a promise when it is not one.
  cv = loaded instanceof Promise ? await loaded : loaded;
  if (!cv.Mat) await new Promise<void>((done) => (cv.onRuntimeInitialized = done));
}, 60_000);

const perMm = 16,
  side = 1024;

/** A raster as it is: square threads, or dots. */
function drawn({ perCm, angleDeg, oneWay }: Raster, open: number): Float32Array {
  const turn = (angleDeg * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const f = perCm / 10 / perMm;
  return Float32Array.from({ length: side * side }, (_, i) => {
    const [x, y] = [i % side, Math.floor(i / side)];
    const u = (x * c + y * s) * f,
      v = (-x * s + y * c) * f;
    const inside = (t: number): boolean => t - Math.floor(t) < open;
    return inside(u) && (oneWay === true || inside(v)) ? 1 : 0;
  });
}

/** The strongest frequency of a picture, lines a mm, among those coarser than `below`; a Hann window both ways, so that its edges make none. */
function peak(picture: Float32Array, width: number, height: number, pixelsPerMm: number, below: number): number {
  const mean = picture.reduce((a, b) => a + b, 0) / picture.length;
  const windowed = picture.map(
    (v, i) => (v - mean) * Math.sin((Math.PI * (i % width)) / width) ** 2 * Math.sin((Math.PI * Math.floor(i / width)) / height) ** 2,
  );
  const mat = cv.matFromArray(height, width, cv.CV_32F, windowed as unknown as number[]);
  const out = new cv.Mat();
  cv.dft(mat, out, cv.DFT_COMPLEX_OUTPUT);
  const data = out.data32F;
  let best = 0,
    at = 0;
  for (let y = 0; y < height; y++)
    for (let x = 0; x <= width / 2; x++) {
      const f = Math.hypot((x * pixelsPerMm) / width, ((y < height / 2 ? y : y - height) * pixelsPerMm) / height);
      const i = (y * width + x) * 2;
      const power = data[i] ** 2 + data[i + 1] ** 2;
      if (f > 0.06 && f < below && power > best) [best, at] = [power, f];
    }
  mat.delete();
  out.delete();
  return at;
}

test.each<[string, Raster, Raster]>([
  ['two films 15° apart', { perCm: 16, angleDeg: 22.5 }, { perCm: 16, angleDeg: 37.5 }],
  ['two films 7.5° apart', { perCm: 16, angleDeg: 45 }, { perCm: 16, angleDeg: 52.5 }],
  ['two rulings in line', { perCm: 16, angleDeg: 10 }, { perCm: 19, angleDeg: 10 }],
  ['a fine ruling near the mesh’s own', { perCm: 34, angleDeg: 0 }, { perCm: 30, angleDeg: 4 }],
])('bands are where the spectrum of the two on one another has its peak: %s', (_, a, b) => {
  const [first] = moireOf(a, b);
  const [one, other] = [drawn(a, 0.5), drawn(b, 0.6)];
  const measured = peak(
    one.map((v, i) => v * other[i]),
    side,
    side,
    perMm,
    Math.min(a.perCm, b.perCm) / 20,
  );
  expect(1 / first.periodMm).toBeCloseTo(measured, 1.2);
});

test.each([
  [19.5, 22.5, 26],
  [16, 45, 50],
  [14, 7.5, 15],
])('the picture of the bands has them as wide as they are told: %d a cm at %d° and %d°', (rulingPerCm, a, b) => {
  const film = (angleDeg: number, bit: number): FilmLaid => ({
    by: 'dots',
    shape: 'round',
    rulingPerCm,
    angleDeg,
    leastDotMicrons: 100,
    meshPerCm: 120,
    threadMicrons: 34,
    bit,
    cover: 0.5,
  });
  const words = Uint32Array.from({ length: 256 }, (_, code) => [0xffffffff, 0xff404040, 0xff404040, 0xff101010][code & 3]);
  const { width, height, pixelsPerMm, rgb } = moirePicture([film(a, 0), film(b, 1)], words, 48, 48);
  const grey = Float32Array.from({ length: width * height }, (_, i) => (rgb[i * 3] / 255) ** 2.2);
  const measured = peak(grey, width, height, pixelsPerMm, rulingPerCm / 20);
  const [first] = moireOf({ perCm: rulingPerCm, angleDeg: a }, { perCm: rulingPerCm, angleDeg: b });
  expect(measured * first.periodMm).toBeCloseTo(1, 0.9);
});
