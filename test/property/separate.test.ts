import fc from 'fast-check';
import { expect, test } from 'vitest';
import { levelsOf, fieldOf, freeCodes, energyOf } from '../../src/core/separate/prepare/masks.ts';
import { relaxed } from '../../src/core/separate/kernels/relax.ts';
import { outlinesOf } from '../../src/core/separate/finish/outline.ts';
import { rasterizeInto } from '../../src/core/form/index.ts';
import { seeded } from '../../src/core/random.ts';
import { permutations } from '../../src/core/separate/search/search.ts';

/** A picture of soft blotches. */
function blotches(size: number, seed: number): Float32Array {
  const random = seeded(seed);
  const spots = Array.from({ length: 7 }, () => [
    random.next() * size,
    random.next() * size,
    4 + random.next() * 14,
    20 + 70 * random.next(),
    60 * random.next() - 30,
    60 * random.next() - 30,
  ]);
  const lab = new Float32Array(size * size * 3);
  for (let i = 0; i < size * size; i++) {
    const x = i % size,
      y = Math.floor(i / size);
    let sum = 1e-6;
    const at = [0, 0, 0];
    for (const [sx, sy, r, l, a, b] of spots) {
      const w = Math.exp(-((x - sx) ** 2 + (y - sy) ** 2) / (2 * r * r));
      sum += w;
      at[0] += w * l;
      at[1] += w * a;
      at[2] += w * b;
    }
    for (let c = 0; c < 3; c++) lab[i * 3 + c] = at[c] / sum + 3 * random.normal();
  }
  return lab;
}

test('colour error plus knife never goes up while masks settle', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 9999 }),
      fc.integer({ min: 1, max: 5 }),
      fc.double({ min: 0.05, max: 6, noNaN: true }),
      (seed, layers, priceMm) => {
        const size = 40,
          random = seeded(seed);
        const level = levelsOf(blotches(size, seed), size, size, 0.25)[0];
        const overlapLab = Float64Array.from({ length: 3 << layers }, (_, i) =>
          i % 3 === 0 ? 15 + 80 * random.next() : 70 * random.next() - 35,
        );
        const field = fieldOf(level, { layers, overlapLab, priceMm });
        const codes = freeCodes(field);
        let before = energyOf(field, codes, 0.25);
        for (let turn = 0; turn < 6; turn++) {
          relaxed(field, codes, 1, 0);
          const after = energyOf(field, codes, 0.25);
          expect(after).toBeLessThanOrEqual(before * (1 + 1e-6) + 1e-6);
          before = after;
        }
      },
    ),
    { numRuns: 40 },
  );
});

test('the outlines of any masks, drawn again, give the masks back within a pixel of their edges', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 9999 }), (seed) => {
      const size = 48,
        layers = 3,
        lab = blotches(size, seed);
      // Soft blotches cut at levels: junctions, holes and borders of all kinds.
      const codes = Uint8Array.from({ length: size * size }, (_, i) => {
        const smooth = (c: number): number => {
          let sum = 0,
            n = 0;
          for (let dy = -2; dy <= 2; dy++)
            for (let dx = -2; dx <= 2; dx++) {
              const x = (i % size) + dx,
                y = Math.floor(i / size) + dy;
              if (x >= 0 && y >= 0 && x < size && y < size) {
                sum += lab[(y * size + x) * 3 + c];
                n++;
              }
            }
          return sum / n;
        };
        return (smooth(0) > 50 ? 1 : 0) | (smooth(1) > 0 ? 2 : 0) | (smooth(2) > 5 ? 4 : 0);
      });
      const again = new Uint8Array(codes.length);
      const grid = { originXMm: 0, originYMm: 0, mmPerPx: 0.25, width: size, height: size };
      outlinesOf(codes, size, size, 0.25, layers).forEach((region, bit) => rasterizeInto(again, bit, region, grid));
      for (let i = 0; i < codes.length; i++) {
        for (let bit = 0; bit < layers; bit++) {
          const ink = (codes[i] >> bit) & 1;
          if (((again[i] >> bit) & 1) === ink) continue;
          const x = i % size,
            y = Math.floor(i / size);
          const near = [
            [1, 0],
            [-1, 0],
            [0, 1],
            [0, -1],
            [1, 1],
            [1, -1],
            [-1, 1],
            [-1, -1],
          ].some(([dx, dy]) => {
            const nx = x + dx,
              ny = y + dy;
            return nx >= 0 && ny >= 0 && nx < size && ny < size && ((codes[ny * size + nx] >> bit) & 1) !== ink;
          });
          expect(near || x === 0 || y === 0 || x === size - 1 || y === size - 1).toBe(true);
        }
      }
    }),
    { numRuns: 40 },
  );
});

test('every order of a laydown is tried once', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 5 }), (n) => {
      const orders = [...permutations(Array.from({ length: n }, (_, i) => i))].map(String);
      expect(new Set(orders).size).toBe(orders.length);
      expect(orders.length).toBe([1, 1, 2, 6, 24, 120][n]);
    }),
  );
});
