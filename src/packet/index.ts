import { registerRows, writeCsv } from '../core/edition/index.ts';
import type { JobBundle } from '../core/job/index.ts';
import type { Plan } from '../core/plan/index.ts';
import { fail } from '../core/problem.ts';
import { quietTask, type Task } from '../core/task.ts';
import { textsWithLengths } from '../core/units/index.ts';
import { cutLinesOf, kerfOf, type CutLines } from './cut-lines.ts';
import { overlapsCsv, recordCsv } from './files/csv.ts';
import { cutDxf } from './files/cut-dxf.ts';
import { cutSvg } from './files/cut-svg.ts';
import { planJson } from './files/plan-json.ts';
import { indexedPng, rgbPng } from './files/png.ts';
import { flatDxf, flatSvg, type FlatSheet } from './files/flat-sheet.ts';
import { layStock } from './stock-lines.ts';
import { makePages } from './pages/index.ts';
import { newSetting } from './pages/setting.ts';
import { fileName, timesInWords } from './pages/words.ts';
import { openBook, type FontFiles } from './pdf/book.ts';
import type { Speech } from './pdf/type.ts';
import { finalNumbers } from './sheets.ts';
import { pageSize, type Printer } from './printer.ts';
import { stockTiles } from './stock-tiles.ts';
import { testSheetFor, testStencil } from './test-sheet.ts';
import { proofImage, smallProof, type ProofImage } from './proof.ts';

export { sayUses } from './cut-uses.ts';
export { makeDrawdownSheets } from './pages/drawdown.ts';
export type { Speech } from './pdf/type.ts';
export { rgbPng } from './files/png.ts';
export type { Printer } from './printer.ts';
export { stockFile, type StockFormat } from './stock-file.ts';

/** One stencil as a file for a cutter, at true size, proven as it is written. Throws `ProblemError` where it would not hold. */
export function cutFile(plan: Plan, layer: Plan['layers'][number], format: 'svg' | 'dxf'): string {
  const kerfMm = kerfOf(plan, layer);
  const lines = cutLinesOf(plan, layer, kerfMm);
  return format === 'svg' ? cutSvg(layer, lines, plan.job.image, plan.job.title, kerfMm) : cutDxf(layer, lines, plan.job.image);
}

/** One file of the packet. */
export interface PacketFile {
  /** Inside the packet's folder, with / between names. */
  readonly path: string;
  readonly bytes: Uint8Array;
  /** One line: what it is for. */
  readonly what: string;
}

export interface PacketWishes {
  /** Open Sans, TrueType. */
  readonly fonts: FontFiles;
  readonly printer: Printer;
  /** To be printed on the documentation sheet; left out: a line to write on. */
  readonly date?: string;
  /** The language of the pages; English without. Names and notes stay as they are, and so do the single files. */
  readonly speech?: Speech;
  /** The same for what is said by key. */
  readonly language?: string;
  readonly task?: Task;
}

/**
 * Plan → everything that is printed, and the single files. Pure: the same Plan gives the same bytes, in Node and in a
 * page. Throws ProblemError when the margin leaves no page, or a page would go over its margins.
 */
export async function makePacket(bundle: JobBundle, plan: Plan, wishes: PacketWishes): Promise<PacketFile[]> {
  const { fonts, printer, date = '', speech, language = 'en', task = quietTask } = wishes;
  if (!(printer.marginMm >= 0 && printer.marginMm <= 30)) {
    fail(
      'printer-margin',
      'printer margin',
      `A margin of ${printer.marginMm} mm leaves no room for the pages.`,
      'Give the printer’s margin in mm, between 0 and 30.',
    );
  }
  const size = pageSize(printer.page);
  const book = await openBook(
    fonts,
    size.widthMm,
    size.heightMm,
    speech,
    plan.job.units === 'in' ? { written: textsWithLengths(bundle.job) } : undefined,
  );
  const pages: Task = { report: (share, note) => task.report(share * 0.5, note), pause: () => task.pause() };
  const setting = newSetting({ book, bundle, plan, marginMm: printer.marginMm, date, language });
  await makePages(setting, pages);
  keepMargins(book.pages, printer.marginMm);
  const files: PacketFile[] = [
    {
      path: 'packet.pdf',
      bytes: await book.finish(plan.job.title, plan.job.maker, task),
      what: `everything to print, ${book.pages.length} pages`,
    },
  ];
  files.push(...(await proofFiles(plan, task)));
  const text = new TextEncoder();
  const image = plan.job.image;
  const numbers = finalNumbers(plan);
  const written = new Map<string, CutLines>();
  for (const layer of plan.layers) {
    const kerfMm = kerfOf(plan, layer);
    const lines = kerfMm > 0 ? cutLinesOf(plan, layer, kerfMm) : setting.cutLines(layer);
    written.set(layer.id, lines);
    files.push({
      path: `cut/${fileName(layer.id)}.svg`,
      bytes: text.encode(cutSvg(layer, lines, image, plan.job.title, kerfMm)),
      what: `stencil of run ${layer.run}, true size`,
    });
    files.push({
      path: `cut/${fileName(layer.id)}.dxf`,
      bytes: text.encode(cutDxf(layer, lines, image)),
      what: 'the same for a cutting machine, mm',
    });
    await task.pause();
  }
  const both = (name: string, sheet: FlatSheet, what: string): void => {
    files.push({ path: `cut/${name}.svg`, bytes: text.encode(flatSvg(sheet)), what });
    files.push({ path: `cut/${name}.dxf`, bytes: text.encode(flatDxf(sheet)), what: 'the same for a cutting machine, mm' });
  };
  for (const sheet of plan.stock) {
    const laid = layStock(plan, sheet, written);
    const what = `${sheet.placed.length === 1 ? 'a stencil' : `${sheet.placed.length} stencils`} on one sheet of ${sheet.materialName}${sheet.times > 1 ? `; cut it ${timesInWords(sheet.times)}` : ''}`;
    both(`stock-${sheet.number}`, laid, what);
    files.push({
      path: `cut/stock-${sheet.number}.pdf`,
      bytes: await stockTiles(plan, sheet, laid, { fonts, printer, speech, language, task }),
      what: 'the same in parts, for this printer, with joining marks',
    });
    await task.pause();
  }
  const test = testSheetFor(image.widthMm, image.heightMm);
  if (test)
    for (const run of ['first', 'second'] as const)
      both(`register-test-${run}`, testStencil(test, run, plan.job.stencilMarginMm), `register test, stencil of its ${run} run`);
  files.push(
    { path: 'overlaps.csv', bytes: text.encode(overlapsCsv(plan)), what: 'every overlap on every paper, for a spreadsheet' },
    { path: 'record.csv', bytes: text.encode(recordCsv(plan)), what: 'the edition record, one line a sheet' },
    ...(numbers
      ? [
          {
            path: 'register.csv',
            bytes: text.encode(writeCsv(registerRows(plan.edition.facts, numbers))),
            what: 'every sheet with its life and its number',
          },
          { path: 'colophon.txt', bytes: text.encode(`${plan.edition.colophon}\n`), what: 'the colophon, to be set or pasted' },
        ]
      : []),
    { path: 'plan.json', bytes: text.encode(planJson(plan)), what: 'the Plan: every figure of the packet' },
  );
  task.report(1);
  return files;
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
      if (run === runs) files.push({ path: `proofs/${name}.png`, bytes, what: `the print on ${paper.name}, true size` });
      else
        files.push({
          path: `proofs/${name}-after-run-${run}.png`,
          bytes,
          what: `${paper.name} after run ${run}${half ? ', at half the density' : ''}`,
        });
      task.report(0.5 + (0.45 * (i * runs + run)) / (plan.papers.length * runs), 'proofs');
      await task.pause();
    }
  }
  return files;
}

function pngOf(proof: ProofImage): Uint8Array {
  return proof.kind === 'indexed' ? indexedPng(proof.image, proof.mmPerPx) : rgbPng(proof.width, proof.height, proof.rgb, proof.mmPerPx);
}

/** A page that goes over the printer's margins would be cut off unseen. */
function keepMargins(
  pages: readonly {
    reach(): { minX: number; minY: number; maxX: number; maxY: number };
    readonly widthMm: number;
    readonly heightMm: number;
  }[],
  marginMm: number,
): void {
  const slack = 0.02;
  pages.forEach((page, i) => {
    const r = page.reach();
    const over = Math.max(marginMm - r.minX, marginMm - r.minY, r.maxX - (page.widthMm - marginMm), r.maxY - (page.heightMm - marginMm));
    if (over > slack)
      fail(
        'page-over-margin',
        `page ${i + 1}`,
        `It would go ${over.toFixed(1)} mm over the printer’s margins.`,
        'Set a smaller printer margin; and tell us, for a page should never do this.',
      );
  });
}
