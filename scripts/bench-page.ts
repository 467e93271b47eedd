// npm run bench:page: how quickly the page answers, measured in Chromium on the built Workbench with tide-pool open.
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { chromium, type Page } from 'playwright-core';

const root = fileURLToPath(new URL('..', import.meta.url));
const median = (list: readonly number[]): number => [...list].sort((a, b) => a - b)[list.length >> 1];
const say = (name: string, list: readonly number[], limitMs: number): void =>
  console.log(`  ${name.padEnd(52)} median ${median(list).toFixed(1).padStart(7)} ms   worst ${Math.max(...list).toFixed(1).padStart(7)} ms   limit ${limitMs} ms   ratio ${(median(list) / limitMs).toFixed(2)}`);

/** From the change to the frame in which the large proof shows other pixels, ms. */
function untilChanged(page: Page, change: string): Promise<number> {
  return page.evaluate(async (source) => {
    const canvas = document.querySelector<HTMLCanvasElement>('.proof-figure .proof-canvas')!;
    const look = (): string => {
      const small = document.createElement('canvas');
      small.width = small.height = 24;
      small.getContext('2d')!.drawImage(canvas, 0, 0, 24, 24);
      return small.getContext('2d')!.getImageData(0, 0, 24, 24).data.join();
    };
    const before = look();
    const start = performance.now();
    (new Function(source) as () => void)();
    for (;;) {
      await new Promise((next) => requestAnimationFrame(next));
      if (look() !== before) return performance.now() - start;
      if (performance.now() - start > 20_000) return Infinity;
    }
  }, change);
}

async function main(): Promise<void> {
  const server = spawn(process.execPath, [`${root}dist/cli/main.js`, 'serve', `${root}examples/tide-pool`, '--port', '0'], { stdio: ['ignore', 'pipe', 'inherit'] });
  try {
    const address = await new Promise<string>((resolve, reject) => {
      server.stdout.on('data', (data: Buffer) => {
        const found = /http:\/\/127\.0\.0\.1:\d+\/\S*/.exec(data.toString());
        if (found) resolve(found[0]);
      });
      server.once('exit', () => reject(new Error('The Workbench could not be served: run npm run build first.')));
    });
    const browser = await chromium.launch({
      executablePath: process.env['LAYDOWN_CHROMIUM'] ?? '/usr/bin/chromium',
      args: ['--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
    });
    // The measuring code is evaluated in the page, which the page's own policy forbids to its scripts.
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, bypassCSP: true });
    // The runner that strips the types names functions by a helper that a page doesn't have.
    await context.addInitScript({ content: 'globalThis.__name = (f) => f;' });
    const page = await context.newPage();
    const settled = (): Promise<unknown> => page.waitForSelector('main[aria-busy=false] .proof-figure .proof-canvas', { timeout: 60_000 });
    await page.goto(`${address}#laydown`);
    await settled();
    console.log('The page, tide-pool at 1440 × 900');
    await page.evaluate(() => {
      const tasks: number[] = [];
      new PerformanceObserver((list) => { for (const entry of list.getEntries()) tasks.push(entry.duration); }).observe({ type: 'longtask' });
      Object.assign(window, { longTasks: tasks });
    });
    const slide: number[] = [];
    for (let i = 0; i < 40; i++) {
      slide.push(await untilChanged(page, `const s = document.querySelector('[data-layer=water] input[type=range]'); s.value = ${20 + ((i * 13) % 60)}; s.dispatchEvent(new Event('input', { bubbles: true }));`));
    }
    say('strength slider → changed proof', slide, 16);
    await settled();
    const order: number[] = [];
    for (let i = 0; i < 12; i++) {
      await settled();
      order.push(await untilChanged(page, `document.querySelector('[data-layer=sky] input[type=checkbox]').click();`));
    }
    say('run in or out → changed proof', order, 16);
    const tasks = await page.evaluate(() => (window as unknown as { longTasks: number[] }).longTasks);
    console.log(`  tasks over 50 ms on the page's own thread: ${tasks.length}${tasks.length ? `, longest ${Math.max(...tasks).toFixed(0)} ms` : ''}`);
    await settled();
    await page.waitForTimeout(4000);
    const views: number[] = [];
    for (let i = 0; i < 5; i++) {
      const start = performance.now();
      await page.goto(address.replace('?job=open', ''), { waitUntil: 'commit' });
      await page.waitForSelector('.proof-figure .proof-canvas', { timeout: 60_000 });
      views.push(performance.now() - start);
      await settled();
      await page.waitForTimeout(3000);
    }
    say('first view from cache', views, 1000);
    await browser.close();
  } finally {
    server.kill();
  }
}

await main();
