import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import type { JobBundle } from '../../src/core/job/index.ts';
import { openBrowser, serveBench, tidePool, type BenchServer } from './bench-page.ts';

export interface Opened {
  readonly browser: Browser;
  readonly server: BenchServer;
  readonly page: Page;
}

/** One desk-wide page for all tests of a file, not gone anywhere yet; what it complains about is told. Closed after the last test. */
export function onPage(ready: (opened: Opened) => void, complain: (text: string) => void, bundle = (): JobBundle => tidePool()): void {
  let opened: Opened | undefined;
  beforeAll(async () => {
    const [browser, server] = [await openBrowser(), await serveBench(bundle())];
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    page.on('console', (m) => {
      // Chromium advises on tests' own reading of pixels; everything else counts.
      if ((m.type() === 'error' || m.type() === 'warning') && !m.text().startsWith('Canvas2D: Multiple readback')) complain(m.text());
    });
    page.on('pageerror', (e) => complain(e.message));
    opened = { browser, server, page };
    ready(opened);
  });
  afterAll(async () => {
    await opened?.browser.close();
    await opened?.server.close();
  });
}
