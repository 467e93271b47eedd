import type { Browser, Page } from 'playwright-core';
import { openBench, openBrowser, serveBench, startOver, tidePool, type BenchServer } from '../bench-page.ts';

/** Tide-pool on one page for all parts of the desk, so that it is planned once. */
export interface OneBench {
  readonly page: Page;
  /** What the page complained about since it was asked for. */
  readonly complaints: string[];
}

let open: Promise<OneBench & { readonly browser: Browser; readonly server: BenchServer }> | undefined;

/** As it ships and as large as a desk has it, whatever a part before has done to it. */
export async function oneBench(): Promise<OneBench> {
  const first = open === undefined;
  open ??= (async () => {
    const [browser, server] = [await openBrowser(), await serveBench(tidePool())];
    return { browser, server, ...(await openBench(browser, `${server.url}?job=open#laydown`)) };
  })();
  const bench = await open;
  bench.complaints.length = 0;
  if (!first) {
    await bench.page.setViewportSize({ width: 1440, height: 900 });
    await bench.page.evaluate(() => {
      document.documentElement.style.fontSize = '';
    });
    await startOver(bench.page, 'laydown');
  }
  return bench;
}

export async function closeBench(): Promise<void> {
  const closing = open;
  open = undefined;
  const { browser, server } = (await closing) ?? {};
  await browser?.close();
  await server?.close();
}
