import { expect, test } from 'vitest';
import { boxRegion, place, regionArea, regionBox, takeAway } from '../../form/index.ts';
import type { Region } from '../../form/index.ts';
import { pieces } from '../raster/rings.ts';
import { defaultMaterials, makeStencil } from '../index.ts';
import { certify } from './certificate.ts';
import { opened } from './opened.ts';
import { tapersPlainly } from './tapering.ts';
import { boxedRings } from './windows.ts';

const aperture = { minX: 0, minY: 0, maxX: 40, maxY: 40 },
  sheet = { minX: -20, minY: -20, maxX: 60, maxY: 60 };
const material = defaultMaterials[3];

// A corner of a playing card's figure (openclipart 0.18, white_s_7, public domain), rounded to 0.01 mm: a point that narrows to
// 0.5 mm and is 0.65 mm wide behind. From its tip, the left flank first; the field that it grows from is plain.
const tip = [-0.38, -0.04, -0.22, -0.14, 0.1, -0.14];
const left = [0.64, 1.74, 0.44, 1.12, 0.27, 1.03, 0.1, 0.95, -0.05, 0.81, -0.16, 0.63, -0.22, 0.44, -0.22, 0.06];
const right = [0.27, 0.15, 0.47, 0.42, 0.7, 0.67, 0.97, 0.88, 1.26, 1.03, 1.55, 1.12];
const narrowed = [0.64, 1.74, 0.5, 1.2, 0.4, 0.96, 0.3, 0.75, 0.15, 0.45, 0, 0.1];
const pointed = (flank: readonly number[], angleDeg: number): Region =>
  place({ rings: [Float64Array.from([...flank, ...(flank === left ? tip : [0.1, -0.14]), ...right, 7, 1.1, 7, 8, 1.9, 8])] }, [
    { xMm: 20, yMm: 20, angleDeg, scale: 1, mirror: false },
  ]);
const angles = Array.from({ length: 12 }, (_, i) => 31 * i);
const faults = (shape: Region) => certify(takeAway(boxRegion(sheet), shape), sheet, material).faults.map((f) => f.kind);

test('an opening that narrows to 0.5 mm and swells to 0.65 mm behind is no point, however it lies', () => {
  for (const angle of angles) expect([angle, faults(pointed(left, angle))]).toEqual([angle, ['opening']]);
});

test('one that narrows all the way is', () => {
  for (const angle of angles) expect([angle, faults(pointed(narrowed, angle))]).toEqual([angle, []]);
});

test('it is mended by a little: the stencil holds, and prints nearly all that is drawn', () => {
  for (const angle of angles.slice(0, 4)) {
    const shape = pointed(left, angle);
    const made = makeStencil({ shape, side: 'window', aperture, sheet, material, islands: 'bridge' });
    expect(made.certificate.holds).toBe(true);
    expect(regionArea(takeAway(shape, made.prints)) + regionArea(takeAway(made.prints, shape))).toBeLessThan(2);
  }
});

// Paper that reaches into an opening: 1.5 mm wide where it begins, 1.4 mm at its rounded end.
const stub = (lengthMm: number, angleDeg: number): Region => {
  const end = Array.from({ length: 37 }, (_, i) => [lengthMm + 0.7 * Math.sin((Math.PI * i) / 36), -0.7 * Math.cos((Math.PI * i) / 36)]);
  return place({ rings: [Float64Array.from([0, -4, 0, -0.75, ...end.flat(), 0, 0.75, 0, 4, 9, 4, 9, -4])] }, [
    { xMm: 20, yMm: 20, angleDeg, scale: 1, mirror: false },
  ]);
};

test('paper that hardly tapers is a neck where it is under the least width by a tenth, for a pixel more or less breaks it up', () => {
  for (const angle of angles) expect([angle, faults(stub(1.2, angle))]).toEqual([angle, ['neck']]);
});

test('the same in a third of the length is the end of something broad', () => {
  for (const angle of angles.slice(0, 4)) expect([angle, faults(stub(0.4, angle))]).toEqual([angle, []]);
});

// What needs no closer look, because it can only taper.
const plain = (shape: Region, radiusMm: number): boolean[] => {
  const { core, rest } = opened(shape, radiusMm);
  return pieces(rest)
    .map((region) => ({ region, box: regionBox(region), used: false }))
    .filter(({ box }) => Math.hypot(box.maxX - box.minX, box.maxY - box.minY) >= 1)
    .map((one) => tapersPlainly(one, boxedRings(core), radiusMm, 5));
};
const wedge = (halfDeg: number, angleDeg: number): Region => {
  const wide = 9 * Math.tan((halfDeg * Math.PI) / 180);
  return place({ rings: [Float64Array.from([0, 0, wide, 9, wide, 14, -wide, 14, -wide, 9])] }, [
    { xMm: 20, yMm: 20, angleDeg, scale: 1, mirror: false },
  ]);
};

test('a wedge is a plain point where its sides lean enough; what swells, or is as wide for a while, never is', () => {
  for (const angle of angles) {
    expect([angle, plain(wedge(20, angle), 0.48)]).toEqual([angle, [true]]);
    expect([angle, plain(wedge(7, angle), 0.48)]).toEqual([angle, [true]]);
    expect([angle, plain(wedge(4, angle), 0.48)]).toEqual([angle, [false]]);
    expect(plain(pointed(left, angle), 0.48)).not.toContain(true);
    expect([angle, plain(takeAway(boxRegion(sheet), stub(1.2, angle)), 0.73)]).toEqual([angle, [false]]);
  }
});
