import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { violations } from './axe.ts';
import { readJobAt } from '../../src/cli/disk/folder.ts';
import { atRest, openBrowser, serveBench, tidePool, type BenchServer } from './bench-page.ts';

// The picture: test/pictures/SOURCES.md.
const photograph = fileURLToPath(new URL('../pictures/flower.jpg', import.meta.url));

const noPicture = { name: 'letter.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('Dear printmaker') };

let browser: Browser;
let server: BenchServer;
beforeAll(async () => {
  browser = await openBrowser();
  // Half as wide and high: the way from a picture to the job is tried here, and a quarter of the pixels is cut sooner.
  const { job, ...rest } = tidePool();
  server = await serveBench({ ...rest, job: { ...job, image: { widthMm: job.image.widthMm / 2, heightMm: job.image.heightMm / 2 } } });
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

test('a photograph becomes stencils, and then the job, in one step that can be undone', async () => {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  const complaints: string[] = [];
  page.on('pageerror', (e) => complaints.push(e.message));
  await page.goto(`${server.url}?job=open#picture`);
  await page.locator('button', { hasText: 'Choose a picture' }).waitFor();
  await page.locator('input[type=file]').first().setInputFiles(photograph);
  await page.getByRole('button', { name: 'Make the stencils' }).waitFor();
  expect(await violations(page)).toEqual([]);
  // Which pots of the shelf may be used is seen: each is there with its tick.
  await page.locator('[data-part=layers]').click();
  const ticks = page.locator('.shelf-pot input');
  expect(
    await ticks.evaluateAll((all) =>
      all.map(
        (tick) => (tick as HTMLInputElement).checked && getComputedStyle(tick).opacity === '1' && tick.getBoundingClientRect().width > 10,
      ),
    ),
  ).toEqual(Array(6).fill(true));
  expect(
    await page
      .locator('.shelf-pot .pot')
      .first()
      .evaluate((pot) => pot.getBoundingClientRect().width),
  ).toBeGreaterThan(44);
  // Three ways to take it, drawn small; one touch takes one and makes it.
  await page.locator('.way canvas').first().waitFor({ timeout: 120_000 });
  expect(await page.locator('.way small').first().textContent()).toMatch(/^about .*of the edges kept$/);
  expect(await page.locator('.way[aria-pressed=true]').textContent()).toMatch(/Near the picture/);
  expect(await violations(page)).toEqual([]);
  await page.getByRole('button', { name: /^Bold/ }).click();
  // Stopped on the way: the best so far is cut.
  await page.getByRole('button', { name: /^Stop, cut the best so far/ }).click({ timeout: 60_000 });
  await page.getByRole('button', { name: /^Make it the job/ }).waitFor({ timeout: 120_000 });
  expect(await violations(page)).toEqual([]);
  // As many flat inks beside it as there are runs, not as many as they have overlaps.
  expect(
    await page
      .getByText(/\d+ flat opaque inks/)
      .first()
      .textContent(),
  ).toMatch(/^4 flat/);
  // What is lost of the drawing is seen, in the picture and in the print, and not told once more in words.
  const lost = await page.locator('.lost-place').count();
  expect(lost).toBeGreaterThan(0);
  expect(await page.locator('.lost-place canvas').count()).toBe(2 * lost);
  expect(await page.locator('.picture-result .problems', { hasText: 'lost at this size' }).count()).toBe(0);
  // What is no picture takes nothing away: neither the picture in hand nor what was made of it.
  await page.locator('[data-part=picture]').click();
  await page.locator('main input[type=file]').first().setInputFiles(noPicture);
  await page.getByText('letter.jpg', { exact: false }).first().waitFor();
  await page.locator('[data-part=result]').click();
  await page.getByRole('button', { name: /^Make it the job/ }).click();
  await expect.poll(() => page.getByRole('button', { name: /^Undo/ }).isEnabled()).toBe(true);
  await page.waitForSelector('main[aria-busy=false] .proof-canvas', { timeout: 90_000 });
  expect(await page.locator('[data-layer]').count()).toBeLessThanOrEqual(4);
  // It is the job now, and no reason to make it again.
  await page.getByRole('link', { name: /^Picture/ }).click();
  await page.getByText('on the laydown now', { exact: false }).first().waitFor();
  expect(await page.getByText('Something was changed since', { exact: false }).count()).toBe(0);
  await page.getByRole('link', { name: 'To the laydown' }).click();
  await page.keyboard.press('Control+z');
  await expect.poll(() => page.locator('[data-layer=urchin]').count()).toBe(1);
  expect(complaints).toEqual([]);
  await page.close();
}, 300_000);

test('what is no picture is refused in plain words', async () => {
  const page = await browser.newPage({ viewport: { width: 390, height: 844 } });
  await page.goto(`${server.url}?job=open#picture`);
  await page.locator('button', { hasText: 'Choose a picture' }).waitFor();
  await page.locator('input[type=file]').first().setInputFiles(noPicture);
  await page.getByText('letter.jpg', { exact: false }).first().waitFor();
  expect(await page.locator('body').textContent()).not.toMatch(/undefined|TypeError/);
  expect(await violations(page)).toEqual([]);
  await page.close();
}, 120_000);

test('without an ink that was read nothing is begun, and the way to the inks is shown', async () => {
  const tide = tidePool();
  const bare = await serveBench({
    ...tide,
    job: { ...tide.job, forms: [], cuts: [], layers: [], inks: [], wanted: [], proofReadings: [] },
  });
  const page = await browser.newPage({ viewport: { width: 1024, height: 768 } });
  await page.goto(`${bare.url}?job=open#picture`);
  await page.locator('main input[type=file]').first().setInputFiles(photograph);
  await page.getByText('No ink of this job has been read yet', { exact: false }).first().waitFor();
  expect(await page.getByRole('button', { name: 'Make the stencils' }).isEnabled()).toBe(false);
  await page.locator('[data-part=result]').click();
  expect(await page.getByText('first sketch', { exact: false }).count()).toBe(0);
  await page.getByRole('link', { name: 'To the inks' }).click();
  await page.waitForSelector('.inks');
  await page.close();
  await bare.close();
}, 120_000);

test('the same picture as tone: films in inks of the shelf become the job, are seen as films, and saved with one bit a pixel', async () => {
  const letters = await serveBench(readJobAt('examples/letters'));
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  const complaints: string[] = [];
  page.on('pageerror', (e) => complaints.push(e.message));
  await page.goto(`${letters.url}?job=open#picture`);
  await page.locator('main input[type=file]').first().setInputFiles(photograph);
  // Or as lines for a knife: they are drawn, and could be the job.
  await page.locator('[data-part=lines]').click();
  await page.getByRole('radio', { name: 'Hatching both ways' }).check();
  await page.getByRole('button', { name: 'Draw the lines' }).click();
  await page.locator('.stencil-picture').waitFor();
  expect(await violations(page)).toEqual([]);
  await page.locator('[data-part=tone]').click();
  const chosen = page.locator('.pots-row input:checked');
  while ((await chosen.count()) > 2) await chosen.last().click();
  await page.getByRole('radio', { name: 'Grain' }).check();
  await page.getByRole('button', { name: 'Split the picture' }).click();
  await page.locator('.tone-films figure').first().waitFor({ timeout: 60_000 });
  const films = await page.locator('.tone-films figure').count();
  expect(films).toBeGreaterThan(0);
  // What other ways would take, run by run: flats are seen in a film's place, and the film is there again.
  await page.getByRole('button', { name: 'What would other ways take?' }).click();
  const flats = page.locator('.tone-ways').first().getByRole('radio', { name: 'in flat strengths' }).first();
  await flats.check({ timeout: 60_000 });
  await page.locator('.tone-films .stencil-picture').waitFor();
  expect(await page.locator('.tone-films .stencil-flat').count()).toBe(2);
  expect(await violations(page)).toEqual([]);
  await page.locator('.tone-ways').first().getByRole('radio', { name: 'through a film' }).check();
  await page.getByRole('button', { name: 'Make it the job' }).click();
  await page.evaluate(() => {
    location.hash = 'stencils';
  });
  await page.locator('.film-plane').waitFor({ timeout: 60_000 });
  expect(await page.locator('[data-stencil] canvas').count()).toBe(films);
  await atRest(page);
  expect(await violations(page)).toEqual([]);
  await page.getByRole('textbox', { name: 'The printer’s resolution' }).fill('300');
  await page.keyboard.press('Enter');
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Film as PNG' }).click()]);
  const chunks: Buffer[] = [];
  for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
  const head = Buffer.concat(chunks);
  expect(head.subarray(1, 4).toString()).toBe('PNG');
  // IHDR (PNG specification, third edition, 11.2.1): width, height, then the bits of a sample.
  expect(head.readUInt32BE(16)).toBeGreaterThan((readJobAt('examples/letters').job.image.widthMm / 25.4) * 300);
  expect(head[24]).toBe(1);
  // The strip, and then the wedge: what they show is in the job, in one step each.
  await page.getByRole('textbox', { name: 'What each row held' }).fill('10-90, 5-95, 3-97, -');
  await page.getByRole('button', { name: 'Take this exposure' }).click();
  await page.getByText('Expose 120 s, as the test strip showed').waitFor();
  await page.getByRole('textbox', { name: 'Or type its steps' }).fill('0: 0.05\n10: 0.2\n30: 0.42\n50: 0.6\n80: 0.9\n100: 1.1');
  await page.getByRole('button', { name: 'Take these steps' }).click();
  await page.getByRole('button', { name: 'Forget this wedge' }).waitFor();
  const [wedge] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'The wedge as PDF' }).click()]);
  expect(wedge.suggestedFilename()).toMatch(/-wedge\.pdf$/);
  expect(complaints).toEqual([]);
  await page.close();
  await letters.close();
}, 180_000);
