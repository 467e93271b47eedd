import { registerRows, writeCsv } from '../core/edition/index.ts';
import { fingerprintOf, type JobBundle } from '../core/job/index.ts';
import { linesToCut, type Plan } from '../core/plan/index.ts';
import { fail } from '../core/problem.ts';
import { quietTask, type Task } from '../core/task.ts';
import { asWritten, length, lengths, list, name as asName, say, type Saying } from '../words/index.ts';
import { exposureFilm, filmFile, testedRuns, wedgeFilm } from './film/index.ts';
import { overlapsCsv, recordCsv } from './files/csv.ts';
import { cutDxf } from './files/cut-dxf.ts';
import { cutSvg } from './files/cut-svg.ts';
import { planJson } from './files/plan-json.ts';
import { indexedPng, rgbPng } from './files/png.ts';
import { flatDxf, flatSvg, type FlatSheet } from './files/flat-sheet.ts';
import { showPage } from './files/show-page.ts';
import { layStock } from './stock/stock-lines.ts';
import { makePages } from './pages/index.ts';
import { newSetting, type Setting } from './pages/ink/setting.ts';
import { fileName } from './pages/words.ts';
import { openBook, type Book, type FontFiles } from './pdf/book.ts';
import { finalNumbers } from './sheets.ts';
import { apart, forTheTable, packetParts, type PacketPart } from './parts.ts';
import type { Page } from './pdf/page.ts';
import { pageScale, pageSize, type Printer } from './printer.ts';
import { stockTiles } from './stock/stock-tiles.ts';
import { testSheetFor, testStencil } from './test-sheet.ts';
import { proofImage, smallProof, type ProofImage } from './proof.ts';
import { fileVoice } from './voice.ts';

export { sayUses } from './cut-uses.ts';
export { makeLensBoard } from './pages/cut/lens-board.ts';
export { makeDrawdownSheets } from './pages/ink/drawdown.ts';
export { exposureFilm, filmFile, filmOf, wedgeFilm, type Film, type FilmFormat, type MakePress, type ToneRun } from './film/index.ts';
export { greyPng, rgbPng } from './files/png.ts';
export type { FontFiles } from './pdf/book.ts';
export { packetParts, readParts, type PacketPart } from './parts.ts';
export { printerPages, type Printer, type PrinterPage } from './printer.ts';
export { stockFile, type StockFormat } from './stock/stock-file.ts';

/** In the packet's language where no other is asked for. */
const languageOfJob = (plan: Plan): string => plan.job.language ?? 'en';

/** One stencil as a file for a cutter, at true size, proven as it is written. Throws `ProblemError` where it would not hold. */
export function cutFile(plan: Plan, layer: Plan['layers'][number], format: 'svg' | 'dxf', language = languageOfJob(plan)): string {
  const lines = linesToCut(layer);
  const { kerfMm } = layer.written;
  const { title, image } = plan.job;
  return format === 'svg' ? cutSvg(layer, lines, image, title, fileVoice(language), kerfMm) : cutDxf(layer, lines, image);
}

/** One file of the packet. */
export interface PacketFile {
  /** Inside the packet's folder, with / between names. */
  readonly path: string;
  readonly bytes: Uint8Array;
  /** One line: what it is for. */
  readonly what: Saying;
}

/** A page as an SVG drawing. */
export interface PagePreview {
  readonly file: string;
  readonly svg: string;
}

/** The file that says which state of the job a packet was made from. */
export const madeFromName = 'made-from.txt';

export interface PacketWishes {
  /** Open Sans, TrueType. */
  readonly fonts: FontFiles;
  readonly printer: Printer;
  /** To be printed on the documentation sheet; left out: a line to write on. */
  readonly date?: string;
  /** The language of pages and files; left out: the job's, else English. Names and notes stay as they are. */
  readonly language?: string;
  /** These parts alone; left out: all. */
  readonly only?: readonly PacketPart[];
  /** In black ink alone. */
  readonly black?: boolean;
  /** Letters a fifth larger on small paper. */
  readonly large?: boolean;
  /** One file for the table and one for the press, in place of one for all. */
  readonly split?: boolean;
  /** Pages as pictures for the screen, in the order they are made. */
  readonly onPage?: (preview: PagePreview) => void;
  readonly task?: Task;
}

/**
 * Plan → everything that is printed, and the single files. Pure: the same Plan gives the same bytes, in Node and in a
 * page. Throws ProblemError when the margin leaves no page, or a page would go over its margins.
 */
export async function makePacket(bundle: JobBundle, plan: Plan, wishes: PacketWishes): Promise<PacketFile[]> {
  const { fonts, printer, language = languageOfJob(plan), only, black, task = quietTask } = wishes;
  if (!(printer.marginMm >= 0 && printer.marginMm <= 30)) {
    fail(
      'printer-margin',
      say('packet.printerMargin'),
      say('packet.marginNoRoom', { margin: length(printer.marginMm) }),
      say('packet.giveMargin', { range: lengths([0, 30], 'to') }),
    );
  }
  const parts = new Set(only ?? packetParts);
  const mark = fingerprintOf(bundle);
  const files: PacketFile[] = [];
  const setting = await makeBooks(bundle, plan, wishes, mark, files);
  if (!only) files.push(...(await proofFiles(plan, task)));
  const text = new TextEncoder();
  const { image, title } = plan.job;
  const voice = fileVoice(language);
  const numbers = finalNumbers(plan);
  if (!only) files.push({ path: 'show.html', bytes: text.encode(showPage(plan, voice)), what: say('packet.showFile') });
  const cutting = parts.has('cut');
  for (const layer of cutting ? plan.layers : []) {
    const { machine: lines, kerfMm } = layer.written;
    // The pages show what is wrong with it; there is no file to cut it by. A run of tone is exposed.
    if (!lines || layer.tone) continue;
    files.push({
      path: `cut/${fileName(layer.id)}.svg`,
      bytes: text.encode(cutSvg(layer, lines, image, title, voice, kerfMm)),
      what: say('packet.stencilOfRun', { run: layer.run }),
    });
    files.push({
      path: `cut/${fileName(layer.id)}.dxf`,
      bytes: text.encode(cutDxf(layer, lines, image)),
      what: say('packet.sameForMachine'),
    });
    await task.pause();
  }
  if (cutting) files.push(...testFilms(plan, setting.reader));
  const both = (name: string, sheet: FlatSheet, what: Saying): void => {
    files.push({ path: `cut/${name}.svg`, bytes: text.encode(flatSvg(sheet, voice)), what });
    files.push({ path: `cut/${name}.dxf`, bytes: text.encode(flatDxf(sheet)), what: say('packet.sameForMachine') });
  };
  for (const sheet of cutting ? plan.stock : []) {
    const laid = layStock(plan, sheet);
    const values = { n: sheet.placed.length, material: asWritten(sheet.materialName) };
    const what =
      sheet.times > 1
        ? say('packet.stencilsOnStockTimes', { ...values, times: say('packet.times', { n: sheet.times }) })
        : say('packet.stencilsOnStock', values);
    both(`stock-${sheet.number}`, laid, what);
    files.push({
      path: `cut/stock-${sheet.number}.pdf`,
      bytes: await stockTiles(plan, sheet, laid, { fonts, printer, reader: setting.reader, mark, black, task }),
      what: say('packet.sameInParts'),
    });
    await task.pause();
  }
  const test = parts.has('register-test') ? testSheetFor(image.widthMm, image.heightMm, bundle.job.register.method) : null;
  if (test)
    for (const run of ['first', 'second'] as const)
      both(
        `register-test-${run}`,
        testStencil(test, run, plan.job.stencilMarginMm),
        say(run === 'first' ? 'packet.testFirst' : 'packet.testSecond'),
      );
  if (parts.has('look-up')) files.push({ path: 'overlaps.csv', bytes: text.encode(overlapsCsv(plan)), what: say('packet.overlapsTable') });
  if (parts.has('number')) files.push({ path: 'record.csv', bytes: text.encode(recordCsv(plan)), what: say('packet.recordTable') });
  files.push(
    ...(numbers && parts.has('number')
      ? [
          {
            path: 'register.csv',
            bytes: text.encode(writeCsv(registerRows(plan.edition.facts, numbers, setting.tell))),
            what: say('packet.registerTable'),
          },
          {
            path: 'colophon.txt',
            bytes: text.encode(`${plan.edition.colophon ? setting.tell(plan.edition.colophon) : ''}\n`),
            what: say('packet.colophonText'),
          },
        ]
      : []),
    { path: 'plan.json', bytes: text.encode(planJson(plan)), what: say('packet.planFile') },
    { path: madeFromName, bytes: text.encode(`${mark}\n`), what: say('packet.madeFromFile') },
  );
  task.report(1);
  return files;
}

/** As fine as any office printer: a laser or inkjet film for the bench to begin with. */
const testFilmDpi = 600;

/** Wedge and exposure strip of each screen, as films. */
function testFilms(plan: Plan, reader: Setting['reader']): PacketFile[] {
  const ask = { dpi: testFilmDpi, mirrored: false, reader };
  return testedRuns(plan).flatMap(({ run, alike }) => [
    {
      path: `films/exposure-${fileName(run.id)}.pdf`,
      bytes: filmFile(exposureFilm(plan, run, ask), 'pdf'),
      what: say('halftone.stripFile'),
    },
    {
      path: `films/wedge-${fileName(run.id)}.pdf`,
      bytes: filmFile(wedgeFilm(plan, run, ask), 'pdf'),
      what: say('halftone.wedgeFile', {
        layers: list(
          alike.map((l) => asName(l.name)),
          'and',
        ),
      }),
    },
  ]);
}

/** The files to print: one for all or two, and those that stand apart. */
async function makeBooks(bundle: JobBundle, plan: Plan, wishes: PacketWishes, mark: string, files: PacketFile[]): Promise<Setting> {
  const { fonts, printer, date = '', language = languageOfJob(plan), only, black, large, split, onPage, task = quietTask } = wishes;
  const size = pageSize(printer.page);
  const all = new Set(only ?? packetParts);
  const main = [...all].filter((part) => !apart.has(part));
  const [table, press] = [main.filter((part) => forTheTable.has(part)), main.filter((part) => !forTheTable.has(part))];
  const whole = only === undefined;
  const wanted: readonly {
    name: string;
    parts: readonly PacketPart[];
    cover: boolean;
    laydown: boolean;
    what: (pages: number) => Saying;
  }[] = [
    ...(split
      ? [
          { name: 'table', parts: table, cover: whole, laydown: false, what: (pages: number) => say('packet.tableToPrint', { pages }) },
          { name: 'press', parts: press, cover: false, laydown: whole, what: (pages: number) => say('packet.pressToPrint', { pages }) },
        ]
      : [
          {
            name: 'packet',
            parts: main,
            cover: whole,
            laydown: whole,
            what: (pages: number) => (whole ? say('packet.everythingToPrint', { pages }) : say('packet.partsToPrint', { pages })),
          },
        ]),
    { name: 'hand-out', parts: ['hand-out'], cover: false, laydown: false, what: (pages) => say('packet.handOutToPrint', { pages }) },
    {
      name: 'register-test',
      parts: ['register-test'],
      cover: false,
      laydown: false,
      what: (pages) => say('packet.registerTestToPrint', { pages }),
    },
    {
      name: 'proof-strip',
      parts: ['proof-strip'],
      cover: false,
      laydown: false,
      what: (pages) => say('packet.proofStripToPrint', { pages }),
    },
    {
      name: 'light-and-grounds',
      parts: ['light-and-grounds'],
      cover: false,
      laydown: false,
      what: (pages) => say('packet.lightAndGroundsToPrint', { pages }),
    },
  ];
  const open = (): Promise<Book> =>
    openBook(fonts, size.widthMm, size.heightMm, language, { scale: pageScale(printer.page, large), black, preview: onPage !== undefined });
  const setting = newSetting({ book: await open(), bundle, plan, marginMm: printer.marginMm, date, mark, language });
  const books = wanted.map((one) => ({ ...one, parts: new Set(one.parts.filter((part) => all.has(part))) }));
  for (const [i, { name, parts, cover, laydown, what }] of books.entries()) {
    if (parts.size === 0 && !cover && !laydown) continue;
    const book = i === 0 ? setting.book : await open();
    const pages: Task = { report: (share, note) => task.report(((i + share) / books.length) * 0.5, note), pause: () => task.pause() };
    await makePages({ ...setting, book, steps: [], bare: new Set(), under: null }, pages, { parts, cover, laydown });
    if (book.pages.length === 0) continue;
    keepMargins(book.pages, printer.marginMm);
    const path = `${name}.pdf`;
    if (onPage) for (const page of book.pages) onPage({ file: path, svg: page.preview() });
    files.push({ path, bytes: await book.finish(plan.job.title, plan.job.maker, task), what: what(book.pages.length) });
  }
  return setting;
}

async function proofFiles(plan: Plan, task: Task): Promise<PacketFile[]> {
  const files: PacketFile[] = [];
  const runs = plan.layers.length;
  for (const [i, paper] of plan.papers.entries()) {
    let bytes: Uint8Array | null = null;
    // On the way a picture over an earlier print is for the eye, not for measuring: half the density, a quarter of the work.
    const half = paper.overPicture !== null;
    for (let run = 1; run <= runs; run++) {
      // An open layer leaves the sheet as it was.
      if (bytes === null || plan.layers[run - 1].inkId !== null || (half && run === runs))
        bytes = pngOf(half && run < runs ? smallProof(plan, paper, run, 2) : proofImage(plan, paper, run));
      const name = fileName(paper.id);
      if (run === runs) files.push({ path: `proofs/${name}.png`, bytes, what: say('packet.proof', { paper: asName(paper.name) }) });
      else
        files.push({
          path: `proofs/${name}-after-run-${run}.png`,
          bytes,
          what: say(half ? 'packet.proofAfterHalf' : 'packet.proofAfter', { paper: asName(paper.name), run }),
        });
      task.report(0.5 + (0.45 * (i * runs + run)) / (plan.papers.length * runs), say('engine.drawingProofs'));
      await task.pause();
    }
  }
  for (const { paperId, width, height, rgb, mmPerPx } of plan.fromArm) {
    const paper = asName(plan.papers.find((p) => p.id === paperId)?.name ?? paperId);
    const what = say('halftone.fromArmFile', { paper });
    files.push({ path: `proofs/${fileName(paperId)}-from-arm.png`, bytes: rgbPng(width, height, rgb, mmPerPx), what });
  }
  return files;
}

function pngOf(proof: ProofImage): Uint8Array {
  return proof.kind === 'indexed' ? indexedPng(proof.image, proof.mmPerPx) : rgbPng(proof.width, proof.height, proof.rgb, proof.mmPerPx);
}

/** A page that goes over the printer’s margins would be cut off unseen. */
function keepMargins(pages: readonly Page[], margin: number): void {
  const slack = 0.02;
  pages.forEach((page, i) => {
    const r = page.reach();
    const marginMm = margin / page.scale;
    const over = Math.max(marginMm - r.minX, marginMm - r.minY, r.maxX - (page.widthMm - marginMm), r.maxY - (page.heightMm - marginMm));
    if (over > slack)
      fail(
        'page-over-margin',
        say('packet.page', { n: i + 1 }),
        say('packet.overMargin', { over: length(over, 1) }),
        say('packet.smallerMargin'),
      );
  });
}
