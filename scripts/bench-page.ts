// npm run bench:page: how quickly the page answers, measured in Chromium on the built Workbench with tide-pool open.
import type { Page } from 'playwright-core';
import { openBrowser, serveBench, tidePool } from '../test/browser/bench-page.ts';

const median = (list: readonly number[]): number => [...list].sort((a, b) => a - b)[list.length >> 1];
/** Changes that were to be seen in the very next frame, and all of them. */
const frames = { next: 0, all: 0 };
const say = (name: string, list: readonly number[], limitMs: number): void => {
  console.log(
    `  ${name.padEnd(52)} median ${median(list).toFixed(1).padStart(7)} ms   worst ${Math.max(...list)
      .toFixed(1)
      .padStart(
        7,
      )} ms   limit ${limitMs} ms   ratio ${(median(list) / limitMs).toFixed(2)}${frames.all > 0 ? `   in the next frame ${frames.next} of ${frames.all}` : ''}`,
  );
  frames.all = frames.next = 0;
};

/** From the change to the frame in which the large proof shows other pixels, ms. */
async function untilChanged(page: Page, change: string): Promise<number> {
  const [ms, count] = await page.evaluate(async (source) => {
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
    for (let frame = 1; ; frame++) {
      await new Promise((next) => requestAnimationFrame(next));
      if (look() !== before) return [performance.now() - start, frame] as const;
      if (performance.now() - start > 5_000) return [Infinity, frame] as const;
    }
  }, change);
  frames.all++;
  if (count === 1) frames.next++;
  return ms;
}

async function main(): Promise<void> {
  const server = await serveBench(tidePool());
  try {
    const address = `${server.url}?job=open`;
    const browser = await openBrowser();
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
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) tasks.push(entry.duration);
      }).observe({ type: 'longtask' });
      Object.assign(window, { longTasks: tasks });
    });
    const slide: number[] = [];
    for (let i = 0; i < 40; i++) {
      slide.push(
        await untilChanged(
          page,
          `const s = document.querySelector('[data-layer=water] input[type=range]'); s.value = ${20 + ((i * 13) % 60)}; s.dispatchEvent(new Event('input', { bubbles: true }));`,
        ),
      );
    }
    say('strength slider → changed proof', slide, 16);
    await settled();
    const order: number[] = [];
    for (let i = 0; i < 12; i++) {
      await settled();
      order.push(await untilChanged(page, `document.querySelector('[data-layer=sky] input[type=checkbox]').click();`));
    }
    say('run in or out → changed proof', order, 16);
    const moved: number[] = [];
    for (let i = 0; i < 12; i++)
      moved.push(
        await untilChanged(page, `document.querySelector('[data-layer=kelp] .step-button:nth-child(${i % 2 === 0 ? 2 : 1})').click();`),
      );
    say('run earlier or later → changed proof', moved, 16);
    await settled();
    const busy: number[] = [];
    for (let i = 0; i < 12; i++) {
      await page.evaluate(
        (value) => {
          const slider = document.querySelector<HTMLInputElement>('[data-layer=kelp] input[type=range]')!;
          slider.value = String(value);
          slider.dispatchEvent(new Event('input', { bubbles: true }));
        },
        21 + i * 5,
      );
      // The hand has rested for so long that a whole Plan is under way.
      await page.waitForTimeout(400);
      busy.push(await untilChanged(page, `document.querySelector('[data-layer=sky] input[type=checkbox]').click();`));
    }
    say('run in or out while a Plan is made → changed proof', busy, 16);
    await settled();
    const tasks = await page.evaluate(() => (window as unknown as { longTasks: number[] }).longTasks);
    console.log(
      `  tasks over 50 ms on the page's own thread: ${tasks.length}${tasks.length ? `, longest ${Math.max(...tasks).toFixed(0)} ms` : ''}`,
    );
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
    await server.close();
  }
}

await main();
