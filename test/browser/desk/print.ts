import { createCanvas } from '@napi-rs/canvas';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { stations } from '../stations-list.ts';
import { atRest, settled, tidePool } from '../bench-page.ts';
import { oneBench } from './one-bench.ts';

let page: Page;

/** Pixels a millimetre. */
const perMm = 10;

interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly at: (x: number, y: number) => number[];
}

/** The first page that a station prints, painted by a reader of PDFs that is not the browser's own (pdf.js). */
async function printed(station: string): Promise<Sheet> {
  await page.evaluate((id) => {
    location.hash = id;
  }, station);
  await settledAt(station);
  const pdf = await getDocument({ data: new Uint8Array(await page.pdf({ format: 'A4', preferCSSPageSize: true })), verbosity: 0 }).promise;
  const sheet = await pdf.getPage(1),
    viewport = sheet.getViewport({ scale: (perMm * 25.4) / 72 });
  const width = Math.round(viewport.width),
    height = Math.round(viewport.height);
  const context = createCanvas(width, height).getContext('2d');
  await sheet.render({ canvasContext: context as unknown as CanvasRenderingContext2D, canvas: null, viewport }).promise;
  const { data } = context.getImageData(0, 0, width, height);
  await pdf.loadingTask.destroy();
  return { width, height, at: (x, y) => [0, 1, 2].map((c) => data[(y * width + x) * 4 + c]) };
}

async function settledAt(station: string): Promise<void> {
  await page.waitForSelector('main[aria-busy=false]');
  if (station === 'laydown' || station === 'overlaps') await settled(page);
  await atRest(page);
}
const isDark = ([r, g, b]: number[]): boolean => r < 90 && g < 90 && b < 90;

export function onPaper(): void {
  beforeAll(async () => {
    ({ page } = await oneBench());
  });

  describe('a station on paper', () => {
    test.each(['laydown', 'overlaps'])(
      '%s: the proof has its true size, and the line to measure is 100 mm long',
      async (station) => {
        const first = await printed(station);
        // Coloured pixels, wherever they lie: the image is as wide as the job says, less what is bare at its edge.
        const { widthMm, heightMm } = tidePool().job.image;
        let [left, right, top, bottom] = [first.width, 0, first.height, 0];
        for (let y = 0; y < first.height; y += 2) {
          for (let x = 0; x < first.width; x += 2) {
            const [r, g, b] = first.at(x, y);
            if (Math.max(r, g, b) - Math.min(r, g, b) < 40) continue;
            [left, right, top, bottom] = [Math.min(left, x), Math.max(right, x), Math.min(top, y), Math.max(bottom, y)];
          }
        }
        expect(Math.abs((right - left) / perMm - widthMm)).toBeLessThan(0.8);
        expect(Math.abs((bottom - top) / perMm - heightMm)).toBeLessThan(0.8);
        // The longest dark stretch in the rows below the image and its paper.
        let longest = 0;
        for (let y = bottom + 60; y < first.height; y++) {
          let run = 0;
          for (let x = 0; x < first.width; x++) {
            run = isDark(first.at(x, y)) ? run + 1 : 0;
            longest = run < 1500 ? Math.max(longest, run) : longest;
          }
        }
        expect(Math.abs(longest / perMm - 100)).toBeLessThan(0.5);
      },
      120_000,
    );

    test.each(stations)(
      '%s: on white, in black, nothing to press, nothing over the edge',
      async (station) => {
        const first = await printed(station);
        for (const [x, y] of [
          [20, 20],
          [first.width - 20, 20],
          [20, first.height - 20],
          [first.width - 20, first.height - 20],
        ])
          expect(first.at(x, y)).toEqual([255, 255, 255]);
        await page.emulateMedia({ media: 'print' });
        const seen = await page.evaluate(() =>
          [
            ...document.querySelectorAll<HTMLElement>(
              'input[type=range], .header-actions button, .stations a, .guide, .button, summary, .drawer',
            ),
          ]
            .filter((e) => e.offsetParent !== null)
            .map((e) => e.outerHTML.slice(0, 80)),
        );
        const ground = await page.evaluate(() => [
          getComputedStyle(document.documentElement).backgroundColor,
          getComputedStyle(document.body).color,
        ]);
        await page.emulateMedia({ media: null });
        expect(seen).toEqual([]);
        expect(ground).toEqual(['rgb(255, 255, 255)', 'rgb(0, 0, 0)']);
      },
      60_000,
    );
  });
}
