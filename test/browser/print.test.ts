import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { decode } from 'fast-png';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { stations } from './stations-list.ts';
import { openBench, openBrowser, serveBench, settled, tidePool, type BenchServer } from './bench-page.ts';

let browser: Browser;
let server: BenchServer;
let page: Page;
beforeAll(async () => {
  browser = await openBrowser();
  server = await serveBench(tidePool());
  ({ page } = await openBench(browser, `${server.url}?job=open#laydown`));
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

/** 10 pixels a millimetre. */
const perInch = 254;

async function printed(station: string): Promise<{ readonly width: number; readonly height: number; readonly at: (x: number, y: number) => number[] }[]> {
  await page.evaluate((id) => { location.hash = id; }, station);
  await settledAt(station);
  const folder = mkdtempSync(join(tmpdir(), 'print-'));
  try {
    writeFileSync(join(folder, 'page.pdf'), await page.pdf({ format: 'A4', preferCSSPageSize: true }));
    execFileSync('pdftoppm', ['-r', String(perInch), '-png', join(folder, 'page.pdf'), join(folder, 'page')]);
    const names = execFileSync('ls', [folder]).toString().split('\n').filter((n) => n.endsWith('.png')).sort();
    return names.map((name) => {
      const { width, height, data, channels } = decode(new Uint8Array(readFileSync(join(folder, name))));
      return { width, height, at: (x, y) => [0, 1, 2].map((c) => data[(y * width + x) * channels + c]) };
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
async function settledAt(station: string): Promise<void> {
  await page.waitForSelector('main[aria-busy=false]');
  if (station === 'laydown' || station === 'overlaps') await settled(page);
  await page.waitForTimeout(300);
}
const isDark = ([r, g, b]: number[]): boolean => r < 90 && g < 90 && b < 90;

describe('a station on paper', () => {
  test.each(['laydown', 'overlaps'])('%s: the proof has its true size, and the line to measure is 100 mm long', async (station) => {
    const [first] = await printed(station);
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
    expect(Math.abs((right - left) / 10 - widthMm)).toBeLessThan(0.8);
    expect(Math.abs((bottom - top) / 10 - heightMm)).toBeLessThan(0.8);
    // The longest dark stretch in the rows below the image and its paper.
    let longest = 0;
    for (let y = bottom + 60; y < first.height; y++) {
      let run = 0;
      for (let x = 0; x < first.width; x++) {
        run = isDark(first.at(x, y)) ? run + 1 : 0;
        longest = run < 1500 ? Math.max(longest, run) : longest;
      }
    }
    expect(Math.abs(longest / 10 - 100)).toBeLessThan(0.5);
  }, 120_000);

  test.each(stations)('%s: on white, in black, nothing to press, nothing over the edge', async (station) => {
    const [first] = await printed(station);
    for (const [x, y] of [[20, 20], [first.width - 20, 20], [20, first.height - 20], [first.width - 20, first.height - 20]]) expect(first.at(x, y)).toEqual([255, 255, 255]);
    await page.emulateMedia({ media: 'print' });
    const seen = await page.evaluate(() => [...document.querySelectorAll<HTMLElement>('input[type=range], .header-actions button, .stations a, .guide, .button, summary, .drawer')].filter((e) => e.offsetParent !== null).map((e) => e.outerHTML.slice(0, 80)));
    const ground = await page.evaluate(() => [getComputedStyle(document.documentElement).backgroundColor, getComputedStyle(document.body).color]);
    await page.emulateMedia({ media: null });
    expect(seen).toEqual([]);
    expect(ground).toEqual(['rgb(255, 255, 255)', 'rgb(0, 0, 0)']);
  }, 60_000);
});
