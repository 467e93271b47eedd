import { createHash } from 'node:crypto';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readJobAt } from '../../src/cli/disk/folder.ts';
import type { JobBundle } from '../../src/core/job/index.ts';
import { atRest, built, keptWhole, openBench, openBrowser, serveBench, settled, type BenchServer } from './bench-page.ts';

/** Plans in a moment: what is tried here does not hang on the job. */
const small = (): JobBundle => readJobAt('examples/letters');
const first = '[data-layer=field] input[type=range]';

let browser: Browser;
let server: BenchServer;
beforeAll(async () => {
  browser = await openBrowser();
  server = await serveBench(small());
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

const sureKept = async (page: Page): Promise<void> => {
  // What was done has come to the store before it is asked whether all is kept.
  await atRest(page);
  await expect.poll(() => page.locator('.kept').textContent()).toBe('Kept on this machine');
};
/** Denies the page the browser's storage, or lets it run full. */
const storage = async (page: Page, how: 'denied' | 'full'): Promise<void> =>
  void (await page.addInitScript((kind) => {
    if (kind === 'denied')
      indexedDB.open = () => {
        throw new DOMException('no', 'SecurityError');
      };
    else
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('full', 'QuotaExceededError');
      };
  }, how));

describe('what the first view waits for', () => {
  test('scripts and one language stay under 230 KB compressed, the letters under 80 KB', () => {
    const page = readFileSync(`${built}index.html`, 'utf8');
    const packed = (path: string): number => gzipSync(readFileSync(`${built}${path}`)).byteLength;
    const scripts = [...page.matchAll(/(?:src|href)="\.\/(assets\/[\w.-]+\.js)"/g)].map(([, path]) => path);
    const files = readdirSync(`${built}assets`);
    const [language, laydown] = ['shown-', 'LaydownView-'].map((name) =>
      Math.max(...files.filter((f) => f.startsWith(name)).map((f) => packed(`assets/${f}`))),
    );
    expect(scripts.length).toBeGreaterThan(2);
    expect(language).toBeGreaterThan(20_000);
    const all = scripts.reduce((sum, path) => sum + packed(path), 0) + language + laydown;
    expect(all / 1024).toBeLessThan(230);
    const letters = files.filter((f) => f.endsWith('.woff2')).map((f) => packed(`assets/${f}`));
    expect(letters.length).toBe(3);
    expect(letters.reduce((a, b) => a + b) / 1024).toBeLessThan(80);
  });

  test('the worker of a Plan comes without what writes packets: under 350 KB compressed; what it brings later is kept as well', () => {
    const read = (path: string): string => readFileSync(`${built}${path}`, 'utf8');
    const linked = (file: string, sign: RegExp): string[] => [...read(`assets/${file}`).matchAll(sign)].map(([, name]) => name);
    const [worker] = readdirSync(`${built}assets`).filter((f) => /^worker-.*\.js$/.test(f));
    const first = new Set([worker]);
    for (const file of first) for (const name of linked(file, /(?:from|import) ?["']\.\/([\w.-]+\.js)["']/g)) first.add(name);
    const packed = [...first].reduce((sum, file) => sum + gzipSync(read(`assets/${file}`)).byteLength, 0);
    expect(packed / 1024).toBeGreaterThan(100);
    expect(packed / 1024).toBeLessThan(350);
    const after = [...first].flatMap((file) => linked(file, /import\([`"']\.\/([\w.-]+\.js)[`"']\)/g)).filter((f) => !f.startsWith('__'));
    expect(after.map((name) => name.replace(/-.*/, '')).sort()).toEqual(['drawings', 'files', 'inks', 'pictures']);
    for (const name of after) {
      expect(first.has(name), name).toBe(false);
      // One engine runs a worker that is imported a second time, with an empty bench.
      expect(linked(name, /["'`]\.\/([\w.-]+\.js)["'`]/g), name).not.toContain(worker);
      expect(read('sw.js')).toContain(`assets/${name}`);
    }
  });
});

describe('with the network off', () => {
  test('Laydown opens, shows the job as it was left, and works on', async () => {
    const home = await serveBench(small());
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
    const { page, complaints } = await openBench(context, `${home.url}?job=open#laydown`);
    await keptWhole(page);
    await page.locator(first).fill('25');
    await sureKept(page);
    await context.setOffline(true);
    // The browser's own look for a newer Laydown goes past that switch, so the server goes too.
    await home.close();
    await page.goto(`${home.url}#laydown`);
    await page.reload();
    await settled(page);
    const slider = page.locator(first);
    expect(await slider.inputValue()).toBe('25');
    const proof = (): Promise<string> => page.locator('.proof-figure .proof-canvas').evaluate((c) => (c as HTMLCanvasElement).toDataURL());
    const before = await proof();
    await slider.fill('80');
    await settled(page);
    expect(await proof()).not.toBe(before);
    await page.getByRole('button', { name: 'Print packet' }).click();
    await page.locator('#drawer').getByRole('button', { name: 'Print packet' }).click();
    await page.getByRole('button', { name: 'Packet as PDF' }).waitFor({ timeout: 90_000 });
    expect(complaints).toEqual([]);
    await context.close();
  }, 180_000);

  test('it can be put among the programs of the machine: name, signs, start address', async () => {
    const context = await browser.newContext();
    const { page } = await openBench(context, `${server.url}?job=open#laydown`);
    const cdp = await context.newCDPSession(page);
    const { errors } = await cdp.send('Page.getAppManifest');
    expect(errors).toEqual([]);
    await keptWhole(page);
    const { installabilityErrors } = await cdp.send('Page.getInstallabilityErrors');
    // A window that leaves no traces can't install; nothing else may stand in the way.
    expect(installabilityErrors.filter((e) => e.errorId !== 'in-incognito')).toEqual([]);
    await context.close();
  });
});

test('a newer Laydown is announced and waits; taken, it shows the job as it was left', async () => {
  const folder = `${mkdtempSync(join(tmpdir(), 'edition-'))}/`;
  cpSync(built, folder, { recursive: true });
  const home = await serveBench(small(), folder);
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  try {
    const page = await context.newPage();
    await page.goto(`${home.url}?job=open#laydown`);
    await settled(page);
    const strength = page.locator('[data-layer] input[type=range]').first();
    await keptWhole(page);
    const print = (text: string): string => createHash('sha256').update(text).digest('hex');
    const html = readFileSync(`${folder}index.html`, 'utf8');
    const newer = html.replace('<body>', '<body data-edition="newer">');
    writeFileSync(`${folder}index.html`, newer);
    writeFileSync(
      `${folder}sw.js`,
      readFileSync(`${folder}sw.js`, 'utf8')
        .replace(print(html), print(newer))
        .replace(/LAYDOWN_EDITION="[^"]*"/, 'LAYDOWN_EDITION="newer"'),
    );
    await page.reload();
    await page.getByText('A newer Laydown is on this machine').waitFor({ timeout: 20_000 });
    await strength.fill('35');
    await page.reload();
    await settled(page);
    expect(await page.locator('body').getAttribute('data-edition')).toBeNull();
    await strength.fill('40');
    await page.getByRole('button', { name: 'Take the newer one' }).click();
    await page.locator('body[data-edition=newer]').waitFor({ state: 'attached', timeout: 20_000 });
    await settled(page);
    expect(await strength.inputValue()).toBe('40');
    expect(await page.getByText('A newer Laydown').count()).toBe(0);
  } finally {
    await context.close();
    await home.close();
    rmSync(folder, { recursive: true, force: true });
  }
}, 120_000);

describe('storage that can not be had', () => {
  for (const [how, words] of [
    ['denied', 'gives Laydown no room'],
    ['full', 'has no room left'],
  ] as const) {
    test(`${how}: it is said, and another job is not put over this one unasked`, async () => {
      const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
      const page = await context.newPage();
      await storage(page, how);
      await page.goto(`${server.url}?job=open#laydown`);
      await settled(page);
      await page.locator(first).fill('25');
      await expect.poll(() => page.locator('.notice').textContent()).toContain(words);
      await page.getByRole('button', { name: 'Versions' }).click();
      await page.getByLabel('Name of this version').fill('pale');
      await page.getByRole('button', { name: 'Keep a version' }).click();
      await page.getByText('This version could not be kept').waitFor();
      const open = async (): Promise<void> => {
        await page.getByRole('button', { name: 'Open', exact: true }).click();
        await page.getByRole('button', { name: 'The example, Tide pool' }).click();
      };
      await open();
      await page.getByText('is kept nowhere yet').waitFor();
      expect(await page.locator(first).inputValue()).toBe('25');
      await open();
      await expect.poll(() => page.locator('[data-layer=water] input[type=range]').inputValue()).toBe('60');
      await context.close();
    });
  }
});
