import { readFileSync } from 'node:fs';
import { gzipSync, strToU8 } from 'fflate';
import { beforeAll, describe, expect, test } from 'vitest';
import { refusedBy } from '../../../test/said.ts';
import { fitOutline, openDrawing, prepareDrawings, prepareLetters, regionArea, regionBox, writeDxf } from './index.ts';
import { rectangle } from './region.ts';

const font = (name: string): Uint8Array => new Uint8Array(readFileSync(`assets/OpenSans-${name}.ttf`));
beforeAll(async () => {
  await prepareDrawings(readFileSync('node_modules/@resvg/resvg-wasm/index_bg.wasm'));
  prepareLetters({ regular: font('Regular'), semibold: font('Semibold'), bold: font('Bold') });
});

const page = (inside: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">${inside}</svg>`;
const codesOf = (text: string | Uint8Array, name = 'x.svg'): string[] =>
  refusedBy(() => openDrawing(typeof text === 'string' ? strToU8(text) : text, name).read()).map((p) => p.code);

describe('files as they come', () => {
  test('a packed drawing is unpacked; a damaged one says so', () => {
    const packed = gzipSync(strToU8(page('<rect width="30" height="20"/>')));
    expect(regionArea(openDrawing(packed, 'x.svgz').read().region)).toBeCloseTo(600, 2);
    expect(codesOf(packed.slice(0, 60), 'x.svgz').length).toBe(1);
    const swollen = gzipSync(strToU8(page('<rect width="30" height="20"/>')));
    new DataView(swollen.buffer).setUint32(swollen.length - 4, 2_000_000_000, true);
    expect(codesOf(swollen, 'x.svgz')).toEqual(['drawing-too-large']);
  });
  test('a DXF that breaks off is refused, wherever it does', () => {
    const whole = writeDxf([{ name: 'CUT', colour: 1, outlines: fitOutline(rectangle(0, 0, 30, 20)) }], { minX: 0, maxY: 20 });
    expect(regionArea(openDrawing(strToU8(whole), 'x.dxf').read().region)).toBeCloseTo(600, 2);
    for (const share of [0.5, 0.8, 0.98])
      expect(codesOf(whole.slice(0, Math.round(share * whole.length)), 'x.dxf')[0]).toMatch(/^drawing-(breaks-off|not-dxf)$/);
  });
  test('a DXF in map coordinates is brought near', () => {
    const far = 4_500_000_000;
    const line = (x1: number, y1: number, x2: number, y2: number): string =>
      `0\nLINE\n8\n0\n10\n${far + x1}\n20\n${far + y1}\n11\n${far + x2}\n21\n${far + y2}\n`;
    const text = `0\nSECTION\n2\nENTITIES\n${line(0, 0, 30, 0)}${line(30, 0, 30, 20)}${line(30, 20, 0, 20)}${line(0, 20, 0, 0)}0\nENDSEC\n0\nEOF\n`;
    expect(regionArea(openDrawing(strToU8(text), 'x.dxf').read().region)).toBeCloseTo(600, 2);
  });
});

describe('text in a drawing', () => {
  test('in the font that comes with Laydown, it becomes outlines', () => {
    const { region } = openDrawing(
      strToU8(page('<text x="5" y="60" font-family="Open Sans" font-weight="700" font-size="40">HO</text>')),
      'x.svg',
    ).read();
    const box = regionBox(region);
    // Open Sans: capitals 1462 of 2048 units high (its OS/2 table); the O a little over and under.
    expect(box.maxY - box.minY).toBeGreaterThan((40 * 1462) / 2048);
    expect(box.maxY - box.minY).toBeLessThan((40 * 1530) / 2048);
    expect(region.rings).toHaveLength(3);
  });
  test('in any other, it is refused by that font’s name', () => {
    expect(codesOf(page('<text font-family="Gill Sans" y="60">HO</text>'))).toEqual(['drawing-has-text']);
    expect(codesOf(page('<text y="60">HO</text>'))).toEqual(['drawing-has-text']);
  });
});
