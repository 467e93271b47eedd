import type { Browser, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { violations } from './axe.ts';
import type { BenchServer } from './bench-page.ts';
import { onPage } from './on-page.ts';

let browser: Browser;
let server: BenchServer;
let page: Page;
const complaints: string[] = [];
onPage(
  (opened) => {
    ({ browser, server, page } = opened);
  },
  (text) => complaints.push(text),
);

/** Three colours, one of them on white on another. */
const drawing =
  '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100"><rect width="60" height="60" fill="#d00000"/><rect x="10" y="10" width="40" height="40" fill="white"/><circle cx="30" cy="30" r="10" fill="#0000c0"/><rect x="70" y="70" width="20" height="20" fill="#ffe000"/></svg>';
const settled = (): Promise<unknown> => page.waitForSelector('main[aria-busy=false] .zoom-drawing');
const stepName = async (): Promise<string> => (await page.getByRole('button', { name: /^Undo/ }).getAttribute('aria-label')) ?? '';

test('a drawing of several colours is read by touch, and becomes layers; shapes are made, and drawn with the pencil', async () => {
  expect(browser.isConnected()).toBe(true);
  await page.goto(`${server.url}?job=open#forms`);
  await settled();
  await page.locator('[data-bring=drawing]').setInputFiles({ name: 'fish.svg', mimeType: 'image/svg+xml', buffer: Buffer.from(drawing) });
  await page.getByRole('heading', { name: 'What of the drawing is cut' }).waitFor();
  const choice = (name: string | RegExp) => page.getByRole('button', { name });
  await choice('What is dark').click();
  expect(await choice('What is dark').getAttribute('aria-pressed')).toBe('true');
  expect(await stepName()).toContain('how Fish is read');
  await choice(/^#d00000/).click();
  await choice(/^#0000c0/).click();
  expect(await choice(/^#0000c0/).getAttribute('aria-pressed')).toBe('true');
  expect(await choice('What is dark').getAttribute('aria-pressed')).toBe('false');
  expect(await violations(page)).toEqual([]);
  await choice('Make 3 layers of it, one a colour').click();
  await page.getByRole('button', { name: /^Cut Fish #0000c0/ }).waitFor();

  await page.getByText('Make a shape', { exact: true }).click();
  await choice('Stencil letters').first().click();
  await settled();
  const letters = page.getByRole('textbox', { name: 'Letters', exact: true });
  await letters.fill('SALZ');
  await letters.blur();
  expect(await stepName()).toContain('the figures of Stencil letters');
  await page.getByRole('button', { name: /^Stencil letters \d/ }).waitFor();

  await page.getByText('Draw with the pencil', { exact: true }).click();
  const board = page.locator('.pencil-board');
  await board.scrollIntoViewIfNeeded();
  const box = (await board.boundingBox())!;
  const at = (i: number): readonly [number, number] => [
    box.x + box.width / 2 + 60 * Math.cos((2 * Math.PI * i) / 40),
    box.y + box.height / 2 + 60 * Math.sin((2 * Math.PI * i) / 40),
  ];
  await page.mouse.move(...at(0));
  await page.mouse.down();
  for (let i = 1; i <= 40; i++) await page.mouse.move(...at(i));
  await page.mouse.up();
  await page.locator('.pencil-shape').waitFor();
  await page.locator('details', { has: board }).getByRole('button', { name: 'Make it a form' }).click();
  await page.getByRole('button', { name: /^Drawn shape \d/ }).waitFor();
  // The same by keys: a triangle.
  await board.focus();
  for (const keys of [['Space'], ['Shift+ArrowRight', 'Shift+ArrowRight', 'Space'], ['Shift+ArrowDown', 'Shift+ArrowDown', 'Space']])
    for (const key of keys) await page.keyboard.press(key);
  await page.locator('.pencil-shape').waitFor();
  expect(await violations(page)).toEqual([]);
  if (process.env['LAYDOWN_LOOK']) await page.screenshot({ path: process.env['LAYDOWN_LOOK'], fullPage: true });
  expect(complaints).toEqual([]);
}, 120_000);
