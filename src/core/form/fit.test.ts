import { describe, expect, test } from 'vitest';
import { inEnglish } from '../../../test/said.ts';
import { ProblemError } from '../problem.ts';
import { fitOutline, flattenOutline, offsetRegion, pathData, readDxf, rectangle, regionArea, takeAway, unite, writeDxf } from './index.ts';
import type { Region } from './index.ts';

const circle = (cx: number, cy: number, r: number, n = 180): Region => ({
  rings: [
    Float64Array.from({ length: 2 * n }, (_, i) =>
      i % 2 ? cy + r * Math.sin((Math.PI * (i - 1)) / n) : cx + r * Math.cos((Math.PI * i) / n),
    ),
  ],
});
const flower = unite(Array.from({ length: 5 }, (_, i) => circle(50 + 25 * Math.cos(i * 1.2566), 50 + 25 * Math.sin(i * 1.2566), 18)));
const distance = (a: Region, b: Region): number => {
  // Farthest point of a's outline from b's outline.
  let worst = 0;
  for (const ring of a.rings) {
    for (let i = 0; i < ring.length; i += 2) {
      let least = Infinity;
      for (const other of b.rings) {
        for (let k = 0, j = other.length - 2; k < other.length; j = k, k += 2) {
          const dx = other[k] - other[j],
            dy = other[k + 1] - other[j + 1];
          const t = Math.max(0, Math.min(1, ((ring[i] - other[j]) * dx + (ring[i + 1] - other[j + 1]) * dy) / (dx * dx + dy * dy || 1)));
          least = Math.min(least, Math.hypot(ring[i] - other[j] - t * dx, ring[i + 1] - other[j + 1] - t * dy));
        }
      }
      worst = Math.max(worst, least);
    }
  }
  return worst;
};

describe('outlines for the knife are few smooth curves', () => {
  test.each([
    ['a circle', circle(50, 50, 30)],
    ['a flower', flower],
    ['a flower with a hole', takeAway(flower, circle(50, 50, 10))],
    ['a rounded box', offsetRegion(rectangle(10, 10, 60, 30), 8)],
  ])('%s stays within 0.1 mm with a tenth of the points', (_, region) => {
    const fitted = fitOutline(region);
    const again = flattenOutline(fitted);
    expect(distance(again, region)).toBeLessThan(0.1);
    expect(distance(region, again)).toBeLessThan(0.1);
    expect(fitted.flat().length).toBeLessThan(region.rings.reduce((sum, r) => sum + r.length / 2, 0) / 5);
  });
  test('corners stay exactly where they are', () => {
    expect(pathData(rectangle(1, 2, 30, 40))).toBe('M1 2L31 2L31 42L1 42L1 2Z');
  });
});

describe('cutting files in DXF', () => {
  const sheet = { minX: -5, maxY: 120 };
  const shape = takeAway(flower, circle(50, 50, 10));
  test.each([[true], [false]])('what is written is read back with the same area (curves: %s)', (curves) => {
    const text = writeDxf(
      [
        { name: 'CUT', colour: 1, outlines: fitOutline(shape) },
        { name: 'MARK', colour: 5, outlines: fitOutline(rectangle(0, 0, 0.5, 0.5)) },
      ],
      sheet,
      curves,
    );
    const back = readDxf(text, 'x.dxf');
    expect(back.hasPhysicalUnits).toBe(true);
    expect(regionArea(back.region) / (regionArea(shape) + 0.25)).toBeCloseTo(1, 4);
  });
  const file = (units: number, entities: string): string =>
    `0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n${units}\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n${entities}\n0\nENDSEC\n0\nEOF\n`;
  test('circles, arcs with lines, bulges; inches', () => {
    expect(regionArea(readDxf(file(4, '0\nCIRCLE\n10\n5\n20\n5\n40\n10'), 'x').region) / (Math.PI * 100)).toBeCloseTo(1, 2);
    expect(
      regionArea(
        readDxf(
          file(1, '0\nLINE\n10\n0\n20\n0\n11\n2\n21\n0\n0\nLINE\n10\n2\n20\n0\n11\n2\n21\n2\n0\nLINE\n10\n0\n20\n0\n11\n2\n21\n2'),
          'x',
        ).region,
      ),
    ).toBeCloseTo(2 * 25.4 * 25.4, 2);
    expect(
      regionArea(readDxf(file(4, '0\nARC\n10\n0\n20\n0\n40\n10\n50\n0\n51\n180\n0\nLINE\n10\n-10\n20\n0\n11\n10\n21\n0'), 'x').region) /
        (Math.PI * 50),
    ).toBeCloseTo(1, 2);
    expect(
      regionArea(readDxf(file(4, '0\nLWPOLYLINE\n70\n1\n10\n-10\n20\n0\n42\n1\n10\n10\n20\n0\n42\n1'), 'x').region) / (Math.PI * 100),
    ).toBeCloseTo(1, 2);
    expect(
      regionArea(readDxf(file(4, '0\nELLIPSE\n10\n0\n20\n0\n11\n10\n21\n0\n40\n0.5\n41\n0\n42\n6.283185307'), 'x').region) / (Math.PI * 50),
    ).toBeCloseTo(1, 2);
  });
  const withBlocks = (blocks: string, entities: string, layers = ''): string =>
    file(4, entities).replace(
      '0\nSECTION\n2\nENTITIES',
      `0\nSECTION\n2\nTABLES\n${layers}0\nENDSEC\n0\nSECTION\n2\nBLOCKS${blocks && '\n'}${blocks}\n0\nENDSEC\n0\nSECTION\n2\nENTITIES`,
    );
  const disc = (x: number, more = ''): string => `0\nCIRCLE\n10\n${x}\n20\n5\n40\n10${more}`;
  test('blocks are written out where they are inserted: turned, enlarged, in rows, inside one another', () => {
    const square = '0\nBLOCK\n2\nSQ\n10\n1\n20\n1\n0\nLWPOLYLINE\n70\n1\n10\n1\n20\n1\n10\n3\n20\n1\n10\n3\n20\n3\n10\n1\n20\n3\n0\nENDBLK';
    const pair =
      '0\nBLOCK\n2\nPAIR\n10\n0\n20\n0\n0\nINSERT\n2\nSQ\n10\n0\n20\n0\n0\nINSERT\n2\nSQ\n10\n10\n20\n0\n41\n2\n42\n0.5\n0\nENDBLK';
    const read = readDxf(withBlocks(`${square}\n${pair}`, '0\nINSERT\n2\nPAIR\n10\n0\n20\n0\n50\n90\n70\n3\n44\n20'), 'x');
    expect(regionArea(read.region)).toBeCloseTo(3 * (4 + 4), 3);
    expect([read.widthMm, read.heightMm]).toEqual([2, 2 * 20 + 14]);
    const loop = '0\nBLOCK\n2\nA\n10\n0\n20\n0\n0\nINSERT\n2\nA\n10\n1\n20\n1\n0\nENDBLK';
    expect(() => readDxf(withBlocks(loop, '0\nINSERT\n2\nA\n10\n0\n20\n0'), 'x')).toThrow(ProblemError);
  });
  test('a mirrored arc is seen from behind', () => {
    // Half a disc to the left of x = −10 in the drawing: the arc's own x runs the other way.
    const read = readDxf(
      file(4, '0\nARC\n10\n10\n20\n0\n40\n10\n50\n270\n51\n90\n230\n-1\n0\nLINE\n10\n-10\n20\n10\n11\n-10\n21\n-10'),
      'x',
    );
    expect(regionArea(read.region) / (Math.PI * 50)).toBeCloseTo(1, 2);
    expect(read.widthMm).toBeCloseTo(10, 1);
  });
  test('layouts on paper and layers that are off are not cut; what is drawn twice is cut once', () => {
    const off = '0\nLAYER\n2\nNOTES\n70\n0\n62\n-3\n0\nLAYER\n2\nICE\n70\n1\n62\n3\n';
    const read = readDxf(
      withBlocks('', [disc(5), disc(5), disc(50, '\n8\nNOTES'), disc(80, '\n8\nICE'), disc(120, '\n67\n1')].join('\n'), off),
      'x',
    );
    expect(regionArea(read.region) / (Math.PI * 100)).toBeCloseTo(1, 2);
    const line = (a: number, b: number, c: number, d: number): string => `0\nLINE\n10\n${a}\n20\n${b}\n11\n${c}\n21\n${d}`;
    expect(
      regionArea(
        readDxf(file(4, [line(0, 0, 9, 0), line(9, 0, 0, 0), line(9, 0, 9, 9), line(0, 0, 9, 9), line(9, 9, 9, 0)].join('\n')), 'x').region,
      ),
    ).toBeCloseTo(40.5, 2);
  });
  test('an old polyline with its vertices, those of a spline’s frame left out', () => {
    const vertex = (x: number, y: number, kind = 0): string => `0\nVERTEX\n10\n${x}\n20\n${y}\n70\n${kind}`;
    const read = readDxf(
      file(
        4,
        `0\nPOLYLINE\n70\n1\n${[vertex(0, 0), vertex(50, 50, 16), vertex(10, 0), vertex(10, 10), vertex(0, 10)].join('\n')}\n0\nSEQEND\n${disc(100)}`,
      ),
      'x',
    );
    expect(regionArea(read.region) / (100 + Math.PI * 100)).toBeCloseTo(1, 2);
  });
  test('what is open is left out and said; a file without units too', () => {
    const read = readDxf(file(0, '0\nCIRCLE\n10\n5\n20\n5\n40\n10\n0\nLINE\n10\n0\n20\n0\n11\n50\n21\n0'), 'x');
    expect(read.problems.map((p) => p.code)).toEqual(['drawing-no-units', 'drawing-open-lines']);
    expect(read.problems.map((p) => inEnglish(p.message))).toContain('1 line does not close and was left out.');
  });
  test.each([
    ['nothing at all', ''],
    ['some text', 'hello\nworld\n'],
    ['no outline', file(4, '')],
  ])('%s is refused', (_, text) => expect(() => readDxf(text, 'x.dxf')).toThrow(ProblemError));
});
