// npm run film [-- FOLDER]: records the whole flow by keys alone (test/browser/keys-flow.ts): by-keys.webm, with every key said, and by-keys.png, a strip of it.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Browser } from 'playwright-core';
import { openBrowser, serveBench } from '../test/browser/bench-page.ts';
import { byKeys } from '../test/browser/keys-flow.ts';

const folder = resolve(process.argv[2] ?? 'film');
const size = { width: 1280, height: 800 };
/** How long one key stays in sight, and the last of a chapter, ms. */
const [keyMs, chapterMs] = [140, 1200];

interface Frame {
  readonly jpeg: string;
  readonly ms: number;
  /** The first picture of a chapter, or its last. */
  readonly chapter: string;
}

async function record(browser: Browser): Promise<Frame[]> {
  const server = await serveBench(null);
  const page = await browser.newPage({ viewport: size });
  const cdp = await page.context().newCDPSession(page);
  const frames: Frame[] = [];
  const says = { chapter: '', key: '' };
  const shoot = async (ms: number): Promise<void> => {
    const { data } = await cdp.send('Page.captureScreenshot', { format: 'jpeg', quality: 70, optimizeForSpeed: true });
    frames.push({ jpeg: data, ms, chapter: `${says.chapter}\t${says.key}` });
  };
  try {
    await byKeys(page, server.url, {
      async onChapter(name) {
        if (frames.length > 0) await shoot(chapterMs);
        says.chapter = name;
        says.key = '';
      },
      async onKey(key) {
        says.key = key;
        await shoot(keyMs);
      },
    });
    await shoot(2 * chapterMs);
  } finally {
    await page.close();
    await server.close();
  }
  return frames;
}

/** Frames with a line under them that says chapter and key, recorded by the browser itself. */
async function writeFilm(browser: Browser, frames: readonly Frame[]): Promise<Buffer> {
  const page = await browser.newPage();
  await page.setContent('<canvas></canvas>');
  const base64 = await page.evaluate(
    async ({ frames, width, height }) => {
      const canvas = document.querySelector('canvas')!;
      const line = 48;
      [canvas.width, canvas.height] = [width, height + line];
      const context = canvas.getContext('2d')!;
      const stream = canvas.captureStream(0);
      const [track] = stream.getVideoTracks() as CanvasCaptureMediaStreamTrack[];
      const recorder = new MediaRecorder(stream, { mimeType: 'video/webm;codecs=vp8', videoBitsPerSecond: 500_000 });
      const parts: Blob[] = [];
      recorder.ondataavailable = (e) => parts.push(e.data);
      recorder.start();
      for (const { jpeg, ms, chapter } of frames) {
        const picture = await createImageBitmap(await (await fetch(`data:image/jpeg;base64,${jpeg}`)).blob());
        const [name, key] = chapter.split('\t');
        context.drawImage(picture, 0, 0);
        context.fillStyle = '#000';
        context.fillRect(0, height, width, line);
        context.fillStyle = '#fff';
        context.font = '600 22px sans-serif';
        context.fillText(name, 16, height + 32);
        context.textAlign = 'right';
        context.fillText(key, width - 16, height + 32);
        context.textAlign = 'left';
        track.requestFrame();
        await new Promise((next) => setTimeout(next, ms));
      }
      await new Promise((done) => {
        recorder.onstop = done;
        recorder.stop();
      });
      const bytes = new Uint8Array(await new Blob(parts).arrayBuffer());
      let text = '';
      for (let i = 0; i < bytes.length; i += 8192) text += String.fromCharCode(...bytes.subarray(i, i + 8192));
      return btoa(text);
    },
    { frames, width: size.width, height: size.height },
  );
  await page.close();
  return Buffer.from(base64, 'base64');
}

/** The end of every chapter, one beside the other. */
async function writeStrip(browser: Browser, frames: readonly Frame[]): Promise<Buffer> {
  const ends = frames.filter((f) => f.ms >= chapterMs);
  const page = await browser.newPage({ viewport: { width: 1440, height: 600 } });
  const cells = ends.map(
    (f, i) =>
      `<figure style="margin:0"><img src="data:image/jpeg;base64,${f.jpeg}" style="width:100%"><figcaption>${i + 1}. ${f.chapter.split('\t')[0]}</figcaption></figure>`,
  );
  await page.setContent(
    `<body style="margin:12px;background:#444;color:#fff;font:15px sans-serif"><div style="display:grid;grid-template-columns:repeat(3,1fr);gap:12px">${cells.join('')}</div>`,
  );
  const png = await page.screenshot({ fullPage: true });
  await page.close();
  return png;
}

mkdirSync(folder, { recursive: true });
const browser = await openBrowser();
try {
  const frames = await record(browser);
  writeFileSync(join(folder, 'by-keys.png'), await writeStrip(browser, frames));
  const film = await writeFilm(browser, frames);
  writeFileSync(join(folder, 'by-keys.webm'), film);
  console.log(
    `${frames.length} pictures, ${Math.round(frames.reduce((sum, f) => sum + f.ms, 0) / 1000)} s, ${film.length} bytes in ${folder}`,
  );
} finally {
  await browser.close();
}
