import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boxRegion, common, mapRegion, parts, rasterize, regionArea, strip, takeAway, tidy, unite } from '../../src/core/form/index.ts';
import type { Region } from '../../src/core/form/index.ts';
import { seeded } from '../../src/core/random.ts';
import { certify, defaultMaterials, makeStencil } from '../../src/core/stencil/index.ts';
import { nearDistance } from '../../src/core/stencil/raster/edt.ts';
import { withinReach } from '../../src/core/stencil/raster/discs.ts';
import { labelParts } from '../../src/core/stencil/raster/label.ts';

const aperture = { minX: 0, minY: 0, maxX: 80, maxY: 60 };
const sheet = { minX: -15, minY: -15, maxX: 95, maxY: 75 };
const material = defaultMaterials[1];

/** A shape of blobs, holes and lines, by seed. */
function randomShape(seed: number): Region {
  const random = seeded(seed);
  const blob = (): Region => {
    const n = 5 + random.below(12),
      cx = random.next() * 80,
      cy = random.next() * 60,
      r = 3 + random.next() * 16;
    return tidy(
      [
        Float64Array.from({ length: 2 * n }, () => 0)
          .map((_, i) => {
            const turn = ((i >> 1) * 2 * Math.PI) / n;
            return i % 2 ? cy + r * Math.sin(turn) : cx + r * Math.cos(turn);
          })
          .map((v, i) => v + Math.sin(i * 7.3 + seed) * r * 0.25),
      ],
      'non-zero',
    );
  };
  let shape = unite(Array.from({ length: 2 + random.below(4) }, blob));
  shape = takeAway(shape, unite(Array.from({ length: 1 + random.below(3) }, blob)));
  if (random.next() < 0.5)
    shape = unite([
      shape,
      strip([random.next() * 80, random.next() * 60, random.next() * 80, random.next() * 60], 0.4 + random.next() * 4, 'round'),
    ]);
  return shape;
}

const seeds = fc.integer({ min: 1, max: 1_000_000 });

describe('one cut, two stencils', () => {
  test('window and piece together are the sheet, and share nothing', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const shape = common(randomShape(seed), boxRegion(aperture));
        const window = takeAway(boxRegion(sheet), shape);
        expect(regionArea(unite([window, shape]))).toBeCloseTo(110 * 90, 3);
        expect(regionArea(common(window, shape))).toBeLessThan(0.01);
      }),
      { numRuns: 60 },
    );
  });
  test('counts of pieces and holes do not change with size, turn or mirror', () => {
    fc.assert(
      fc.property(
        seeds,
        fc.double({ min: 0.6, max: 4, noNaN: true }),
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.boolean(),
        (seed, scale, angle, mirror) => {
          // Details under 0.05 mm may come or go when turned on a grid of microns; a shape has to be sturdier than that.
          const shape = unite(parts(randomShape(seed)).filter((p) => regionArea(p) > 1));
          fc.pre(shape.rings.every((r) => Math.abs(regionArea({ rings: [r] })) > 0.5));
          const turn = (angle * Math.PI) / 180,
            c = Math.cos(turn) * scale,
            s = Math.sin(turn) * scale,
            f = mirror ? -1 : 1;
          const moved = unite([mapRegion(shape, (x, y) => [f * x * c - y * s, f * x * s + y * c])]);
          expect(parts(moved).length).toBe(parts(shape).length);
          expect(moved.rings.length).toBe(shape.rings.length);
          expect(regionArea(moved) / regionArea(shape) / scale / scale).toBeCloseTo(1, 3);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('stencils of random shapes', () => {
  const make = (seed: number, side: 'window' | 'piece') =>
    makeStencil({ shape: randomShape(seed), side, aperture, sheet, material, islands: 'bridge' });
  test('bridges and mends leave the sheet whole: certificate and outline say the same', { timeout: 120_000 }, () => {
    let held = 0,
      all = 0;
    for (let seed = 1; seed <= 60; seed++) {
      for (const side of ['window', 'piece'] as const) {
        const made = make(seed * 17, side);
        if (made.problems.some((p) => p.code === 'stencil-prints-nothing')) continue;
        all++;
        const again = certify(made.paper, sheet, material);
        expect(again.holds).toBe(made.certificate.holds);
        if (made.certificate.holds) {
          held++;
          expect(parts(made.paper)).toHaveLength(1);
        }
      }
    }
    expect(held / all).toBeGreaterThan(0.95);
  });
  test('a bridge never prints outside its layer', () => {
    for (let seed = 1; seed <= 25; seed++) {
      const shape = common(randomShape(seed), boxRegion(aperture));
      for (const bridge of make(seed, 'window').bridges) expect(regionArea(takeAway(bridge.region, shape))).toBeLessThan(0.02);
    }
  });
});

/** Flood fill, as plain as can be. */
function floodCount(mask: Uint8Array, width: number, height: number, leastPx = 1): number {
  const seen = new Uint8Array(mask.length);
  let count = 0;
  for (let start = 0; start < mask.length; start++) {
    if (!mask[start] || seen[start]) continue;
    let size = 0;
    const stack = [start];
    seen[start] = 1;
    for (let p = stack.pop(); p !== undefined; p = stack.pop()) {
      size++;
      const x = p % width;
      for (const q of [x > 0 ? p - 1 : -1, x < width - 1 ? p + 1 : -1, p - width, p + width]) {
        if (q >= 0 && q < width * height && mask[q] && !seen[q]) {
          seen[q] = 1;
          stack.push(q);
        }
      }
    }
    if (size >= leastPx) count++;
  }
  return count;
}

describe('the judge against brute force', () => {
  test('pieces of 300 random stencils, by flood fill', { timeout: 120_000 }, () => {
    let whole = 0;
    for (let seed = 1; seed <= 300; seed++) {
      const paper = takeAway(boxRegion(sheet), common(randomShape(seed), boxRegion(aperture)));
      const said = certify(paper, sheet, { leastBridgeMm: 1, leastOpeningMm: 0.5 });
      const pieces = floodCount(rasterize(paper, { originXMm: -3, originYMm: -3, mmPerPx: 0.5, width: 172, height: 132 }), 172, 132, 4);
      // A gap finer than a pixel parts the outline but not the pixels, and the outline has the last word.
      expect(said.pieces).toBe(parts(paper).filter((part) => regionArea(part) >= 0.1).length);
      if (!said.holds) continue;
      whole++;
      expect(pieces).toBe(1);
    }
    expect(whole).toBeGreaterThan(30);
  });
  test('distances and labels of small rasters, by looking at every pair of pixels', () => {
    fc.assert(
      fc.property(fc.array(fc.boolean(), { minLength: 24 * 17, maxLength: 24 * 17 }), fc.boolean(), (bits, sparse) => {
        const random = seeded(bits.length);
        const mask = Uint8Array.from(bits, (b) => (sparse ? (b || random.next() < 0.85 ? 1 : 0) : b ? 1 : 0));
        const d = nearDistance(mask, 24, 17, 1, 8);
        for (let p = 0; p < mask.length; p++) {
          let least = 64;
          for (let q = 0; q < mask.length; q++)
            if (!mask[q]) least = Math.min(least, ((p % 24) - (q % 24)) ** 2 + (Math.floor(p / 24) - Math.floor(q / 24)) ** 2);
          expect(d[p]).toBe(mask[p] ? least : 0);
        }
        // Discs laid along runs cover just what is that near.
        for (const reach2 of [0, 1, 4.5, 20.25, 37]) {
          const near = withinReach(mask, 24, 17, 0, reach2);
          expect([...near]).toEqual([...nearDistance(mask, 24, 17, 1, 8)].map((d2) => (d2 <= reach2 ? 1 : 0)));
        }
        expect(labelParts(mask, 24, 17, 1, false).count).toBe(floodCount(mask, 24, 17));
      }),
      { numRuns: 40 },
    );
  });
});
