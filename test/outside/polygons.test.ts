// Booleans against a second polygon library: polyclip-ts (MIT), an independent implementation of Martínez, Rueda and
// Feito 2009 in floating point; outlines against an independent reader of DXF files, dxf-parser (MIT).
import * as dxf from 'dxf-parser';
import * as polyclip from 'polyclip-ts';
import { describe, expect, test } from 'vitest';
import {
  common,
  fitOutline,
  flattenOutline,
  parts,
  rasterize,
  regionArea,
  regionPerimeter,
  takeAway,
  tidy,
  unite,
  writeDxf,
} from '../../src/core/form/index.ts';
import type { Region } from '../../src/core/form/index.ts';
import { seeded } from '../../src/core/random.ts';

function blobs(seed: number): Region {
  const random = seeded(seed);
  return unite(
    Array.from({ length: 3 }, () => {
      const n = 8 + random.below(20),
        cx = 20 + random.next() * 60,
        cy = 20 + random.next() * 60,
        r = 8 + random.next() * 15;
      const bumps = 1 + random.below(6),
        deep = random.next() * 0.4;
      return tidy(
        [
          Float64Array.from({ length: 2 * n }, (_, i) => {
            const turn = ((i >> 1) * 2 * Math.PI) / n,
              rr = r * (1 + deep * Math.sin(bumps * turn));
            return i % 2 ? cy + rr * Math.sin(turn) : cx + rr * Math.cos(turn);
          }),
        ],
        'non-zero',
      );
    }),
  );
}

const asMulti = (region: Region): polyclip.Geom =>
  parts(region).map((part) =>
    part.rings.map((ring) => Array.from({ length: ring.length / 2 }, (_, i): [number, number] => [ring[2 * i], ring[2 * i + 1]])),
  );
const areaOf = (multi: readonly (readonly (readonly (readonly [number, number])[])[])[]): number => {
  let sum = 0;
  for (const polygon of multi) {
    polygon.forEach((ring, k) => {
      let twice = 0;
      ring.forEach(([x, y], i) => {
        const [px, py] = ring[(i + ring.length - 1) % ring.length];
        twice += px * y - x * py;
      });
      sum += (k === 0 ? 1 : -1) * Math.abs(twice / 2);
    });
  }
  return sum;
};

describe('a second opinion on shapes', () => {
  test('union, difference and common area of 200 pairs agree to the rounding of a micron', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const a = blobs(seed),
        b = blobs(seed + 1000);
      const ga = asMulti(a),
        gb = asMulti(b);
      for (const [ours, theirs] of [
        [unite([a, b]), polyclip.union(ga, gb)],
        [takeAway(a, b), polyclip.difference(ga, gb)],
        [common(a, b), polyclip.intersection(ga, gb)],
      ] as const) {
        // 600 mm of outline at half a micron.
        expect(Math.abs(regionArea(ours) - areaOf(theirs))).toBeLessThan(0.3);
      }
    }
  });
  test('area in pixels is the area of the outline', () => {
    for (let seed = 1; seed <= 25; seed++) {
      const a = blobs(seed);
      const pixels = rasterize(a, { originXMm: -30, originYMm: -30, mmPerPx: 0.1, width: 1600, height: 1600 });
      expect((pixels.reduce((sum, v) => sum + v, 0) * 0.01) / regionArea(a)).toBeCloseTo(1, 2);
    }
  });
});

describe('cutting files, read by another program', () => {
  interface Found {
    readonly type: string;
    readonly layer: string;
    readonly vertices?: readonly { x: number; y: number }[];
    readonly shape?: boolean;
    readonly controlPoints?: readonly { x: number; y: number }[];
    readonly knotValues?: readonly number[];
    readonly closed?: boolean;
  }
  // The package's own default export, whichever way the module system wraps it.
  const Reader = ((dxf.default as unknown as { default?: typeof dxf.DxfParser }).default ?? dxf.default) as unknown as new () => {
    parseSync(text: string): { header: Record<string, unknown>; entities: unknown[] } | null;
  };
  const shape = takeAway(blobs(7), blobs(8));
  const fitted = fitOutline(shape);
  const writtenArea = regionArea(flattenOutline(fitted, 0.0005));
  test('what is written lies within the fitting tolerance of the shape', () => {
    expect(Math.abs(writtenArea - regionArea(shape))).toBeLessThan(0.06 * regionPerimeter(shape));
  });
  const text = (curves: boolean): string =>
    writeDxf(
      [
        { name: 'CUT', colour: 1, outlines: fitted },
        { name: 'MARK', colour: 5, outlines: [], lines: [[0, 0, 10, 0]] },
      ],
      { minX: 0, maxY: 100 },
      curves,
    );
  const read = (t: string): readonly Found[] => (new Reader().parseSync(t)?.entities ?? []) as unknown as Found[];

  test('closed polylines on the layer CUT enclose the same area, in millimetres', () => {
    const parsed = new Reader().parseSync(text(false));
    expect(parsed?.header.$INSUNITS).toBe(4);
    const rings = read(text(false)).filter((e) => e.layer === 'CUT');
    expect(rings.every((e) => e.type === 'LWPOLYLINE' && e.shape)).toBe(true);
    const region = tidy(
      rings.map((e) => Float64Array.from((e.vertices ?? []).flatMap((v) => [v.x, 100 - v.y]))),
      'even-odd',
    );
    expect(regionArea(region) / writtenArea).toBeCloseTo(1, 4);
    expect(regionArea(common(region, shape)) / regionArea(shape)).toBeCloseTo(1, 2);
  });
  test('splines are closed, with as many knots as control points and degree ask for', () => {
    const splines = read(text(true)).filter((e) => e.type === 'SPLINE');
    expect(splines.length + read(text(true)).filter((e) => e.type === 'LWPOLYLINE' && e.layer === 'CUT').length).toBe(shape.rings.length);
    const rings = splines.map((e) => {
      const p = e.controlPoints ?? [];
      expect(e.knotValues).toHaveLength(p.length + 4);
      // Cubic pieces share their ends: points 0, 3, 6, … lie on the curve; take them and two points between.
      const out: number[] = [];
      for (let i = 0; i + 3 < p.length; i += 3) {
        for (let k = 0; k < 20; k++) {
          const t = k / 20,
            s = 1 - t;
          out.push(
            s ** 3 * p[i].x + 3 * s * s * t * p[i + 1].x + 3 * s * t * t * p[i + 2].x + t ** 3 * p[i + 3].x,
            100 - (s ** 3 * p[i].y + 3 * s * s * t * p[i + 1].y + 3 * s * t * t * p[i + 2].y + t ** 3 * p[i + 3].y),
          );
        }
      }
      return Float64Array.from(out);
    });
    const lines = read(text(true))
      .filter((e) => e.type === 'LWPOLYLINE' && e.layer === 'CUT')
      .map((e) => Float64Array.from((e.vertices ?? []).flatMap((v) => [v.x, 100 - v.y])));
    expect(regionArea(tidy([...rings, ...lines], 'even-odd')) / writtenArea).toBeCloseTo(1, 3);
  });
});
