import { readFileSync } from 'node:fs';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, expect, test } from 'vitest';
import { plan, type Plan } from '../core/plan/index.ts';
import { makePacket } from './index.ts';
import { smallJob } from './packet-jobs.ts';

/** The finished PDF read back, page held against page: a printer who follows one finds no other that says something else. */

const font = (name: string): Uint8Array => new Uint8Array(readFileSync(new URL(`../../assets/OpenSans-${name}.ttf`, import.meta.url)));
const base = smallJob().job;
/** Paper that wears out, one cut used on both sides, two sizes of paper of which one is torn. */
const bundle = smallJob({
  materials: [{ ...base.materials[0], washable: false, prints: [10, 20], stock: { widthMm: 500, heightMm: 400 } }],
  papers: [
    { ...base.papers[0], count: 14 },
    { ...base.papers[0], id: 'torn', name: 'Torn', widthMm: 130, heightMm: 110, count: 5, edge: 'torn' },
  ],
  layers: [
    { id: 'first', name: 'First', cut: 'block', side: 'window', ink: 'blue', strength: 0.8 },
    { id: 'ring', name: 'Ring', cut: 'ring', side: 'window', ink: 'yellow', strength: 0.8 },
    { id: 'last', name: 'Last', cut: 'block', side: 'piece', ink: 'yellow', strength: 0.8 },
  ],
  screen: { insideWidthMm: 300, insideHeightMm: 400, mesh: { perCm: 77, threadMicrons: 48 }, hingeLiftMm: 3 },
  edition: { target: 8, setUpSheets: 4 },
});

let planned: Plan;
let pages: string[];
beforeAll(async () => {
  planned = plan(bundle);
  const fonts = { regular: font('Regular'), semibold: font('Semibold'), bold: font('Bold') };
  const files = await makePacket(bundle, planned, { fonts, printer: { page: 'a4', marginMm: 12 }, language: 'en' });
  const book = await getDocument({ data: new Uint8Array(files[0].bytes), verbosity: 0 }).promise;
  pages = await Promise.all(
    Array.from({ length: book.numPages }, async (_, i) =>
      (await (await book.getPage(i + 1)).getTextContent()).items
        .map((item) => ('str' in item ? item.str : ''))
        .join(' ')
        .replace(/[\s\u00a0]+/g, ' '),
    ),
  );
}, 240_000);

const page = (head: RegExp): string => {
  const found = pages.filter((p) => head.test(p));
  expect(found, String(head)).toHaveLength(1);
  return found[0];
};

test('the stops are drawn once, with one place for the image on both papers', () => {
  expect(page(/^3 Stops/)).toContain('20 mm across, 20 mm up');
});

test('every stencil has its card, nothing of it left out, with the page that its drawing is on', () => {
  const cards = pages.filter((p) => /^2 Cut/.test(p)).join(' ');
  expect(cards).not.toContain('…');
  expect([...cards.matchAll(/Proven: the sheet holds together; no strip is under 2 mm, no opening under 1 mm\./g)]).toHaveLength(3);
  const drawn = [...cards.matchAll(/True size: page (\d+)\./g)].map(([, at]) => Number(at));
  expect(drawn).toHaveLength(3);
  planned.layers.forEach((layer, i) => expect(pages[drawn[i] - 1]).toContain(`${layer.name} — run ${layer.run}`));
});

test('each caution is said once, where that work is done', () => {
  for (const [said, head] of [
    ['Preservatives in water-based ink', /^1 Mix/],
    ['Pupils cut only as their age and local rules allow', /^2 Cut/],
    ['Prop the raised screen safely', /^3 Set up/],
    ['Hands out before the screen comes down', /^4 Print: First/],
    ['Goggles on when you spray a screen out', /^4 Print: First/],
    ['Fans, lamps and their leads stay dry', /^4 Print: First/],
    ['Scrape and wipe the ink off before rinsing', /^4 Print: First/],
  ] as const)
    expect(pages.filter((p) => p.includes(said)).map((p) => head.test(p))).toEqual([true]);
});

test('card and day agree on pulls, set-up sheets and where the next stencil comes', () => {
  const day = pages.filter((p) => /^4 The day/.test(p)).join(' ');
  const pullsOf = [...day.matchAll(/Pull (\d+) to set up, then all (\d+) sheets\.((?: After [A-Z]\d+ the next stencil\.)*)/g)];
  expect(pullsOf).toHaveLength(3);
  planned.layers.forEach((layer, i) => {
    const card = page(new RegExp(`^4 Print: ${layer.name}`));
    const pulls = Number(/in the pot, (\d+) pulls/.exec(card)![1]);
    const [, newsprint, offcuts] = /(\d+) newsprint, (\d+) offcuts?/.exec(card)!;
    const [, setUp, sheets, changes] = pullsOf[i];
    const afterOnCard = [...card.matchAll(/After sheet ([A-Z]\d+): stencil (\d+) of (\d+), check the register on (\d+) offcuts?/g)];
    const checks = afterOnCard.reduce((sum, [, , , , n]) => sum + Number(n), 0);
    expect(afterOnCard.length).toBeGreaterThan(0);
    expect(pulls).toBe(Number(setUp) + Number(sheets) + checks);
    expect(Number(newsprint) + Number(offcuts)).toBe(Number(setUp) + checks);
    expect([...changes.matchAll(/After ([A-Z]\d+)/g)].map(([, s]) => s)).toEqual(afterOnCard.map(([, s]) => s));
    // As many boxes to tick as there are sheets.
    const boxes = new Set([...card.matchAll(/ ([AB]\d+)(?= )/g)].map(([, s]) => s));
    expect(boxes.size).toBe(planned.edition.sheetNames.length);
    const of = Number(afterOnCard[0][3]);
    expect(planned.cuts.flatMap((c) => c.uses).find((u) => u.layerId === layer.id)!.sheets).toHaveLength(of);
  });
});

test('a piece that has no border is taped on the image’s edge; the others are not', () => {
  expect(page(/^4 Print: Last/)).toContain('has no border: tape the mesh on the paper side exactly on the image’s edge');
  expect(page(/^4 Print: First/)).not.toContain('has no border');
});

test('the cover’s metres are those of every sheet that is cut', () => {
  const metres = planned.cuts.reduce((sum, c) => sum + c.knifeMetres, 0);
  expect(pages[0]).toContain(`${metres.toFixed(1)} m`);
  const each = planned.layers.reduce((sum, l) => sum + l.stencil.knife.metres, 0);
  expect(metres).toBeGreaterThan(each);
});

test('taping says which side, and nowhere asks for tape under the blade', () => {
  const setUp = page(/^3 Set up the screen/);
  expect(setUp).toContain('on the paper side');
  expect(setUp).toContain('no tape on the squeegee side');
});
