import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { ProblemError } from '../../../problem.ts';
import { prepareDrawings, readSvg } from '../read-svg.ts';

beforeAll(() => prepareDrawings(readFileSync('node_modules/@resvg/resvg-wasm/index_bg.wasm')));

const page = (inside: string, before = ''): string =>
  `${before}<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="100mm" height="100mm" viewBox="0 0 100 100">${inside}</svg>`;
const times = (n: number, make: (i: number) => string): string => Array.from({ length: n }, (_, i) => make(i)).join('');
const square = '<rect width="40" height="40"/>';

/** Each level refers to the one below it several times: breadth that only shows when written out. */
const fan = (levels: number, breadth: number, level: (i: number, inside: string) => string, refer: (i: number) => string): string =>
  `<defs>${level(0, square)}${times(levels, (i) =>
    level(
      i + 1,
      times(breadth, () => refer(i)),
    ),
  )}</defs>`;

const hostile: Readonly<Record<string, string>> = {
  'clip paths that fan out': page(
    `${fan(
      6,
      12,
      (i, inside) => `<clipPath id="c${i}">${inside}</clipPath>`,
      (i) => `<rect width="40" height="40" clip-path="url(#c${i})"/>`,
    )}<g clip-path="url(#c6)">${square}</g>`,
  ),
  'masks that fan out': page(
    `${fan(
      6,
      12,
      (i, inside) => `<mask id="m${i}">${inside}</mask>`,
      (i) => `<rect width="40" height="40" fill="white" mask="url(#m${i})"/>`,
    )}<g mask="url(#m6)">${square}</g>`,
  ),
  'patterns that fan out': page(
    `${fan(
      6,
      12,
      (i, inside) => `<pattern id="p${i}" width="9" height="9" patternUnits="userSpaceOnUse">${inside}</pattern>`,
      (i) => `<rect width="40" height="40" fill="url(#p${i})"/>`,
    )}<rect width="40" height="40" fill="url(#p6)"/>`,
  ),
  'markers in markers': page(
    `<defs>${times(7, (i) => `<marker id="k${i}"><path d="${`M0 0${times(12, (k) => `L${k} ${k % 3}`)}`}" marker-mid="url(#k${i - 1})"/></marker>`)}</defs><path d="M0 0${times(12, (k) => `L${k} ${k % 3}`)}" marker-mid="url(#k6)"/>`,
  ),
  'references set by a style sheet': page(
    `<style>${times(6, (i) => `.c${i + 1}{clip-path:url(#c${i})}`)}</style><defs><clipPath id="c0">${square}</clipPath>${times(
      6,
      (i) => `<clipPath id="c${i + 1}">${times(12, () => `<rect class="c${i + 1}" width="40" height="40"/>`)}</clipPath>`,
    )}</defs><g clip-path="url(#c6)">${square}</g>`,
  ),
  'twenty thousand rules': page(
    `<style>${times(20_000, (i) => `g g .r${i} > rect:first-child{fill:red}`)}</style>${times(500, (i) => `<g class="r${i}">${square}</g>`)}`,
  ),
  'a hundred thousand attributes': page(`<rect ${times(100_000, (i) => `a${i}="1" `)} width="40" height="40"/>`),
  'an entity grown in attributes': page(
    times(50, () => `<rect width="40" height="40" data-x="${'&a;'.repeat(2000)}"/>`),
    `<!DOCTYPE svg [<!ENTITY a "${'x'.repeat(2000)}">]>`,
  ),
  'one long outline used a thousand times': page(
    `<defs><path id="l" d="M0 0${times(8000, (i) => `L${i % 97} ${i % 89}`)}"/></defs>${times(2000, () => '<use xlink:href="#l"/>')}`,
  ),
};

describe('a drawing made to choke a program is refused at once', () => {
  test.each(Object.entries(hostile))('%s', (_, text) => {
    const before = performance.now();
    let codes: readonly string[] = [];
    try {
      readSvg(text, 'x.svg');
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      codes = error.problems.map((p) => p.code);
    }
    expect(codes).toHaveLength(1);
    expect(['drawing-too-large', 'drawing-has-entities']).toContain(codes[0]);
    expect(performance.now() - before).toBeLessThan(3000);
  });
});

describe('what only looks like it is read', () => {
  test('a gradient, a clip path and a class shared by thousands of shapes', () => {
    const text = page(
      `<style>.a{fill:url(#g)}</style><defs><linearGradient id="g">${times(20, (i) => `<stop offset="${i / 20}"/>`)}</linearGradient><clipPath id="c">${square}</clipPath></defs><g clip-path="url(#c)">${times(3000, (i) => `<rect class="a" x="${(i % 60) * 1.5}" y="${Math.floor(i / 60) * 1.5}" width="1" height="1"/>`)}</g>`,
    );
    expect(readSvg(text, 'x.svg').region.rings.length).toBeGreaterThan(100);
  });
  test('a path of many points with one marker', () => {
    const text = page(
      `<defs><marker id="k"><rect width="1" height="1"/></marker></defs><path fill="none" stroke="black" d="M0 0${times(500, (i) => `L${i / 5} ${i % 7}`)}" marker-mid="url(#k)"/>`,
    );
    expect(readSvg(text, 'x.svg').region.rings.length).toBeGreaterThan(0);
  });
});
