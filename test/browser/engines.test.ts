import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { smallJob } from '../../src/packet/packet-jobs.ts';
import { atRest, openBrowser, serveBench } from './bench-page.ts';
import { benchSize, engines, type Driver } from './engines/driver.ts';
import { blocksOf, unlike, type Blocks } from './engines/look-alike.ts';
import { byHand } from './engines/by-hand.ts';
import { stations } from './stations-list.ts';

/** In the page: something to wait for, looked at until it is there. */
const waits = (condition: string, ms = 60_000): string =>
  `new Promise((resolve, reject) => { const until = Date.now() + ${ms}; const look = () => { let is; try { is = ${condition}; } catch { is = null; } if (is) resolve(is); else if (Date.now() > until) reject(new Error(${JSON.stringify(condition)} + ': ' + document.querySelector('[role=alert]')?.textContent)); else setTimeout(look, 50); }; look(); })`;
const planned = `document.querySelector('main[aria-busy=false] .proof-figure .proof-canvas') !== null`;
const strength = `document.querySelector('[data-layer] input[type=range]')`;
const proof = `document.querySelector('.proof-figure .proof-canvas').toDataURL().length + document.querySelector('.proof-figure .proof-canvas').toDataURL()`;
const count = `Number(document.querySelector('[data-count]').dataset.count.split(' ')[0])`;

async function pull(driver: Driver, n: number): Promise<void> {
  await driver.look(waits(`document.querySelector('.tap-pulled:not(:disabled)')`));
  const before = await driver.look<number>(count);
  for (let i = 1; i <= n; i++) {
    await driver.look(`document.querySelector('.tap-pulled').click()`);
    await driver.look(waits(`${count} === ${before + i}`));
  }
}

/** Bars at the side are each engine's own. */
const noBars = `void (document.documentElement.style.scrollbarWidth = 'none')`;

/** The same page in Chromium: what the pictures are compared with. */
interface Beside {
  /** How a station looks in a window of that size, drawn once for all engines; `anew`: as it looks now. */
  look(station: string, size: Size, anew?: boolean): Promise<Blocks>;
  close(): Promise<void>;
}
interface Size {
  readonly width: number;
  readonly height: number;
}

async function openBeside(): Promise<Beside> {
  const server = await serveBench(smallJob());
  const chromium = await openBrowser();
  const page = await chromium.newPage({ viewport: benchSize });
  await page.goto(`${server.url}?job=open#laydown`);
  await page.waitForSelector('main[aria-busy=false] .proof-figure .proof-canvas');
  await page.evaluate(noBars);
  const drawn = new Map<string, Blocks>();
  return {
    async look(station, size, anew) {
      const key = `${station} ${size.width} ${size.height}`;
      const there = drawn.get(key);
      if (there && !anew) return there;
      await page.setViewportSize(size);
      await page.evaluate((id) => {
        location.hash = id;
      }, station);
      await page.waitForSelector(`main[aria-busy=false] .${station}`);
      await atRest(page);
      const blocks = await blocksOf(await page.screenshot());
      drawn.set(key, blocks);
      return blocks;
    },
    async close() {
      await chromium.close();
      await server.close();
    },
  };
}
let beside: Promise<Beside> | null = null;
afterAll(async () => (await beside)?.close());

/** Share of what is in sight that looks otherwise than in Chromium. */
async function otherwise(driver: Driver, station: string): Promise<number> {
  const size = await driver.look<Size>(`({ width: innerWidth, height: innerHeight })`);
  const chromium = await (beside ??= openBeside());
  // What an engine draws comes to rest a moment after the page does.
  let least = 1;
  for (let tries = 0; tries < 20 && least > mostUnlike; tries++)
    least = Math.min(least, unlike(await blocksOf(await driver.picture()), await chromium.look(station, size, tries > 0)));
  return least;
}
/** Letters and lines a pixel off are under this; one station for another is over five times as much. */
const mostUnlike = 0.04;

// WebKit is Safari's; Firefox is on many desks. Where neither is installed (apt-get install firefox-esr webkit2gtk-driver xvfb) they are passed over.
describe.each(engines)('$name', ({ name, installed, keeps, start }) => {
  test.skipIf(!installed)(
    'every station, a change, a packet; loaded again it is kept; killed, and with the network gone, all is there and the count too',
    async () => {
      const profile = mkdtempSync(join(tmpdir(), 'laydown-engine-'));
      const server = await serveBench(smallJob());
      beside ??= openBeside();
      let driver = await start(profile);
      try {
        await driver.go(`${server.url}?job=open#laydown`);
        await driver.look(noBars);
        await driver.look(`addEventListener('error', (e) => (globalThis.wrong ??= []).push(e.message))`);
        await driver.look(waits(planned));
        for (const station of stations) {
          await driver.look(`location.hash = ${JSON.stringify(station)}`);
          await driver.look(waits(`document.querySelector('main[aria-busy=false] .${station}')`));
          expect(await otherwise(driver, station), station).toBeLessThan(mostUnlike);
          if (process.env['LAYDOWN_LOOK'])
            writeFileSync(join(process.env['LAYDOWN_LOOK'], `${name}-${station}.png`), await driver.picture());
        }
        // One station is not taken for another.
        await driver.look(`location.hash = 'forms'`);
        await driver.look(waits(`document.querySelector('main[aria-busy=false] .forms')`));
        const size = await driver.look<Size>(`({ width: innerWidth, height: innerHeight })`);
        const other = await (await beside!).look('edition', size);
        expect(unlike(await blocksOf(await driver.picture()), other)).toBeGreaterThan(3 * mostUnlike);
        await byHand(driver, (station) => otherwise(driver, station), mostUnlike);

        await driver.look(`location.hash = 'laydown'`);
        await driver.look(waits(planned));
        const before = await driver.look<string>(proof);
        await driver.look(
          `(() => { ${strength}.value = '35'; ${strength}.dispatchEvent(new Event('input', { bubbles: true })); ${strength}.dispatchEvent(new Event('change', { bubbles: true })); })()`,
        );
        await driver.look(waits(`(${proof}) !== ${JSON.stringify(before)}`));
        await driver.look(waits(planned));

        await driver.look(`[...document.querySelectorAll('.header button')].find((b) => b.textContent === 'Print packet').click()`);
        await driver.look(waits(`[...document.querySelectorAll('.drawer button')].find((b) => b.textContent === 'Print packet')`));
        await driver.look(`[...document.querySelectorAll('.drawer button')].find((b) => b.textContent === 'Print packet').click()`);
        await driver.look(waits(`document.querySelectorAll('.print-page').length > 5`));

        await driver.look(`location.hash = 'pulling'`);
        await pull(driver, 3);
        await driver.look(
          waits(`document.querySelector('.kept')?.textContent === 'Kept on this machine' || document.querySelector('.pulling')`),
        );
        await driver.look(
          `navigator.serviceWorker.ready.then((r) => r.active.state === 'activated' || new Promise((ok) => r.active.addEventListener('statechange', ok)).then(() => true))`,
        );
        expect(await driver.look(`globalThis.wrong ?? []`)).toEqual([]);

        // The power goes where what is kept outlives it; and the network goes in any case.
        if (keeps) {
          await driver.kill();
          driver = await start(profile);
        }
        await server.close();
        await driver.go(`${server.url}#pulling`);
        await driver.look(waits(`${count} === 3`));
        await pull(driver, 1);
        await driver.look(`location.hash = 'laydown'`);
        await driver.look(waits(planned));
        expect(await driver.look(`${strength}.value`)).toBe('35');
      } finally {
        await driver.kill();
        await server.close().catch(() => undefined);
        rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
      }
    },
    240_000,
  );
});
