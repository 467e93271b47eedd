import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { atRest, type BenchServer } from './bench-page.ts';
import { onPage } from './on-page.ts';

let server: BenchServer;
let page: Page;
onPage(
  (opened) => {
    ({ server, page } = opened);
  },
  () => {},
);

const drawn = async (): Promise<void> => {
  await page.waitForSelector('main[aria-busy=false] .zoom-drawing', { timeout: 60_000 });
  await atRest(page);
};
const number = (label: string): Promise<number> => page.getByRole('textbox', { name: label, exact: true }).inputValue().then(Number);

test('a form held at the edge of a zoomed view pulls the sheet along, and stays under the hand', async () => {
  await page.goto(`${server.url}?job=open#forms`);
  await drawn();
  await page.getByRole('button', { name: /^Cut Urchin:/ }).click();
  await page.getByRole('button', { name: 'All of it' }).click();
  for (let i = 0; i < 5; i++) await page.getByRole('button', { name: 'Nearer' }).click();
  await drawn();
  await page.locator('[data-placed="0"]').focus();
  const view = (await page.locator('.zoom-view').boundingBox())!;
  const scrolled = (): Promise<readonly [number, number]> =>
    page.locator('.zoom-view').evaluate((v) => [v.scrollLeft, v.scrollTop] as const);
  // The form is brought to the middle of the view first.
  await page.locator('.zoom-view').evaluate((v) => {
    const [a, b] = [v.getBoundingClientRect(), v.querySelector('[data-placed="0"]')!.getBoundingClientRect()];
    v.scrollBy(b.x + b.width / 2 - a.x - a.width / 2, b.y + b.height / 2 - a.y - a.height / 2);
  });
  const before = [await number('From the left'), await number('From the top')];
  const from = await page.locator('[data-placed="0"]').evaluate((g) => {
    // A place that is on the form itself, not in its hole.
    const box = g.getBoundingClientRect();
    for (let y = 0.05; y < 1; y += 0.05)
      for (let x = 0.05; x < 1; x += 0.05) {
        const at = [box.x + x * box.width, box.y + y * box.height] as const;
        if (document.elementFromPoint(...at)?.closest('[data-placed="0"]')) return at;
      }
    return null;
  });
  expect(from).not.toBeNull();
  const [left] = await scrolled();
  await page.mouse.move(...from!);
  await page.mouse.down();
  await page.mouse.move(from![0] - 40, from![1], { steps: 4 });
  expect((await scrolled())[0]).toBe(left);
  await page.mouse.move(view.x + 4, from![1], { steps: 6 });
  await expect.poll(async () => (await scrolled())[0]).toBeLessThan(left - 60);
  // Back from the edge it rests.
  await page.mouse.move(view.x + 120, from![1], { steps: 3 });
  await drawn();
  const [rests] = await scrolled();
  await atRest(page);
  expect((await scrolled())[0]).toBe(rests);
  const wide = await page
    .locator('.zoom-drawing')
    .evaluate((svg) => svg.getBoundingClientRect().width / (svg as SVGSVGElement).viewBox.baseVal.width);
  await page.mouse.up();
  await drawn();
  const moved = (from![0] - (view.x + 120) + left - rests) / wide;
  expect(Math.abs(before[0] - (await number('From the left')) - moved)).toBeLessThan(3);
  expect(Math.abs(before[1] - (await number('From the top')))).toBeLessThan(3);
  expect(await page.getByRole('button', { name: 'Undo: Urchin moved' }).count()).toBe(1);
  await page.getByRole('button', { name: 'All of it' }).click();
});
