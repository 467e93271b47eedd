import { expect, test } from 'vitest';
import { blueNoise, tileSide } from './blue-noise.ts';
import { screener, type ScreenAsk } from './screener.ts';
import { spotThresholds } from './spot.ts';
import { supercellFor } from './supercell.ts';

const usual: ScreenAsk = { by: 'dots', shape: 'round', rulingPerCm: 16, angleDeg: 22.5, leastDotMicrons: 60, pixelsPerCm: 472.44 };

/** A flat tint, side × side pixels. */
function tint(ask: Partial<ScreenAsk>, cover: number, side = 600): Uint8Array[] {
  const screen = screener({ ...usual, ...ask });
  const coverage = new Uint8Array(side).fill(Math.round(cover * 255));
  return Array.from({ length: side }, (_, y) => {
    const out = new Uint8Array(side);
    screen.row(y, coverage, out);
    return out;
  });
}
const mean = (rows: readonly Uint8Array[]): number => rows.reduce((sum, row) => sum + row.reduce((a, b) => a + b, 0), 0) / rows.length ** 2;

/** Widths in pixels of blacks or bares along rows, without those cut off at the ends. */
function runs(rows: readonly Uint8Array[], value: 0 | 1): number[] {
  return rows.flatMap((row) => {
    const found: number[] = [];
    for (let x = 1, from = -1; x < row.length; x++) {
      if (row[x] === value && row[x - 1] !== value) from = x;
      if (row[x] !== value && row[x - 1] === value && from > 0) found.push(x - from);
    }
    return found;
  });
}

test.each(['round', 'ellipse', 'line'] as const)('%s dots cover what they are asked to, at any tone', (shape) => {
  for (const cover of [0, 0.05, 0.2, 0.5, 0.8, 0.95, 1])
    expect(mean(tint({ shape }, cover))).toBeCloseTo(Math.round(cover * 255) / 255, 1.7);
  const thresholds = spotThresholds(shape);
  expect(thresholds.filter((t) => t < 0.3).length / thresholds.length).toBeCloseTo(0.3, 3);
});

test('grain covers what it is asked to, and no grain and no hole is smaller than the least', () => {
  for (const cover of [0.1, 0.5, 0.9]) {
    const rows = tint({ by: 'grain', leastDotMicrons: 170 }, cover);
    expect(mean(rows)).toBeCloseTo(cover, 1.5);
    for (const value of [0, 1] as const) expect(Math.min(...runs(rows, value))).toBeGreaterThanOrEqual(8);
  }
});

test('in high lights dots keep the least size and become fewer; in the darks holes do', () => {
  const leastDotMicrons = 170;
  const wide = (rows: readonly Uint8Array[], value: 0 | 1): number => Math.max(...runs(rows, value));
  for (const [cover, value] of [
    [0.02, 1],
    [0.98, 0],
  ] as const) {
    const bounded = tint({ leastDotMicrons }, cover, 900);
    expect(mean(bounded)).toBeCloseTo(cover, 1.7);
    // 170 µm are 8 pixels here; without a least dot, one of 2 % is 100 µm across.
    expect(wide(bounded, value)).toBeGreaterThanOrEqual(7);
    expect(wide(tint({ leastDotMicrons: 10 }, cover, 900), value)).toBeLessThanOrEqual(6);
  }
});

test('dots at an angle repeat exactly, pixel by pixel, after their supercell', () => {
  for (const angleDeg of [7.5, 22.5, 52.5, 75, 82.5]) {
    const { p, q, cells, rulingPerCm, angleDeg: got } = supercellFor(19.5, angleDeg, 472.44);
    expect(Math.abs(got - angleDeg)).toBeLessThan(0.1);
    expect(rulingPerCm / 19.5).toBeCloseTo(1, 1.9);
    expect(cells).toBeGreaterThan(0);
    const side = Math.abs(p) + Math.abs(q) + 120;
    const rows = tint({ rulingPerCm: 19.5, angleDeg }, 0.37, side);
    for (let y = 0; y + q < 100 + q; y += 7) for (let x = 0; x < 100; x++) expect(rows[y + q][x + p]).toBe(rows[y][x]);
  }
});

test('blue noise has every rank once, and nothing at low frequencies', () => {
  const tile = blueNoise();
  expect(new Set(tile).size).toBe(tileSide * tileSide);
  const half = tile.map((t) => (t < 0.5 ? 1 : 0));
  const power = (fx: number, fy: number): number => {
    let re = 0,
      im = 0;
    for (let y = 0; y < tileSide; y++)
      for (let x = 0; x < tileSide; x++) {
        const phase = (2 * Math.PI * (fx * x + fy * y)) / tileSide;
        re += (half[y * tileSide + x] - 0.5) * Math.cos(phase);
        im += (half[y * tileSide + x] - 0.5) * Math.sin(phase);
      }
    return (re * re + im * im) / tileSide ** 2;
  };
  const low = [power(1, 0), power(0, 2), power(3, 3), power(4, 1)],
    high = [power(24, 0), power(20, 20), power(3, 28), power(26, 11)];
  expect(Math.max(...low)).toBeLessThan(0.05);
  expect(high.reduce((a, b) => a + b, 0) / 4).toBeGreaterThan(0.15);
});

test('where a tone changes within a dot, dots and holes of the least size are whole or not there', () => {
  const side = 420;
  const ask = { ...usual, leastDotMicrons: 170 };
  // Soft hills of 1 to 12 %, each a few dots wide.
  const toneAt = (x: number, y: number): number => 16 + 14 * Math.sin(x / 18) * Math.cos(y / 23);
  const film = (whole: boolean, tone: typeof toneAt): Uint8Array[] => {
    const screen = screener(ask);
    return Array.from({ length: side }, (_, y) => {
      const out = new Uint8Array(side);
      screen.row(
        y,
        Uint8Array.from({ length: side }, (__, x) => Math.round(tone(x, y))),
        out,
        whole ? tone : undefined,
      );
      return out;
    });
  };
  // The least dot has 170 µm: 8 pixels across, 50 in all.
  const slivers = (rows: readonly Uint8Array[], value: 0 | 1): number => patches(rows, value).filter((size) => size < 35).length;
  const holes = (x: number, y: number): number => 255 - toneAt(x, y);
  expect(slivers(film(false, toneAt), 1)).toBeGreaterThan(3);
  expect(slivers(film(true, toneAt), 1)).toBe(0);
  expect(slivers(film(false, holes), 0)).toBeGreaterThan(3);
  expect(slivers(film(true, holes), 0)).toBe(0);
  expect(mean(film(true, toneAt))).toBeCloseTo(mean(film(false, toneAt)), 2);
});

/** Sizes in pixels of all patches of a value that touch no edge. */
function patches(rows: readonly Uint8Array[], value: 0 | 1): number[] {
  const seen = rows.map((row) => row.map((v) => (v === value ? 0 : 1)));
  const last = rows.length - 1;
  const sizes: number[] = [];
  seen.forEach((line, top) => {
    line.forEach((_, left) => {
      if (seen[top][left] === 1) return;
      let size = 0,
        cut = false;
      const open = [[left, top]];
      seen[top][left] = 1;
      for (let at = open.pop(); at; at = open.pop()) {
        const [x, y] = at;
        size++;
        cut ||= x === 0 || y === 0 || x === last || y === last;
        for (const [u, v] of [
          [x - 1, y],
          [x + 1, y],
          [x, y - 1],
          [x, y + 1],
        ])
          if (seen[v]?.[u] === 0) {
            seen[v][u] = 1;
            open.push([u, v]);
          }
      }
      if (!cut) sizes.push(size);
    });
  });
  return sizes;
}
