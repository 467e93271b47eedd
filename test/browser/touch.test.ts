import type { CDPSession, Page } from 'playwright-core';
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { startOverAt } from './bench-page.ts';
import { onPage, type Opened } from './on-page.ts';

let opened: Opened;
let page: Page;
let finger: CDPSession;
onPage(
  (one) => {
    opened = one;
  },
  () => undefined,
);

type Point = readonly [number, number];

beforeAll(async () => {
  page = await opened.browser.newPage({ viewport: { width: 390, height: 844 }, hasTouch: true });
  finger = await page.context().newCDPSession(page);
});
beforeEach(async () => {
  if (page.url().startsWith(opened.server.url)) await startOverAt(page, 'forms');
  else await page.goto(`${opened.server.url}?job=open#forms`);
  await page.waitForSelector('main[aria-busy=false] .zoom-drawing');
});

/** One finger put down, drawn along and lifted, as the browser itself sees it: it scrolls whatever may scroll. */
async function draw(from: Point, by: Point): Promise<void> {
  const at = (share: number): { x: number; y: number }[] => [{ x: from[0] + by[0] * share, y: from[1] + by[1] * share }];
  await finger.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(0) });
  for (let i = 1; i <= 8; i++) {
    await finger.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(i / 8) });
    // One step a frame, as a screen reports a finger.
    await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(resolve)));
  }
  await finger.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
}
/** A point of the screen that lies well on a thing. */
async function pointOn(selector: string): Promise<Point> {
  const found = await page.evaluate((wanted) => {
    const thing = document.querySelector(wanted)!;
    thing.scrollIntoView({ block: 'center' });
    const box = thing.getBoundingClientRect();
    const on = (x: number, y: number): boolean => thing.contains(document.elementFromPoint(x, y));
    for (let y = box.top + 1; y < box.bottom; y += 2)
      for (let x = box.left + 1; x < box.right; x += 2) {
        if (
          [
            [0, 0],
            [4, 0],
            [-4, 0],
            [0, 4],
            [0, -4],
          ].every(([dx, dy]) => on(x + dx, y + dy))
        )
          return [x, y] as const;
      }
    return null;
  }, selector);
  return found!;
}
const stepName = async (): Promise<string> => (await page.getByRole('button', { name: /^Undo/ }).getAttribute('aria-label')) ?? '';
const scrolled = (): Promise<number> => page.evaluate(() => scrollY);

describe('with a finger on a phone', () => {
  test('a form is carried, turned and sized, and the page stays where it is', async () => {
    await page.getByRole('button', { name: /^Cut Urchin:/ }).tap();
    await page.waitForSelector('main[aria-busy=false] .zoom-drawing');
    for (const [thing, by, step] of [
      ['[data-placed="0"]', [-40, 50], 'Undo: Urchin moved'],
      ['[data-grip=turn]', [50, 40], 'Undo: Urchin turned'],
      ['[data-grip=size]', [-12, -12], 'Undo: size of Urchin'],
    ] as const) {
      const from = await pointOn(thing);
      const before = await scrolled();
      await draw(from, by);
      await expect.poll(stepName).toBe(step);
      expect(await scrolled()).toBe(before);
    }
  });

  test('beside the forms the page scrolls as ever', async () => {
    const box = (await page.locator('.zoom-view').boundingBox())!;
    await draw([box.x + box.width / 2, box.y + box.height - 8], [0, -200]);
    await expect.poll(scrolled).toBeGreaterThan(50);
  });

  test('a bridge is carried along its opening and stays where it was put', async () => {
    await page.evaluate(() => {
      location.hash = 'stencils';
    });
    await page.locator('[data-stencil=urchin]').tap();
    await page.waitForSelector('main[aria-busy=false] .bridge');
    expect(await page.locator('.bridge-pinned').count()).toBe(0);
    const from = await pointOn('.bridge');
    const before = await scrolled();
    // It lies at the ring's upper right: along the rim.
    await draw(from, [-9, -7]);
    await page.locator('.bridge-pinned').waitFor();
    expect(await scrolled()).toBe(before);
  });
});
