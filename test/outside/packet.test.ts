import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { createCanvas } from '@napi-rs/canvas';
import { Resvg } from '@resvg/resvg-wasm';
import { decode } from 'fast-png';
import { getDocument, OPS, type PDFDocumentProxy, type PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, expect, test } from 'vitest';
import { prepare, readFonts } from '../../src/cli/assets.ts';
import { readJobAt } from '../../src/cli/disk/folder.ts';
import { plan, readyBundle, type Plan } from '../../src/core/plan/index.ts';
import { makePacket, type PacketFile } from '../../src/packet/index.ts';

// The packet of the first job, looked at by programs of others: an independent PDF reader and painter (pdfjs-dist), an
// SVG painter (resvg), a PNG reader (fast-png). Sizes: ISO 216 (A4 is 210 × 297 mm), ISO 32000-1 (72 points an inch).

const marginMm = 12;
const points = (mm: number): number => (mm * 72) / 25.4;
const standardFonts = createRequire(import.meta.url)
  .resolve('pdfjs-dist/package.json')
  .replace(/package\.json$/, 'standard_fonts/');

let made: Plan;
let files: PacketFile[];
let book: PDFDocumentProxy;
beforeAll(async () => {
  await prepare();
  const bundle = await readyBundle(readJobAt('examples/tide-pool'));
  made = plan(bundle);
  files = await makePacket(bundle, made, { fonts: readFonts(), printer: { page: 'a4', marginMm } });
  book = await getDocument({ data: bytesOf('packet.pdf').slice(), standardFontDataUrl: standardFonts, verbosity: 0 }).promise;
}, 180_000);

function bytesOf(path: string): Uint8Array {
  const file = files.find((f) => f.path === path);
  if (!file) throw new Error(`no ${path}`);
  return file.bytes;
}

async function pages(): Promise<PDFPageProxy[]> {
  return Promise.all(Array.from({ length: book.numPages }, (_, i) => book.getPage(i + 1)));
}

async function words(page: PDFPageProxy): Promise<string> {
  return (await page.getTextContent()).items
    .map((item) => ('str' in item ? item.str : ''))
    .join(' ')
    .replace(/\s+/g, ' ');
}

test('every page is A4 and no mark on it is nearer to the edge than the printer reaches', async () => {
  const dpi = 50;
  for (const page of await pages()) {
    expect(page.view[2]).toBeCloseTo(points(210), 3);
    expect(page.view[3]).toBeCloseTo(points(297), 3);
    const viewport = page.getViewport({ scale: dpi / 72 });
    const [w, h] = [Math.round(viewport.width), Math.round(viewport.height)];
    const canvas = createCanvas(w, h);
    await page.render({ canvasContext: canvas.getContext('2d') as unknown as CanvasRenderingContext2D, canvas: null, viewport }).promise;
    const { data } = canvas.getContext('2d').getImageData(0, 0, w, h);
    // A pixel that the margin's edge runs through may be half grey: one pixel is let go.
    const edge = Math.floor((marginMm / 25.4) * dpi) - 1;
    let marks = 0,
      ink = 0;
    for (let y = 0; y < h; y++)
      for (let x = 0; x < w; x++) {
        if (data[(y * w + x) * 4] > 245) continue;
        ink++;
        if (x < edge || y < edge || x >= w - edge || y >= h - edge) marks++;
      }
    expect(marks, `page ${page.pageNumber}`).toBe(0);
    expect(ink, `page ${page.pageNumber}`).toBeGreaterThan(50);
  }
}, 120_000);

test('each true-size sheet carries a line of exactly 100 mm: 283.46 points', async () => {
  let sheets = 0;
  for (const page of await pages()) {
    if (!(await words(page)).includes('100 mm on the ruler')) continue;
    sheets++;
    const list = await page.getOperatorList();
    const level = list.fnArray.flatMap((fn, i) => {
      if (fn !== OPS.constructPath) return [];
      const box = list.argsArray[i][2] as Float32Array | undefined;
      return box && Math.abs(box[3] - box[1]) < 0.001 ? [box[2] - box[0]] : [];
    });
    expect(level.filter((length) => Math.abs(length - points(100)) < 0.01).length, `page ${page.pageNumber}`).toBe(1);
  }
  expect(sheets).toBeGreaterThan(made.layers.length);
});

test('no more than 28 pages, each with the mark of the job', async () => {
  expect(book.numPages).toBeLessThanOrEqual(28);
  const mark = new TextDecoder().decode(bytesOf('made-from.txt')).trim();
  for (const page of await pages()) expect(await words(page), `page ${page.pageNumber}`).toContain(mark);
});

test('all fonts are inside the file, and only the letters that are used', async () => {
  const text = Buffer.from(bytesOf('packet.pdf')).length;
  expect(text).toBeLessThan(3_000_000);
  const page = await book.getPage(1);
  await page.getOperatorList();
  const names = new Set((await page.getTextContent()).items.flatMap((item) => ('fontName' in item ? [item.fontName] : [])));
  for (const name of names) {
    const font = page.commonObjs.get(name) as { name: string; missingFile?: boolean };
    expect(font.name).toMatch(/^LAYDWN\+OpenSans/);
    expect(font.missingFile ?? false).toBe(false);
  }
});

test('the work is told in order: mix, cut, set up, print, number, keep, look up', async () => {
  const heads = await Promise.all((await pages()).map(words));
  const first = (start: RegExp): number => heads.findIndex((h) => start.test(h));
  const order = [/^1 Mix/, /^2 Cut/, /^3 Set up/, /^4 The day/, /^5 Edition record/, /^6 About this print/, /^7 Overlaps/].map(first);
  expect(order.every((at) => at > 0)).toBe(true);
  expect([...order].sort((a, b) => a - b)).toEqual(order);
  // The cover's list names the page where each step begins.
  for (const at of order.slice(1)) expect(heads[0]).toMatch(new RegExp(`\\b${at + 1}\\b`));
  for (const layer of made.layers)
    expect(heads.some((h) => h.startsWith(`4 Print: ${layer.name} run ${layer.run} of ${made.layers.length}`))).toBe(true);
});

test('pixels of the cut sheet are the pixels of the proof', () => {
  // Painted by an independent renderer at the proof's own density, with each pixel's coverage. The proof asks for a pixel's
  // centre only, so they may part where the outline runs through a pixel; a pixel full of ink or free of it must agree.
  const { width, height, mmPerPx, data } = made.codes;
  for (const layer of made.layers) {
    const svg = new TextDecoder().decode(bytesOf(`cut/${layer.id}.svg`));
    const d = /<g id="cut"[^>]*><path[^>]* d="([^"]*)"/.exec(svg)![1];
    const shown = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width * mmPerPx} ${height * mmPerPx}"><path fill-rule="evenodd" d="${d}"/></svg>`;
    const painted = decode(new Resvg(shown).render().asPng());
    expect([painted.width, painted.height]).toEqual([width, height]);
    let missing = 0,
      stray = 0,
      inside = 0;
    for (let i = 0; i < data.length; i++) {
      const printed = (data[i] >> layer.bit) & 1;
      const covered = painted.data[i * 4 + 3] / 255;
      inside += printed;
      if (printed === 0 && covered > 0.97) missing++;
      if (printed === 1 && covered < 0.03) stray++;
    }
    expect(inside).toBeGreaterThan(1000);
    expect([missing, stray], layer.id).toEqual([0, 0]);
  }
}, 60_000);

test('a cut file says its true size in millimetres', () => {
  for (const layer of made.layers) {
    const { sheet } = layer.stencil;
    const svg = new TextDecoder().decode(bytesOf(`cut/${layer.id}.svg`));
    const [, w, h, box] = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="([^"]+)"/.exec(svg)!;
    expect(Number(w)).toBeCloseTo(sheet.maxX - sheet.minX, 3);
    expect(Number(h)).toBeCloseTo(sheet.maxY - sheet.minY, 3);
    expect(box.split(' ').map(Number)).toEqual([sheet.minX, sheet.minY, Number(w), Number(h)]);
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
  }
});

test('the proof of a sheet that carries an earlier print shows that print where no ink lies', () => {
  const paper = made.papers.find((p) => p.overPicture)!;
  const proof = decode(bytesOf(`proofs/${paper.id}.png`));
  expect([proof.width, proof.height, proof.channels]).toEqual([made.codes.width, made.codes.height, 3]);
  const bare = paper.overPicture!.ground;
  let seen = 0;
  for (let i = 0; i < made.codes.data.length; i++) {
    if (paper.overPicture!.rowOfCode[made.codes.data[i]] !== 0) continue;
    seen++;
    if (proof.data[i * 3] !== bare[i * 3] || proof.data[i * 3 + 2] !== bare[i * 3 + 2]) throw new Error(`pixel ${i} changed`);
  }
  expect(seen).toBeGreaterThan(100);
});

test('fonts read from the shipped files are the ones the licence beside them is for', () => {
  expect(readFileSync('assets/OpenSans-LICENSE.txt', 'utf8')).toMatch(/Apache License/);
});
