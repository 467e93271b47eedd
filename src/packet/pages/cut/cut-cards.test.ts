import { readFileSync } from 'node:fs';
import { getDocument, OPS, type PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { expect, test } from 'vitest';
import { plan } from '../../../core/plan/index.ts';
import { regionBox } from '../../../core/form/index.ts';
import { makePacket } from '../../index.ts';
import { smallJob } from '../../packet-jobs.ts';

const font = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(new URL(`../../../../assets/OpenSans-${name}.ttf`, import.meta.url)));
const box = (x: number, y: number, w: number, h: number): number[][] => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
];

/** Its paper leaves strips of 1 mm where it needs 2; its lines are 0.7 mm where the knife needs 1. */
const job = smallJob({
  forms: [
    { id: 'ring', name: 'Slats', outline: [box(0, 0, 18, 30), box(19, 0, 18, 30)] },
    { id: 'block', name: 'Lines', outline: [box(0, 0, 40, 0.7), box(0, 10, 40, 0.7)] },
  ],
});
const made = plan(job);

async function cardPage(): Promise<{ readonly page: PDFPageProxy; readonly text: string }> {
  const fonts = { regular: font('Regular'), semibold: font('Semibold'), bold: font('Bold') };
  const files = await makePacket(job, made, { fonts, printer: { page: 'a4', marginMm: 12 }, language: 'en' });
  const book = await getDocument({ data: new Uint8Array(files[0].bytes), verbosity: 0 }).promise;
  for (let i = 1; i <= book.numPages; i++) {
    const page = await book.getPage(i);
    const text = (await page.getTextContent()).items
      .map((item) => ('str' in item ? item.str : ''))
      .join(' ')
      .replace(/[\s\u00a0]+/g, ' ');
    if (/^2 Cut/.test(text)) return { page, text };
  }
  throw new Error('no card');
}

interface Drawn {
  readonly fill: string;
  readonly dashed: boolean;
  readonly box: readonly number[];
}

/** Paths of a page with how they are painted; boxes in points, from the bottom left. */
async function drawnOn(page: PDFPageProxy): Promise<Drawn[]> {
  const { fnArray, argsArray } = await page.getOperatorList();
  let [fill, dashed] = ['', false];
  return fnArray.flatMap((fn, i) => {
    const args = argsArray[i] as unknown[];
    if (fn === OPS.save) [fill, dashed] = ['', false];
    if (fn === OPS.setFillRGBColor) fill = String(args[0]);
    if (fn === OPS.setDash) dashed = (args[0] as number[]).length > 0;
    return fn === OPS.constructPath && args[2] ? [{ fill, dashed, box: Array.from(args[2] as Float32Array) }] : [];
  });
}

test('what prints other than drawn is told on the card and marked where it is', async () => {
  const [slats, lines] = made.layers.map(({ stencil }) => stencil);
  expect(slats.mends!.map((m) => m.kind)).toEqual(['broader', 'broader']);
  expect(lines.mends!.map((m) => m.kind)).toEqual(['wider', 'wider']);
  const { page, text } = await cardPage();
  expect(text).toMatch(/kept free of ink so that it holds \(white, dotted\): 2 \([\d.]+ mm², ΔE00 [\d.]+\), the largest at 29, 30 mm/);
  expect(text).toMatch(/prints so that it can be cut \(dark\): 2 \([\d.]+ mm², ΔE00 [\d.]+\), the largest at 50, 25 mm/);
  const drawn = await drawnOn(page);
  // The small picture of the stencil: its edge is as wide to its height as the sheet.
  const { sheet } = slats;
  const [wide, high] = [sheet.maxX - sheet.minX, sheet.maxY - sheet.minY];
  const pictures = drawn.filter(({ box: [x0, y0, x1, y1] }) => x1 - x0 > 80 && Math.abs((x1 - x0) / (y1 - y0) - wide / high) < 0.001);
  expect(pictures).toHaveLength(2);
  for (const [i, stencil] of [slats, lines].entries()) {
    const [x0, , x1, y1] = pictures[i].box;
    const scale = (x1 - x0) / wide;
    for (const mend of stencil.mends!) {
      const at = regionBox(mend.region);
      const there = [
        x0 + (at.minX - sheet.minX) * scale,
        y1 - (at.maxY - sheet.minY) * scale,
        x0 + (at.maxX - sheet.minX) * scale,
        y1 - (at.minY - sheet.minY) * scale,
      ];
      const marks = drawn.filter((one) => one.box.every((v, k) => Math.abs(v - there[k]) < 0.3));
      // White with a dotted edge where ink is kept away, dark without one where more prints: no colour is the only sign.
      expect(marks.map(({ fill, dashed }) => [fill, dashed])).toEqual([mend.kind === 'broader' ? ['#ffffff', true] : ['#6e6e6e', false]]);
    }
  }
});
