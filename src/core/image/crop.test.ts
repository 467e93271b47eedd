import { expect, test } from 'vitest';
import { cropOf, heightOfCrop, tidyCrop } from './crop.ts';

const picture = { width: 400, height: 300 };

test('what is printed has the image’s proportions and the middle of what was chosen', () => {
  const chosen = { x: 0.1, y: 0.2, width: 0.6, height: 0.8 };
  const crop = cropOf(chosen, picture, { widthMm: 100, heightMm: 100 });
  expect(crop.width * 400).toBeCloseTo(crop.height * 300, 9);
  expect(crop.x + crop.width / 2).toBeCloseTo(0.4, 9);
  expect(crop.y + crop.height / 2).toBeCloseTo(0.6, 9);
  expect(crop.height).toBeCloseTo(0.8, 9);
});

test('without a choice the largest part in the middle; all of it where the proportions are the same', () => {
  expect(cropOf(undefined, picture, { widthMm: 200, heightMm: 150 })).toEqual({ x: 0, y: 0, width: 1, height: 1 });
  expect(cropOf(undefined, picture, { widthMm: 80, heightMm: 20 })).toMatchObject({ x: 0, width: 1 });
});

test('an image as high as its part of the picture asks for prints all of that part', () => {
  const chosen = { x: 0.25, y: 0, width: 0.5, height: 1 };
  const heightMm = heightOfCrop(chosen, picture, 90);
  expect(heightMm).toBeCloseTo(135, 9);
  expect(cropOf(chosen, picture, { widthMm: 90, heightMm })).toEqual(chosen);
});

test('a crop is kept to a ten-thousandth and never beyond the picture', () => {
  const kept = tidyCrop({ x: 0.333333, y: 0.66667, width: 0.66667, height: 0.33333 });
  expect(kept.x).toBe(0.3333);
  expect(kept.x + kept.width).toBeLessThanOrEqual(1);
  expect(kept.y + kept.height).toBeLessThanOrEqual(1);
});
