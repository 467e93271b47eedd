import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBrowser, serveBench, settled, type BenchServer } from './bench-page.ts';

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

/** What has the keys, as it is read out. */
const focused = (): Promise<string> =>
  page.evaluate(() => {
    const here = document.activeElement as HTMLElement & { labels?: NodeListOf<HTMLElement> };
    return (here.ariaLabel ?? here.labels?.[0]?.textContent ?? here.textContent ?? '').replace(/\s+/g, ' ').trim();
  });

/** Presses Tab until what is named has the keys, and is in sight. */
async function tabTo(name: RegExp, most = 120): Promise<void> {
  const passed: string[] = [];
  for (let i = 0; i < most; i++) {
    await page.keyboard.press('Tab');
    const now = await focused();
    passed.push(now.slice(0, 30));
    if (!name.test(now)) continue;
    expect(await page.evaluate(() => document.activeElement!.checkVisibility()), now).toBe(true);
    return;
  }
  throw new Error(`${String(name)} can't be reached with Tab: ${passed.join(' | ')}`);
}
const press = (key: string): Promise<void> => page.keyboard.press(key);

test('from the empty bench to the packet with keys alone', async () => {
  await page.goto(server.url);
  await page.locator('.empty-bench').waitFor();
  await tabTo(/^Title$/);
  await press('Control+A');
  await page.keyboard.type('By keys');
  await tabTo(/^Start$/);
  await press('Enter');
  await page.locator('.forms').waitFor();
  await tabTo(/^Make a shape$/);
  await press('Enter');
  await tabTo(/^Circle$/);
  await press('Enter');
  // What a pointer drags is moved by arrows.
  await tabTo(/^Circle, added/);
  await press('ArrowRight');
  await press('Shift+ArrowUp');
  expect(await focused()).toContain('middle at 91 mm, 110 mm');
  await tabTo(/^Print its window$/);
  await press('Enter');

  await tabTo(/^Laydown/);
  await press('Enter');
  await page.locator('.rack [data-layer]').waitFor();
  expect(await focused()).toMatch(/^Laydown/);
  await tabTo(/^Go to the station$/);
  await press('Enter');
  await tabTo(/ink/i);
  await press('ArrowDown');
  await tabTo(/^Strength/);
  const strength = page.locator('.rack input[type=range]');
  const was = Number(await strength.inputValue());
  await press('ArrowLeft');
  expect(Number(await strength.inputValue())).toBeLessThan(was);
  await settled(page);

  // What opens takes the keys, Escape closes it and gives them back.
  for (const name of ['Versions', 'Words', 'Open']) {
    await tabTo(new RegExp(`^${name}$`));
    await press('Enter');
    await page.locator('#drawer:focus').waitFor();
    await press('Escape');
    await page.locator('#drawer[hidden]').waitFor({ state: 'attached' });
    expect(await focused()).toBe(name);
  }

  // A stencil that is cut stays: a change that would touch it asks first, and Escape leaves it.
  await tabTo(/^Stencils/);
  await press('Enter');
  await tabTo(/^stencil cut$/i);
  await press('Space');
  await tabTo(/^Forms/);
  await press('Enter');
  await tabTo(/^Circle, added/);
  await press('ArrowRight');
  await page.locator('[role=alertdialog]:focus').waitFor();
  await press('Escape');
  expect(await focused()).toContain('middle at 91 mm');

  await tabTo(/^Print packet$/);
  await press('Enter');
  await page.locator('#drawer:focus').waitFor();
  await tabTo(/^Print packet$/);
  await press('Enter');
  await page.getByRole('button', { name: 'Packet as PDF' }).waitFor({ timeout: 60_000 });
  await tabTo(/^Packet as PDF$/);
  await press('Escape');
  expect(await focused()).toBe('Print packet');
  expect(await page.locator('html[data-pointed]').count()).toBe(0);
}, 60_000);
