import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { de } from '../../src/words/de/bench/index.ts';
import { en } from '../../src/words/en/bench/index.ts';
import { violations } from './axe.ts';
import { smallJob } from '../../src/packet/packet-jobs.ts';
import { openBench, openBrowser, proofColour, serveBench, settled, startOver, tidePool, type BenchServer } from './bench-page.ts';

let browser: Browser;
let server: BenchServer;
/** Two runs, the second still without an ink. */
let small: BenchServer;
beforeAll(async () => {
  browser = await openBrowser();
  const { job } = smallJob();
  server = await serveBench(tidePool());
  small = await serveBench(
    smallJob({ layers: job.layers.map((layer, i) => (i === 1 ? { ...layer, ink: null, strength: undefined } : layer)) }),
  );
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
  await small?.close();
});

let once: Page | undefined;
const said = async (page: Page): Promise<string> => (await page.locator('.guide-text').textContent()) ?? '';
const { steps } = en.guide;

describe('the tour', () => {
  test('from an empty bench to the printed packet: it notices what was done, step by step', async () => {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    await page.goto(server.url);
    await page.locator('.empty-tour').click();
    await expect.poll(() => said(page)).toContain(steps.open);
    await page.locator('.guide').getByRole('button', { name: en.shell.openExample }).click();
    await settled(page);
    await expect.poll(() => said(page)).toContain(steps.point);
    expect(await page.locator('.guide').evaluate((g) => getComputedStyle(g).position)).toBe('static');
    await page.locator('.laydown-side .proof-canvas').hover();
    await expect.poll(() => said(page)).toContain(steps.strength);
    await page.locator('[data-layer=water] input[type=range]').fill('30');
    await expect.poll(() => said(page)).toContain(`${en.guide.done} ${steps.undo}`);
    await page.keyboard.press('Control+Z');
    await expect.poll(() => said(page)).toContain(steps.order);
    await page.getByRole('button', { name: 'Print Kelp earlier' }).click();
    await expect.poll(() => said(page)).toContain(steps.ink);
    await page
      .locator('[data-layer=foam] .pot-row')
      .getByRole('radio', { name: 'Slate grey' })
      .or(page.locator('[data-layer=foam] .pot-row input').nth(2))
      .first()
      .check();
    await page.locator('[data-layer=foam] button.pot-keep').click();
    await expect.poll(() => said(page)).toContain(steps.register);
    await page.locator('.laydown').getByRole('radio', { name: en.press.proofWorst }).check();
    await expect.poll(() => said(page)).toContain(steps.overlaps);
    await page.locator('.guide').getByRole('link', { name: en.guide.go }).click();
    await page.locator('.swatch-grid .overlap').nth(3).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => said(page)).toContain(steps.stencils);
    await page.locator('.guide').getByRole('link', { name: en.guide.go }).click();
    await page.locator('.stencils .hung-sheet').nth(1).click();
    await expect.poll(() => said(page)).toContain(steps.press);
    await page.locator('.guide').getByRole('link', { name: en.guide.go }).click();
    await page.locator('[data-part=gap]').click();
    await expect.poll(() => said(page)).toContain(steps.edition);
    await page.locator('.guide').getByRole('link', { name: en.guide.go }).click();
    await expect.poll(() => said(page)).toContain(steps.print);
    await page.locator('.header').getByRole('button', { name: en.shell.print, exact: true }).click();
    await page.locator('.drawer').getByRole('button', { name: en.shell.print, exact: true }).click();
    await expect.poll(() => said(page), { timeout: 90_000 }).toContain(steps.pdf);
    // What stands apart from the packet has a file of its own beside it.
    const packet = page.locator('.packet-pdf').filter({ hasText: en.shell.packetPdf });
    const [file] = await Promise.all([page.waitForEvent('download'), packet.click()]);
    expect(file.suggestedFilename()).toMatch(/-packet\.pdf$/);
    await expect.poll(() => said(page)).toContain(en.guide.finished);
    expect(await violations(page)).toEqual([]);
    once = page;
  }, 240_000);

  test('left and taken up again where it was, also after the page is loaded anew; keys alone do', async () => {
    const { page } = await openBench(browser, `${small.url}?job=open#laydown`);
    await page.getByRole('button', { name: en.guide.tour, exact: true }).press('Enter');
    await expect.poll(() => said(page)).toContain(steps.open);
    await page.getByRole('button', { name: en.guide.skip }).press('Enter');
    await expect.poll(() => said(page)).toContain(steps.point);
    expect(await said(page)).not.toContain(en.guide.done);
    await page.getByRole('button', { name: en.guide.leave }).press('Enter');
    expect(await page.locator('.guide-text').count()).toBe(0);
    await page.reload();
    await settled(page);
    await page.getByRole('button', { name: en.guide.tour, exact: true }).press('Enter');
    await expect.poll(() => said(page)).toContain(steps.point);
    await page.getByRole('button', { name: en.guide.back, exact: true }).press('Enter');
    await expect.poll(() => said(page)).toContain(steps.open);
    await page.close();
  }, 120_000);
});

describe('the next sensible step', () => {
  test('is named at every station until nothing is missing; then it is the packet', async () => {
    const { page } = await openBench(browser, `${small.url}?job=open#laydown`);
    const next = page.locator('.next-step');
    await expect.poll(() => next.textContent()).toContain(en.laydown.needsInk(['Block']));
    await page.evaluate(() => {
      location.hash = 'press';
    });
    await next.getByRole('link').click();
    await page.waitForSelector('.laydown');
    // Here the step leads to the pots of the open run; once one is tried, it keeps it.
    await next.getByRole('button').click();
    expect(await page.evaluate(() => document.activeElement?.closest('[data-layer]')?.getAttribute('data-layer'))).toBe('block');
    await page.locator('[data-layer=block] .pot-row input').nth(1).check();
    await next.getByRole('button', { name: en.guide.keepTried(1) }).click();
    await settled(page);
    await expect.poll(() => next.textContent()).not.toContain('Block');
    await page.close();
  }, 120_000);
});

/** tide-pool at the laydown: one page for all that follows. */
async function atLaydown(): Promise<Page> {
  once ??= (await openBench(browser, `${server.url}?job=open#laydown`)).page;
  await startOver(once, 'laydown');
  return once;
}

describe('words of the trade', () => {
  test('are at hand at every station, push the bench down and never cover it', async () => {
    const page = await atLaydown();
    for (const station of await page.locator('.stations a').evaluateAll((all) => all.map((a) => a.getAttribute('href')!.split('#')[1]))) {
      await page.evaluate((id) => {
        location.hash = id;
      }, station);
      await page.waitForSelector('main[aria-busy=false]');
      await page.getByRole('button', { name: en.glossary.open, exact: true }).click();
      await page.getByRole('button', { name: 'island', exact: true }).first().click();
      expect(await page.locator('.glossary .term-says').textContent(), station).toContain(en.glossary.terms.island.says);
      expect(
        await page.evaluate(
          () =>
            document.querySelector('main')!.getBoundingClientRect().top >=
            document.querySelector('#drawer')!.getBoundingClientRect().bottom - 1,
        ),
        station,
      ).toBe(true);
      await page.keyboard.press('Escape');
    }
  }, 120_000);

  test('a ‘why’ explains the words it uses, right there, in the language in use', async () => {
    const page = await atLaydown();
    const check = async (glossary: typeof en.glossary): Promise<void> => {
      const why = page.locator('.laydown figcaption .why');
      await why.locator('summary').click();
      await why
        .locator('.term', { hasText: glossary.terms.reading.names.split(',')[0] })
        .first()
        .click();
      expect(await why.locator('.term-says').count()).toBe(1);
      await why.locator('summary').click();
    };
    await check(en.glossary);
    await page.locator('.header .language-switch').getByRole('radio', { name: 'Deutsch' }).check();
    await check(de.glossary);
    await page.locator('.header .language-switch').getByRole('radio', { name: 'English' }).check();
  }, 120_000);
});

describe('at the laydown', () => {
  test('the proof is shown as sheets may fall; a slider then only paints', async () => {
    const page = await atLaydown();
    const pixels = (): Promise<string> =>
      page.locator('.laydown-side .proof-canvas').evaluate((c) => {
        const { width, height } = c as HTMLCanvasElement;
        const data = (c as HTMLCanvasElement).getContext('2d')!.getImageData(0, 0, width, height).data;
        let sum = 0;
        for (let i = 0; i < data.length; i++) sum = (sum * 31 + data[i]) >>> 0;
        return String(sum);
      });
    const inRegister = await pixels();
    await page.getByRole('radio', { name: en.press.proofWorst }).check();
    await page.waitForSelector('.proof-figure[data-sheet]:not([data-sheet=none])');
    const worst = await pixels();
    expect(worst).not.toBe(inRegister);
    await page.getByRole('button', { name: en.press.another }).click();
    await expect.poll(pixels).not.toBe(worst);
    const before = await proofColour(page, 0.1, 0.1);
    await page.locator('[data-layer=sky] input[type=range]').fill('90');
    await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))));
    expect(await proofColour(page, 0.1, 0.1)).not.toEqual(before);
    expect(await page.locator('.proof-figure').getAttribute('data-sheet')).not.toBe('none');
  }, 120_000);

  test('every paper side by side, and a wanted colour that follows the slider', async () => {
    const page = await atLaydown();
    await page.getByRole('button', { name: en.laydown.allPapers }).click();
    expect(await page.locator('.laydown-papers .proof-canvas').count()).toBe(tidePool().job.papers.length);
    await page.getByRole('button', { name: en.laydown.allPapers }).click();
    const wanted = page.locator('.wanted-here li');
    const before = await wanted.textContent();
    await page.locator('[data-layer=urchin] input[type=range]').fill('30');
    await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))));
    expect(await wanted.textContent()).not.toBe(before);
  }, 120_000);
});
