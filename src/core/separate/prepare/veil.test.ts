import { expect, test } from 'vitest';
import { residualSaliency } from './residual.ts';
import { veilOn } from './veil.ts';

const width = 128,
  height = 96;

/** Weight on average where something is. */
function mean(weight: Float32Array, where: (x: number, y: number) => boolean): number {
  let sum = 0,
    n = 0;
  weight.forEach((v, i) => {
    if (!where(i % width, Math.floor(i / width))) return;
    sum += v;
    n++;
  });
  return sum / n;
}

test('an outline counts more than texture, and texture no less than a bare ground', () => {
  const isTexture = (x: number): boolean => x < 60;
  const lab = new Float32Array(width * height * 3);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const ring = Math.hypot(x - 95, y - 48) < 20;
      lab[(y * width + x) * 3] = isTexture(x) ? ((x + y) % 2 === 0 ? 70 : 40) : ring ? 35 : 75;
    }
  const weight = veilOn(lab, width, height);
  const outline = mean(weight, (x, y) => Math.abs(Math.hypot(x - 95, y - 48) - 20) < 1.5),
    texture = mean(weight, (x, y) => x > 8 && x < 45 && y > 8 && y < 88);
  expect(outline).toBeGreaterThan(2 * texture);
  expect(mean(weight, () => true)).toBeCloseTo(1, 3);
});

test('a thing on a ground that rises and falls is what stands out', () => {
  const plane = new Float32Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      plane[y * width + x] = Math.hypot(x - 88, y - 40) < 6 ? 20 : 60 + 15 * Math.sin(x / 17) + 10 * Math.cos(y / 11);
  const saliency = residualSaliency([plane], width, height);
  const at = saliency.indexOf(saliency.reduce((a, b) => Math.max(a, b)));
  expect(Math.hypot((at % width) - 88, Math.floor(at / width) - 40)).toBeLessThan(9);
});

test('eyes and mouth in a face count more than its skin, and than the same marks in a crowd of them', () => {
  const lab = new Float32Array(width * height * 3);
  const inFace = (x: number, y: number): boolean => Math.hypot((x - 34) / 0.8, y - 48) < 28,
    eye = (x: number, y: number): boolean => Math.abs(Math.abs(x - 34) - 9) < 2 && Math.abs(y - 42) < 1.5,
    mouth = (x: number, y: number): boolean => Math.abs(x - 34) < 6 && Math.abs(y - 60) < 1.2,
    crowd = (x: number, y: number): boolean => x > 70 && x % 7 < 3 && y % 7 < 3;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = (y * width + x) * 3,
        mark = eye(x, y) || mouth(x, y) || crowd(x, y);
      lab.set(inFace(x, y) ? [mark ? 40 : 72, 14, 20] : [mark ? 40 : 72, 0, 0], i);
    }
  const weight = veilOn(lab, width, height);
  const features = mean(weight, (x, y) => eye(x, y) || mouth(x, y)),
    cheek = mean(weight, (x, y) => Math.hypot(x - 34, y - 51) < 4),
    many = mean(weight, (x, y) => crowd(x, y) && x < 120 && y > 8 && y < 88);
  expect(features).toBeGreaterThan(2 * cheek);
  expect(features).toBeGreaterThan(1.5 * many);
});
