import fc from 'fast-check';
import { expect, test } from 'vitest';
import { codeAreas, type Codes } from './codes.ts';
import { shiftCodes } from './shift.ts';

/** 40 × 40 mm at 4 pixels a mm; layer 0 prints the left half, layer 1 the right: they just meet. */
const size = 160;
const meeting: Codes = {
  width: size,
  height: size,
  mmPerPx: 0.25,
  data: Uint8Array.from({ length: size * size }, (_, i) => (i % size < size / 2 ? 1 : 2)),
};
const still = { dxMm: 0, dyMm: 0, angleDeg: 0 };

test('a sheet on which nothing moved is the proof in register', () => {
  expect(
    shiftCodes(meeting, [
      { bit: 0, ...still },
      { bit: 1, ...still },
    ]),
  ).toEqual(meeting);
});

test('a layer that falls 1 mm to the right leaves 1 mm of bare paper where two shapes should meet', () => {
  const off = shiftCodes(meeting, [
    { bit: 0, ...still },
    { bit: 1, dxMm: 1, dyMm: 0, angleDeg: 0 },
  ]);
  expect(codeAreas(off)[0]).toBeCloseTo(1 * 40, 6);
  const over = shiftCodes(meeting, [
    { bit: 0, dxMm: 1, dyMm: 0, angleDeg: 0 },
    { bit: 1, ...still },
  ]);
  expect(codeAreas(over)[3]).toBeCloseTo(1 * 40, 6);
});

test('turned clockwise, the top of the edge moves right and its foot left', () => {
  const turned = shiftCodes(meeting, [{ bit: 0, dxMm: 0, dyMm: 0, angleDeg: 5 }]);
  const edgeOfRow = (y: number): number => {
    let x = 0;
    for (let i = 0; i < size; i++) if (turned.data[y * size + i] & 1) x = i;
    return x;
  };
  expect(edgeOfRow(4)).toBeGreaterThan(size / 2 + 3);
  expect(edgeOfRow(size - 5)).toBeLessThan(size / 2 - 3);
});

test('layers fall on their own: moving one leaves every other bit where it was', () => {
  fc.assert(
    fc.property(fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: -3, max: 3, noNaN: true }), (dxMm, dyMm) => {
      const off = shiftCodes(meeting, [
        { bit: 0, ...still },
        { bit: 1, dxMm, dyMm, angleDeg: 0 },
      ]);
      expect(off.data.every((code, i) => (code & 1) === (meeting.data[i] & 1))).toBe(true);
    }),
    { numRuns: 25 },
  );
});
