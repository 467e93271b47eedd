import { readFileSync } from 'node:fs';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { expect, test } from 'vitest';
import { readDxf, readPathData, regionArea, regionBox, tidy } from '../../core/form/index.ts';
import { plan } from '../../core/plan/index.ts';
import { ProblemError } from '../../core/problem.ts';
import { flatSvg } from '../files/flat-sheet.ts';
import { cutFile, makePacket, stockFile } from '../index.ts';
import { testSheetFor, testStencil } from '../test-sheet.ts';
import { smallJob } from '../packet-jobs.ts';
import { fileVoice } from '../voice.ts';

const font = (name: string): Uint8Array => new Uint8Array(readFileSync(new URL(`../../../assets/OpenSans-${name}.ttf`, import.meta.url)));
const fonts = { regular: font('Regular'), semibold: font('Semibold'), bold: font('Bold') };

const film = { id: 'film', name: 'Film', thicknessMm: 0.12, leastBridgeMm: 2, leastOpeningMm: 1, prints: [200, 1000] };
const packetOf = async (material: object): Promise<Map<string, string>> => {
  const bundle = smallJob({ materials: [{ ...film, ...material }] });
  const files = await makePacket(bundle, plan(bundle), { fonts, printer: { page: 'a4', marginMm: 12 } });
  return new Map(files.map((f) => [f.path, new TextDecoder().decode(f.bytes)]));
};
/** What drops out: the knife paths of the group `cut`. */
const openings = (svg: string): ReturnType<typeof tidy> =>
  tidy(
    [...svg.slice(svg.indexOf('id="cut"'), svg.indexOf('id="edges"')).matchAll(/ d="([^"]+)"/g)].flatMap((m) => [
      ...readPathData(m[1]).rings,
    ]),
    'even-odd',
  );

test('two stencils on one sheet of stock: true size, nothing over the edge, cut apart by one line', async () => {
  const files = await packetOf({ stock: { widthMm: 240, heightMm: 130, grainMatters: true } });
  const svg = files.get('cut/stock-1.svg')!;
  expect(svg).toContain('width="240mm" height="130mm" viewBox="0 0 240 130"');
  const cut = openings(svg);
  // 40 × 40 with an island of 16 × 16 held by bridges, and 30 × 30.
  const alone = ['ring', 'block'].reduce(
    (sum, id) => sum + regionArea(openings(files.get(`cut/${id}.svg`)!.replace('id="sheet-edge"', 'id="edges"'))),
    0,
  );
  expect(regionArea(cut)).toBeCloseTo(alone, 1);
  const box = regionBox(cut);
  // Ring 30 to 70 mm from its sheet's left, block 55 to 85 mm from its own.
  expect([box.minX, box.minY, box.maxX, box.maxY].map((v) => Math.round(v))).toEqual([30, 30, 205, 70]);
  // One line between the two and one under both; the stock's own edges are not cut.
  expect(/<g id="edges"><path d="([^"]*)"/.exec(svg)![1]).toBe('M120 0L120 100M0 100L240 100');
});

test('the DXF says the same, with layers to cut, to mark and to fold', async () => {
  const files = await packetOf({ stock: { widthMm: 240, heightMm: 130 } });
  const dxf = files.get('cut/stock-1.dxf')!;
  for (const layer of ['CUT', 'MARK', 'FOLD']) expect(dxf).toContain(`\r\n${layer}\r\n`);
  const read = readDxf(dxf.replace(/MARK/g, '0MARK'), 'stock');
  expect(read.problems.filter((p) => p.severity === 'error')).toEqual([]);
  expect(regionArea(read.region)).toBeCloseTo(regionArea(openings(files.get('cut/stock-1.svg')!)), 0);
});

test('a turned stencil is the same stencil, a quarter round', async () => {
  const upright = openings((await packetOf({ stock: { widthMm: 125, heightMm: 105 } })).get('cut/stock-1.svg')!);
  const turned = openings((await packetOf({ stock: { widthMm: 105, heightMm: 125 } })).get('cut/stock-1.svg')!);
  expect(regionArea(turned)).toBeCloseTo(regionArea(upright), 1);
  const [a, b] = [regionBox(upright), regionBox(turned)];
  // The sheet is 120 × 100: what was y from the top is now x from the right.
  expect([b.minX, b.maxX, b.minY, b.maxY].map((v) => v.toFixed(2))).toEqual(
    [100 - a.maxY, 100 - a.minY, a.minX, a.maxX].map((v) => v.toFixed(2)),
  );
});

test('with a kerf the lines run half of it inside what drops out, in every cut file', () => {
  const plain = smallJob({ materials: [film] }),
    lasered = smallJob({ materials: [{ ...film, kerfMm: 0.4 }] });
  const d = (bundle: ReturnType<typeof smallJob>): string => {
    const made = plan(bundle);
    return cutFile(made, made.layers[1], 'svg').replace('id="sheet-edge"', 'id="edges"');
  };
  const [a, b] = [openings(d(plain)), openings(d(lasered))];
  expect(regionArea(a)).toBeCloseTo(900, 1);
  expect(regionArea(b)).toBeCloseTo(29.6 ** 2, 0);
  expect(regionBox(b).minX - regionBox(a).minX).toBeCloseTo(0.2, 2);
  expect(d(lasered)).toContain('Kerf 0.4\u00a0mm');
});

test('a kerf wider than an opening is refused, not written', () => {
  const bundle = smallJob({
    materials: [{ ...film, kerfMm: 5 }],
    forms: [
      {
        id: 'ring',
        name: 'Slit',
        outline: [
          [
            [0, 0],
            [40, 0],
            [40, 4],
            [0, 4],
          ],
        ],
      },
      {
        id: 'block',
        name: 'B',
        outline: [
          [
            [0, 0],
            [30, 0],
            [30, 30],
            [0, 30],
          ],
        ],
      },
    ],
  });
  const made = plan(bundle);
  expect(() => cutFile(made, made.layers[0], 'svg')).toThrow(ProblemError);
});

test('the register test is two stencils of slits, read by the same scales', () => {
  const sheet = testSheetFor(180, 240)!;
  for (const run of ['first', 'second'] as const) {
    const cut = openings(flatSvg(testStencil(sheet, run, 35), fileVoice('en')));
    const lines = sheet.lines.filter((l) => l.run === run);
    const box = regionBox(cut);
    expect(box.minX > 35 && box.minY > 35 && box.maxX < 215 && box.maxY < 275).toBe(true);
    // Slits of their own; the arms of the second run's crosses share their middle, which falls out with them.
    const area = lines.reduce((sum, l) => sum + l.widthMm * Math.hypot(l.x2Mm - l.x1Mm, l.y2Mm - l.y1Mm), 0);
    expect(regionArea(cut)).toBeCloseTo(area - (run === 'second' ? sheet.places.length : 0), 3);
  }
  expect(testSheetFor(60, 60)).toBeNull();
});

test('a sheet of stock in parts: as many pages as its used part takes, each with its name and the check line, in the packet and alone', async () => {
  const bundle = smallJob({ materials: [{ ...film, stock: { widthMm: 600, heightMm: 800, grainMatters: true } }] });
  const made = plan(bundle);
  const [sheet] = made.stock;
  const pagesOf = async (bytes: Uint8Array): Promise<string[]> => {
    const read = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
    return Promise.all(
      Array.from({ length: read.numPages }, async (_, i) =>
        (await (await read.getPage(i + 1)).getTextContent()).items
          .map((item) => ('str' in item ? item.str : ''))
          .join(' ')
          .replaceAll('\u00a0', ' '),
      ),
    );
  };
  const alone = await stockFile(made, sheet, 'a4', fonts);
  const pages = await pagesOf(alone);
  // Two stencils of 120 × 100 mm lie side by side: what is drawn of 600 × 800 mm is 244 × 104 mm, one page lying.
  expect(pages).toHaveLength(2);
  expect(pages[0]).toContain('One page holds it all');
  expect(pages[1]).toContain('100 mm on the ruler?');
  const files = await makePacket(bundle, made, { fonts, printer: { page: 'a4', marginMm: 12 } });
  expect(Buffer.from(files.find((f) => f.path === 'cut/stock-1.pdf')!.bytes).equals(Buffer.from(alone))).toBe(true);
  const tall = smallJob({ materials: [{ ...film, stock: { widthMm: 400, heightMm: 1000, grainMatters: true } }], stencilMarginMm: 80 });
  const joined = plan(tall);
  const inParts = await pagesOf(await stockFile(joined, joined.stock[0], 'letter', fonts));
  expect(inParts[0]).toMatch(/pages to join/);
  expect(inParts.slice(1).map((text) => /^[A-Z]\d/.exec(text.trim())?.[0])).toEqual(expect.arrayContaining(['A1', 'B1']));
});
