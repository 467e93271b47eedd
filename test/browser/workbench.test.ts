import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { prepare } from '../../src/cli/assets.ts';
import { readJobAt } from '../../src/cli/disk/folder.ts';
import { contentSecurityPolicy } from '../../src/cli/disk/web-server.ts';
import { writeJobFile } from '../../src/core/job/index.ts';
import { plan, readyBundle } from '../../src/core/plan/index.ts';
import { smallJob } from '../../src/packet/packet-jobs.ts';
import { digestPlan } from '../../src/workbench/engine/answers/digest.ts';
import {
  atRest,
  keptWhole,
  openBench,
  openBrowser,
  openProfile,
  proofColour,
  serveBench,
  settled,
  startOver,
  tidePool,
  type BenchServer,
} from './bench-page.ts';
import { packetInBrowser, packetInNode } from './worker-packet.ts';

let browser: Browser;
let server: BenchServer;
let bench: { page: Page; complaints: string[] };

beforeAll(async () => {
  browser = await openBrowser();
  server = await serveBench(tidePool());
  bench = await openBench(browser, `${server.url}?job=open#laydown`);
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

async function open(station: string): Promise<Page> {
  await startOver(bench.page, station);
  return bench.page;
}
const runs = (page: Page): Promise<string[]> =>
  page.locator('[data-layer]').evaluateAll((shelves) => shelves.map((s) => s.getAttribute('data-layer') ?? '').reverse());
const distance = (a: number[], b: number[]): number => Math.hypot(...a.map((v, i) => v - b[i]));
/** A point of the image with nothing but sky, and one with nothing but water. */
const sky = [0.1, 0.1] as const;
const water = [0.03, 0.97] as const;

describe('the laydown station', () => {
  test('tide-pool lies on the bench: six shelves, the first run at the bottom, a proof in the colours of the Plan', async () => {
    const page = await open('laydown');
    expect(await runs(page)).toEqual(['sky', 'water', 'pebbles', 'kelp', 'urchin', 'foam']);
    const boxes = await page.locator('[data-layer]').evaluateAll((all) => all.map((s) => s.getBoundingClientRect().top));
    expect(boxes).toEqual([...boxes].sort((a, b) => a - b));
    const job = tidePool().job;
    expect(await page.title()).toContain(job.title);
    expect(distance(await proofColour(page, ...sky), await proofColour(page, ...water))).toBeGreaterThan(60);
    expect(bench.complaints).toEqual([]);
  });

  test('the strength slider recolours that run’s ink and nothing else; undo names it and brings it back', async () => {
    const page = await open('laydown');
    const before = { sky: await proofColour(page, ...sky), water: await proofColour(page, ...water) };
    const slider = page.locator('[data-layer=water] input[type=range]');
    await slider.fill('20');
    await settled(page);
    const after = { sky: await proofColour(page, ...sky), water: await proofColour(page, ...water) };
    expect(after.sky).toEqual(before.sky);
    expect(distance(after.water, before.water)).toBeGreaterThan(30);
    const undo = page.getByRole('button', { name: 'Undo: strength of Water' });
    await undo.click();
    await settled(page);
    expect(await proofColour(page, ...water)).toEqual(before.water);
    expect(await slider.inputValue()).toBe('60');
    await page.keyboard.press('Control+Shift+Z');
    await settled(page);
    expect(await proofColour(page, ...water)).toEqual(after.water);
  });

  test('a drag of the slider is one step of undo', async () => {
    const page = await open('laydown');
    const slider = page.locator('[data-layer=kelp] input[type=range]');
    const box = (await slider.boundingBox())!;
    await page.mouse.move(box.x + box.width * 0.8, box.y + box.height / 2);
    await page.mouse.down();
    for (const share of [0.7, 0.6, 0.5, 0.4]) await page.mouse.move(box.x + box.width * share, box.y + box.height / 2);
    await page.mouse.up();
    expect(Number(await slider.inputValue())).toBeLessThan(60);
    await page.keyboard.press('Control+Z');
    expect(await slider.inputValue()).toBe('85');
  });

  test('a decimal comma is understood; what is no number is marked and changes nothing', async () => {
    const page = await open('laydown');
    const field = page.locator('[data-layer=kelp] .number-field input');
    await field.fill('62,5');
    await field.press('Enter');
    expect(await page.locator('[data-layer=kelp] input[type=range]').getAttribute('aria-valuetext')).toBe('62.5\u00a0%');
    await field.fill('140');
    await field.press('Enter');
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    expect(await page.locator('[data-layer=kelp] input[type=range]').getAttribute('aria-valuetext')).toBe('62.5\u00a0%');
  });

  test('with keys alone: a shelf moves up and down, says where it is, and keeps the focus', async () => {
    const page = await open('laydown');
    const handle = page.locator('[data-layer=water] .handle');
    for (let i = 0; i < 80 && !(await handle.evaluate((h) => h === document.activeElement)); i++) await page.keyboard.press('Tab');
    await page.keyboard.press('ArrowUp');
    expect(await runs(page)).toEqual(['sky', 'pebbles', 'water', 'kelp', 'urchin', 'foam']);
    expect(await page.locator('[role=status]').textContent()).toBe('Water is now run 3 of 6.');
    expect(await handle.evaluate((h) => h === document.activeElement)).toBe(true);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    expect(await runs(page)).toEqual(['water', 'sky', 'pebbles', 'kelp', 'urchin', 'foam']);
    expect(await page.locator('[role=status]').textContent()).toBe('Water is printed first already.');
  });

  test('a shelf is carried by pointer to where it is let go', async () => {
    const page = await open('laydown');
    const from = (await page.locator('[data-layer=sky] .handle').boundingBox())!;
    const to = (await page.locator('[data-layer=kelp] .handle').boundingBox())!;
    await page.mouse.move(from.x + 20, from.y + 20);
    await page.mouse.down();
    await page.mouse.move(from.x + 20, from.y - 40, { steps: 4 });
    await page.mouse.move(from.x + 20, to.y + 10, { steps: 8 });
    await page.mouse.up();
    expect(await runs(page)).toEqual(['water', 'pebbles', 'kelp', 'sky', 'urchin', 'foam']);
  });

  test('on a phone a thumb carries the first run to the last place, and the shelves pass by under it', async () => {
    const context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
    const { page } = await openBench(context, `${server.url}?job=open#laydown`);
    await page.locator('[data-layer=sky] .handle').scrollIntoViewIfNeeded();
    const from = (await page.locator('[data-layer=sky] .handle').boundingBox())!;
    const cdp = await context.newCDPSession(page);
    const thumb = (type: 'touchStart' | 'touchMove' | 'touchEnd', y: number): Promise<unknown> =>
      cdp.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x: from.x + 20, y }] });
    await thumb('touchStart', from.y + 20);
    await thumb('touchMove', from.y - 30);
    const edge = await page.locator('.proof-figure').evaluate((f) => f.getBoundingClientRect().bottom + 20);
    await thumb('touchMove', edge);
    await expect.poll(() => page.evaluate(() => scrollY), { timeout: 10_000 }).toBeLessThan(200);
    await thumb('touchMove', await page.locator('.proof-figure').evaluate((f) => f.getBoundingClientRect().bottom + 5));
    await thumb('touchEnd', 0);
    expect(await runs(page)).toEqual(['water', 'pebbles', 'kelp', 'urchin', 'foam', 'sky']);
    await context.close();
  });

  test('an open run is tried in any pot at a touch: it is shown, and is not part of the job until it is kept', async () => {
    const page = await open('laydown');
    const sheet = (): Promise<string> => page.locator('.proof-figure .proof-canvas').evaluate((c) => (c as HTMLCanvasElement).toDataURL());
    const before = await sheet();
    await page.getByRole('radio', { name: 'Slate', exact: true }).check();
    await settled(page);
    const tried = await sheet();
    expect(tried).not.toBe(before);
    expect(await page.getByRole('button', { name: 'Undo', exact: true }).isDisabled()).toBe(true);
    await page.getByRole('button', { name: 'Keep Slate' }).click();
    await settled(page);
    expect(await sheet()).toBe(tried);
    await page.getByRole('button', { name: 'Undo: Foam in Slate' }).click();
    await settled(page);
    expect(await sheet()).toBe(before);
  });

  test('another paper, also one that is printed already, recolours every proof', async () => {
    const page = await open('laydown');
    const white = await proofColour(page, ...sky);
    await page.getByRole('radio', { name: 'Warm long-fibre' }).check();
    await settled(page);
    const warm = await proofColour(page, ...sky);
    expect(warm).not.toEqual(white);
    await page.getByRole('radio', { name: 'Printed: blue moon' }).check();
    await expect.poll(() => proofColour(page, ...sky)).not.toEqual(warm);
  });

  test('a run left out leaves the sheet, and comes back', async () => {
    const page = await open('laydown');
    const before = await proofColour(page, ...water);
    await page.getByRole('checkbox', { name: 'Water is in the print' }).uncheck();
    await settled(page);
    expect(distance(await proofColour(page, ...water), before)).toBeGreaterThan(30);
    await page.getByRole('checkbox', { name: 'Water is in the print' }).check();
    await settled(page);
    expect(await proofColour(page, ...water)).toEqual(before);
  });
});

describe('the overlap station', () => {
  test('point at the proof: which overlap; point at a swatch: where it is, all else grey', async () => {
    const page = await open('overlaps');
    const canvas = (await page.locator('.proof-figure .proof-canvas').boundingBox())!;
    await page.mouse.move(canvas.x + canvas.width * sky[0], canvas.y + canvas.height * sky[1]);
    expect(await page.locator('.detail h2').textContent()).toBe('Sky');
    await page.mouse.move(canvas.x + canvas.width * water[0], canvas.y + canvas.height * water[1]);
    expect(await page.locator('.detail h2').textContent()).toBe('Water');
    await page.mouse.move(1, 1);
    const waterColour = await proofColour(page, ...water);
    await page
      .locator('.overlap')
      .filter({ has: page.locator('.film') })
      .first()
      .focus();
    expect(await page.locator('.detail h2').textContent()).not.toBe('');
    await page.getByRole('button', { name: /^Sky, / }).focus();
    await settled(page);
    const [r, g, b] = await proofColour(page, ...water);
    expect([g, b]).toEqual([r, r]);
    expect(distance(await proofColour(page, ...sky), waterColour)).toBeGreaterThan(60);
  });

  test('swatches are reached with arrow keys and held with Enter', async () => {
    const page = await open('overlaps');
    await page.locator('.overlap').first().focus();
    await page.keyboard.press('ArrowRight');
    const code = await page.locator('.overlap').nth(1).getAttribute('data-code');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-code'))).toBe(code);
    await page.keyboard.press('Enter');
    expect(await page.locator('.overlap').nth(1).getAttribute('aria-pressed')).toBe('true');
    await page.keyboard.press('Enter');
    expect(await page.locator('.overlap').nth(1).getAttribute('aria-pressed')).toBe('false');
  });

  test('every overlap that covers area has a swatch in the colour of the Plan', async () => {
    const page = await open('overlaps');
    const shares = await page.locator('.overlap').count();
    expect(await page.locator('.chart-head h2').textContent()).toBe(`${shares} overlaps on Smooth white`);
  });

  test('another light changes proof and swatches, on a sheet that is printed already as well; its grounds are pointed at', async () => {
    const page = await open('overlaps');
    // Nothing is pointed at.
    await page.locator('h1').evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    await page.mouse.move(1, 1);
    await settled(page);
    const byDay = await proofColour(page, ...water);
    await page.getByLabel('Cold LED (B5)').check();
    // What comes to lie under the pointer is pointed at, and all else is dimmed.
    await page.mouse.move(1, 1);
    await expect.poll(async () => distance(await proofColour(page, ...water), byDay)).toBeGreaterThan(5);
    const byLed = await proofColour(page, ...water);
    await page.locator('input[name=paper]').nth(2).check();
    await page.waitForSelector('.grounds');
    await page.mouse.move(1, 1);
    await expect.poll(async () => distance(await proofColour(page, ...water), byLed)).toBeLessThan(12);
    expect(await page.locator('.lamps').textContent()).toMatch(/on ground [12] changes most/);
    // A wave of the earlier print, and the bare sheet above it.
    const canvas = (await page.locator('.proof-figure .proof-canvas').boundingBox())!;
    for (const [down, ground] of [
      [0.6, 1],
      [0.75, 2],
    ]) {
      await page.mouse.move(canvas.x + canvas.width * 0.05, canvas.y + canvas.height * down);
      expect(await page.locator('.detail h2').textContent()).toBe(`Water on ground ${ground}`);
    }
    await page.mouse.move(1, 1);
    await page.getByRole('button', { name: /^Sky on ground 2, / }).click();
    expect(await page.locator('.detail h2').textContent()).toBe('Sky on ground 2');
    const lit = await page.locator('.detail dl dd').first().textContent();
    await page.getByLabel('Daylight for judging (D50)').check();
    await expect.poll(() => page.locator('.detail dl dd').first().textContent()).not.toBe(lit);
  });

  test('ten sheets of the edition are asked for when they are opened; a way to lessen what varies is taken', async () => {
    const page = await open('overlaps');
    await page.locator('.spread summary').click();
    await page.waitForSelector('.spread-sheets li:nth-child(10)');
    const strips = await page
      .locator('.spread-most .possible-strip')
      .first()
      .locator('i')
      .evaluateAll((all) => all.map((i) => i.getAttribute('style')));
    expect(strips).toHaveLength(10);
    expect(new Set(strips).size).toBeGreaterThan(5);
    const told = await page.locator('.spread-ways p').first().textContent();
    await page.locator('.spread-ways .button').first().click();
    await expect.poll(() => page.getByRole('button', { name: /^Undo/ }).isEnabled()).toBe(true);
    await expect.poll(() => page.locator('.spread').textContent()).not.toContain(told!);
  });
});

describe('the bench', () => {
  test('what was done survives a killed browser, also when the page is opened with the same job again', async () => {
    const profile = mkdtempSync(join(tmpdir(), 'bench-')),
      server = await serveBench(smallJob()),
      slider = '[data-layer] input[type=range]';
    try {
      const first = await openProfile(profile);
      const { page } = await openBench(first, `${server.url}?job=open#laydown`);
      await page.locator(slider).first().fill('15');
      await atRest(page);
      await expect.poll(() => page.locator('.kept').textContent()).toBe('Kept on this machine');
      const cdp = await first.newCDPSession(page);
      await Promise.race([cdp.send('Page.crash'), page.waitForEvent('crash')]).catch(() => undefined);
      await first.close();
      const second = await openProfile(profile);
      const again = await openBench(second, `${server.url}?job=open#laydown`);
      expect(await again.page.locator(slider).first().inputValue()).toBe('15');
      const bare = await openBench(second, `${server.url}#laydown`);
      expect(await bare.page.locator(slider).first().inputValue()).toBe('15');
      expect(await bare.page.locator('.notice').textContent()).toContain('Another tab');
      await second.close();
    } finally {
      await server.close();
      rmSync(profile, { recursive: true, force: true });
    }
  }, 180_000);

  test('an empty bench offers the example, and nothing is asked for once the page has loaded', async () => {
    const page = await browser.newPage();
    await page.goto(server.url);
    await page.getByRole('button', { name: 'The example, Tide pool' }).waitFor();
    await page.waitForLoadState('networkidle');
    // Laydown's own files are being kept for work without a network: that is part of loading.
    await keptWhole(page);
    await atRest(page);
    const asked = server.requests.length;
    const away: string[] = [];
    page.on('request', (r) => {
      if (!r.url().startsWith('blob:')) away.push(r.url());
    });
    await page.getByRole('button', { name: 'The example, Tide pool' }).click();
    await settled(page);
    await page.getByRole('radio', { name: 'Printed: blue moon' }).check();
    await page.locator('[data-layer=water] input[type=range]').fill('30');
    await settled(page);
    await page.getByRole('link', { name: 'Overlaps' }).click();
    await settled(page);
    expect(away).toEqual([]);
    // The browser itself may look once more for a newer service worker; the page asks for nothing.
    expect(server.requests.slice(asked).filter((path) => path !== '/sw.js')).toEqual([]);
    await page.close();
  });

  test('a file that is no job is refused in plain words and the bench stays as it is', async () => {
    const page = await open('laydown');
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await page
      .locator('input[type=file]')
      .setInputFiles({ name: 'holiday.laydown', mimeType: 'application/zip', buffer: Buffer.from('no zip at all') });
    const alert = page.locator('.drawer[role=alert]');
    await alert.waitFor();
    expect(await alert.textContent()).toContain('holiday.laydown');
    expect(await page.locator('[data-layer]').count()).toBe(6);
    await alert.getByRole('button', { name: 'Close' }).click();
  });

  test('saved and opened again, the job is the same to the byte', async () => {
    const page = await open('laydown');
    const save = async (): Promise<Buffer> => {
      const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save' }).click()]);
      expect(download.suggestedFilename()).toBe('tide-pool.laydown');
      const chunks: Buffer[] = [];
      for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
      return Buffer.concat(chunks);
    };
    await page.locator('[data-layer=water] input[type=range]').fill('33');
    const first = await save();
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await page.locator('input[type=file]').setInputFiles({ name: 'tide-pool.laydown', mimeType: 'application/zip', buffer: first });
    await expect.poll(() => page.getByRole('button', { name: 'Undo', exact: true }).isDisabled()).toBe(true);
    await settled(page);
    expect((await save()).equals(first)).toBe(true);
  });

  test('the packet is printed from the page: a PDF of the job as it is', async () => {
    const page = await open('laydown');
    await page.getByRole('button', { name: 'Print packet' }).click();
    await page.locator('#drawer').getByRole('button', { name: 'Print packet' }).click();
    await page.getByRole('button', { name: 'Packet as PDF' }).waitFor({ timeout: 60_000 });
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Packet as PDF' }).click()]);
    expect(download.suggestedFilename()).toBe('tide-pool-packet.pdf');
    const chunks: Buffer[] = [];
    for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
    const pdf = Buffer.concat(chunks);
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    expect(pdf.length).toBeGreaterThan(50_000);
    // A packet made before a change is no packet of this job: it is not handed out, and the next step is to make it anew.
    const slider = page.locator('[data-layer=water] input[type=range]');
    await slider.fill('31');
    await page.locator('#drawer [role=alert]').filter({ hasText: 'no longer fits' }).waitFor();
    expect(await page.getByRole('button', { name: 'Packet as PDF' }).count()).toBe(0);
    await page.getByRole('button', { name: /^Undo: / }).click();
    await page.getByRole('button', { name: 'Packet as PDF' }).waitFor();
    await page.locator('#drawer').getByRole('button', { name: 'Close' }).click();
  }, 180_000);

  test('versions are kept under a name and taken back, and taking one back can be undone', async () => {
    const page = await open('laydown');
    const slider = page.locator('[data-layer=water] input[type=range]');
    await page.getByRole('button', { name: 'Versions' }).click();
    await page.getByLabel('Name of this version').fill('pale water');
    await slider.fill('10');
    await page.getByRole('button', { name: 'Keep a version' }).click();
    await slider.fill('90');
    await page.getByRole('button', { name: 'Go back to “pale water”' }).click();
    await expect.poll(() => slider.inputValue()).toBe('10');
    await page.getByRole('button', { name: 'Undo: going back to “pale water”' }).click();
    await expect.poll(() => slider.inputValue()).toBe('90');
    await page.getByRole('button', { name: 'Versions' }).click();
  });

  test('the browser’s worker makes the very Plan that Node makes, every code, every Lab, to the last bit; and the very packet', async () => {
    const bundle = tidePool();
    await prepare();
    const inNode = await digestPlan(plan(await readyBundle(bundle)));
    const script = server.requests.find((path) => /\/worker-[^/]*\.js$/.test(path))!;
    const inBrowser = await bench.page.evaluate(
      async ([url, file]) => {
        const worker = new Worker(url as string, { type: 'module' });
        const ask = (id: number, question: string, what: object): Promise<Record<string, unknown>> =>
          new Promise((resolve, reject) => {
            worker.addEventListener('message', ({ data }) => {
              if (data.id !== id || data.kind === 'progress') return;
              if (data.kind === 'answer') resolve(data.answer);
              else reject(new Error(data.message));
            });
            worker.postMessage({ id, question, ask: what });
          });
        const job = await ask(1, 'openJob', { file: Uint8Array.from(file as number[]), name: 'tide-pool' });
        await ask(2, 'plan', job);
        const digest = await ask(3, 'digest', {});
        worker.terminate();
        return digest;
      },
      [script, [...writeJobFile(bundle)]] as const,
    );
    expect(inBrowser).toEqual(inNode);
    // And what is printed of it, file by file; all examples: `npm run attack -- same`.
    const other = readJobAt('examples/letters');
    expect(await packetInBrowser(bench.page, script, other)).toEqual(await packetInNode(other));
  }, 180_000);

  test('the page says the same policy in its head as the server does', async () => {
    const html = await (await fetch(server.url)).text();
    const inHead = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html)?.[1].split('; ') ?? [];
    // A page's head can't say who may frame it; all else must agree.
    expect(inHead.sort()).toEqual(
      contentSecurityPolicy
        .split('; ')
        .filter((d) => !d.startsWith('frame-ancestors'))
        .sort(),
    );
  });
});
