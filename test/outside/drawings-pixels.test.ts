// Difficult drawings, read as outlines here and painted by a renderer of its own: @resvg/resvg-wasm 2 (MPL-2.0), which turns
// the untouched text into pixels. What it covers by half or more has to be what lies inside our outlines.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Resvg } from '@resvg/resvg-wasm';
import { beforeAll, expect, test } from 'vitest';
import { decodeDrawing, prepareDrawings, rasterize, readSvg } from '../../src/core/form/index.ts';

beforeAll(() => prepareDrawings(readFileSync(createRequire(import.meta.url).resolve('@resvg/resvg-wasm/index_bg.wasm'))));

const page = (body: string, size = 'width="100mm" height="100mm" viewBox="0 0 100 100"'): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${size}>${body}</svg>`;

test.each([
  [
    'groups mirrored, turned and slanted inside one another',
    page(
      '<g transform="scale(-1,1) translate(-100,0)"><g transform="rotate(30 50 50) skewX(20)"><g transform="matrix(0.5 0 0 -0.5 20 70)"><path d="M0 0 L60 0 L60 40 C40 60 20 20 0 40Z"/><g transform="scale(1,-1)"><rect x="10" y="10" width="30" height="40" rx="8"/></g></g></g></g>',
    ),
  ],
  [
    'style sheets: classes, ids, children, attributes, nothing',
    page(
      '<style>path,rect{fill:none} .a{fill:#123} #b{stroke:#000;stroke-width:4} g > .c{fill:blue} rect[width="9"]{fill:#000} .e{display:none}</style><path class="a" d="M10 10h20v20h-20z"/><path id="b" d="M40 10h20v20h-20z"/><g><path class="c" d="M70 10h20v20h-20z"/></g><rect width="9" height="9" x="10" y="50"/><rect class="a e" x="40" y="50" width="20" height="20"/><rect style="fill:green!important" x="70" y="50" width="20" height="20"/>',
    ),
  ],
  [
    'dashes with round ends, an odd pattern, a negative start',
    page(
      '<path fill="none" stroke="#000" stroke-width="5" stroke-dasharray="12 6 3" stroke-dashoffset="-7" stroke-linecap="round" d="M10 50C30 -20 70 120 90 50"/><circle cx="50" cy="50" r="40" fill="none" stroke="#000" stroke-width="3" stroke-dasharray="5 2"/>',
    ),
  ],
  [
    'corners of lines: pointed, round, cut; dots; a line back on itself',
    page(
      '<g fill="none" stroke="#000" stroke-width="8"><path stroke-miterlimit="10" d="M10 40L30 10L35 40"/><path stroke-linejoin="round" d="M45 40L60 10L70 40"/><path stroke-linejoin="bevel" stroke-linecap="square" d="M75 40L85 10L95 40"/><path stroke-linecap="round" d="M20 70h0"/><path stroke-linecap="square" d="M50 70h0"/></g>',
    ),
  ],
  ['even-odd', page('<path fill-rule="evenodd" d="M10 10H90V90H10ZM30 30H70V70H30ZM40 40H60V60H40Z"/>')],
  ['non-zero', page('<path d="M10 10H90V90H10ZM30 30V70H70V30ZM40 40H60V60H40Z"/>')],
  ['an outline that crosses itself', page('<path d="M50 5L80 95L5 40H95L20 95Z"/>')],
  [
    'clip paths: a circle and a use; in shares of the shape’s box',
    page(
      '<defs><clipPath id="c"><circle cx="50" cy="50" r="30"/><use href="#r" transform="rotate(8)"/></clipPath><rect id="r" x="70" y="60" width="20" height="20"/><clipPath id="cb" clipPathUnits="objectBoundingBox"><circle cx=".5" cy=".5" r=".5"/></clipPath></defs><g clip-path="url(#c)"><rect width="100" height="100"/></g><rect clip-path="url(#cb)" transform="translate(5 5) rotate(10) scale(.3 .15)" width="100" height="100"/>',
    ),
  ],
  [
    'a clip path clipped, with a hole',
    page(
      '<clipPath id="c"><path clip-rule="evenodd" d="M10 10H90V90H10ZM30 30H70V70H30Z"/></clipPath><clipPath id="d" clip-path="url(#c)"><rect width="60" height="100"/></clipPath><rect clip-path="url(#d)" width="100" height="100"/>',
    ),
  ],
  [
    'a mask with a hole and a line',
    page(
      '<mask id="m"><rect width="100" height="100" fill="#fff"/><circle cx="50" cy="50" r="20" fill="#000"/><path d="M0 0L100 100" stroke="black" stroke-width="6"/></mask><rect mask="url(#m)" x="10" y="10" width="80" height="80"/>',
    ),
  ],
  [
    'a mask in shares of the box of a turned shape',
    page(
      '<mask id="m" maskContentUnits="objectBoundingBox"><rect width=".5" height="1" fill="white"/></mask><g transform="rotate(20 50 50)"><rect mask="url(#m)" x="20" y="20" width="60" height="40"/></g>',
    ),
  ],
  [
    'a use in a clip path in a mask',
    page(
      '<defs><rect id="r" x="10" y="10" width="60" height="60"/><clipPath id="c"><use href="#r" transform="translate(10 10)"/></clipPath><mask id="m" mask-type="alpha"><g clip-path="url(#c)"><rect width="100" height="100"/></g></mask></defs><circle cx="50" cy="50" r="45" mask="url(#m)"/>',
    ),
  ],
  [
    'symbols, stretched and turned',
    page(
      '<symbol id="s" viewBox="0 0 10 10"><path d="M0 0L10 5L0 10Z"/></symbol><use href="#s" x="10" y="10" width="40" height="20"/><use xlink:href="#s" x="60" y="60" width="30" height="30" transform="rotate(10 75 75)"/>',
    ),
  ],
  [
    'drawings inside drawings',
    page(
      '<svg x="10" y="10" width="50" height="30" viewBox="0 0 10 10" preserveAspectRatio="none"><circle cx="5" cy="5" r="7"/></svg><svg x="60" y="60" width="30" height="30" viewBox="0 0 10 10" overflow="visible"><circle cx="5" cy="5" r="6"/></svg>',
    ),
  ],
  [
    'heads and tails of lines',
    page(
      '<marker id="m" markerWidth="4" markerHeight="4" refX="2" refY="2" orient="auto"><path d="M0 0L4 2L0 4Z"/></marker><path d="M20 50H80" stroke="#000" stroke-width="5" marker-end="url(#m)" marker-start="url(#m)" fill="none"/>',
    ),
  ],
  [
    'arcs of no radius, flags run together, relative curves',
    page(
      '<path d="M10 50a40 20 30 1 0 80 0a0 0 0 0 1 -10 0 5 5 0 00 10 0a1 1 0 1130 20z"/><path d="m 20,80 q 10,-20 20,0 t 20,0 t 20,0 v 5 h -60 z"/>',
    ),
  ],
  [
    'numbers without spaces, a path that breaks off',
    page('<path d="M10 10l.5.5-.5.5zM20-5h10v20H20zM1e1,6e1 30 60 30 80-0 0z"/><path d="M50 10 L90 10 L90 50 oops L10 50Z"/>'),
  ],
  [
    'a page that shows a part only',
    page('<circle cx="50" cy="50" r="45"/>', 'width="80" height="40" viewBox="0 0 100 100" preserveAspectRatio="xMinYMax slice"'),
  ],
  [
    'ninety-eight slivers and a square',
    page(
      `${Array.from({ length: 98 }, (_, i) => `<path d="M${i + 1} 0V100L${i + 1.0000001} 50Z"/>`).join('')}<rect x="20" y="20" width="30" height="30"/>`,
    ),
  ],
  [
    'eight hundred triangles, one over the other',
    page(Array.from({ length: 800 }, (_, i) => `<path transform="rotate(${i} 50 50)" d="M${i % 100} ${i / 8} l9 0 0 9z"/>`).join('')),
  ],
])('%s: our outlines cover what a renderer paints', (_, text) => {
  const drawing = readSvg(text, 'drawing');
  const rendered = new Resvg(text, { fitTo: { mode: 'width', value: 500 } }).render();
  const { width, height, pixels } = rendered;
  const mine = rasterize(drawing.region, { originXMm: 0, originYMm: 0, mmPerPx: drawing.widthMm / width, width, height });
  let painted = 0,
    rim = 0,
    different = 0,
    inside = 0;
  for (let y = 1; y < height - 1; y++) {
    for (let x = 1; x < width - 1; x++) {
      const p = y * width + x;
      const atRim = [-1, 1, -width, width].some((q) => mine[p + q] !== mine[p]);
      const theirs = pixels[4 * p + 3] > 127 ? 1 : 0;
      painted += theirs;
      if (atRim) rim++;
      if (theirs !== mine[p]) {
        different++;
        if (!atRim) inside++;
      }
    }
  }
  expect(painted).toBeGreaterThan(500);
  // Half-covered pixels may fall either way; nothing away from an edge may, but for tips finer than a pixel.
  expect(different).toBeLessThan(0.12 * rim);
  expect(inside).toBeLessThan(0.01 * rim + 3);
});

test.each([
  ['UTF-16 with a byte order mark', [0xff, 0xfe], 'utf-16'],
  ['Latin-1, said in the first line', [], 'iso-8859-1'],
])('a file in %s is read', (_, start, encoding) => {
  const text = `<?xml version="1.0" encoding="${encoding}"?>${page('<g id="é"><rect width="40" height="40"/></g>')}`;
  const bytes = [...start];
  for (const letter of text) bytes.push(letter.charCodeAt(0), ...(encoding === 'utf-16' ? [0] : []));
  const drawing = readSvg(decodeDrawing(Uint8Array.from(bytes)), 'drawing');
  expect(drawing.region.rings).toHaveLength(1);
});
