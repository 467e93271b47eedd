import { readFileSync } from 'node:fs';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { JobBundle } from '../core/job/index.ts';
import { plan, type Plan } from '../core/plan/index.ts';
import { languages } from '../words/index.ts';
import { makePacket, stockFile, type PacketFile } from './index.ts';
import { smallJob } from './packet-jobs.ts';
import { openBook } from './pdf/book.ts';
import { printable } from './pdf/type.ts';

const font = (name: string): Uint8Array => new Uint8Array(readFileSync(new URL(`../../assets/OpenSans-${name}.ttf`, import.meta.url)));
const fonts = { regular: font('Regular'), semibold: font('Semibold'), bold: font('Bold') };

/** Names that could be taken for words of the program or for lengths, and letters that the fonts lack. */
const layers = ['Window', 'Press', 'Knife', 'Layer 1', 'Gap 9.5 mm', '“quotation marks”', 'שכבה ראשונה', 'طبقة 🦀'];
const own = {
  title: 'Sheet 12.5 mm: open',
  maker: 'Ink and Paper, 3 in',
  inks: ['Retarder', 'Piece 2.5 g'],
  paper: 'Stops and Register',
  material: 'Thin board 1.5 mm',
  note: 'Keep the window open. Leave 2.5 mm of sky.',
};

function namedJob(units: 'mm' | 'in', language?: 'en' | 'de'): JobBundle {
  const { job } = smallJob();
  return smallJob({
    title: own.title,
    maker: own.maker,
    units,
    ...(language ? { language } : {}),
    materials: [{ ...job.materials[0], name: own.material, stock: { widthMm: 500, heightMm: 400 } }],
    inks: job.inks.map((ink, i) => ({ ...ink, name: own.inks[i] })),
    papers: [{ ...job.papers[0], name: own.paper }],
    cuts: layers.map((name, i) => ({ ...job.cuts[i % 2], id: `c${i}`, name })),
    layers: layers.map((name, i) => ({ ...job.layers[i % 2], id: `l${i}`, name, cut: `c${i}`, note: own.note })),
    screen: { insideWidthMm: 400, insideHeightMm: 500, mesh: { perCm: 77, threadMicrons: 48 }, hingeLiftMm: 3 },
  });
}

/** Each page as one line of text. */
async function pagesOf(bytes: Uint8Array): Promise<string[]> {
  const book = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  return Promise.all(
    Array.from({ length: book.numPages }, async (_, i) =>
      (await (await book.getPage(i + 1)).getTextContent()).items
        .map((item) => ('str' in item ? item.str : ''))
        .join(' ')
        .replace(/\s+/g, ' '),
    ),
  );
}

const editions = languages.flatMap(({ id }) => (['mm', 'in'] as const).map((units) => ({ id, units, name: `${id}, ${units}` })));
const textOf = (files: readonly PacketFile[], path: string): string => new TextDecoder().decode(files.find((f) => f.path === path)!.bytes);

let shown: (name: string) => string;
const made = new Map<
  string,
  { readonly plan: Plan; readonly files: readonly PacketFile[]; readonly pages: readonly string[]; readonly handOut: string }
>();
beforeAll(async () => {
  const { faces } = await openBook(fonts, 210, 297, 'en');
  shown = (name) => printable(faces, name).replace(/\s+/g, ' ');
  for (const { id, units, name } of editions) {
    const bundle = namedJob(units);
    const planned = plan(bundle);
    const files = await makePacket(bundle, planned, { fonts, printer: { page: 'a4', marginMm: 12 }, language: id });
    const handOut = (await pagesOf(files.find((f) => f.path === 'hand-out.pdf')!.bytes)).join(' ');
    made.set(name, { plan: planned, files, pages: await pagesOf(files[0].bytes), handOut });
  }
}, 240_000);

const quoted = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** Once in each: a cut card under its run's number, with the side it is used on behind; the head of a press card. */
const headsOf = (language: string, run: number, name: string): { readonly cut: RegExp; readonly print: RegExp } => {
  const said = quoted(shown(name)),
    material = quoted(shown(own.material));
  return language === 'de'
    ? {
        cut: new RegExp(`^2 Schneiden .* ${run} ${said} (?:Fenster|Stück), ${material}, `),
        print: new RegExp(`^4 Drucken: ${said} `),
      }
    : {
        cut: new RegExp(`^2 Cut .* ${run} ${said} (?:window|piece), ${material}, `),
        print: new RegExp(`^4 Print: ${said} `),
      };
};

describe.each(editions)('$name', ({ id, name }) => {
  test('every name stands on the pages as it was written', () => {
    const { pages, handOut } = made.get(name)!;
    layers.forEach((layer, i) => {
      for (const head of Object.values(headsOf(id, i + 1, layer)))
        expect(
          pages.filter((page) => head.test(page)),
          String(head),
        ).toHaveLength(1);
      expect(pages.filter((page) => page.includes(shown(layer))).length, layer).toBeGreaterThan(7);
    });
    const whole = pages.join(' ');
    for (const one of [own.title, own.maker, ...own.inks, own.paper, own.material]) expect(whole, one).toContain(shown(one));
    // What the maker says of a layer is for those who learn from it: the hand-out, a file of its own.
    expect(handOut).toContain(shown(own.note));
    for (const foot of pages.slice(1, 8)) expect(foot).toContain(own.title);
  });

  test('and as often as in the other languages and units: nothing is taken for a word or a length', () => {
    const count = (edition: string, one: string): number => made.get(edition)!.pages.join(' ').split(shown(one)).length - 1;
    // Names that pages also say of their own accord (`Window`, `Retarder`) are told apart by the heads above; the title is in every foot.
    for (const one of ['Layer 1', 'Gap 9.5 mm', '“quotation marks”', own.paper, own.material, own.inks[1]])
      expect(count(name, one), one).toBe(count(editions[0].name, one));
  });

  test('files carry the names too', () => {
    const { files } = made.get(name)!;
    layers.forEach((layer, i) => expect(textOf(files, `cut/l${i}.svg`)).toContain(layer));
    expect(textOf(files, 'record.csv')).toContain('run 5 Gap 9.5 mm');
    const written = JSON.parse(textOf(files, 'plan.json')) as { layers: { name: string }[]; problems: { message: unknown }[] };
    expect(written.layers.map((layer) => layer.name)).toEqual(layers);
    for (const { message } of written.problems) expect(typeof message).toBe('string');
  });
});

/** What a German page may not say once the job's own words are set aside. */
const english =
  /\b(?:the|of|is|are|with|for|to|that|it|on|by|from|or|at|be|not|no|only|sheets?|ink|layer|stencil|screen|press|run|window|piece|open|none|stock|mesh)\b/i;
const without = (text: string): string =>
  [...layers, own.title, own.maker, ...own.inks, own.paper, own.material, own.note, 'laydown register']
    .map(shown)
    .sort((a, b) => b.length - a.length)
    .reduce((rest, one) => rest.replaceAll(one, '·'), text);

test.each(['mm', 'in'])('in German every page is German (%s)', (units) => {
  for (const page of made.get(`de, ${units}`)!.pages) {
    const left = english.exec(without(page));
    expect(left && without(page).slice(Math.max(0, left.index - 40), left.index + 40)).toBeNull();
  }
});

test.each(languages)('$id: a job in inches names millimetres on its check lines only, with the decimal mark of the language', ({ id }) => {
  for (const page of made.get(`${id}, in`)!.pages) {
    const rest = without(page).replace(/100 mm = [\d.,/ ]+ in/g, '');
    expect(/\d\s(?:mm|cm|m|g|kg|µm)\b(?!inute)/u.exec(rest), rest).toBeNull();
    if (id === 'de') expect(/\d\.\d/.exec(rest), rest).toBeNull();
  }
  for (const page of id === 'de' ? made.get('de, mm')!.pages : []) expect(/\d\.\d/.exec(without(page)), page).toBeNull();
});

test('the language is the one asked for, else the job’s, else English', async () => {
  const wishes = { fonts, printer: { page: 'a4', marginMm: 12 } } as const;
  const first = async (job: 'de' | undefined, language?: string): Promise<string> => {
    const bundle = smallJob(job ? { language: job } : {});
    const files = await makePacket(bundle, plan(bundle), { ...wishes, ...(language ? { language } : {}) });
    return (await pagesOf(files[0].bytes))[0];
  };
  expect(await first(undefined)).toContain('Sheets to start');
  expect(await first('de')).toContain('Bogen zu Beginn');
  expect(await first('de', 'en')).toContain('Sheets to start');
  expect(await first(undefined, 'de')).toContain('Bogen zu Beginn');
});

test('a sheet of stock alone speaks the language asked for, its file millimetres', async () => {
  const { plan: planned } = made.get('de, in')!;
  const [sheet] = planned.stock;
  const svg = new TextDecoder().decode(await stockFile(planned, sheet, 'svg', fonts, undefined, 'de'));
  expect(svg).toContain(`<title>${own.title}: ${own.material}, Bogen 1</title>`);
  expect(svg).toContain('<desc>Millimeter.');
  const [cover] = await pagesOf(await stockFile(planned, sheet, 'a4', fonts, undefined, 'de'));
  expect(cover).toContain(`${own.title}: ${own.material}, Bogen 1`);
});
