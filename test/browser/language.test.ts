import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { de as allGerman } from '../../src/words/de/index.ts';
import { en as allEnglish } from '../../src/words/en/index.ts';
import { violations } from './axe.ts';
import { writeJobFile, type JobBundle } from '../../src/core/job/index.ts';
import { atRest, openBrowser, plainPool, serveBench, tidePool, type BenchServer } from './bench-page.ts';
import { pulled } from './pulled.ts';

let browser: Browser;
let server: BenchServer;
beforeAll(async () => {
  browser = await openBrowser();
  server = await serveBench(tidePool());
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

/** Every text of a catalogue; of a text with values in it, the parts between them. */
function texts(node: unknown, whole: string[], pieces: string[]): void {
  if (typeof node === 'string') whole.push(node);
  else if (typeof node === 'function')
    for (const [, text] of node.toString().matchAll(/(?<=`|\})((?:[^`$}]|\$(?!\{))+)(?=\$\{|`)/g)) pieces.push(text.trim());
  else if (node !== null && typeof node === 'object') for (const value of Object.values(node)) texts(value, whole, pieces);
}
const catalogue = (words: unknown): { whole: Set<string>; pieces: Set<string> } => {
  const [whole, pieces]: [string[], string[]] = [[], []];
  texts(words, whole, pieces);
  return { whole: new Set(whole), pieces: new Set(pieces.filter((t) => /\p{L}{2,} \p{L}{2,}/u.test(t) && t.length >= 9)) };
};
const de = allGerman.bench;
const english = catalogue(allEnglish);
const german = catalogue(allGerman);
const germanAll = [...german.whole, ...german.pieces].join('\n');
/** A job's own names and notes stay, and some of tide-pool's are what the program could say. */
const ownWords = JSON.stringify([tidePool().job.inks, tidePool().job.layers, tidePool().job.materials.map((m) => m.name)]);
/** Words that the two share (`Name`, `Lab`, `A4`) prove nothing. */
const onlyEnglish = [...english.whole].filter((t) => /\p{L}{3}/u.test(t) && !german.whole.has(t) && !ownWords.includes(`"${t}"`));
const onlyPieces = [...english.pieces].filter((t) => !germanAll.includes(t) && !ownWords.includes(t));

/** Everything on the page that can be read or heard. */
function readPage(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walk.nextNode(); node; node = walk.nextNode())
      if (!node.parentElement?.closest('script, style')) found.push(node.textContent?.trim() ?? '');
    for (const element of document.body.querySelectorAll('*'))
      for (const name of ['aria-label', 'title', 'placeholder', 'aria-valuetext', 'alt'])
        found.push(element.getAttribute(name)?.trim() ?? '');
    return found.filter((t) => t !== '');
  });
}
const englishIn = (said: readonly string[]): string[] =>
  [...new Set(said)].filter(
    (t) => onlyEnglish.some((e) => t === e || (e.length > 14 && t.includes(e))) || onlyPieces.some((e) => t.includes(e)),
  );

/** A station, and each of its parts laid open in turn. */
async function everyPart(page: Page, station: string): Promise<string[]> {
  await page.evaluate((id) => {
    location.hash = id;
  }, station);
  await page.waitForSelector('main[aria-busy=false]');
  await atRest(page);
  const said = await readPage(page);
  const parts = page.locator('main .part, main [data-part]');
  for (let i = 0; i < (await parts.count()); i++) {
    await parts.nth(i).click();
    await atRest(page);
    said.push(...(await readPage(page)));
  }
  await page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true;
  });
  return [...said, ...(await readPage(page))];
}
const stations = ['forms', 'picture', 'stencils', 'inks', 'laydown', 'overlaps', 'press', 'pulling', 'edition'];

let kept: Page | undefined;
/** tide-pool at the laydown, in English: one page for all tests, so that it is planned once. */
async function openIn(size = desk): Promise<Page> {
  const page = kept ?? (await browser.newPage({ viewport: desk }));
  if (!kept) {
    kept = page;
    await page.goto(`${server.url}?job=open#laydown`);
    await page.waitForSelector('main[aria-busy=false] .proof-canvas', { timeout: 60_000 });
  } else {
    await page.setViewportSize(desk);
    await choose(page, 'English');
    await page.evaluate(() => {
      location.hash = 'laydown';
    });
    await page.waitForSelector('main[aria-busy=false] .proof-canvas');
  }
  await page.setViewportSize(size);
  return page;
}
const desk = { width: 1440, height: 900 };
const choose = (page: Page, name: 'English' | 'Deutsch'): Promise<void> =>
  page.locator('.language-switch:visible').getByRole('radio', { name }).check();

describe('the second language', () => {
  test('every station speaks German once it is chosen, and no English text is left', async () => {
    const page = await openIn();
    const inEnglish = new Map<string, number>();
    for (const station of stations) inEnglish.set(station, englishIn(await everyPart(page, station)).length);
    await choose(page, 'Deutsch');
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('de');
    // The page at the press is reached from the press.
    expect(await page.locator('.stations li').count()).toBe(stations.length - 1);
    for (const station of stations) {
      expect(inEnglish.get(station), `what this check finds at ${station} in English`).toBeGreaterThan(20);
      expect([...new Set(englishIn(await everyPart(page, station)))], station).toEqual([]);
    }
    for (const name of [de.shell.open, de.shell.versions, de.shell.print]) {
      await page.getByRole('button', { name, exact: true }).first().click();
      expect(englishIn(await readPage(page)), name).toEqual([]);
    }
  }, 240_000);

  test('a file that can’t be opened is refused in German', async () => {
    const page = await openIn();
    await choose(page, 'Deutsch');
    const { job, attachments } = plainPool();
    const spoilt = (change: object): Uint8Array => writeJobFile({ attachments, job: { ...job, ...change } as JobBundle['job'] });
    const opener = page.getByRole('button', { name: de.shell.open, exact: true });
    for (const bytes of [
      new TextEncoder().encode('no zip'),
      spoilt({ title: 3, units: 'yard', seed: -1, image: { widthMm: 0 } }),
      spoilt({ schemaVersion: 99 }),
      spoilt({ layers: {}, papers: [{ id: 'No!' }] }),
    ]) {
      if ((await opener.getAttribute('aria-expanded')) === 'false') await opener.click();
      await page
        .locator('#drawer input[type=file]')
        .first()
        .setInputFiles({ name: 'kelp.laydown', mimeType: 'application/zip', buffer: Buffer.from(bytes) });
      await page.locator('.problems li').first().waitFor();
      expect(englishIn(await readPage(page))).toEqual([]);
      await page.getByRole('button', { name: de.shell.close, exact: true }).click();
    }
  }, 60_000);

  test('it is remembered on the machine: load again and it is still German', async () => {
    const page = await openIn();
    await choose(page, 'Deutsch');
    await page.reload();
    await page.waitForSelector('main[aria-busy=false] .proof-canvas');
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('de');
    expect(await page.getByRole('button', { name: de.shell.save, exact: true }).count()).toBe(1);
  }, 120_000);

  test('where the browser asks for German, the empty bench speaks it unasked; a choice goes before the browser’s', async () => {
    const context = await browser.newContext({ locale: 'de-AT' });
    const page = await context.newPage();
    await page.goto(server.url);
    await page.getByText(de.shell.emptyText).waitFor();
    expect(englishIn(await readPage(page))).toEqual([]);
    await choose(page, 'English');
    await page.reload();
    await page.getByText(allEnglish.bench.shell.emptyText).waitFor();
    await context.close();
  }, 120_000);

  test('keys alone change it, and what is written follows at once', async () => {
    const page = await openIn();
    const english = page.locator('.header .language-switch').getByRole('radio', { name: 'English' });
    await page.getByRole('button', { name: allEnglish.bench.shell.print, exact: true }).focus();
    await page.keyboard.press('Tab');
    expect(await english.evaluate((e) => e === document.activeElement)).toBe(true);
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => page.getByRole('button', { name: de.shell.print, exact: true }).count()).toBe(1);
    await page.keyboard.press('ArrowLeft');
    await expect.poll(() => page.getByRole('button', { name: allEnglish.bench.shell.print, exact: true }).count()).toBe(1);
  }, 120_000);

  test('numbers stand with a decimal comma, and one with a comma or a point is understood', async () => {
    const page = await openIn();
    await choose(page, 'Deutsch');
    await page.evaluate(() => {
      location.hash = 'press';
    });
    await page.locator('[data-part=gap]').click();
    const gap = page.getByRole('textbox', { name: de.press.gapOwn, exact: true });
    for (const [typed, shown] of [
      ['4,25', '4,25'],
      ['3.75', '3,75'],
    ] as const) {
      await gap.fill(typed);
      await gap.press('Enter');
      await expect.poll(() => gap.inputValue()).toBe(shown);
      await expect.poll(() => page.locator('main h2').first().textContent()).toContain(de.press.gapHead(`${shown}\u00a0mm`));
    }
    await choose(page, 'English');
    expect(await page.getByRole('textbox', { name: allEnglish.bench.press.gapOwn, exact: true }).inputValue()).toBe('3.75');
  }, 120_000);

  test.each([
    [1440, 900],
    [820, 1180],
    [390, 844],
  ])(
    'at %i px the switch is in sight, nothing runs over the edge, axe finds nothing',
    async (width, height) => {
      const page = await openIn({ width, height });
      if (await page.locator('.more-ways').isVisible()) await page.locator('.more-ways').click();
      if ((await page.locator('.language-switch:visible').count()) === 0)
        await page.getByRole('button', { name: allEnglish.bench.shell.open, exact: true }).click();
      await choose(page, 'Deutsch');
      expect(await page.locator('.language-switch:visible').count()).toBe(1);
      expect(await violations(page)).toEqual([]);
      for (const station of stations) {
        await page.evaluate((id) => {
          location.hash = id;
        }, station);
        await page.waitForSelector('main[aria-busy=false]');
        await atRest(page);
        expect(await page.evaluate(() => document.documentElement.scrollWidth), station).toBeLessThanOrEqual(width);
        // The press page on a small screen shows no header, and so no heading of the first order: in either language.
        // At one size: `everyone.test.ts` looks at all of them.
        if (width === 390 && station !== 'pulling') expect(await violations(page), station).toEqual([]);
      }
    },
    180_000,
  );

  // Last: they lay other jobs on the bench.
  test.each<[string, () => JobBundle]>([
    ['pulled and counted: numbers, documentation, colophon, labels', pulled],
    [
      'in trouble with the press: a small frame, a torn mesh, a rack of two, three sheets of each paper',
      () => {
        const { job, attachments } = plainPool();
        return {
          attachments,
          job: {
            ...job,
            screen: { ...job.screen!, insideWidthMm: 215, insideHeightMm: 300, offContactMm: 20, squeegeeMm: 170 },
            papers: job.papers.map((p) => ({ ...p, count: 3 })),
            day: { ...job.day, rackPlaces: 2, humidityPercent: 5, pullsPerHour: 8 },
            register: { method: 'by-eye', humidityPercent: [20, 80] },
          },
        };
      },
    ],
    [
      'without a screen, islands left out, thin places mended',
      () => {
        const { job, attachments } = plainPool();
        return {
          attachments,
          job: {
            ...job,
            screen: undefined,
            layers: job.layers.map((l) => ({ ...l, islands: 'drop' as const })),
            materials: job.materials.map((m) => ({ ...m, leastBridgeMm: 4, leastOpeningMm: 2.5, prints: [1, 2] as [number, number] })),
          },
        };
      },
    ],
    [
      'without a layer, without a paper',
      () => {
        const { job, attachments } = plainPool();
        return { attachments, job: { ...job, layers: [], papers: [] } };
      },
    ],
  ])(
    'so does a job %s',
    async (_, make) => {
      const page = await openIn();
      await choose(page, 'Deutsch');
      await page.getByRole('button', { name: de.shell.open, exact: true }).click();
      await page
        .locator('#drawer input[type=file]')
        .first()
        .setInputFiles({ name: 'other.laydown', mimeType: 'application/zip', buffer: Buffer.from(writeJobFile(make())) });
      await page.waitForFunction(() => document.querySelector('.announcer')?.textContent?.startsWith('Tide pool'));
      await page.waitForSelector('main[aria-busy=false]');
      for (const station of stations) expect([...new Set(englishIn(await everyPart(page, station)))], station).toEqual([]);
      await page.locator('.status button').click();
      expect(await page.locator('.problems li').count()).toBeGreaterThan(0);
      expect(englishIn(await readPage(page)), 'problems').toEqual([]);
    },
    240_000,
  );
});
