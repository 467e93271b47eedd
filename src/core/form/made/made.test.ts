import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { parts } from '../polygons.ts';
import { regionArea, regionBox, ringArea, type Region } from '../region.ts';
import { makeLetters, prepareLetters } from './letters.ts';
import { makeShape, openingsOf, pencilShape, type MadeShape } from './made.ts';

const file = (name: string): Uint8Array => new Uint8Array(readFileSync(`assets/OpenSans-${name}.ttf`));
beforeAll(() => prepareLetters({ regular: file('Regular'), semibold: file('Semibold'), bold: file('Bold') }));

const sizeOf = (region: Region): readonly [number, number] => {
  const box = regionBox(region);
  return [box.maxX - box.minX, box.maxY - box.minY];
};
const holesIn = (region: Region): number => {
  const signs = region.rings.map((ring) => Math.sign(ringArea(ring)));
  return Math.min(signs.filter((s) => s > 0).length, signs.filter((s) => s < 0).length);
};
const make = (shape: MadeShape): Region => makeShape(shape).region;

describe('made shapes measure what they were asked for', () => {
  test('flat, band, circle and ring', () => {
    expect(regionArea(make({ kind: 'flat', widthMm: 180, heightMm: 240 }))).toBe(180 * 240);
    const circle = make({ kind: 'circle', acrossMm: 60 });
    expect(regionArea(circle) / (Math.PI * 900)).toBeCloseTo(1, 6);
    expect(sizeOf(circle)[0]).toBeCloseTo(60, 1);
    const ring = make({ kind: 'ring', acrossMm: 60, bandMm: 10 });
    expect(regionArea(ring) / (Math.PI * (900 - 400))).toBeCloseTo(1, 4);
    expect(ring.rings).toHaveLength(2);
  });
  test('a comb hangs together by its back, or falls into stripes', () => {
    const comb = { kind: 'comb', stripes: 7, stripeMm: 4, gapMm: 3, lengthMm: 50 } as const;
    expect(parts(make({ ...comb, backMm: 6 }))).toHaveLength(1);
    expect(parts(make({ ...comb, backMm: 0 }))).toHaveLength(7);
    expect(sizeOf(make({ ...comb, backMm: 6 }))).toEqual([46, 50]);
  });
  test('a grid of cells with bars between', () => {
    const grid = make({ kind: 'grid', columns: 4, rows: 3, cellMm: 10, gapMm: 2 });
    expect(parts(grid)).toHaveLength(12);
    expect(sizeOf(grid)).toEqual([46, 34]);
  });
  test('a wave swings as far as asked, its area that of its mean', () => {
    const wave = make({ kind: 'wave', widthMm: 120, heightMm: 40, edges: 'top', lengthMm: 30, swingMm: 8 });
    expect(sizeOf(wave)).toEqual([120, 40]);
    expect(regionArea(wave)).toBeCloseTo(120 * 36, 0);
  });
  test('a torn edge wanders no farther than asked, and the same seed tears the same', () => {
    const torn = (seed: number, edges: 'top' | 'both' | 'all' = 'top'): Region =>
      make({ kind: 'torn', widthMm: 150, heightMm: 50, edges, roughMm: 8, seed });
    expect(torn(3)).toEqual(torn(3));
    expect(torn(3)).not.toEqual(torn(4));
    for (const edges of ['top', 'both', 'all'] as const) {
      const one = torn(5, edges);
      expect(parts(one)).toHaveLength(1);
      expect(sizeOf(one)[0]).toBeLessThanOrEqual(150.001);
      expect(sizeOf(one)[1]).toBeLessThanOrEqual(50.001);
      expect(regionArea(one)).toBeGreaterThan(150 * 50 * 0.6);
    }
    const tops = [...torn(3).rings[0]].filter((_, i) => i % 2 === 1).filter((y) => y < 20);
    expect(Math.max(...tops) - Math.min(...tops)).toBeGreaterThan(3);
    expect(Math.max(...tops)).toBeLessThan(8.001);
  });
});

describe('stencil letters hold', () => {
  const every = Array.from({ length: 94 }, (_, i) => String.fromCharCode(33 + i)).join('') + 'ÄÖÜäöüßÆØÅéñ';
  test.each(['regular', 'semibold', 'bold'] as const)('nothing inside any letter, figure or sign is loose: %s', (weight) => {
    for (const letter of every) {
      const { region } = makeLetters({ text: letter, capHeightMm: 40, weight, bridgeMm: 2.5, spaceMm: 0 });
      expect(`${letter}: ${holesIn(region)}`).toBe(`${letter}: 0`);
    }
  });
  test('a bridge is as wide as asked, and none is made where nothing is inside', () => {
    const letters = (text: string, bridgeMm: number): Region =>
      makeLetters({ text, capHeightMm: 40, weight: 'bold', bridgeMm, spaceMm: 0 }).region;
    expect(regionArea(letters('HELM', 3))).toBe(regionArea(letters('HELM', 0)));
    expect(parts(letters('O', 3))).toHaveLength(2);
    const [left, right] = parts(letters('O', 3))
      .map(regionBox)
      .sort((a, b) => a.minX - b.minX);
    expect(right.minX - left.maxX).toBeCloseTo(3, 2);
  });
  test('capitals are as high as asked; what the font lacks is named', () => {
    expect(sizeOf(makeLetters({ text: 'H', capHeightMm: 40, weight: 'bold', bridgeMm: 0, spaceMm: 0 }).region)[1]).toBeCloseTo(40, 2);
    const odd = makeLetters({ text: 'A\u4e00B', capHeightMm: 40, weight: 'bold', bridgeMm: 2, spaceMm: 0 });
    expect(odd.missing).toEqual(['\u4e00']);
    expect(odd.region.rings.length).toBeGreaterThan(2);
  });
});

describe('a line drawn by hand', () => {
  /** A circle of 40 mm as a finger draws it: an uneven tremble of ±0.4 mm (invented), with a tail past where it began. */
  const drawn = Array.from({ length: 400 }, (_, i): readonly [number, number] => {
    const turn = (2.06 * Math.PI * i) / 400;
    const r = 40 + 0.4 * Math.sin(i * 1.7) * Math.cos(i * 0.61);
    return [50 + r * Math.cos(turn), 50 + r * Math.sin(turn)];
  });
  test('becomes one calm outline of the same size', () => {
    const shape = pencilShape(drawn);
    expect(shape.rings).toHaveLength(1);
    expect(regionArea(shape) / (Math.PI * 1600)).toBeCloseTo(1, 1);
    expect(shape.rings[0].length / 2).toBeLessThan(160);
  });
  test('that crosses itself counts by what it surrounds', () => {
    const eight = Array.from({ length: 300 }, (_, i): readonly [number, number] => {
      const t = (2 * Math.PI * i) / 300;
      return [50 + 40 * Math.sin(t), 50 + 20 * Math.sin(2 * t)];
    });
    const shape = pencilShape(eight);
    expect(regionArea(shape)).toBeGreaterThan(1800);
    expect(holesIn(shape)).toBe(0);
  });
});

describe('a letter plate', () => {
  test('gives its openings by what it surrounds and does not cover', () => {
    const plate: Region = {
      rings: [
        Float64Array.of(0, 0, 100, 0, 100, 50, 0, 50),
        Float64Array.of(10, 10, 10, 40, 40, 40, 40, 10),
        Float64Array.of(60, 10, 60, 40, 90, 40, 90, 10),
      ],
    };
    expect(regionArea(openingsOf(plate))).toBe(1800);
    expect(parts(openingsOf(plate))).toHaveLength(2);
  });
});
