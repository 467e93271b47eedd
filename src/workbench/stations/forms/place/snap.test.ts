import { expect, test } from 'vitest';
import { rectangle } from '../../../../core/form/index.ts';
import { linesOf, partBox, snapBox } from './snap.ts';

const form = { id: 'bar', name: 'Bar', region: rectangle(0, 0, 20, 10), widthMm: 20, heightMm: 10 };

test('a form turned by a quarter is as wide as it was high', () => {
  const box = partBox(form, { xMm: 50, yMm: 40, angleDeg: 90, scale: 2, mirror: false });
  expect([box.minX, box.maxX, box.minY, box.maxY].map((v) => Math.round(v * 1000) / 1000)).toEqual([40, 60, 20, 60]);
});

test('a form near the middle of the sheet is drawn onto it; one that is not stays', () => {
  const lines = linesOf([{ minX: 0, minY: 0, maxX: 180, maxY: 240 }]);
  const near = snapBox({ minX: 79.2, minY: 30, maxX: 99.2, maxY: 40 }, lines, 1.5);
  expect(near).toMatchObject({ x: 90, y: null, dyMm: 0 });
  expect(near.dxMm).toBeCloseTo(0.8);
  expect(snapBox({ minX: 70, minY: 30, maxX: 85, maxY: 44 }, lines, 1.5)).toEqual({ dxMm: 0, dyMm: 0, x: null, y: null });
});
