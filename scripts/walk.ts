// npm run walk [-- FOLDER [PLACE,PLACE]]: every station at four widths, in every language and both units, as pictures on contact sheets, and what axe and a ruler find.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { languages } from '../src/words/tell.ts';
import { violations } from '../test/browser/axe.ts';
import { atRest, openBrowser, serveBench } from '../test/browser/bench-page.ts';
import { pulled } from '../test/browser/pulled.ts';
import { stations } from '../test/browser/stations-list.ts';

const folder = resolve(process.argv[2] ?? 'walk');
const places = process.argv[3]?.split(',') ?? [...stations, 'compare', 'prints'];
const sizes = [
  [390, 844],
  [820, 1180],
  [1440, 900],
  [1920, 1080],
] as const;
/** A long page is shown this far. */
const mostPx = 2600;

interface Picture {
  readonly place: string;
  readonly width: number;
  readonly way: string;
  readonly png: Buffer;
}

/** Words that are cut off or squeezed into a letter a line, values that their fields don't show, and boxes beyond the edge of the screen. */
function cutOff(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const wide = document.documentElement.clientWidth;
    const ruler = document.createElement('canvas').getContext('2d')!;
    const said = (e: HTMLElement): string => (e.textContent ?? '').trim().slice(0, 60);
    const scrolls = (e: HTMLElement | null): boolean =>
      !!e && (/auto|scroll/.test(getComputedStyle(e).overflowX) || scrolls(e.parentElement));
    const fault = (e: HTMLElement): string | null => {
      const style = getComputedStyle(e);
      const box = e.getBoundingClientRect();
      if (e instanceof HTMLInputElement)
        return e.type === 'text' && e.scrollWidth > e.clientWidth + 1 ? `a field shows not all of ${e.value}` : null;
      if (e instanceof HTMLSelectElement) {
        ruler.font = style.font;
        const text = e.selectedOptions[0]?.textContent ?? '';
        const room = e.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight);
        return ruler.measureText(text).width > room + 1 ? `a choice shows not all of ${text}` : null;
      }
      const own = [...e.childNodes].some((n) => n.nodeType === 3 && (n.textContent ?? '').trim().length > 2);
      if (!own || box.width < 3) return null;
      if (box.width < 24 && box.height > 60) return `one letter a line: ${said(e)}`;
      if (!/visible|auto|scroll/.test(style.overflowX) && e.scrollWidth > e.clientWidth + 1) return `cut off: ${said(e)}`;
      return box.right > wide + 1 && !scrolls(e.parentElement) ? `beyond the edge: ${said(e)}` : null;
    };
    return [...document.querySelectorAll<HTMLElement>('#bench *')]
      .filter((e) => e.checkVisibility() && !e.closest('.unseen, .skip, svg, option') && e.getBoundingClientRect().width > 2)
      .flatMap((e) => fault(e) ?? []);
  });
}

async function inWay(browser: Browser, language: string, units: 'mm' | 'in', found: string[]): Promise<Picture[]> {
  const bundle = pulled();
  const server = await serveBench({ ...bundle, job: { ...bundle.job, units } });
  const pictures: Picture[] = [];
  try {
    const context = await browser.newContext({ locale: language });
    await context.addInitScript({ content: 'globalThis.__name = (f) => f;' });
    const page = await context.newPage();
    page.on('pageerror', (e) => found.push(`${language} ${units}: ${e.message}`));
    await page.goto(`${server.url}?job=open#laydown`);
    await page.waitForSelector('main[aria-busy=false] .proof-figure .proof-canvas', { timeout: 120_000 });
    for (const [width, height] of sizes) {
      await page.setViewportSize({ width, height });
      for (const place of places) {
        await page.evaluate((id) => {
          location.hash = id;
        }, place);
        await page.waitForSelector('main[aria-busy=false]', { timeout: 60_000 });
        await atRest(page);
        const here = `${place} ${width} ${language} ${units}`;
        for (const one of await violations(page)) found.push(`${here}: axe ${JSON.stringify(one)}`);
        const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
        if (over > 0) found.push(`${here}: ${over} px over the edge`);
        for (const one of await cutOff(page)) found.push(`${here}: ${one}`);
        const long = await page.evaluate(() => document.documentElement.scrollHeight);
        const png = await page.screenshot({ fullPage: true, clip: { x: 0, y: 0, width, height: Math.min(long, mostPx) } });
        pictures.push({ place, width, way: `${language} ${units}`, png });
      }
    }
    await context.close();
  } finally {
    await server.close();
  }
  return pictures;
}

/** One sheet a place and width: the languages and units side by side. */
async function sheets(browser: Browser, pictures: readonly Picture[]): Promise<number> {
  const page = await browser.newPage({ viewport: { width: 1920, height: 800 } });
  const keys = [...new Set(pictures.map((p) => `${p.place}-${p.width}`))];
  for (const key of keys) {
    const here = pictures.filter((p) => `${p.place}-${p.width}` === key);
    const columns = here[0].width > 1000 ? 2 : here.length;
    const cells = here.map(
      (p) =>
        `<figure style="margin:0"><figcaption>${p.way}</figcaption><img src="data:image/png;base64,${p.png.toString('base64')}" style="width:100%"></figure>`,
    );
    await page.setContent(
      `<body style="margin:8px;background:#555;color:#fff;font:13px sans-serif"><h1 style="font-size:15px;margin:4px">${key}</h1><div style="display:grid;grid-template-columns:repeat(${columns},1fr);gap:8px;align-items:start">${cells.join('')}</div>`,
    );
    writeFileSync(join(folder, `${key}.png`), await page.screenshot({ fullPage: true }));
  }
  await page.close();
  return keys.length;
}

mkdirSync(folder, { recursive: true });
const browser = await openBrowser();
const found: string[] = [];
const pictures: Picture[] = [];
try {
  for (const { id } of languages) for (const units of ['mm', 'in'] as const) pictures.push(...(await inWay(browser, id, units, found)));
  for (const { place, width, way, png } of pictures) writeFileSync(join(folder, `${place}-${width}-${way.replace(' ', '-')}-one.png`), png);
  console.log(`${await sheets(browser, pictures)} sheets of ${pictures.length} pictures in ${folder}`);
} finally {
  await browser.close();
}
for (const one of found) console.log(one);
console.log(found.length === 0 ? 'axe and the ruler find nothing.' : `${found.length} found.`);
process.exitCode = found.length === 0 ? 0 : 1;
