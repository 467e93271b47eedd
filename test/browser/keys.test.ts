import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBrowser, serveBench, type BenchServer } from './bench-page.ts';
import { byKeys } from './keys-flow.ts';

let browser: Browser;
let server: BenchServer;
let page: Page;
beforeAll(async () => {
  browser = await openBrowser();
  server = await serveBench(null);
  page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  // Whoever presses keys has no pointer: every press of one is a fault.
  await page.addInitScript(() => addEventListener('pointerdown', () => document.documentElement.setAttribute('data-pointed', ''), true));
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

test('from the empty bench to the packet with keys alone', async () => {
  await byKeys(page, server.url);
  expect(await page.locator('html[data-pointed]').count()).toBe(0);
}, 60_000);
