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

/** A rectangle 40 mm high (or `high`) at any angle around a point far from the origin, and what lies inside it. */
function turned(x: number, width: number, degrees: number, high = 40): { region: Region; inside: (px: number, py: number) => boolean } {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const corners = [
    [x, 0],
    [x + width, 0],
    [x + width, high],
    [x, high],
  ];
  const ring = Float64Array.from(corners.flatMap(([u, v]) => [-60 + u * cos - v * sin, 90 + u * sin + v * cos]));
  const inside = (px: number, py: number): boolean => {
    const u = (px + 60) * cos + (py - 90) * sin,
      v = -(px + 60) * sin + (py - 90) * cos;
    return u > x && u < x + width && v > 0 && v < high;
  };
  return { region: { rings: [ring] }, inside };
}
const turnedOverlap = (x: number, degrees: number, high = 40): number | null => {
  const second = turned(x, 30, degrees, high);
  return meetingOverlap(turned(0, 30, degrees, high).region, second.region, second.inside);
};

test.each([0, 17, 45, 88, 90, 133, 180, 224, 270, 301])(
  'a seam is measured alike at %i°, also off to the left and far from the corner',
  (degrees) => {
    for (const overlap of [0.4, 1.3, 3.7, 4.9]) expect(turnedOverlap(30 - overlap, degrees)).toBeCloseTo(overlap, 6);
    // Paper between them: they meet, and overlap by nothing.
    expect(turnedOverlap(31.5, degrees)).toBe(0);
    expect(turnedOverlap(32.2, degrees)).toBeNull();
    expect(turnedOverlap(24.5, degrees)).toBeNull();
  },
);

test('a long slanting seam is measured over its whole length', () => {
  for (const degrees of [23, 45, 71]) expect(turnedOverlap(28, degrees, 400)).toBeCloseTo(2, 6);
});

test('less than ten millimetres in common is no seam', () => {
  for (const width of [30, 31]) {
    const common = (high: number): number | null =>
      meetingOverlap(
        { rings: [Float64Array.of(0, 0, width, 0, width, high, 0, high)] },
        { rings: [Float64Array.of(width - 1, -20, 90, -20, 90, 60, width - 1, 60)] },
        (x, y) => x > width - 1 && x < 90 && y > -20 && y < 60,
      );
    expect(common(8.9)).toBeNull();
    expect(common(9.9)).toBeCloseTo(1, 6);
  }
  expect(turnedOverlap(29, 30, 9)).toBeNull();
  expect(turnedOverlap(29, 30, 13)).toBeCloseTo(1, 6);
});

/** The first's right edge, and blocks of the second a millimetre off, each so high, every ten millimetres. */
const blocksOff = (high: number): number | null => {
  const from = [0.5, 10.5, 20.5, 30.5];
  const rings = from.map((y) => Float64Array.of(31, y, 60, y, 60, y + high, 31, y + high));
  return meetingOverlap(rectangle(0, 30), { rings }, (x, y) => x > 31 && x < 60 && from.some((top) => y > top && y < top + high));
};

test('a seam is made of stretches of six millimetres or more; shorter ones are none, however many', () => {
  expect(blocksOff(6)).toBe(0);
  expect(blocksOff(5)).toBeNull();
});

test('shapes that cross are no seam', () => {
  const [lying, standing] = [turned(0, 100, 0, 20), turned(40, 20, 0, 100)];
  const lower = { rings: [lying.region.rings[0].map((v, i) => (i % 2 ? v + 40 : v))] };
  expect(meetingOverlap(lower, standing.region, standing.inside)).toBeNull();
});

test('edges that run apart by more than a third are no seam; by less they are, with the overlap that all but a twentieth has', () => {
  const wedge = (degrees: number): number | null => {
    const second = turned(29, 30, 0, 40);
    // The first's right edge leans by so many degrees about its middle.
    const lean = Math.tan((degrees * Math.PI) / 180) * 20;
    const region: Region = { rings: [Float64Array.of(-60, 90, -30 + lean, 90, -30 - lean, 130, -60, 130)] };
    return meetingOverlap(region, second.region, second.inside);
  };
  expect(wedge(30)).toBeNull();
  expect(wedge(21)).toBeNull();
  // Whichever way the edge is walked along.
  expect(wedge(-1)).toBeCloseTo(wedge(1)!, 1);
  const slight = wedge(1)!;
  expect(slight).toBeGreaterThan(0.62);
  expect(slight).toBeLessThan(0.8);
});

test('of a long seam a twentieth may overlap by less', () => {
  // From 0.5 to 4.5 mm over 400 mm: the twentieth has less than 0.7.
  const lean: Region = { rings: [Float64Array.of(-60, 0, 0.5, 0, 4.5, 400, -60, 400)] };
  const inRight = (x: number, y: number): boolean => x > 0 && x < 60 && y > -50 && y < 450;
  const overlap = meetingOverlap(lean, { rings: [Float64Array.of(0, -50, 60, -50, 60, 450, 0, 450)] }, inRight);
  expect(overlap).toBeCloseTo(0.5 + 4 * 0.05, 2);
});

test('a disc in a hole that is smaller by two millimetres overlaps by them all round', () => {
  const circle = (radius: number, backwards = false): Float64Array => {
    const points = Array.from({ length: 240 }, (_, i) => ((backwards ? -i : i) * Math.PI) / 120);
    return Float64Array.from(points.flatMap((t) => [50 + radius * Math.cos(t), 50 + radius * Math.sin(t)]));
  };
  const frame: Region = { rings: [Float64Array.of(0, 0, 100, 0, 100, 100, 0, 100), circle(20, true)] };
  const inFrame = (x: number, y: number): boolean => x > 0 && x < 100 && y > 0 && y < 100 && Math.hypot(x - 50, y - 50) > 20;
  expect(meetingOverlap({ rings: [circle(22)] }, frame, inFrame)).toBeCloseTo(2, 1);
  expect(meetingOverlap({ rings: [circle(20)] }, frame, inFrame)).toBeCloseTo(0, 2);
});
