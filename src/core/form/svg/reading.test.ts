import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { regionArea } from '../region.ts';
import type { DrawingReading } from './reading.ts';
import { openSvg, prepareDrawings, readSvg } from './read-svg.ts';

beforeAll(() => prepareDrawings(readFileSync('node_modules/@resvg/resvg-wasm/index_bg.wasm')));

const page = (inside: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">${inside}</svg>`;
const areaAs = (text: string, reading?: DrawingReading): number => regionArea(readSvg(text, 'x.svg', reading).region);
const codesAs = (text: string, reading?: DrawingReading): string[] => readSvg(text, 'x.svg', reading).problems.map((p) => p.code);
const box = (x: number, size: number, fill: string, more = ''): string =>
  `<rect x="${x}" y="${x}" width="${size}" height="${size}" fill="${fill}" ${more}/>`;

/** A red square with a white one on it, on that a blue one; beside it a yellow one. */
const coloured = page(`${box(0, 60, '#d00000')}${box(10, 40, 'white')}${box(20, 20, '#0000c0')}${box(70, 20, '#ffe000')}`);

describe('a drawing is read by what is seen', () => {
  test('its colours, back to front, with their shares of what is inked', () => {
    const { seen } = openSvg(coloured, 'x.svg');
    expect(seen.colours.map((c) => c.colour)).toEqual(['#d00000', '#0000c0', '#ffe000']);
    const inked = 3600 - 1600 + 400 + 400;
    [2000, 400, 400].forEach((area, i) => expect(seen.colours[i].share).toBeCloseTo(area / inked, 2));
    expect(seen).toMatchObject({ whiteOnTop: true, fullPage: false });
  });
  test('white on top is bare paper unless said otherwise', () => {
    expect(areaAs(coloured)).toBeCloseTo(2800, 1);
    expect(areaAs(coloured, { what: 'silhouette', white: 'shape' })).toBeCloseTo(4000, 1);
    const blackAndWhite = page(`${box(0, 60, 'black')}${box(10, 40, 'white')}`);
    expect(codesAs(blackAndWhite)).toEqual(['drawing-has-white']);
    expect(areaAs(blackAndWhite)).toBeCloseTo(2000, 1);
  });
  test('what is dark, and how dark', () => {
    // L* by CIE 15 from sRGB: red #d00000 43, blue #0000c0 24, yellow #ffe000 90.
    expect(areaAs(coloured, { what: 'dark' })).toBeCloseTo(2400, 1);
    expect(areaAs(coloured, { what: 'dark', threshold: 0.7 })).toBeCloseTo(400, 1);
    expect(areaAs(coloured, { what: 'dark', threshold: 0.05 })).toBeCloseTo(2800, 1);
  });
  test('one of its colours, or several; what lies in front cuts what lies behind', () => {
    expect(areaAs(coloured, { what: 'colours', colours: ['#d00000'] })).toBeCloseTo(2000, 1);
    expect(areaAs(coloured, { what: 'colours', colours: ['#0000C0', '#ffe000'] })).toBeCloseTo(800, 1);
    expect(codesAs(coloured, { what: 'colours', colours: ['#d00804'] })).toEqual(['drawing-other-colours']);
    const all = openSvg(coloured, 'x.svg');
    const each = all.seen.colours.map((c) => regionArea(all.read({ what: 'colours', colours: [c.colour] }).region));
    expect(each.reduce((a, b) => a + b)).toBeCloseTo(2800, 1);
  });
  test('a drawing of several colours says that it can be read otherwise, until it is said how', () => {
    expect(codesAs(coloured)).toEqual(['drawing-has-colours']);
    expect(codesAs(coloured, { what: 'silhouette' })).toEqual([]);
    expect(codesAs(page(box(10, 20, 'black')))).toEqual([]);
  });
  test('on a card printed all over, what is dark is taken rather than a bare rectangle', () => {
    const card = page(`${box(0, 100, '#ffe000')}${box(20, 30, '#102030')}`);
    expect(areaAs(card)).toBeCloseTo(900, 1);
    expect(codesAs(card)).toEqual(['drawing-has-colours']);
  });
  test('a drawing in white alone is a shape', () => expect(areaAs(page(box(10, 20, 'white')))).toBeCloseTo(400, 1));
  test('shades of one colour are one ink', () => {
    const shades = page(Array.from({ length: 9 }, (_, i) => box(i * 11, 10, `#d0${(i * 2).toString(16).padStart(2, '0')}00`)).join(''));
    expect(openSvg(shades, 'x.svg').seen.colours).toHaveLength(1);
  });
  test('a group in front of a clip path takes away only where it shows', () => {
    const clip = '<defs><clipPath id="c"><rect width="30" height="100"/></clipPath></defs>';
    expect(areaAs(page(`${clip}${box(0, 60, 'black')}<g clip-path="url(#c)">${box(10, 40, 'white')}</g>`))).toBeCloseTo(3600 - 20 * 40, 1);
  });
  test('a thousand shapes, dark and pale by turns, take no long time', () => {
    const many = page(
      Array.from(
        { length: 1200 },
        (_, i) => `<circle cx="${(i * 37) % 100}" cy="${(i * 61) % 100}" r="3" fill="${i % 2 ? 'black' : 'white'}"/>`,
      ).join(''),
    );
    const before = process.cpuUsage();
    expect(areaAs(many)).toBeGreaterThan(1000);
    expect(process.cpuUsage(before).user / 1000).toBeLessThan(6000);
  });
});

describe('what fades is cut at a threshold on what is seen', () => {
  const gradient = (stops: string, more = ''): string => `<defs><linearGradient id="g" ${more}>${stops}</linearGradient></defs>`;
  const fade = gradient('<stop stop-color="black"/><stop offset="1" stop-color="black" stop-opacity="0"/>');
  test('a straight gradient: half way, said; elsewhere when asked', () => {
    const text = page(`${fade}${box(0, 100, 'url(#g)')}`);
    // Where black over white has half the contrast of black: L* 50, sRGB 119 (CIE 15), so 53 % black.
    expect(areaAs(text)).toBeCloseTo(100 * 100 * (119 / 255), -2);
    expect(codesAs(text)).toEqual(['drawing-fades']);
    expect(areaAs(text, { what: 'silhouette', threshold: 0.2 })).toBeGreaterThan(areaAs(text) + 1000);
    expect(codesAs(text, { what: 'silhouette', threshold: 0.2 })).toEqual([]);
  });
  test('a colour that fades to white does so at half of its own contrast', () => {
    const text = page(`${gradient('<stop stop-color="#ffe000"/><stop offset="1" stop-color="white"/>')}${box(0, 100, 'url(#g)')}`);
    const area = areaAs(text);
    expect(area).toBeGreaterThan(3000);
    expect(area).toBeLessThan(6500);
  });
  test('turned, mirrored and round ones, measured against their own geometry', () => {
    const stops = '<stop offset="0.5" stop-color="black"/><stop offset="0.5" stop-color="white"/>';
    const turned = page(`${gradient(stops, 'gradientUnits="userSpaceOnUse" x1="0" y1="0" x2="100" y2="100"')}${box(0, 100, 'url(#g)')}`);
    expect(areaAs(turned)).toBeCloseTo(5000, 0);
    const mirrored = page(`${gradient(stops, 'gradientUnits="userSpaceOnUse" x2="25" spreadMethod="reflect"')}${box(0, 100, 'url(#g)')}`);
    expect(areaAs(mirrored)).toBeCloseTo(5000, 0);
    const round = page(`<defs><radialGradient id="g">${stops}</radialGradient></defs>${box(0, 100, 'url(#g)')}`);
    expect(areaAs(round) / (Math.PI * 25 * 25)).toBeCloseTo(1, 2);
    const aside = page(`<defs><radialGradient id="g" fx="0.7">${stops}</radialGradient></defs>${box(0, 100, 'url(#g)')}`);
    expect(areaAs(aside) / (Math.PI * 25 * 25)).toBeCloseTo(1, 2);
  });
  test('a gradient between strong colours does not fade', () => {
    const text = page(`${gradient('<stop stop-color="#d00000"/><stop offset="1" stop-color="#0000c0"/>')}${box(0, 100, 'url(#g)')}`);
    expect(areaAs(text)).toBeCloseTo(10_000, 0);
    expect(codesAs(text)).not.toContain('drawing-fades');
  });
  test('a soft mask lets through where half shows, and says so', () => {
    const mask = `<defs><linearGradient id="l"><stop stop-color="white"/><stop offset="1" stop-color="black"/></linearGradient><mask id="m"><rect width="100" height="100" fill="url(#l)"/></mask></defs>`;
    const text = page(`${mask}<g mask="url(#m)">${box(0, 100, 'black')}</g>`);
    expect(areaAs(text)).toBeCloseTo(5000, -1);
    expect(codesAs(text)).toEqual(['drawing-soft-mask']);
    expect(areaAs(text, { what: 'silhouette', threshold: 0.25 })).toBeCloseTo(7500, -1);
  });
});
