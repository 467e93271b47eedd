import * as dxf from 'dxf-parser';
import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, test } from 'vitest';
import { violations } from './axe.ts';
import type { BenchServer } from './bench-page.ts';
import { onPage } from './on-page.ts';

type ParserKind = new () => { parseSync(text: string): dxf.IDxf | null };
const exported = dxf as unknown as { readonly DxfParser?: ParserKind; readonly default?: ParserKind & { readonly DxfParser?: ParserKind } };
const Parser = (exported.DxfParser ?? exported.default?.DxfParser ?? exported.default)!;
interface WithPoints {
  readonly vertices?: readonly { readonly x: number; readonly y: number }[];
  readonly controlPoints?: readonly { readonly x: number; readonly y: number }[];
}

let server: BenchServer;
let page: Page;
let complaints: string[] = [];
onPage(
  (opened) => {
    ({ server, page } = opened);
  },
  (text) => complaints.push(text),
);

const atRest = async (): Promise<void> => {
  await page.waitForSelector('main[aria-busy=false] .zoom-drawing');
  await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))));
};
/** What was done in the test before is undone, step by step. */
async function fresh(): Promise<void> {
  complaints = [];
  if (!page.url().includes('job=open')) await page.goto(`${server.url}?job=open#stencils`);
  await atRest();
  const undo = page.getByRole('button', { name: /^Undo/ });
  for (let i = 0; i < 40 && (await undo.isEnabled()); i++) await undo.click();
  await page.setViewportSize({ width: 1440, height: 900 });
  await stencil('urchin');
}
async function stencil(id: string): Promise<void> {
  await page.locator(`[data-stencil=${id}]`).click();
  await atRest();
}
const stepName = async (): Promise<string> => (await page.getByRole('button', { name: /^Undo/ }).getAttribute('aria-label')) ?? '';
type Point = readonly [number, number];
/** Middles of all bridges, mm on the image. */
const bridges = (): Promise<Point[]> =>
  page.locator('.bridge-shape').evaluateAll((all) =>
    all.map((b) => {
      const box = (b as SVGPathElement).getBBox();
      return [box.x + box.width / 2, box.y + box.height / 2] as const;
    }),
  );
const toScreen = (at: Point): Promise<Point> =>
  page.evaluate(([x, y]) => {
    const group = document.querySelector<SVGGElement>('.zoom-drawing > g')!;
    const p = new DOMPoint(x, y).matrixTransform(group.getScreenCTM()!);
    return [p.x, p.y] as const;
  }, at);
const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const nearest = (all: readonly Point[], at: Point): number => Math.min(...all.map((b) => apart(b, at)));
/** The urchin's ring: its middle, and how far out a bridge across it lies. */
const ring = async (): Promise<{ middle: Point; radius: number }> => {
  const [a, b] = await bridges();
  const middle = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const;
  return { middle, radius: apart(a, b) / 2 };
};
const rim = ({ middle, radius }: { middle: Point; radius: number }, degrees: number): Point => [
  middle[0] + radius * Math.cos((degrees * Math.PI) / 180),
  middle[1] + radius * Math.sin((degrees * Math.PI) / 180),
];

describe('one stencil at a time', () => {
  beforeEach(fresh);

  test('it holds, its bridges are priced in the print, and the knife knows what it has to do', async () => {
    expect(await page.locator('[data-stencil]').count()).toBe(6);
    await page.getByText('It holds: one piece.').waitFor();
    expect(await page.locator('.bridge').count()).toBe(2);
    const label = await page.locator('.bridge').first().getAttribute('aria-label');
    // Purple ring on bare sky: a bridge of paper is plainly seen there.
    expect(Number(/ΔE (\d+(?:\.\d+)?)/.exec(label ?? '')?.[1])).toBeGreaterThan(10);
    expect(await page.locator('[aria-labelledby=knife]').textContent()).toMatch(/min.*m of cut.*corners.*pieces/s);
    expect(complaints).toEqual([]);
  });

  test('a bridge carried along its opening stays where it is put, under its name in undo', async () => {
    const before = await bridges();
    const place = await ring();
    const from = await toScreen(before[0]);
    const wish = rim(place, 180);
    const to = await toScreen(wish);
    await page.mouse.move(...from);
    await page.mouse.down();
    await page.mouse.move(...to, { steps: 8 });
    await page.mouse.up();
    await expect.poll(async () => page.locator('.bridge-pinned').count()).toBe(1);
    await atRest();
    expect(nearest(await bridges(), wish)).toBeLessThan(6);
    expect(await stepName()).toBe('Undo: a bridge of Urchin moved');
    await page.getByText('It holds: one piece.').waitFor();
    await page.keyboard.press('Control+z');
    await expect.poll(async () => nearest(await bridges(), before[0])).toBeLessThan(0.1);
    expect(await page.locator('.bridge-pinned').count()).toBe(0);
  });

  test('with keys alone: arrows move it and the focus stays with it; Delete lets a pinned one go', async () => {
    const [first] = await bridges();
    await page.locator('.bridge').first().focus();
    for (let i = 0; i < 4; i++) await page.keyboard.press('ArrowDown');
    await page.locator('.bridge-pinned').waitFor();
    await atRest();
    const moved = (await bridges()).reduce((a, b) => (apart(b, first) < apart(a, first) ? b : a));
    expect(moved[1] - first[1]).toBeGreaterThan(1);
    await expect.poll(() => page.evaluate(() => document.activeElement?.classList.contains('bridge-pinned'))).toBe(true);
    await page.keyboard.press('Delete');
    await expect.poll(async () => page.locator('.bridge-pinned').count()).toBe(0);
    expect(await stepName()).toBe('Undo: a pinned bridge of Urchin let go');
    // All at once, as a picture's result leaves them pinned.
    await page.keyboard.press('Control+z');
    await page.getByRole('button', { name: 'Lay all bridges anew' }).click();
    await expect.poll(async () => page.locator('.bridge-pinned').count()).toBe(0);
    await page.getByRole('button', { name: 'Lay all bridges anew' }).waitFor({ state: 'detached' });
  });

  test('a bridge is forbidden at its place and another is found; the place can be allowed again', async () => {
    const [first] = await bridges();
    await page.locator('.bridge').first().focus();
    await page.getByRole('button', { name: 'No bridge here' }).click();
    await expect.poll(async () => nearest(await bridges(), first)).toBeGreaterThan(4);
    await page.getByText('It holds: one piece.').waitFor();
    expect(await page.locator('.no-bridge').count()).toBe(1);
    await page.getByRole('button', { name: 'Allow bridges at place 1 again' }).click();
    await expect.poll(async () => nearest(await bridges(), first)).toBeLessThan(0.1);
  });

  test('a bridge is added by pointer, and by keys with a cross; where no opening is, that is said', async () => {
    const place = await ring();
    await page.getByRole('button', { name: 'Add a bridge' }).click();
    await page.mouse.click(...(await toScreen(rim(place, 0))));
    await expect.poll(async () => page.locator('.bridge-pinned').count()).toBe(1);
    await atRest();
    expect(nearest(await bridges(), rim(place, 0))).toBeLessThan(6);
    expect(await stepName()).toBe('Undo: a bridge added to Urchin');
    await page.getByRole('button', { name: 'Add a bridge' }).click();
    await page.getByRole('button', { name: /^The new bridge/ }).focus();
    // The cross starts in the middle of the image, far below the ring: nothing to bridge.
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('[role=status]').first().textContent()).toContain('no opening to bridge');
    expect(await page.locator('.bridge-pinned').count()).toBe(1);
  });

  test('islands: laid loose they are numbered and held by nothing; dropped they cost what they cost', async () => {
    await page.getByRole('radio', { name: 'laid loose' }).check();
    await page.locator('.loose-piece').waitFor();
    expect(await page.locator('.bridge').count()).toBe(0);
    expect(await page.locator('.tag-number').textContent()).toBe('1');
    await page.getByText('It holds, with 1 loose piece').waitFor();
    await page.getByRole('radio', { name: 'dropped' }).check();
    await page.locator('.dropped').waitFor();
    expect(await page.locator('[aria-labelledby=islands]').textContent()).toMatch(/Dropped: ink prints there, .*\(ΔE00 \d/);
  });

  test('bridges laid the shortest way are priced too, and are no cheaper than those least seen', async () => {
    await stencil('kelp');
    const cost = async (): Promise<number> =>
      (
        await page
          .locator('.bridge')
          .evaluateAll((all) => all.map((b) => Number(/ΔE (\d+(?:\.\d+)?)/.exec(b.getAttribute('aria-label') ?? '')?.[1])))
      ).reduce((a, b) => a + b, 0);
    const least = await cost();
    await page.getByRole('radio', { name: 'the shortest way' }).check();
    await atRest();
    await expect.poll(cost).toBeGreaterThan(0);
    expect(await cost()).toBeGreaterThanOrEqual(least - 0.2);
  });

  test('a weaker material asks for broader bridges; the studio changes its own figures', async () => {
    const width = async (): Promise<number> => {
      await page.locator('.bridge').first().focus();
      return Number(/([\d.]+)\s*mm wide/.exec((await page.locator('.bridge-held-facts').textContent()) ?? '')?.[1]);
    };
    const film = await width();
    await page.getByRole('combobox', { name: 'What Urchin is cut from' }).selectOption('newsprint');
    await atRest();
    await expect.poll(width).toBeGreaterThan(film + 1);
    expect(await stepName()).toBe('Undo: Urchin cut from Newsprint');
    await page.getByText('The studio’s materials').click();
    const least = page.getByRole('textbox', { name: 'Newsprint: Least bridge' });
    await least.fill('4,5');
    await least.press('Enter');
    await expect.poll(width).toBeGreaterThan(4.5);
    await page.getByText('The studio’s materials').click();
  });

  test('from the side that faces the paper it is mirrored; what is carried still follows the hand', async () => {
    const [before] = await bridges();
    const seen = await toScreen(before);
    await page.getByRole('radio', { name: 'The side that faces the paper' }).check();
    await atRest();
    const mirrored = await toScreen(before);
    expect(Math.abs(mirrored[0] - seen[0])).toBeGreaterThan(5);
    await page.locator('.bridge').first().focus();
    await page.keyboard.press('Shift+ArrowRight');
    await page.locator('.bridge-pinned').waitFor();
    await atRest();
    expect((await bridges()).some((b) => b[0] < before[0] - 3 && apart(b, before) < 25)).toBe(true);
    await page.getByRole('radio', { name: 'The side that faces the mesh' }).check();
  });

  test('window and piece of one cut side by side: which runs use them, and how often it is cut', async () => {
    await stencil('water');
    const pair = page.locator('[aria-labelledby=pair]');
    expect(await pair.locator('.pair-half svg').count()).toBe(2);
    expect(await pair.textContent()).toMatch(/Cut (once|\d times)/);
    expect(await pair.textContent()).toContain('1 Sky');
    expect(await pair.textContent()).toContain('2 Water');
  });

  test('the cut sheet of this stencil comes as SVG and as DXF, the same shape in both', async () => {
    const save = async (format: string): Promise<string> => {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name: format, exact: true }).click(),
      ]);
      expect(download.suggestedFilename()).toBe(`tide-pool-urchin.${format.toLowerCase()}`);
      const chunks: Buffer[] = [];
      for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
      return Buffer.concat(chunks).toString('utf8');
    };
    const svg = await save('SVG');
    expect(svg).toContain('id="cut"');
    expect(svg).toMatch(/<svg[^>]* width="250mm"/);
    const read = new Parser().parseSync(await save('DXF'));
    expect(read?.header?.$INSUNITS).toBe(4);
    const points = (read?.entities ?? [])
      .filter((e) => e.layer === 'CUT')
      .flatMap((e) => [...((e as WithPoints).vertices ?? []), ...((e as WithPoints).controlPoints ?? [])]);
    const span = (values: number[]): number => Math.max(...values) - Math.min(...values);
    const box = await page.evaluate(
      (d) => {
        const drawing = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
        const path = document.createElementNS('http://www.w3.org/2000/svg', 'path');
        path.setAttribute('d', d);
        drawing.append(path);
        document.body.append(drawing);
        const { width, height } = path.getBBox();
        drawing.remove();
        return [width, height];
      },
      /id="cut"[^>]*><path[^>]* d="([^"]+)"/.exec(svg)![1],
    );
    // The handles of a curve may stand a little outside of it.
    expect(Math.abs(span(points.map((p) => p.x)) - box[0])).toBeLessThan(0.5);
    expect(Math.abs(span(points.map((p) => p.y)) - box[1])).toBeLessThan(0.5);
    expect(box[0]).toBeGreaterThan(90);
  });

  test('the cut sheets hang on one line above the table, by run; one taken up shows below and is marked', async () => {
    const hung = page.locator('.hung-sheet');
    expect((await hung.locator('b').allTextContents()).map((t) => Number.parseInt(t, 10))).toEqual([1, 2, 3, 4, 5, 6]);
    const boxes = await hung.evaluateAll((all) => all.map((b) => b.getBoundingClientRect().top));
    expect(new Set(boxes.map(Math.round)).size).toBe(1);
    const table = (await page.locator('.stencils .zoom-view').boundingBox())!;
    expect(boxes[0]).toBeLessThan(table.y);
    await hung.nth(2).focus();
    await page.keyboard.press('Enter');
    await atRest();
    expect(await hung.nth(2).getAttribute('aria-pressed')).toBe('true');
    expect(await page.locator('.zoom-view').getAttribute('aria-label')).toContain('Pebbles');
    // On a phone the line is longer than the screen: what is taken up is drawn into sight.
    await page.setViewportSize({ width: 390, height: 844 });
    await page.locator('[data-stencil=sky]').click();
    await page.locator('[data-stencil=foam]').click();
    const foam = (await page.locator('[data-stencil=foam]').boundingBox())!;
    expect(foam.x).toBeGreaterThanOrEqual(0);
    expect(foam.x + foam.width).toBeLessThanOrEqual(390);
  });

  test('an island bridged, laid loose or dropped: each with its price, and which shows less', async () => {
    const ways = page.locator('.island-ways .choice-mark');
    const price = async (i: number): Promise<number> =>
      Number(/over [\d.]+[^(]*\(ΔE00 (\d+\.?\d*)/.exec((await ways.nth(i).textContent()) ?? '')?.[1]);
    const [bridged, dropped] = [await price(0), await price(2)];
    expect(bridged).toBeGreaterThan(0);
    expect(dropped).toBeGreaterThan(0);
    expect(await ways.nth(1).textContent()).toContain('1 piece to lay');
    await page.getByText('The bridges show less than dropping.').waitFor();
    await page.getByRole('radio', { name: 'dropped' }).check();
    await atRest();
    // Dropping it costs what was foretold, and what the bridges would cost is not known then.
    await expect.poll(() => price(2)).toBe(dropped);
    expect(await ways.nth(0).textContent()).toContain('known once it is chosen');
  });

  test('places mended so that it holds are told, each with what it costs in the print, and shown', async () => {
    await stencil('kelp');
    expect(await page.locator('.mends li').first().textContent()).toMatch(/^(Paper made broader|An opening made wider): .*\(ΔE00 \d/);
    expect(await page.locator('.mend').count()).toBeGreaterThanOrEqual(await page.locator('.mends li').count());
  });

  test('axe finds nothing, wide or narrow; nothing runs over the edge; everything is large enough to touch', async () => {
    await page.locator('.bridge').first().focus();
    for (const [width, height] of [
      [1440, 900],
      [820, 1180],
      [390, 844],
    ]) {
      await page.setViewportSize({ width, height });
      await atRest();
      expect(await violations(page), `stencils at ${width} px`).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth), `${width}`).toBeLessThanOrEqual(width);
      const small = await page
        .locator('.stencils button:visible, .stencils summary:visible')
        .evaluateAll((all) => all.map((b) => b.getBoundingClientRect()).filter((b) => b.height < 43.5).length);
      expect(small).toBe(0);
    }
    expect(complaints).toEqual([]);
  });
});
