import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { violations } from './axe.ts';
import { openBrowser, plainPool, serveBench, type BenchServer } from './bench-page.ts';
import { pulled } from './pulled.ts';

/** A busy machine plans more slowly; it must come all the same. */
const eventually = <T>(look: () => T) => expect.poll(look, { timeout: 20_000 });

let browser: Browser;
let server: BenchServer, counted: BenchServer;
let page: Page;
const complaints: string[] = [];

async function open(url: string): Promise<Page> {
  const opened = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  opened.on('pageerror', (e) => complaints.push(e.message));
  opened.on('console', (m) => {
    if (m.type() === 'error') complaints.push(m.text());
  });
  await opened.goto(`${url}?job=open#edition`);
  await opened.locator('.edition').waitFor({ timeout: 30_000 });
  return opened;
}
const lay = async (part: string): Promise<void> => {
  await page.locator(`[data-part=${part}]`).click();
  await page.locator('main[aria-busy=false]').waitFor();
};

beforeAll(async () => {
  browser = await openBrowser();
  [server, counted] = await Promise.all([serveBench(plainPool()), serveBench(pulled())]);
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
  await counted?.close();
});

describe('the edition station, before the first pull', () => {
  beforeAll(async () => {
    page = await open(server.url);
  });
  afterAll(() => page.close());

  test('a larger edition leaves too few sheets: it is said, and one touch takes enough', async () => {
    await lay('sheets');
    const first = page.locator('.chance').first();
    expect(await first.locator('.chance-short').count()).toBeGreaterThan(0);
    await page.getByRole('textbox', { name: 'Good prints wanted' }).fill('20');
    await page.getByRole('textbox', { name: 'Good prints wanted' }).press('Enter');
    const take = page.getByRole('button', { name: 'Take enough of every paper' }).first();
    await take.waitFor();
    expect(await page.locator('.stations a[aria-current] small').textContent()).toBe('Sheets are short');
    await take.click();
    await eventually(() => take.count()).toBe(0);
    expect(await page.locator('.stations a[aria-current] small').textContent()).toMatch(/^\d+ sheets for 20$/);
    await page.getByRole('button', { name: 'Undo: sheets of a paper' }).click();
    await page.getByRole('button', { name: 'Undo: good prints wanted' }).click();
    await eventually(() => page.getByRole('textbox', { name: 'Good prints wanted' }).inputValue()).toBe('12');
  });

  test('no sheets at all is no edition: what to change is said', async () => {
    await lay('sheets');
    await page.getByRole('textbox', { name: 'Good prints wanted' }).fill('0');
    await page.getByRole('textbox', { name: 'Good prints wanted' }).press('Enter');
    await eventually(() => page.locator('.part-words .says-do').first().textContent()).toContain('at least 1');
    await page.getByRole('button', { name: 'Undo: good prints wanted' }).click();
    await eventually(() => page.locator('.chance').count()).toBe(3);
  });

  test('before anything is counted, signing leads to the press page', async () => {
    await lay('signing');
    await page.getByRole('link', { name: 'Go to the press page' }).click();
    await page.locator('.tap-pulled').waitFor();
    await page.goBack();
    await page.locator('.edition').waitFor();
  });

  test('the hand-out has this job’s own pictures and cautions where the risk is', async () => {
    await lay('handout');
    expect(await page.locator('.handout-picture').count()).toBeGreaterThanOrEqual(8);
    expect(await page.locator('.handout').innerText()).toContain('Fresh blade');
  });

  for (const [width, height] of [
    [1440, 900],
    [820, 1180],
    [390, 844],
  ]) {
    test(`axe finds nothing at ${width} px, and nothing reaches past the page`, async () => {
      await page.setViewportSize({ width, height });
      for (const part of ['sheets', 'signing', 'record', 'handout']) {
        await lay(part);
        expect(await violations(page), part).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth), part).toBeLessThanOrEqual(width);
      }
    });
  }
});

describe('the edition station, after the last pull', () => {
  beforeAll(async () => {
    page = await open(counted.url);
  });
  afterAll(() => page.close());

  test('every sheet stands in the register with what the pencil writes; the smeared one is not signed', async () => {
    await lay('signing');
    expect(await page.locator('tbody tr').count()).toBe(28);
    expect(await page.locator('tr[data-sheet=A3] .pencil').textContent()).toBe('not signed');
    expect(await page.locator('tr[data-sheet=A3]').textContent()).toContain('smeared');
    expect(await page.locator('tr[data-sheet=B2]').textContent()).toContain('a little thin');
    const pencil = await page.locator('.pencil b').allTextContents();
    // One was wished for, and one was planned: from the first paper.
    expect(pencil.filter((text) => text === 'B.A.T.')).toHaveLength(1);
    // An edition of its own for each paper, together the twelve wanted.
    const numbered = pencil.filter((text) => /^\d+\/\d+$/.test(text));
    expect(numbered).toHaveLength(12);
  });

  test('another sheet is chosen as the measure, and undo names it', async () => {
    await lay('signing');
    await page.getByLabel('Sheet A7 is set apart as').selectOption('bat');
    await eventually(() => page.locator('tr[data-sheet=A7] .pencil').textContent()).toBe('B.A.T.');
    await page.getByRole('button', { name: 'Undo: a sheet set apart' }).click();
    await eventually(() => page.locator('tr[data-sheet=A7] .pencil').textContent()).not.toBe('B.A.T.');
  });

  test('what is said in the record stands on the documentation sheet and in the colophon', async () => {
    await lay('record');
    await page.getByRole('textbox', { name: 'Printed by' }).fill('two pairs of hands');
    await page.getByRole('textbox', { name: 'Printed by' }).press('Enter');
    await page.getByLabel('Stencils after printing').selectOption('cancelled');
    await eventually(() => page.locator('.leaf').textContent()).toContain('cancelled after printing');
    expect(await page.locator('.colophon').textContent()).toMatch(/two pairs of hands.*cancelled after printing/);
  });

  test('the register is taken away as CSV, a line for every sheet', async () => {
    await lay('record');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Register of sheets, CSV' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('tide-pool-register.csv');
    const lines = readFileSync((await download.path())!, 'utf8')
      .trim()
      .split('\r\n');
    expect(lines).toHaveLength(29);
    expect(lines[3]).toContain('pebbles: smeared');
  });

  test('axe finds nothing with the register full, also on the phone; the page complained of nothing', async () => {
    for (const [width, height] of [
      [1440, 900],
      [390, 844],
    ]) {
      await page.setViewportSize({ width, height });
      for (const part of ['signing', 'record']) {
        await lay(part);
        expect(await violations(page), part).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth), part).toBeLessThanOrEqual(width);
      }
    }
    expect(complaints).toEqual([]);
  });
});
