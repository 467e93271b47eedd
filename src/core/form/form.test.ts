import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { inEnglish, refusalOf, refusedBy } from '../../../test/said.ts';
import { tellProblem } from '../../words/index.ts';
import { ProblemError } from '../problem.ts';
import { seeded } from '../random.ts';
import {
  boxHolds,
  common,
  offsetRegion,
  parts,
  place,
  prepareDrawings,
  rasterize,
  rasterizeInto,
  readSvg,
  rectangle,
  regionArea,
  regionBox,
  repeatPlacements,
  ringHolds,
  strip,
  takeAway,
  toTrueSize,
  unite,
} from './index.ts';
import type { Region } from './index.ts';

beforeAll(() => prepareDrawings(readFileSync('node_modules/@resvg/resvg-wasm/index_bg.wasm')));

const page = (inside: string, attributes = 'width="100mm" height="50mm" viewBox="0 0 100 50"'): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${inside}</svg>`;
const area = (inside: string, attributes?: string): number => regionArea(readSvg(page(inside, attributes), 'x.svg').region);
const codes = (text: string): string[] => {
  try {
    return readSvg(text, 'x.svg').problems.map((p) => p.code);
  } catch (error) {
    if (error instanceof ProblemError) return error.problems.map((p) => `!${p.code}`);
    throw error;
  }
};

describe('a drawing becomes a form', () => {
  test('physical sizes and viewBox give true millimetres', () => {
    const drawing = readSvg(page('<rect x="10" y="5" width="30" height="10"/>'), 'x.svg');
    expect([drawing.widthMm, drawing.heightMm, drawing.hasPhysicalUnits]).toEqual([100, 50, true]);
    const box = regionBox(drawing.region);
    for (const [got, want] of [
      [box.minX, 10],
      [box.maxX, 40],
      [box.minY, 5],
      [box.maxY, 15],
    ])
      expect(got).toBeCloseTo(want, 4);
  });
  test('what XML escapes is read: in titles, in ids and in references to them', () => {
    const clip = '<defs><clipPath id="a&amp;&quot;b"><rect width="4" height="4"/></clipPath></defs>';
    expect(area(`<title>Salt &amp; sea &lt;1&gt;</title>${clip}<rect width="9" height="9" clip-path="url(#a&amp;&quot;b)"/>`)).toBeCloseTo(
      16,
      3,
    );
    const declared = '<!DOCTYPE svg [<!ENTITY amp "&#38;#38;"><!ENTITY lt "&#38;#60;">]>';
    expect(codes(`${declared}${page('<desc>a &amp; b &lt; c</desc><rect id="x" width="9" height="9"/>')}`)).toEqual([]);
  });
  test('pixels are 1/96 inch (CSS Values 4, absolute lengths)', () => {
    const drawing = readSvg(page('<rect width="96" height="48"/>', 'width="96" height="48"'), 'x.svg');
    expect(drawing.widthMm).toBeCloseTo(25.4, 9);
    expect(drawing.hasPhysicalUnits).toBe(false);
  });
  test.each([
    ['inches', 'width="4in" height="2in" viewBox="0 0 100 50"', 101.6 / 100],
    ['points', 'width="72pt" height="36pt" viewBox="0 0 100 50"', 25.4 / 100],
    ['a stretched page', 'width="200mm" height="50mm" viewBox="0 0 100 50" preserveAspectRatio="none"', Math.SQRT2],
  ])('%s', (_, attributes, scale) => {
    expect(area('<rect x="2" y="2" width="20" height="10"/>', attributes)).toBeCloseTo(200 * scale * scale, 2);
  });
  test('a circle keeps its area within a tenth of a percent', () => {
    expect(area('<circle cx="50" cy="25" r="20"/>') / (Math.PI * 400)).toBeCloseTo(1, 3);
  });
  test('even-odd leaves a hole where non-zero fills it', () => {
    const d = 'M0 0H40V40H0Z M10 10H30V30H10Z';
    expect(area(`<path fill-rule="evenodd" d="${d}"/>`)).toBeCloseTo(1200, 2);
    expect(area(`<path d="${d}"/>`)).toBeCloseTo(1600, 2);
  });
  test('classes, use, nested and mirrored transforms are followed', () => {
    expect(
      area('<style>.n{fill:none}.y{fill:#123}</style><rect class="n" width="9" height="9"/><rect class="y" width="3" height="4"/>'),
    ).toBeCloseTo(12, 3);
    expect(area('<defs><rect id="r" width="4" height="5"/></defs><use href="#r"/><use href="#r" x="10"/>')).toBeCloseTo(40, 3);
    const mirrored = readSvg(page('<g transform="translate(50 0)"><g transform="scale(-2 1)"><path d="M0 0H10V10Z"/></g></g>'), 'x.svg');
    expect(regionArea(mirrored.region)).toBeCloseTo(100, 2);
    expect(regionBox(mirrored.region).minX).toBeCloseTo(30, 3);
  });
  test('drawn lines become filled shapes', () => {
    expect(area('<line x1="10" y1="10" x2="60" y2="10" stroke="#000" stroke-width="2"/>')).toBeCloseTo(100, 2);
    expect(area('<line x1="10" y1="10" x2="60" y2="10" stroke="#000" stroke-width="2" stroke-linecap="square"/>')).toBeCloseTo(104, 2);
    expect(area('<line x1="10" y1="10" x2="60" y2="10" stroke="#000" stroke-width="2" stroke-dasharray="4 2"/>')).toBeCloseTo(68, 2);
    expect(area('<circle cx="25" cy="25" r="20" fill="none" stroke="#000" stroke-width="2"/>') / (2 * Math.PI * 40)).toBeCloseTo(1, 3);
    expect(area('<path d="M5 5H25V25" fill="none" stroke="#000" stroke-width="4"/>')).toBeCloseTo(160, 1);
  });
  test('a stretched drawing has stretched lines', () => {
    expect(area('<g transform="scale(3 1)"><line x1="5" y1="5" x2="5" y2="25" stroke="#000" stroke-width="2"/></g>')).toBeCloseTo(120, 1);
  });
  test('clip paths and black-and-white masks cut', () => {
    expect(
      area('<clipPath id="c"><rect width="10" height="50"/></clipPath><rect clip-path="url(#c)" width="30" height="10"/>'),
    ).toBeCloseTo(100, 2);
    expect(
      area(
        '<clipPath id="c" clipPathUnits="objectBoundingBox"><rect width=".5" height="1"/></clipPath><rect clip-path="url(#c)" x="10" width="30" height="10"/>',
      ),
    ).toBeCloseTo(150, 2);
    expect(
      area(
        '<mask id="m"><rect width="100" height="50" fill="#fff"/><rect width="5" height="5"/></mask><rect mask="url(#m)" width="30" height="10"/>',
      ),
    ).toBeCloseTo(275, 2);
  });
  test('gradients count as filled, what is transparent or hidden does not', () => {
    expect(
      area(
        '<linearGradient id="g"><stop stop-color="red"/><stop offset="1"/></linearGradient><rect fill="url(#g)" width="10" height="10"/><rect x="20" width="5" height="5" fill-opacity="0"/><rect x="30" width="5" height="5" visibility="hidden"/><g opacity="0"><rect x="40" width="9" height="9"/></g>',
      ),
    ).toBeCloseTo(100, 2);
  });
  test('a missing xmlns and a prefix are mended', () => {
    expect(regionArea(readSvg('<svg width="10mm" height="10mm"><rect width="20" height="20"/></svg>', 'x').region)).toBeGreaterThan(20);
    expect(
      regionArea(
        readSvg(
          '<s:svg xmlns:s="http://www.w3.org/2000/svg" width="10mm" height="10mm" viewBox="0 0 10 10"><s:rect width="2" height="3"/></s:svg>',
          'x',
        ).region,
      ),
    ).toBeCloseTo(6, 3);
  });
  test('coordinates of a thousand million are cut off at the page', () => {
    expect(area('<rect width="10" height="1e9"/>')).toBeCloseTo(500, 1);
    expect(area('<path d="M-1e9 10H1e9V20H-1e9Z"/>')).toBeCloseTo(1000, 1);
  });
  test('thousands of paths are read in reasonable time', () => {
    const many = Array.from(
      { length: 3000 },
      (_, i) => `<circle cx="${(i % 60) * 1.6 + 1}" cy="${Math.floor(i / 60) + 0.5}" r="0.4"/>`,
    ).join('');
    expect(parts(readSvg(page(many), 'x').region)).toHaveLength(3000);
  });
});

describe('drawings that cannot be cut say so', () => {
  test.each([
    ['text', page('<text x="3" y="9">tide</text>'), '!drawing-has-text'],
    ['a picture', page('<image href="data:image/png;base64,AAAA" width="5" height="5"/>'), '!drawing-has-picture'],
    ['a picture from elsewhere', page('<image href="http://example.org/a.png" width="5" height="5"/>'), '!drawing-has-picture'],
    ['no size', page('<rect width="3" height="3"/>', 'width="0" height="50"'), '!drawing-no-size'],
    ['nothing', page('<rect width="0" height="3"/>'), '!drawing-empty'],
    ['everything off the page', page('<rect x="500" width="3" height="3"/>'), '!drawing-empty'],
    ['not a number', page('<path d="MNaN NaN L3 3"/>'), '!drawing-empty'],
    ['another file', '<html><body/></html>', '!drawing-not-svg'],
    ['an empty file', '', '!drawing-not-svg'],
    ['half a file', '<svg xmlns="http://www.w3.org/2000/svg"><rect', '!drawing-not-svg'],
    ['groups a million deep', `<svg>${'<g>'.repeat(1_000_000)}`, '!drawing-too-deep'],
    ['entities in entities', '<!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><svg>&b;</svg>', '!drawing-has-entities'],
    [
      'repeats of repeats',
      page(
        `<defs>${Array.from({ length: 30 }, (_, i) => `<g id="g${i + 1}"><use href="#g${i}"/><use href="#g${i}"/></g>`).join('')}<rect id="g0" width="1" height="1"/></defs><use href="#g30"/>`,
      ),
      '!drawing-too-large',
    ],
    ['twenty million letters', `<svg>${' '.repeat(20_000_001)}</svg>`, '!drawing-too-large'],
    [
      'a place a thousand million away',
      page('<g transform="translate(-1000000000 -1000000000)"><path d="M1000000010 1000000010h50v30h-50z"/></g>'),
      '!drawing-far-away',
    ],
    [
      'a scribble without end',
      page(
        `<path fill="none" stroke="#000" d="M0 0${Array.from({ length: 6000 }, (_, i) => `L${(i * 37.7) % 100} ${(i * 61.3) % 97}`).join('')}"/>`,
      ),
      '!drawing-tangled',
    ],
    [
      'a picture that a pattern shows',
      page(
        '<defs><pattern id="p" width="1" height="1"><use href="#i"/></pattern><image id="i" href="data:image/png;base64,AAAA" width="5" height="5"/></defs><rect fill="url(#p)" width="9" height="9"/>',
      ),
      '!drawing-has-picture',
    ],
  ])('%s', (_, text, code) => expect(codes(text)).toEqual([code]));
  test('notes, pictures and groups that are switched off are nobody’s business', () => {
    expect(
      codes(
        page(
          '<g style="display:none"><text>size 3</text><image href="a.png" width="5" height="5"/></g><defs><image id="i" href="a.png" width="5" height="5"/></defs><rect width="9" height="9"/>',
        ),
      ),
    ).toEqual([]);
  });
  test('what a style moves or sizes is moved and sized; what can’t be followed is said', () => {
    const { minX, maxX } = regionBox(
      readSvg(page('<rect style="transform:rotate(0.125turn);transform-origin:50px 25px" x="40" y="15" width="20" height="20"/>'), 'x')
        .region,
    );
    expect(maxX - minX).toBeCloseTo(20 * Math.SQRT2, 2);
    expect(area('<circle style="r:10px;cx:50px;cy:25px"/>')).toBeCloseTo(Math.PI * 100, 0);
    expect(codes(page('<style>.a{transform:rotate(4deg)}</style><rect class="a" width="9" height="9"/>'))).toEqual([
      'drawing-moved-by-style',
    ]);
    expect(codes(page('<rect width="9" height="9"/><rect filter="url(#gone)" x="20" width="9" height="9"/>'))).toEqual([
      'drawing-has-effects',
    ]);
    expect(area('<rect width="9" height="9"/><rect filter="url(#gone)" x="20" width="9" height="9"/>')).toBeCloseTo(162, 1);
  });
  test('paint that is clear from end to end is no shape', () => {
    expect(
      area(
        '<linearGradient id="g"><stop stop-opacity="0"/><stop offset="1" stop-opacity="0"/></linearGradient><rect fill="url(#g)" width="9" height="9"/><rect fill="rgb(0 0 0 / 0)" x="20" width="9" height="9"/><rect x="40" width="9" height="9"/>',
      ),
    ).toBeCloseTo(81, 2);
  });
  test('all that a knife cannot cut is named at once, each with its line in the file', () => {
    const text = page('\n<image width="9" height="9"/>\n<text>3 mm</text>');
    expect(refusalOf(() => readSvg(text, 'kelp.svg')).split('\n')).toEqual([
      'kelp.svg, line 2: The drawing holds a picture made of pixels; a knife needs outlines. Trace the picture as a photograph of its own, or take it out of the drawing.',
      'kelp.svg, line 3: The drawing holds text (“3 mm”); a knife needs outlines. Turn the text into outlines in the program it came from, then save it again.',
    ]);
    const [, german] = refusedBy(() => readSvg(text, 'kelp.svg'));
    expect(tellProblem(german, { language: 'de', units: 'in' })).toContain('kelp.svg, Zeile 3: Die Zeichnung enthält Text („3 mm“)');
  });
  test('after a refusal the next drawing is read as if nothing had been', () => {
    expect(codes('<svg><svg')).toEqual(['!drawing-not-svg']);
    expect(area('<rect width="10" height="10"/>')).toBeCloseTo(100, 3);
  });
  test.each([
    ['scripts', page('<script>alert(1)</script><rect width="9" height="9" onclick="x()"/>'), 'drawing-has-script'],
    ['references to other files', page('<use href="http://example.org/x.svg#a"/><rect width="9" height="9"/>'), 'drawing-reaches-out'],
    [
      'style sheets from elsewhere',
      page('<style>@import url(http://example.org/a.css);</style><rect width="9" height="9"/>'),
      'drawing-reaches-out',
    ],
    [
      'patterns',
      page(
        '<pattern id="p" width="2" height="2" patternUnits="userSpaceOnUse"><circle r="1"/></pattern><rect fill="url(#p)" width="9" height="9"/>',
      ),
      'drawing-has-pattern',
    ],
    ['shapes over the page’s edge', page('<rect x="90" width="50" height="9"/>'), 'drawing-beyond-page'],
  ])('%s are left out with a warning', (_, text, code) => expect(codes(text)).toContain(code));
  test('a use of itself is no endless loop', () =>
    expect(codes(page('<g id="a"><use href="#a"/><rect width="3" height="3"/></g>')).filter((c) => c.startsWith('!drawing-too'))).toEqual(
      [],
    ));
});

describe('shapes are combined, placed and turned into pixels', () => {
  const square = rectangle(0, 0, 10, 10);
  const ring = takeAway(square, rectangle(3, 3, 4, 4));
  test('union, difference and common area', () => {
    expect(regionArea(unite([square, rectangle(5, 5, 10, 10)]))).toBeCloseTo(175, 6);
    expect(regionArea(ring)).toBeCloseTo(84, 6);
    expect(regionArea(common(square, rectangle(5, 5, 10, 10)))).toBeCloseTo(25, 6);
    expect(regionArea(offsetRegion(square, 1, 'miter'))).toBeCloseTo(144, 3);
    expect(regionArea(offsetRegion(square, 1, 'round'))).toBeCloseTo(140 + Math.PI, 1);
    expect(regionArea(strip([0, 0, 10, 0], 2))).toBeCloseTo(20, 6);
  });
  test('a region drawn the other way round is the same region', () => {
    const turned: Region = { rings: [Float64Array.of(0, 0, 0, 10, 10, 10, 10, 0)] };
    expect(regionArea(unite([turned, rectangle(5, 0, 10, 10)]))).toBeCloseTo(150, 6);
  });
  test('pieces come from top to bottom', () => {
    const found = parts(unite([rectangle(0, 30, 5, 5), rectangle(20, 0, 5, 5), ring]));
    expect(found.map((p) => regionBox(p).minX)).toEqual([0, 20, 0]);
    expect(found[0].rings).toHaveLength(2);
  });
  test('the middle of the box lands where it was placed, turned, enlarged, mirrored', () => {
    const placed = place(ring, [{ xMm: 100, yMm: 50, angleDeg: 45, scale: 2, mirror: true }]);
    const box = regionBox(placed);
    expect((box.minX + box.maxX) / 2).toBeCloseTo(100, 2);
    expect((box.minY + box.maxY) / 2).toBeCloseTo(50, 2);
    expect(regionArea(placed)).toBeCloseTo(84 * 4, 1);
  });
  test('an L turned a quarter to the right stands as it should, mirrored first', () => {
    const ell = unite([rectangle(0, 0, 2, 6), rectangle(0, 4, 4, 2)]);
    const at = (mirror: boolean): Uint8Array =>
      rasterize(place(ell, [{ xMm: 3, yMm: 2, angleDeg: 90, scale: 1, mirror }]), {
        originXMm: 0,
        originYMm: 0,
        mmPerPx: 2,
        width: 3,
        height: 2,
      });
    expect([...at(false)]).toEqual([1, 1, 1, 1, 0, 0]);
    expect([...at(true)]).toEqual([1, 0, 0, 1, 1, 1]);
  });
  test('rows, around and scattered', () => {
    const first = { xMm: 10, yMm: 10, angleDeg: 0, scale: 1, mirror: false };
    const area10 = { minX: 0, minY: 0, maxX: 100, maxY: 100 };
    expect(
      repeatPlacements(first, { kind: 'rows', columns: 3, rows: 2, stepXMm: 20, stepYMm: 30 }, area10).placements.at(-1),
    ).toMatchObject({ xMm: 50, yMm: 40 });
    const round = repeatPlacements(first, { kind: 'around', count: 4, centreMm: [20, 10], turnForms: true }, area10).placements;
    expect(round[1].xMm).toBeCloseTo(20, 9);
    expect(round[1].yMm).toBeCloseTo(0, 9);
    expect(round[1].angleDeg).toBe(90);
    const scatter = (seed: number) =>
      repeatPlacements(first, { kind: 'scatter', count: 30, seed, leastMm: 10, turn: true }, area10).placements;
    expect(scatter(4)).toEqual(scatter(4));
    expect(scatter(5)).not.toEqual(scatter(4));
    const middles = scatter(4);
    for (const a of middles)
      for (const b of middles) if (a !== b) expect(Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm)).toBeGreaterThanOrEqual(10);
    const full = repeatPlacements(first, { kind: 'scatter', count: 500, seed: 1, leastMm: 30, turn: false }, area10);
    expect(full.problems[0].code).toBe('scatter-full');
    const n = full.placements.length;
    expect(inEnglish(full.problems[0].message)).toBe(`Only ${n} of 500 copies fit with 30\u00a0mm between them.`);
    expect(inEnglish(full.problems[0].message, { language: 'de', units: 'in' })).toBe(
      `Nur ${n} von 500 Wiederholungen passen mit 1,181\u00a0in Abstand zueinander.`,
    );
  });
  test('true size from one side', () => {
    expect(regionBox(toTrueSize(ring, { widthMm: 50 }))).toEqual({ minX: 0, minY: 0, maxX: 50, maxY: 50 });
  });
  test('layers share a byte', () => {
    const grid = { originXMm: 0, originYMm: 0, mmPerPx: 1, width: 12, height: 1 };
    const target = new Uint8Array(12);
    rasterizeInto(target, 0, rectangle(0, 0, 6, 1), grid);
    rasterizeInto(target, 3, rectangle(4, 0, 100, 1), grid);
    expect([...target]).toEqual([1, 1, 1, 1, 9, 9, 8, 8, 8, 8, 8, 8]);
  });
});

test('a point lies in a ring when the ring winds round it: whichever way it runs, in notches and beside slanting edges', () => {
  // Against the sum of the angles under which the edges are seen: 2π round a point inside, 0 outside.
  const winding = (ring: Float64Array, x: number, y: number): number => {
    let sum = 0;
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const [ax, ay, bx, by] = [ring[j] - x, ring[j + 1] - y, ring[i] - x, ring[i + 1] - y];
      sum += Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
    }
    return Math.round(Math.abs(sum) / (2 * Math.PI));
  };
  const { next } = seeded(7);
  for (let n = 0; n < 40; n++) {
    const corners = 3 + Math.floor(next() * 9);
    const star = Array.from({ length: corners }, (_, i) => {
      const turn = ((n % 2 ? -i : i) * 2 * Math.PI) / corners;
      const far = 10 + 40 * next();
      return [20 + far * Math.cos(turn), -30 + far * Math.sin(turn)];
    });
    const ring = Float64Array.from(star.flat());
    for (let k = 0; k < 40; k++) {
      const [x, y] = [-40 + 120 * next(), -90 + 120 * next()];
      expect(ringHolds(ring, x, y)).toBe(winding(ring, x, y) === 1);
    }
  }
});

test('a box holds another that reaches no further on any side', () => {
  const box = { minX: 0, minY: 0, maxX: 10, maxY: 10 };
  expect(boxHolds(box, box)).toBe(true);
  expect(boxHolds(box, { minX: 1, minY: 2, maxX: 9, maxY: 8 })).toBe(true);
  for (const beyond of [{ minX: -1 }, { minY: -1 }, { maxX: 11 }, { maxY: 11 }]) expect(boxHolds(box, { ...box, ...beyond })).toBe(false);
});
