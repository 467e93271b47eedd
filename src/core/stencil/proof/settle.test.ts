import { describe, expect, test } from 'vitest';
import { offsetRegion, place, rectangle, regionArea, takeAway, unite, type Region } from '../../form/index.ts';
import { adversaries } from '../../../../test/adversaries.ts';
import { defaultMaterials, makeStencil, type Stencil } from '../index.ts';
import { nearHoles } from '../bridges/hidden.ts';

const material = defaultMaterials[3];
const make = (shape: Region): Stencil =>
  makeStencil({
    shape,
    side: 'window',
    aperture: { minX: 0, minY: 0, maxX: 100, maxY: 100 },
    sheet: { minX: -20, minY: -20, maxX: 120, maxY: 120 },
    material,
    islands: 'bridge',
  });
const codes = (made: Stencil): string[] => made.problems.map((p) => p.code);
const lost = (shape: Region, made: Stencil): number =>
  regionArea(takeAway(shape, made.prints)) - made.bridges.reduce((sum, b) => sum + b.areaMm2, 0);

describe('paper and openings beside one another', () => {
  test('a bar a hair under the least width is made broader in one go', () => {
    const shape = unite([rectangle(10, 20, 80, 20), rectangle(10, 41.459, 80, 20)]);
    const [found] = nearHoles(shapeBetween(shape), 1.46);
    // All along, not just where it was noticed.
    expect(Math.abs(found.line[found.line.length - 2] - found.line[0])).toBeGreaterThan(78);
    const made = make(shape);
    expect(made.certificate.holds).toBe(true);
    expect(codes(made).filter((code) => code !== 'stencil-strengthened')).toEqual([]);
    expect(lost(shape, made)).toBeLessThan(80 * 0.2);
  });
  test('a narrow band of paper grows into the broad field, and the thin line round it stays', () => {
    // A sign: a line of 1.1 mm, a band of 1.1 mm, a full field.
    const field = rectangle(20, 20, 60, 60);
    const shape = unite([field, takeAway(offsetRegion(field, 2.2), offsetRegion(field, 1.1))]);
    const made = make(shape);
    expect(made.certificate.holds).toBe(true);
    expect(codes(made)).not.toContain('stencil-closed');
    expect(lost(shape, made)).toBeLessThan(0.05 * regionArea(shape));
    // The field is what gave way, but for its bridges.
    expect(regionArea(takeAway(made.prints, offsetRegion(field, 0.6)))).toBeGreaterThan(0.9 * 4 * 64 * 1.06);
  });
  test('a hole that nearly meets the outline around it is seen', () => {
    const sheet = takeAway(rectangle(0, 0, 40, 40), { rings: [Float64Array.of(0.9, 20, 20, 10, 20, 30)] });
    expect(nearHoles(sheet, 1.46).map((near) => near.widthMm)).toEqual([0.9]);
  });
});

/** The paper around openings. */
function shapeBetween(openings: Region): Region {
  return takeAway(rectangle(0, 0, 100, 100), openings);
}

test('what is too fine in a few small places goes unasked, and is told with its place', () => {
  // A hatching finer than knife and paper allow, in a corner of a full field.
  const hatching = unite(Array.from({ length: 5 }, (_, i) => rectangle(24, 24 + 1.5 * i, 8, 0.7)));
  const shape = takeAway(rectangle(15, 15, 70, 70), hatching);
  const made = make(shape);
  expect(made.certificate.holds).toBe(true);
  expect(lost(shape, made) + regionArea(takeAway(made.prints, shape))).toBeLessThan(0.1 * regionArea(shape));
});

test('where dropping and closing hairlines undo each other they end, and all that is too fine can go', () => {
  const { region } = adversaries(24, 17).find(({ name }) => name === 'crossings 16')!;
  const all = { atMm: [50, 50], withinMm: 60 } as const;
  const made = makeStencil({
    shape: place(region, [{ xMm: 50, yMm: 50, angleDeg: 0, scale: 1, mirror: false }]),
    side: 'window',
    aperture: { minX: 0, minY: 0, maxX: 100, maxY: 100 },
    sheet: { minX: -20, minY: -20, maxX: 120, maxY: 120 },
    material,
    islands: 'bridge',
    asAsked: true,
    drops: [all],
    closings: [all],
  });
  expect(made.certificate.holds).toBe(true);
});
