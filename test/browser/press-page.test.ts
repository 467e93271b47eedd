import { spawn, type ChildProcess } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { foldLog, readLog } from '../../src/core/edition/index.ts';
import { readJobFile, writeJobFile, type JobBundle } from '../../src/core/job/index.ts';
import { smallJob } from '../../src/packet/packet-jobs.ts';
import { violations } from './axe.ts';
import { openBrowser, serveBench, tidePool, type BenchServer } from './bench-page.ts';

/** A busy machine plans more slowly; it must come all the same. */
const eventually = <T>(look: () => T) => expect.poll(look, { timeout: 20_000 });

let browser: Browser;
let server: BenchServer;
/** A small job is planned at once: what is tried here is the count, not the planning. */
let small: BenchServer;
let page: Page;

const phone = { width: 390, height: 844 };
beforeAll(async () => {
  browser = await openBrowser();
  [server, small] = await Promise.all([serveBench(tidePool()), serveBench(twoPapers())]);
  page = await browser.newPage({ viewport: phone });
  await openPress(page, small);
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
  await small?.close();
});

/** Two runs on two papers. */
function twoPapers(): JobBundle {
  const { job } = smallJob();
  const [white] = job.papers;
  return smallJob({
    forms: job.forms,
    inks: job.inks,
    papers: [
      { ...white, count: 16 },
      { ...white, id: 'cream', name: 'Cream', count: 8 },
    ],
    edition: { target: 8 },
  });
}

async function openPress(at: Page, from: BenchServer): Promise<void> {
  await at.goto(`${from.url}?job=open#pulling`);
  await at.locator('.tap-pulled').waitFor({ timeout: 40_000 });
}
/** The shared page with nothing counted; the old count is put away as a printmaker would. */
async function afresh(size = phone): Promise<void> {
  await page.setViewportSize(size);
  const before = page.getByRole('button', { name: 'Run before' });
  if (await before.isEnabled()) await before.click();
  if ((await counted(page)) !== '0 0') await putAway();
  await eventually(() => sheet(page)).toBe('A1');
}
async function putAway(): Promise<void> {
  await page.getByRole('button', { name: 'Begin a new count' }).click();
  await page.getByRole('button', { name: 'Put it away and begin' }).click();
  await eventually(() => counted(page)).toBe('0 0');
}
const counted = (at: Page): Promise<string | null> => at.locator('[data-count]').getAttribute('data-count');
const sheet = (at: Page): Promise<string | null> => at.locator('.sheet-now b').textContent();

describe('at the press', () => {
  test('pulled and spoiled count the sheet in hand and lay out the next; undo takes the last one back', async () => {
    await afresh();
    await page.getByRole('button', { name: 'Pulled: A1' }).click();
    await page.getByRole('button', { name: 'Pulled: A2' }).click();
    await page.getByRole('button', { name: 'Spoiled: A3' }).click();
    await page.getByRole('button', { name: 'off register' }).click();
    await eventually(() => counted(page)).toBe('2 1');
    expect(await sheet(page)).toBe('A4');
    await page.getByRole('button', { name: /^Undo/ }).click();
    await eventually(() => page.getByRole('button', { name: /^Undo/ }).textContent()).toContain('A3 spoiled');
    await page.getByRole('button', { name: /^Undo/ }).click();
    await eventually(() => counted(page)).toBe('2 0');
    expect(await sheet(page)).toBe('A3');
  });

  test('a sheet spoiled in one run goes through no other; a sheet is taken in hand by a touch', async () => {
    await afresh();
    await page.getByRole('button', { name: 'Spoiled: A1' }).click();
    await page.locator('[data-sheet=B2]').click();
    expect(await sheet(page)).toBe('B2');
    await page.getByRole('button', { name: 'Pulled: B2' }).click();
    await eventually(() => sheet(page)).toBe('A2');
    await page.getByRole('button', { name: 'Next run' }).first().click();
    expect(await sheet(page)).toBe('A2');
    expect(await page.locator('[data-sheet=A1]').isDisabled()).toBe(true);
  });

  test('targets are large enough for inky thumbs, at the phone and at the tablet', async () => {
    const own = await browser.newPage({ viewport: phone });
    await openPress(own, server);
    for (const size of [phone, { width: 820, height: 1180 }]) {
      await own.setViewportSize(size);
      const narrow = await own.locator('.pulling button:visible, .pulling a:visible').evaluateAll((all) =>
        all
          .map((e) => ({ name: e.textContent, box: e.getBoundingClientRect() }))
          .filter(({ box }) => box.width < 44 || box.height < 44)
          .map(({ name }) => name),
      );
      expect(narrow).toEqual([]);
      const pulled = (await own.locator('.tap-pulled').boundingBox())!;
      expect(Math.min(pulled.width, pulled.height)).toBeGreaterThan(90);
      // The buttons stay in sight however long the page is.
      await own.evaluate(() => scrollTo(0, 0));
      expect((await own.locator('.tap-pulled').boundingBox())!.y + pulled.height).toBeLessThan(size.height);
    }
    await own.close();
  });

  test('with the network off it goes on counting, and asks for nothing', async () => {
    await afresh();
    const asked: string[] = [];
    page.on('request', (r) => asked.push(r.url()));
    await page.context().setOffline(true);
    for (const id of ['A1', 'A2', 'A3']) await page.getByRole('button', { name: `Pulled: ${id}` }).click();
    await eventually(() => counted(page)).toBe('3 0');
    await page.getByRole('button', { name: 'Next run' }).first().click();
    expect(await sheet(page)).toBe('A1');
    expect(asked).toEqual([]);
    await page.context().setOffline(false);
  });

  test('the count is a file of the job, and no undo of the bench takes it away', async () => {
    await afresh({ width: 1440, height: 900 });
    for (const id of ['A1', 'A2']) await page.getByRole('button', { name: `Pulled: ${id}` }).click();
    await page.getByRole('button', { name: 'Spoiled: A3' }).click();
    await eventually(() => counted(page)).toBe('2 1');
    await page.keyboard.press('Control+Z');
    expect(await counted(page)).toBe('2 1');
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save' }).click()]);
    const saved = readJobFile(new Uint8Array(readFileSync((await download.path())!)), 'two.laydown');
    const log = readLog(new TextDecoder().decode(saved.attachments.get('press-count.log')));
    expect(log.damaged).toBe(0);
    expect(foldLog(log.events).runs).toEqual([{ run: 'ring', pulls: 2, sheets: ['A1', 'A2'], spoiled: ['A3'] }]);
  });

  test('two windows at one press: what is counted in one stands in the other, and nothing is counted away', async () => {
    const context = await browser.newContext({ viewport: phone });
    const [one, other] = [await context.newPage(), await context.newPage()];
    await openPress(one, small);
    await openPress(other, small);
    await one.getByRole('button', { name: 'Pulled: A1' }).click();
    await eventually(() => counted(other)).toBe('1 0');
    await other.getByRole('button', { name: 'Pulled: A2' }).click();
    await eventually(() => counted(one)).toBe('2 0');
    await context.close();
  });

  test('a database that breaks takes no count with it', async () => {
    const context = await browser.newContext({ viewport: phone });
    const [one, broken] = [await context.newPage(), await context.newPage()];
    await openPress(one, small);
    for (const id of ['A1', 'A2']) await one.getByRole('button', { name: `Pulled: ${id}` }).click();
    await eventually(() => counted(one)).toBe('2 0');
    await one.close();
    await broken.addInitScript(() => {
      indexedDB.open = () => {
        throw new DOMException('no', 'SecurityError');
      };
    });
    await openPress(broken, small);
    expect(await counted(broken)).toBe('2 0');
    expect(await broken.getByText('in one place only').count()).toBe(1);
    await context.close();
  });

  test('a new count puts the old one away beside the job', async () => {
    await afresh();
    await page.getByRole('button', { name: 'Pulled: A1' }).click();
    await eventually(() => counted(page)).toBe('1 0');
    await putAway();
    await page.reload();
    await page.locator('.tap-pulled').waitFor({ timeout: 30_000 });
    expect(await counted(page)).toBe('0 0');
  });
});

/** A browser of our own, so that it can be killed as a power cut would: no goodbye, all its processes at once. */
async function startBrowser(profile: string): Promise<{ process: ChildProcess; browser: Browser; kill(): Promise<void> }> {
  rmSync(join(profile, 'DevToolsActivePort'), { force: true });
  const child = spawn(
    process.env.LAYDOWN_CHROMIUM ?? '/usr/bin/chromium',
    [
      '--headless',
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--remote-debugging-port=0',
      `--user-data-dir=${profile}`,
      'about:blank',
    ],
    { detached: true, stdio: 'ignore' },
  );
  const file = join(profile, 'DevToolsActivePort');
  await eventually(() => existsSync(file) && readFileSync(file, 'utf8').includes('\n')).toBe(true);
  const connected = await chromium.connectOverCDP(`http://127.0.0.1:${readFileSync(file, 'utf8').split('\n')[0]}`);
  return {
    process: child,
    browser: connected,
    kill: () =>
      new Promise((resolve) => {
        child.once('exit', () => resolve());
        process.kill(-child.pid!, 'SIGKILL');
      }),
  };
}

describe('a browser killed at any moment', () => {
  test('every tap that the screen has shown is there again, kill after kill', async () => {
    const profile = mkdtempSync(join(tmpdir(), 'press-'));
    let shown = 0;
    try {
      for (let round = 0; round < 6; round++) {
        const started = await startBrowser(profile);
        const page = await started.browser.contexts()[0].newPage();
        await openPress(page, small);
        // At least what was shown before the last kill; at most the one tap that was being written.
        const found = Number((await counted(page))!.split(' ')[0]);
        expect(found, `after kill ${round}`).toBeGreaterThanOrEqual(shown);
        expect(found).toBeLessThanOrEqual(shown + 1);
        shown = found;
        for (let tap = 0; tap <= round % 3; tap++) {
          await page.locator('.tap-pulled').click();
          await eventually(async () => Number((await counted(page))!.split(' ')[0])).toBe(shown + 1);
          shown++;
        }
        // Odd rounds: one more tap is under way as the power goes, at a moment that differs each time.
        if (round % 2 === 1) {
          await page.evaluate(() => {
            document.querySelector<HTMLButtonElement>('.tap-pulled')!.click();
          });
          // No condition to wait for: the power goes when it goes.
          await new Promise((resolve) => setTimeout(resolve, round * 3));
        }
        await started.kill();
      }
      expect(shown).toBeGreaterThanOrEqual(11);
    } finally {
      rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
    }
  }, 180_000);
});

describe('on a phone at the press', () => {
  test('let in by the code, it counts beside the desk, out of reach as well; nothing is lost and nothing counted twice', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'laydown-share-'));
    writeFileSync(join(folder, 'job.laydown'), writeJobFile(twoPapers()));
    const served = spawn(process.execPath, [
      'dist/cli/main.js',
      'serve',
      join(folder, 'job.laydown'),
      '--port',
      '0',
      '--share-on',
      '127.0.0.1',
    ]);
    const away = await browser.newContext({ viewport: phone, hasTouch: true });
    const desk = await browser.newContext({ viewport: { width: 1440, height: 900 } });
    try {
      let said = '';
      served.stdout.setEncoding('utf8').on('data', (part: string) => (said += part));
      const told = (): RegExpExecArray | null => /at (http:\S+) [^]*open (http:\S+) there and type (\w+)/.exec(said);
      await eventually(told).not.toBe(null);
      await eventually(() => said).toContain('without encryption');
      const [, bench, counting, code] = told()!;
      const atDesk = await desk.newPage();
      await atDesk.goto(`${bench}#pulling`);
      await atDesk.locator('.share-part').waitFor({ timeout: 40_000 });
      expect(await violations(atDesk)).toEqual([]);
      const handy = await away.newPage();
      await handy.goto(`${counting}#${code}`);
      await handy.locator('.tap-pulled').waitFor({ timeout: 20_000 });
      expect(await violations(handy)).toEqual([]);
      expect(handy.url()).not.toContain(code);
      expect(await handy.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
      await eventually(() => atDesk.locator('.share-part').textContent()).toContain('1 other device');

      // One finger that slips is one sheet; whoever wants the other says so.
      const twice = async (): Promise<void> => {
        const box = (await handy.locator('.tap-pulled').boundingBox())!;
        await handy.touchscreen.tap(box.x + 40, box.y + 40);
        await handy.touchscreen.tap(box.x + 42, box.y + 41);
      };
      await twice();
      await eventually(() => counted(handy)).toBe('1 0');
      await handy.getByText('Two quick taps count once').click();
      await twice();
      await eventually(() => counted(handy)).toBe('3 0');
      await eventually(() => counted(atDesk)).toBe('3 0');

      // Out of reach both count on, and the same sheet among them.
      await away.setOffline(true);
      for (let i = 0; i < 2; i++) await handy.locator('.tap-pulled').tap();
      await handy.locator('.tap-spoiled').tap();
      await handy.locator('[data-only-here="3"]').waitFor();
      await atDesk.locator('.tap-pulled').click();
      await eventually(() => counted(atDesk)).toBe('4 0');
      await away.setOffline(false);
      await eventually(() => counted(handy)).toBe('5 1');
      await eventually(() => counted(atDesk)).toBe('5 1');
      await handy.locator('[data-only-here="0"]').waitFor();
      // The phone's page gone and back: it is still let in, with all it had.
      await handy.reload();
      await eventually(() => counted(handy)).toBe('5 1');
      await handy.locator('.tap-undo').tap();
      await eventually(() => counted(atDesk)).toBe('5 0');
      // The code was for one.
      const other = await away.browser()!.newPage();
      await other.goto(`${counting}#${code}`);
      await other.locator('.away-enter [role=alert]').waitFor();
      expect(await violations(other)).toEqual([]);
      await other.close();
    } finally {
      served.kill();
      await away.close();
      await desk.close();
      rmSync(folder, { recursive: true, force: true });
    }
  }, 90_000);
});
