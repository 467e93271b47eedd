import { expect, test } from 'vitest';
import type { Region } from '../form/index.ts';
import { meetingOverlap } from './meeting.ts';

const rectangle = (x: number, width: number): Region => ({ rings: [Float64Array.of(x, 0, x + width, 0, x + width, 40, x, 40)] });
const inside =
  (x: number, width: number) =>
  (px: number, py: number): boolean =>
    px > x && px < x + width && py > 0 && py < 40;
const overlapWith = (x: number, width = 30): number | null => meetingOverlap(rectangle(0, 30), rectangle(x, width), inside(x, width));

test('shapes spread until they overlap by more than a hand is ever off are still seen to meet, with that overlap', () => {
  expect(overlapWith(27.8)).toBeCloseTo(2.2, 6);
  expect(overlapWith(26)).toBeCloseTo(4, 6);
});

test('paper between them, as much as no hand is ever off, is no seam; and neither is a shape that goes on far below the other', () => {
  expect(overlapWith(32.5)).toBeNull();
  expect(overlapWith(10)).toBeNull();
});
