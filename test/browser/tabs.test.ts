import { readFileSync } from 'node:fs';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser, serveBench, type BenchServer } from './bench-page.ts';
import { smallJob } from '../../src/packet/packet-jobs.ts';

const browser = openBrowser();
let server: BenchServer;
let context: BrowserContext;
const eventually = <T>(look: () => T) => expect.poll(look, { timeout: 30_000 });
const slider = (page: Page) => page.locator('[data-layer=ring] input[type=range]');
const other = 'Another tab is the bench';

beforeAll(async () => {
  server = await serveBench(smallJob());
});
afterAll(async () => {
  await (await browser).close();
  await server?.close();
});

/** Two tabs of one browser; the first is the bench. */
async function twoTabs(): Promise<readonly [Page, Page]> {
  context = await (await browser).newContext({ viewport: { width: 1440, height: 900 } });
  const [first, second] = [await context.newPage(), await context.newPage()];
  for (const page of [first, second]) {
    await page.goto(`${server.url}?job=open#laydown`);
    await slider(page).waitFor({ timeout: 60_000 });
  }
  await eventually(() => second.locator('.notice').textContent()).toContain(other);
  return [first, second];
}
const kept = (page: Page): Promise<void> => eventually(() => page.locator('.kept').textContent()).toBe('Kept on this machine');

/** Titles on the wall, in order, and how far each print has come. */
const wall = async (page: Page): Promise<string[]> => {
  await page.evaluate(() => {
    location.hash = 'prints';
  });
  await page.locator('.wall-prints li').first().waitFor();
  return page.locator('.wall-prints li').evaluateAll((all) => all.map((li) => li.querySelector('.wall-title')!.textContent ?? ''));
};

describe('my prints', () => {
  test('each stays as it was left: through another job, a new one, a copy, a page that is killed; all go out and come back in one file', async () => {
    context = await (await browser).newContext({ viewport: { width: 1440, height: 900 }, acceptDownloads: true });
    let page = await context.newPage();
    await page.goto(`${server.url}?job=open#laydown`);
    await slider(page).waitFor({ timeout: 60_000 });
    await slider(page).fill('25');
    await kept(page);
    // A new one, from where one stands.
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await page.locator('#drawer').getByText('New print').click();
    await page.locator('#drawer .new-job input.text').fill('Heron');
    await page.locator('#drawer .new-job .button-strong').click();
    await page.locator('.forms').waitFor();
    await eventually(() => wall(page)).toEqual(['Heron', 'Two squares']);
    // The page goes without a word.
    const session = await context.newCDPSession(page);
    await Promise.race([session.send('Page.crash'), page.waitForEvent('crash')]).catch(() => undefined);
    page = await context.newPage();
    await page.goto(`${server.url}#prints`);
    await eventually(() => wall(page)).toEqual(['Heron', 'Two squares']);
    await page.getByRole('button', { name: /^Copy “Two squares”/ }).click();
    await eventually(() => wall(page)).toEqual(['Two squares, another', 'Heron', 'Two squares']);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Export all in one file' }).click(),
    ]);
    const all = { name: 'all.zip', mimeType: 'application/zip', buffer: readFileSync((await download.path())!) };
    await page.getByRole('button', { name: 'Open “Two squares”', exact: true }).click();
    await eventually(() => slider(page).inputValue()).toBe('25');
    // The same file again hangs nothing twice.
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await page.locator('#drawer input[type=file]').setInputFiles(all);
    await eventually(() => page.locator('.announcer').textContent()).toContain('3 hung there already');
    // Put away, thrown away: the others lose nothing.
    await wall(page);
    await page.getByRole('button', { name: 'Put away “Two squares, another”' }).click();
    await page.locator('.wall-away summary').click();
    await page.getByRole('button', { name: 'Throw “Two squares, another” away' }).click();
    await page.getByRole('button', { name: /for good$/ }).click();
    await eventually(() => page.locator('.wall-away').count()).toBe(0);
    await page.reload();
    expect((await wall(page)).sort()).toEqual(['Heron', 'Two squares']);
    await context.close();

    context = await (await browser).newContext({ viewport: { width: 390, height: 844 } });
    const elsewhere = await context.newPage();
    await elsewhere.goto(server.url);
    await elsewhere.locator('input[type=file]').setInputFiles(all);
    await eventually(() => elsewhere.locator('.wall-prints li').count()).toBe(3);
    await elsewhere.getByRole('button', { name: 'Open “Two squares, another”' }).click();
    await eventually(() => slider(elsewhere).inputValue()).toBe('25');
    await context.close();
  }, 120_000);
});

describe('two tabs', () => {
  test('the second becomes the bench when the first closes, with what was done there', async () => {
    const [first, second] = await twoTabs();
    await slider(first).fill('25');
    await first.waitForTimeout(400);
    await kept(first);
    await first.close();
    await eventually(() => slider(second).inputValue()).toBe('25');
    expect(await second.getByText(other).count()).toBe(0);
    await context.close();
  }, 120_000);

  test('what was done in the second stays, and what the first held is a version', async () => {
    const [first, second] = await twoTabs();
    await slider(first).fill('25');
    await slider(second).fill('70');
    await first.waitForTimeout(400);
    await kept(first);
    await first.close();
    await kept(second);
    expect(await slider(second).inputValue()).toBe('70');
    await second.getByRole('button', { name: 'Versions' }).click();
    await second.locator('.versions li', { hasText: 'Two squares, from another tab' }).waitFor();
    await second.reload();
    await eventually(() => slider(second).inputValue()).toBe('70');
    await context.close();
  }, 120_000);

  test('“Work here instead” hands over at once, to and fro', async () => {
    const [first, second] = await twoTabs();
    await slider(first).fill('40');
    await second.getByRole('button', { name: 'Work here instead' }).click();
    await eventually(() => slider(second).inputValue()).toBe('40');
    await eventually(() => first.locator('.notice').textContent()).toContain(other);
    await slider(second).fill('55');
    await first.getByRole('button', { name: 'Work here instead' }).click();
    await eventually(() => slider(first).inputValue()).toBe('55');
    await context.close();
  }, 120_000);

  test('both closed: what was done in the one that was not the bench is a version', async () => {
    const [first, second] = await twoTabs();
    await slider(second).fill('80');
    await second.waitForTimeout(600);
    await second.close();
    await first.reload();
    await slider(first).waitFor({ timeout: 60_000 });
    await first.getByRole('button', { name: 'Versions' }).click();
    await first.locator('.versions li', { hasText: 'from another tab' }).waitFor();
    await context.close();
  }, 120_000);
});

test('a Plan that takes long can be stopped, and gone on with, and the bench is at hand all the while', async () => {
  const small = smallJob();
  const lab: [number, number, number] = [40, 5, -10];
  const readings = Array.from({ length: 40_000 }, () => ({
    paper: 'white',
    layers: ['ring', 'block'],
    reading: { kind: 'lab' as const, lab },
  }));
  const long = await serveBench({ ...small, job: { ...small.job, proofReadings: readings } });
  const page = await (await browser).newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(`${long.url}?job=open#laydown`);
  const stop = page.locator('.proof-figure, main').getByRole('button', { name: 'Stop', exact: true }).first();
  const busy = (): Promise<string | null> => page.locator('main').getAttribute('aria-busy');
  await stop.click({ timeout: 60_000 });
  await eventually(() => page.locator('.notice').textContent()).toContain('You stopped the working out');
  expect(await busy()).toBe('false');
  await page.getByRole('button', { name: 'Go on', exact: true }).click();
  await eventually(busy).toBe('true');
  expect(await page.locator('.notice').count()).toBe(0);
  await stop.click({ timeout: 60_000 });
  await eventually(busy).toBe('false');
  await page.close();
  await long.close();
});
