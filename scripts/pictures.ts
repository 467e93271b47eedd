// npm run pictures: makes the README's pictures from the built project: the Workbench as a screenshot, pages of the packet.
import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { createCanvas } from '@napi-rs/canvas';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { chromium } from 'playwright-core';

const root = fileURLToPath(new URL('..', import.meta.url));
const pictures = `${root}docs/pictures/`;
mkdirSync(pictures, { recursive: true });

/** Pages of the packet whose text begins with one of these, side by side. */
async function packetPages(name: string, titles: readonly string[], widthPx: number): Promise<void> {
  const require = createRequire(import.meta.url);
  const fonts = require.resolve('pdfjs-dist/package.json').replace(/package\.json$/, 'standard_fonts/');
  const pdf = await getDocument({ data: new Uint8Array(readFileSync(`${root}out/tide-pool/packet.pdf`)), standardFontDataUrl: fonts })
    .promise;
  const found: { page: Awaited<ReturnType<typeof pdf.getPage>> }[] = [];
  for (const title of titles) {
    for (let i = 1; i <= pdf.numPages; i++) {
      const page = await pdf.getPage(i);
      const text = (await page.getTextContent()).items.map((item) => ('str' in item ? item.str : '')).join(' ');
      if (text.trim().startsWith(title)) {
        found.push({ page });
        break;
      }
    }
  }
  const gap = 24;
  const each = (widthPx - gap * (found.length + 1)) / found.length;
  const scale = each / found[0].page.getViewport({ scale: 1 }).width;
  const height = Math.round(found[0].page.getViewport({ scale }).height) + 2 * gap;
  const canvas = createCanvas(widthPx, height);
  const context = canvas.getContext('2d');
  context.fillStyle = '#7d7d7d';
  context.fillRect(0, 0, widthPx, height);
  for (const [i, { page }] of found.entries()) {
    const viewport = page.getViewport({ scale });
    const sheet = createCanvas(Math.round(viewport.width), Math.round(viewport.height));
    const own = sheet.getContext('2d');
    own.fillStyle = '#ffffff';
    own.fillRect(0, 0, sheet.width, sheet.height);
    await page.render({
      canvas: sheet as unknown as HTMLCanvasElement,
      canvasContext: own as unknown as CanvasRenderingContext2D,
      viewport,
    }).promise;
    context.drawImage(sheet, gap + i * (each + gap), gap);
  }
  writeFileSync(pictures + name, canvas.toBuffer('image/png'));
  console.log(`docs/pictures/${name}: ${found.length} pages`);
}

async function workbench(name: string, hash: string): Promise<void> {
  const server = spawn(process.execPath, [`${root}dist/cli/main.js`, 'serve', `${root}examples/tide-pool`, '--port', '0'], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  try {
    const address = await new Promise<string>((resolve, reject) => {
      server.stdout.on('data', (data: Buffer) => {
        const found = /http:\/\/127\.0\.0\.1:\d+\/\S*/.exec(data.toString());
        if (found) resolve(found[0]);
      });
      server.once('exit', () => reject(new Error('The Workbench could not be served.')));
    });
    const browser = await chromium.launch({
      executablePath: process.env['LAYDOWN_CHROMIUM'] ?? '/usr/bin/chromium',
      args: [
        '--headless',
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    });
    try {
      const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
      await page.goto(`${address}${hash}`);
      await page.locator('canvas').first().waitFor({ timeout: 60_000 });
      await page.waitForTimeout(6000);
      await page.screenshot({ path: pictures + name });
      console.log(`docs/pictures/${name}`);
    } finally {
      await browser.close();
    }
  } finally {
    server.kill();
  }
}

await workbench('workbench.png', '#laydown');
await packetPages('packet.png', ['Tide pool', 'Laydown', 'Mix'], 1440);
