import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';
import sirv from 'sirv';
import { contentSecurityPolicy } from '../../src/cli/disk/web-server.ts';
import { readJob, writeJobFile, type JobBundle } from '../../src/core/job/index.ts';

/** The Workbench as built, served with the same headers as `laydown serve`, and a browser to look at it with. */
export interface BenchServer {
  readonly url: string;
  /** Paths asked for so far. */
  readonly requests: string[];
  close(): Promise<void>;
}

export const built = fileURLToPath(new URL(process.env.LAYDOWN_WORKBENCH ?? '../../dist/workbench/', import.meta.url));

export function tidePool(): JobBundle {
  const folder = new URL('../../examples/tide-pool/', import.meta.url);
  return readJob(new Map(readdirSync(folder).map((name) => [name, new Uint8Array(readFileSync(new URL(name, folder)))])));
}

/** The same runs, inks and papers with a disc in the urchin's place and less foam: cut sooner, where no stencil is looked at. */
export function plainPool(): JobBundle {
  const { job, ...rest } = tidePool();
  const disc = Array.from({ length: 72 }, (_, i): [number, number] => {
    const angle = (i * Math.PI) / 36;
    return [42 + 42 * Math.cos(angle), 42 + 42 * Math.sin(angle)];
  });
  return {
    ...rest,
    job: {
      ...job,
      forms: job.forms.map((form) => (form.id === 'urchin' ? { id: form.id, name: form.name, outline: [disc] } : form)),
      cuts: job.cuts.map((cut) =>
        cut.id === 'foam' ? { ...cut, parts: cut.parts.map((part) => ({ ...part, repeat: { ...part.repeat!, count: 12 } })) } : cut,
      ),
    } as JobBundle['job'],
  };
}

/** `folder`: another build than the usual one; what changes in it is served as it then is. */
export async function serveBench(job: JobBundle | null, folder: string = built): Promise<BenchServer> {
  if (!existsSync(`${folder}index.html`)) throw new Error('The Workbench is not built: run npm run build.');
  const requests: string[] = [];
  const headers = {
    'Content-Security-Policy': contentSecurityPolicy,
    'X-Content-Type-Options': 'nosniff',
    'Referrer-Policy': 'no-referrer',
    'Cache-Control': 'no-cache',
  };
  const files = sirv(folder, {
    etag: true,
    dev: folder !== built,
    setHeaders: (response) => {
      for (const [k, v] of Object.entries(headers)) response.setHeader(k, v);
    },
  });
  const server: Server = createServer((request, response) => {
    const path = (request.url ?? '/').split('?')[0];
    requests.push(path);
    if (path === '/open.laydown' && job)
      response.writeHead(200, { 'Content-Type': 'application/zip', 'Cache-Control': 'no-store' }).end(writeJobFile(job));
    else
      files(request, response, () => {
        response.writeHead(404).end();
      });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    requests,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}

const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
const executablePath = process.env.LAYDOWN_CHROMIUM ?? '/usr/bin/chromium';

export function openBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath, args: flags });
}

/** A browser with a profile on disk: what it keeps outlives its process. */
export function openProfile(folder: string): Promise<BrowserContext> {
  return chromium.launchPersistentContext(folder, { executablePath, args: flags, viewport: { width: 1440, height: 900 } });
}

/** Opens the page and waits until the first proof is painted. Everything the page complains about is collected. */
export async function openBench(
  browser: Browser | BrowserContext,
  url: string,
  size = { width: 1440, height: 900 },
): Promise<{ page: Page; complaints: string[] }> {
  const page = 'newContext' in browser ? await browser.newPage({ viewport: size }) : await browser.newPage();
  const complaints: string[] = [];
  // Chromium advises on these tests' own reading of pixels; everything else counts.
  page.on('console', (m) => {
    if ((m.type() === 'error' || m.type() === 'warning') && !m.text().startsWith('Canvas2D: Multiple readback')) complaints.push(m.text());
  });
  page.on('pageerror', (e) => complaints.push(e.message));
  await page.goto(url);
  await settled(page);
  return { page, complaints };
}

/** Waits until the Plan shown belongs to the newest job and the proof is on the screen. */
export async function settled(page: Page): Promise<void> {
  await page.waitForSelector('main[aria-busy=false] .proof-figure .proof-canvas');
  await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))));
}

/** The page rests: nothing is being worked out, nothing moves, and for eight frames nothing in the document has changed. */
export async function atRest(page: Page): Promise<void> {
  await page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        let still = 0;
        const changes = new MutationObserver(() => (still = 0));
        changes.observe(document.documentElement, { subtree: true, childList: true, attributes: true, characterData: true });
        const look = (): void => {
          const works = document.querySelector('main')?.getAttribute('aria-busy') === 'true';
          // What moves for ever, as a waiting mark does, is no movement to wait for.
          const moves = document
            .getAnimations()
            .some((one) => one.playState === 'running' && Number.isFinite(Number(one.effect?.getComputedTiming().endTime)));
          still = works || moves ? 0 : still + 1;
          if (still < 8) requestAnimationFrame(look);
          else {
            changes.disconnect();
            resolve();
          }
        };
        requestAnimationFrame(look);
      }),
  );
}

/** Laydown's own files are all kept for work without a network: the worker that keeps them is done with it. */
export async function keptWhole(page: Page): Promise<void> {
  await page.waitForFunction(async () => (await navigator.serviceWorker.ready).active?.state === 'activated');
}

/** Puts tide-pool on the bench as it ships, or as given, over whatever was done to it; what the worker remembers makes this quick. */
export async function startOver(page: Page, station: string, bundle = tidePool()): Promise<void> {
  await page.evaluate((id) => {
    location.hash = id;
  }, station);
  // A job that arrives and a station that changes close what is open: both are over once the station is drawn.
  await page.waitForSelector(`.${station}`);
  // On a phone all but undo stands behind one button.
  const more = page.locator('.more-ways[aria-expanded=false]');
  if (await more.isVisible()) await more.click();
  const open = page.getByRole('button', { name: 'Open', exact: true });
  if ((await open.getAttribute('aria-expanded')) === 'false') await open.click();
  await page
    .locator('input[type=file][accept*=laydown]')
    .setInputFiles({ name: 'tide-pool.laydown', mimeType: 'application/zip', buffer: Buffer.from(writeJobFile(bundle)) });
  // What was opened before says its name still: only the drawer that closes tells that this one is there.
  await page.waitForSelector('button[aria-expanded=false]:text-is("Open")', { state: 'attached' });
  await page.waitForFunction(
    (id) => document.querySelector(`.${id} .proof-canvas`) && document.querySelector('.announcer')?.textContent?.startsWith('Tide pool'),
    station,
  );
  await settled(page);
}

/** The same at a station that shows no proof of the whole print. */
export async function startOverAt(page: Page, station: string): Promise<void> {
  await startOver(page, 'laydown');
  await page.evaluate((id) => {
    location.hash = id;
  }, station);
  await page.waitForSelector(`main[aria-busy=false] .${station}`);
}

/** Colour of the proof on the screen at a point of the image, both 0..1. */
export function proofColour(page: Page, u: number, v: number): Promise<number[]> {
  return page.evaluate(
    ([x, y]) => {
      const canvas = document.querySelector<HTMLCanvasElement>('.proof-figure .proof-canvas')!;
      return [
        ...canvas
          .getContext('2d')!
          .getImageData(Math.floor(x * canvas.width), Math.floor(y * canvas.height), 1, 1)
          .data.slice(0, 3),
      ];
    },
    [u, v],
  );
}
