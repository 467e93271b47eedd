import { expect, test } from 'vitest';
import { benchShelf } from '../../../../bench/separate-shelf.ts';
import { defaultMaterials } from '../../stencil/index.ts';
import { quietTask } from '../../task.ts';
import { lookAtWays } from '../look.ts';
import { separated } from '../separate.ts';
import type { SeparateRequest } from '../types.ts';
import { bytesOf } from '../kernels/bits.ts';
import { opened } from '../kernels/morph.ts';
import { keyOf } from './key.ts';
import { flatRegions } from './regions.ts';

const width = 80,
  height = 60;
const ground = (lightness: (x: number, y: number) => number, weight?: Float32Array) => ({
  width,
  height,
  mmPerPx: 0.5,
  weight,
  lab: Float32Array.from({ length: width * height * 3 }, (_, k) => {
    const i = Math.floor(k / 3);
    return k % 3 === 0 ? lightness(i % width, Math.floor(i / width)) : 0;
  }),
});
const colours = (lab: Float32Array): number => new Set(lab.filter((_, k) => k % 3 === 0).map((v) => Math.round(v * 100))).size;

/** Grain from a formula, so that nothing is left to chance. */
const grain = (x: number, y: number): number => 6 * Math.sin(x * 12.9 + y * 78.2);

test('grain becomes one area, a step of light stays a step where it was', () => {
  const flat = flatRegions(
    ground((x, y) => (x < 40 ? 70 : 40) + grain(x, y)),
    250,
  );
  expect(colours(flat)).toBe(2);
  const row = 30 * width;
  const at = Array.from({ length: width - 1 }, (_, x) => x + 1).filter((x) => flat[(row + x) * 3] !== flat[(row + x - 1) * 3]);
  expect(at).toEqual([40]);
});

test('a small mark goes, unless it matters', () => {
  const eye = (x: number, y: number): boolean => Math.hypot(x - 40, y - 30) < 3;
  const lightness = (x: number, y: number): number => (eye(x, y) ? 40 : 70);
  const weight = Float32Array.from({ length: width * height }, (_, i) => (eye(i % width, Math.floor(i / width)) ? 8 : 1));
  expect(colours(flatRegions(ground(lightness), 800))).toBe(1);
  expect(colours(flatRegions(ground(lightness, weight), 800))).toBe(2);
});

test('a key draws a line that is darker than what lies around it, and no gradient, with nothing in it that the knife can’t follow', () => {
  const rules = { openingPx: 3, paperPx: 3, leastInkPx: 16, leastIslandPx: 36 };
  const line = (x: number, y: number): boolean => Math.abs(x - 20 - y / 3) < 2;
  const mask = keyOf(
    ground((x, y) => (line(x, y) ? 45 : 60 + x / 4)),
    rules,
  );
  const bytes = bytesOf(mask);
  const on = bytes.filter((v, i) => v === 1 && line(i % width, Math.floor(i / width))).length,
    all = bytes.filter((v) => v === 1).length,
    drawn = bytes.filter((_, i) => line(i % width, Math.floor(i / width))).length;
  expect(on).toBeGreaterThan(0.7 * drawn);
  expect(all - on).toBeLessThan(0.5 * drawn);
  expect(bytesOf(opened(mask, rules.openingPx / 2 - 0.5))).toEqual(bytes);
});

/** A ball on a ground, light from the left. */
const request = (change: Partial<SeparateRequest> = {}): SeparateRequest => ({
  picture: {
    width,
    height,
    format: 'PNG',
    problems: [],
    pixels: {
      kind: 'srgb8',
      data: Uint8Array.from({ length: width * height * 3 }, (_, k) => {
        const i = Math.floor(k / 3),
          [x, y] = [(i % width) - 40, Math.floor(i / width) - 30],
          light = Math.hypot(x, y) < 22 ? 0.9 - 0.035 * (x + 22) * 0.5 : 0.95;
        return Math.round(255 * light * (k % 3 === 2 ? 0.8 : 1));
      }),
    },
  },
  sizeMm: { width: 64, height: 48 },
  ...benchShelf(),
  layers: 3,
  material: defaultMaterials[0],
  effort: 0.05,
  rasterMm: 0.6,
  ...change,
});

test('by light and shade each run prints inside the one before it and makes the print darker', async () => {
  const { layers, overlapLab } = await separated(request({ way: 'light' }), quietTask);
  for (let run = 1; run < layers.length; run++) {
    const outside = layers[run].mask.filter((v, i) => v === 1 && layers[run - 1].mask[i] === 0).length;
    expect(outside, `run ${run + 1}`).toBeLessThan(0.004 * width * height * 4);
  }
  const steps = layers.map((_, run) => overlapLab[((1 << (run + 1)) - 1) * 3]);
  expect([...steps].sort((a, b) => b - a)).toEqual(steps);
});

test('a key is the last run, in the darkest pot, and the other runs change nothing of it', async () => {
  const plain = await separated(request({ key: true }), quietTask),
    dear = await separated(request({ key: true, layers: 2 }), quietTask);
  expect(plain.layers.at(-1)!.parts).toEqual([{ id: 'soot', share: 1 }]);
  expect(dear.layers.at(-1)!.mask).toEqual(plain.layers.at(-1)!.mask);
});

test('each way is drawn small with what it asks of the knife, and bold asks for less than near', async () => {
  const looks = [];
  for await (const look of lookAtWays(request(), quietTask)) looks.push(look);
  expect(looks.map(({ way }) => way)).toEqual(['near', 'bold', 'light']);
  expect(looks[1].minutes).toBeLessThan(looks[0].minutes);
  for (const { minutes, structure } of looks) {
    expect(minutes).toBeGreaterThan(0);
    expect(structure.kept).toBeGreaterThan(0.3);
  }
});

test('a key gives way to the knife too, where it asks for more than its share, and prints still', async () => {
  // Rows of hooks in ink on two greys: a drawing with much to cut.
  const side = 60,
    light = (x: number, y: number): number =>
      Math.abs(Math.hypot((x % 20) - 10, (y % 20) - 10) - 6) < 1.5 && x % 20 > 6 ? 25 : x < side / 2 ? 235 : 180,
    data = Uint8Array.from({ length: side * side * 3 }, (_, k) => light(Math.floor(k / 3) % side, Math.floor(k / 3 / side)));
  const hooks: Partial<SeparateRequest> = {
    picture: { width: side, height: side, format: 'PNG', problems: [], pixels: { kind: 'srgb8', data } },
    sizeMm: { width: 40, height: 40 },
    layers: 2,
    key: true,
    rasterMm: 0.4,
  };
  const plain = await separated(request(hooks), quietTask),
    before = plain.layers.at(-1)!.stencil.knife,
    { knifeMetres, minutes } = plain.figures;
  expect(before.minutes).toBeGreaterThan(0.5 * minutes);
  for (const knife of [{ minutes: 0.6 * minutes }, { metres: 0.6 * knifeMetres }]) {
    const less = await separated(request({ ...hooks, knife }), quietTask),
      key = less.layers.at(-1)!;
    if (knife.minutes) expect(less.figures.minutes).toBeLessThan(1.03 * knife.minutes);
    else expect(less.figures.knifeMetres).toBeLessThan(1.03 * knife.metres!);
    expect(key.stencil.knife.minutes).toBeLessThan(0.8 * before.minutes);
    expect(key.mask.some((v) => v === 1)).toBe(true);
  }
});
