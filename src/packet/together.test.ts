import { readFileSync } from 'node:fs';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, describe, expect, test } from 'vitest';
import { inEnglish } from '../../test/said.ts';
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
  pages = await pagesOf(bundle, planned);
}, 240_000);

async function pagesOf(of: typeof bundle, made: Plan): Promise<string[]> {
  const fonts = { regular: font('Regular'), semibold: font('Semibold'), bold: font('Bold') };
  const files = await makePacket(of, made, { fonts, printer: { page: 'a4', marginMm: 12 }, language: 'en' });
  const book = await getDocument({ data: new Uint8Array(files[0].bytes), verbosity: 0 }).promise;
  return Promise.all(
    Array.from({ length: book.numPages }, async (_, i) =>
      (await (await book.getPage(i + 1)).getTextContent()).items
        .map((item) => ('str' in item ? item.str : ''))
        .join(' ')
        .replace(/[\s\u00a0]+/g, ' '),
    ),
  );
}

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

describe('what a run, a paper and a stencil have of their own', () => {
  const dots = Array.from({ length: 6 }, (_, i) =>
    Array.from({ length: 60 }, (_p, k): [number, number] => [
      12 * i + 4 * Math.cos((k * Math.PI) / 30),
      (i === 5 ? 3 : 4) * Math.sin((k * Math.PI) / 30),
    ]),
  );
  const clear = (id: string, name: string, role: string): object => ({ id, name, from: 'clear', role, densityGPerMl: 1.05 });
  const own = (layer: object, papers: object = {}, more: object = {}): typeof bundle =>
    smallJob({
      forms: [...base.forms, { id: 'dots', name: 'Dots', outline: dots }],
      cuts: [
        base.cuts[1],
        { id: 'dots', name: 'Dots', material: 'film', parts: [{ form: 'dots', xMm: 40, yMm: 30 }], sheetMm: [180, 120] },
      ],
      layers: [
        { id: 'block', name: 'Block', cut: 'block', side: 'window', ink: 'blue', strength: 0.5 },
        { id: 'dots', name: 'Dots', cut: 'dots', side: 'window', ink: 'yellow', strength: 0.5, ...layer },
      ],
      inks: [...base.inks, clear('clear', 'Clear base', 'transparent-base'), clear('extender', 'Extender', 'extender-base')],
      papers: [{ ...base.papers[0], count: 6, ...papers }],
      screen: { insideWidthMm: 300, insideHeightMm: 400, mesh: { perCm: 77, threadMicrons: 48 } },
      ...more,
    });
  const coarse = { mesh: { perCm: 43, threadMicrons: 80 } };

  test('a pot with two bases: shares in the Plan, on the mixing card, in what is to be bought', async () => {
    const two = own({
      bases: [
        { ink: 'clear', share: 0.7 },
        { ink: 'extender', share: 0.3 },
      ],
    });
    const made = plan(two);
    const parts = made.layers[1].mix!.parts;
    expect(parts.map((p) => [p.inkId, Math.round(p.share * 1000) / 1000])).toEqual([
      ['yellow', 0.5],
      ['clear', 0.35],
      ['extender', 0.15],
    ]);
    const said = await pagesOf(two, made);
    expect(said.find((p) => /^1 Mix/.test(p))).toMatch(/Yellow 3\.3 [\d.]+ g Clear base 2\.3 [\d.]+ g Extender 1 [\d.]+ g/);
    expect(said.join(' ')).toMatch(/To buy.*Extender (for run 2 )?[\d.]+ g/);
    // In proportion, and said, where they do not come to the whole.
    const off = plan(
      own({
        bases: [
          { ink: 'clear', share: 0.35 },
          { ink: 'extender', share: 0.15 },
        ],
      }),
    );
    expect(off.layers[1].mix!.parts).toEqual(parts);
    expect(off.problems.find((p) => p.code === 'bases-share')?.path).toBe('layers[1].bases');
  });

  test('an extender that clouds makes another colour than the clear base alone', () => {
    const lab = (L: number, a: number, b: number): object => ({ kind: 'lab', lab: [L, a, b] });
    const milky = {
      id: 'extender',
      name: 'Extender',
      role: 'extender-base',
      from: 'two-grounds',
      white: lab(95, 0, 0),
      overWhite: lab(94, 0, 1),
      black: lab(10, 0, 0),
      overBlack: lab(40, 0, 0),
    };
    const labOf = (bases: object[]): readonly number[] =>
      plan(own({ ink: 'blue', bases }, {}, { inks: [...base.inks, clear('clear', 'Clear base', 'transparent-base'), milky] })).layers[1]
        .swatch!.lab;
    const [alone, mixed, all] = [
      labOf([{ ink: 'clear', share: 1 }]),
      labOf([
        { ink: 'clear', share: 0.5 },
        { ink: 'extender', share: 0.5 },
      ]),
      labOf([{ ink: 'extender', share: 1 }]),
    ];
    expect(mixed[0]).toBeGreaterThan(alone[0] + 0.5);
    expect(all[0]).toBeGreaterThan(mixed[0] + 0.5);
  });

  test('a mesh of its own: film, grams, colour, the screen changed on card and day, and on the set-up page', async () => {
    const usual = plan(own({}));
    const bundleOfMesh = own(coarse);
    const made = plan(bundleOfMesh);
    const ratio = made.layers[1].wetMicrons / usual.layers[1].wetMicrons;
    // Usual meshes: 53 against 26 cm³ of ink on a square metre.
    expect(ratio).toBeCloseTo(53 / 26, 6);
    expect(made.layers[0].wetMicrons).toBe(usual.layers[0].wetMicrons);
    expect(made.layers[1].mix!.printedGrams).toBeGreaterThan(1.5 * usual.layers[1].mix!.printedGrams);
    // More film is more colour.
    expect(made.layers[1].swatch!.lab[2]).toBeGreaterThan(usual.layers[1].swatch!.lab[2] + 3);
    expect(made.layers[0].swatch).toEqual(usual.layers[0].swatch);
    const said = await pagesOf(bundleOfMesh, made);
    const card = (name: string): string => said.find((p) => p.startsWith(`4 Print: ${name}`))!;
    expect(card('Dots')).toMatch(/Wet film about 42 .*Change the screen: mesh 43-80\./);
    expect(card('Block')).not.toContain('Change the screen');
    expect(said.find((p) => /^4 The day/.test(p))).toContain('screen 43-80');
    expect(said.find((p) => /^3 Set up/.test(p))).toContain('Run 2, Dots: a screen of its own, mesh 43-80');
    expect(made.edition.facts.layers.map((l) => inEnglish(l.mesh))).toEqual(
      ['77 threads a cm, 48 µm', '43 threads a cm, 80 µm'].map((t) => t.replace(/ (?=µ)/, '\u00a0')),
    );
  });

  test('fine shapes print darker in the forecast by what their edges hold; a flat keeps its colour', () => {
    const made = plan(own({}));
    const [flat, fine] = made.layers;
    expect(flat.ridge.share).toBeLessThan(fine.ridge.share);
    expect(fine.ridge.share).toBeGreaterThan(0.5);
    expect(fine.filmTimes).toBeGreaterThan(1.3);
    expect(fine.filmTimes).toBeLessThanOrEqual((1 + fine.ridge.meanTimes) / 2);
    // The same dots from a sheet without thickness: no ridge, and the colour of the film alone.
    const thin = plan(own({}, {}, { materials: [{ ...base.materials[0], thicknessMm: 0.001 }] }));
    expect(thin.layers[1].filmTimes).toBeCloseTo(1, 1);
    expect(fine.swatch!.lab[2]).toBeGreaterThan(thin.layers[1].swatch!.lab[2] + 2);
    const overlap = (of: Plan): number => of.papers[0].overlaps.find((o) => o.layers.join() === 'dots')!.lab[2];
    expect(overlap(made)).toBeGreaterThan(overlap(thin) + 2);
  });

  test('circles that fit a punch are punched, said on the card, and cost the knife nothing', async () => {
    const knife = own({}, {}, { knife: { punchesMm: [8] } });
    const made = plan(knife);
    const cut = plan(own({})).layers[1].stencil.knife;
    const { punched, metres } = made.layers[1].stencil.knife;
    // Five circles; the sixth is squeezed.
    expect(punched.map((p) => [p.acrossMm, p.atMm.length])).toEqual([[8, 5]]);
    expect(cut.metres - metres).toBeCloseTo((5 * Math.PI * 8) / 1000, 3);
    expect((await pagesOf(knife, made)).filter((p) => /^2 Cut/.test(p)).join(' ')).toContain('Punch 5 circles of 8 mm');
  });

  test('a stencil sheet of its own size is the sheet on card and shelf, and the tape holds the narrower border', () => {
    const made = plan(own({}));
    const { sheet } = made.layers[1].stencil;
    expect([sheet.maxX - sheet.minX, sheet.maxY - sheet.minY]).toEqual([180, 120]);
    const narrow = plan(own({}, {}, { cuts: [{ ...base.cuts[1], sheetMm: [100, 80] }], layers: [base.layers[1]] }));
    const { stencil, image } = narrow.press.taping!;
    expect([image.xMm - stencil.xMm, image.yMm - stencil.yMm]).toEqual([10, 10]);
    const small = plan(own({}, {}, { cuts: [{ ...base.cuts[1], sheetMm: [85, 200] }], layers: [base.layers[1]] }));
    expect(small.problems.find((p) => p.code === 'stencil-sheet-small')?.path).toBe('cuts[0].sheetMm');
  });

  test('hard-sized paper dries later, soft paper sooner; paper that goes wavy is named with the run that wets it', () => {
    const lastDry = (absorbency: string): number => plan(own({}, { absorbency })).edition.day!.lastDry;
    expect(lastDry('low')).toBeGreaterThan(lastDry('usual'));
    expect(lastDry('high')).toBeLessThan(lastDry('usual'));
    const flood = { ...base.layers[1], cut: 'block' };
    const big = { cuts: [{ ...base.cuts[1], parts: [{ form: 'block', xMm: 40, yMm: 30, scale: 1.6 }] }], layers: [flood] };
    const note = plan(own({}, { cockles: true }, big)).problems.find((p) => p.code === 'paper-cockles')!;
    expect(inEnglish(note.message)).toBe(
      '“White” goes wavy where much wet ink lies: run 1 (Block, 48 % of the image).'.replace(/ %/, '\u00a0%'),
    );
    expect(plan(own({}, { cockles: false }, big)).problems.map((p) => p.code)).not.toContain('paper-cockles');
  });
});
