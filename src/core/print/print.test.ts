import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  deltaE00,
  labFromXyz,
  smoothestSpectrum,
  smoothestSpectrumNear,
  srgbFromXyz,
  xyzFromLab,
  xyzFromSpectrum,
  xyzFromSrgb,
} from '../colour/index.ts';
import { defaultSurface, filmOf, inkOverOneGround, stackReflectance } from '../ink/index.ts';
import { rectangle } from '../form/index.ts';
import {
  codeAreas,
  groundCube,
  groundUnder,
  layerCodes,
  meetingOverlap,
  overlapIndex,
  paint,
  paintOverPicture,
  paletteOf,
  proofGrid,
  withLayer,
} from './index.ts';

const grid = { originXMm: 0, originYMm: 0, mmPerPx: 0.5, width: 80, height: 60 };

describe('codes', () => {
  test('two overlapping rectangles: areas as geometry says', () => {
    const codes = layerCodes(
      [
        { bit: 0, prints: rectangle(0, 0, 20, 20) },
        { bit: 5, prints: rectangle(10, 10, 20, 20) },
      ],
      grid,
    );
    const areas = codeAreas(codes);
    expect(areas[1]).toBeCloseTo(300, 6);
    expect(areas[32]).toBeCloseTo(300, 6);
    expect(areas[33]).toBeCloseTo(100, 6);
    expect(areas[0]).toBeCloseTo(40 * 30 - 700, 6);
  });

  test('a layer covers as many pixels as have their middle in its shapes, whatever the others do, and off the image none', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(
          fc.tuple(
            fc.integer({ min: 0, max: 7 }),
            fc.double({ min: -20, max: 40, noNaN: true }),
            fc.double({ min: -20, max: 40, noNaN: true }),
          ),
          { maxLength: 8, selector: ([bit]) => bit },
        ),
        (layers) => {
          const areas = codeAreas(
            layerCodes(
              layers.map(([bit, x, y]) => ({ bit, prints: rectangle(x, y, 13, 9) })),
              grid,
            ),
          );
          // Middles lie at 0.25, 0.75, … of a side that is cut to the image.
          const middles = (from: number, length: number, most: number): number =>
            Array.from({ length: 2 * most }, (_, i) => 0.25 + i / 2).filter((at) => at > from && at < from + length).length;
          for (const [bit, x, y] of layers) {
            const covered = areas.reduce((sum, area, code) => (code & (1 << bit) ? sum + area : sum), 0);
            expect(covered).toBeCloseTo(middles(x, 13, 40) * middles(y, 9, 30) * 0.25, 6);
          }
          expect(areas.reduce((sum, area, code) => (layers.some(([bit]) => code & (1 << bit)) ? sum : sum + area), 0)).toBe(areas[0]);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('cutting one layer anew leaves the other layers’ bits as they were', () => {
    const before = layerCodes(
      [
        { bit: 1, prints: rectangle(3, 3, 10, 10) },
        { bit: 2, prints: rectangle(8, 8, 10, 10) },
      ],
      grid,
    );
    const after = withLayer(before, { bit: 2, prints: rectangle(0, 0, 5, 5) });
    const fresh = layerCodes(
      [
        { bit: 1, prints: rectangle(3, 3, 10, 10) },
        { bit: 2, prints: rectangle(0, 0, 5, 5) },
      ],
      grid,
    );
    expect(after.data).toEqual(fresh.data);
  });

  test('a run out of register by 2 mm moves its layer by four pixels of half a millimetre', () => {
    const moved = layerCodes([{ bit: 0, prints: rectangle(4, 4, 10, 10), shiftMm: [2, -1] }], grid);
    expect(moved.data).toEqual(layerCodes([{ bit: 0, prints: rectangle(6, 3, 10, 10) }], grid).data);
  });

  test('a proof is 300 pixels an inch, coarser only where the image is very large', () => {
    expect(proofGrid(180, 240)).toMatchObject({ width: 2126, height: 2835 });
    const large = proofGrid(1000, 1400);
    expect(large.width * large.height).toBeLessThanOrEqual(16_100_000);
  });
});

describe('palettes', () => {
  test('after the last run the progressive proof is the proof, and bits of open layers print nothing', () => {
    const rgb = Uint8Array.from({ length: 8 * 3 }, (_, i) => i * 9);
    const bits = [4, 0, 7];
    expect(paletteOf(rgb, bits, 3)).toEqual(paletteOf(rgb, bits));
    const palette = paletteOf(rgb, bits);
    for (let code = 0; code < 256; code++) expect(palette[code]).toBe(palette[code & 0b10010001]);
    expect(overlapIndex(0b00010001, bits)).toBe(0b011);
    expect(overlapIndex(0b10010001, bits, 1)).toBe(0b001);
  });

  test('painting is the palette looked up at every pixel, whatever the number of pixels', () => {
    const stretches = fc
      .array(fc.tuple(fc.integer({ min: 0, max: 255 }), fc.integer({ min: 1, max: 60 })), { maxLength: 20 })
      .map((list) => Uint8Array.from(list.flatMap(([code, n]) => Array<number>(n).fill(code))));
    fc.assert(
      fc.property(fc.oneof(fc.uint8Array({ maxLength: 50 }), stretches), (data) => {
        const palette = Uint32Array.from({ length: 256 }, (_, i) => i * 65537);
        const out = new Uint32Array(data.length);
        paint({ width: data.length, height: 1, mmPerPx: 1, data }, palette, out);
        expect([...out]).toEqual([...data].map((code) => palette[code]));
      }),
    );
  });
});

describe('where shapes meet', () => {
  const inside =
    (x0: number, y0: number, w: number, h: number) =>
    (x: number, y: number): boolean =>
      x > x0 && x < x0 + w && y > y0 && y < y0 + h;

  test('two shapes side by side overlap by what the drawing gives them', () => {
    const left = rectangle(0, 0, 30, 40);
    expect(meetingOverlap(left, rectangle(30, 0, 30, 40), inside(30, 0, 30, 40))).toBeCloseTo(0, 6);
    expect(meetingOverlap(left, rectangle(29, 0, 30, 40), inside(29, 0, 30, 40))).toBeCloseTo(1, 6);
    expect(meetingOverlap(left, rectangle(30.8, 0, 30, 40), inside(30.8, 0, 30, 40))).toBeCloseTo(0, 6);
  });

  test('shapes that cross, lie one in the other, or far apart have no seam', () => {
    const bar = rectangle(0, 10, 60, 8);
    expect(meetingOverlap(bar, rectangle(20, 0, 8, 40), inside(20, 0, 8, 40))).toBeNull();
    expect(meetingOverlap(rectangle(5, 5, 20, 20), rectangle(4, 4, 40, 40), inside(4, 4, 40, 40))).toBeNull();
    expect(meetingOverlap(bar, rectangle(0, 30, 60, 8), inside(0, 30, 60, 8))).toBeNull();
  });

  test('a hole and the piece that fills it meet all round', () => {
    const hole = { rings: [rectangle(0, 0, 60, 60).rings[0], Float64Array.from([20, 20, 20, 40, 40, 40, 40, 20])] };
    expect(meetingOverlap(hole, rectangle(19.5, 19.5, 21, 21), inside(19.5, 19.5, 21, 21))).toBeCloseTo(0.5, 6);
  });
});

describe('over an earlier print', () => {
  const white = smoothestSpectrum(xyzFromLab([95, 0, -1]));
  const over = [
    [60, -38, -18],
    [40, 30, -36],
  ].map(([l, a, b]) => smoothestSpectrum(xyzFromLab([l, a, b])));
  const surface = defaultSurface(over, false);
  const films = over.map((ink) => filmOf(inkOverOneGround({ ink, ground: white, surface }).ink, 0.7));
  const cube = groundCube({ films, surface });
  const rowOfCode = Uint8Array.from({ length: 256 }, (_, code) => overlapIndex(code, [0, 1]));

  test('where nothing is printed the picture stays as it is', () => {
    const ground = Uint8Array.from([10, 200, 30, 255, 255, 255]);
    const out = new Uint32Array(2);
    paintOverPicture({ width: 2, height: 1, mmPerPx: 1, data: new Uint8Array(2) }, ground, cube, rowOfCode, out);
    expect([...new Uint8Array(out.buffer)]).toEqual([10, 200, 30, 255, 255, 255, 255, 255]);
  });

  test('between the nodes of the cube the colour is the film model’s, within ΔE00 2.5, and 0.8 on average', () => {
    const differences: number[] = [];
    fc.assert(
      fc.property(
        fc.tuple(fc.integer({ min: 30, max: 250 }), fc.integer({ min: 30, max: 250 }), fc.integer({ min: 30, max: 250 })),
        fc.integer({ min: 1, max: 3 }),
        (rgb, code) => {
          const out = new Uint32Array(1);
          paintOverPicture({ width: 1, height: 1, mmPerPx: 1, data: Uint8Array.of(code) }, Uint8Array.from(rgb), cube, rowOfCode, out);
          const bytes = new Uint8Array(out.buffer);
          const shown = labFromXyz(xyzFromSrgb([bytes[0] / 255, bytes[1] / 255, bytes[2] / 255]));
          const ground = smoothestSpectrumNear(
            xyzFromSrgb(rgb.map((v) => v / 255) as unknown as [number, number, number]).map((v) => v * 0.985 + 0.003) as unknown as [
              number,
              number,
              number,
            ],
          ).spectrum;
          // As a screen would show it: what lies outside sRGB is mapped on both sides.
          const [r, g, b] = srgbFromXyz(
            xyzFromSpectrum(
              stackReflectance(
                ground,
                films.filter((_, i) => code & (1 << i)),
                surface,
              ),
            ),
          ).rgb;
          const exact = labFromXyz(xyzFromSrgb([r / 255, g / 255, b / 255]));
          differences.push(deltaE00(shown, exact));
        },
      ),
      { numRuns: 120, seed: 5 },
    );
    expect(Math.max(...differences)).toBeLessThan(2.5);
    expect(differences.reduce((a, b) => a + b) / differences.length).toBeLessThan(0.8);
  });

  test('the earlier print is laid under the pixels at its own size', () => {
    const picture = { width: 2, height: 1, rgb: Uint8Array.from([0, 0, 0, 250, 250, 250]) };
    const ground = groundUnder(picture, { atMm: [2, 0], widthMm: 4 }, { width: 8, height: 2, mmPerPx: 1 }, [9, 9, 9]);
    const row = [...ground.subarray(0, 24)].filter((_, i) => i % 3 === 0);
    expect(row.slice(0, 2)).toEqual([9, 9]);
    expect(row[2]).toBe(0);
    expect(row[5]).toBe(250);
    expect(row.slice(6)).toEqual([9, 9]);
  });
});
