import * as dxf from 'dxf-parser';
import type { Page } from 'playwright-core';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeEach, describe, expect, test } from 'vitest';
import { atRest, startOverAt, type BenchServer } from './bench-page.ts';
import { onPage } from './on-page.ts';

type ParserKind = new () => { parseSync(text: string): dxf.IDxf | null };
const exported = dxf as unknown as { readonly DxfParser?: ParserKind; readonly default?: ParserKind & { readonly DxfParser?: ParserKind } };
const Parser = (exported.DxfParser ?? exported.default?.DxfParser ?? exported.default)!;

let server: BenchServer;
let page: Page;
onPage(
  (opened) => {
    ({ server, page } = opened);
  },
  () => {},
);

const drawn = async (): Promise<void> => {
  await page.waitForSelector('main[aria-busy=false] .zoom-drawing', { timeout: 60_000 });
  await atRest(page);
};
async function stencil(id: string): Promise<void> {
  await page.locator(`[data-stencil=${id}]`).click();
  await drawn();
}
const stepName = async (): Promise<string> => (await page.getByRole('button', { name: /^Undo/ }).getAttribute('aria-label')) ?? '';

describe('sheets, pace and pairs', () => {
  beforeEach(async () => {
    if (page.url().startsWith(server.url)) await startOverAt(page, 'stencils');
    else await page.goto(`${server.url}?job=open#stencils`);
    await stencil('urchin');
  });

  test('sheets at hand: stencils are laid on them side by side, as many as go; what is too small is said', async () => {
    const stock = page.locator('[aria-labelledby=stock]');
    const sold = page.getByRole('combobox', { name: 'The sheets at hand' });
    // The job brings a size of its own, told by its measures.
    expect(await sold.inputValue()).toBe('own');
    await sold.selectOption('a1');
    await drawn();
    await expect.poll(() => stock.locator('.outcome').textContent()).toBe('1 sheet of Polyester film');
    expect(await stepName()).toBe('Undo: sheets of Polyester film');
    expect([await stock.locator('.stock-part').count(), await stock.locator('.stock-chosen').count()]).toEqual([3, 1]);
    // Two stencils never lie on one another, and none runs over the sheet.
    const boxes = await stock
      .locator('.stock-part rect')
      .evaluateAll((all) => all.map((r) => ['x', 'y', 'width', 'height'].map((k) => Number(r.getAttribute(k)))));
    for (const [i, [x, y, w, h]] of boxes.entries()) {
      expect(x + w).toBeLessThanOrEqual(594.01);
      expect(y + h).toBeLessThanOrEqual(841.01);
      for (const [x2, y2, w2, h2] of boxes.slice(i + 1))
        expect(x + w <= x2 + 0.01 || x2 + w2 <= x + 0.01 || y + h <= y2 + 0.01 || y2 + h2 <= y + 0.01).toBe(true);
    }
    await stock.getByRole('button', { name: /4 Kelp/ }).click();
    await drawn();
    expect(await page.locator('[data-stencil=kelp]').getAttribute('aria-pressed')).toBe('true');
    await sold.selectOption('own');
    const across = page.getByRole('textbox', { name: 'Sheet, across' });
    await across.fill('200');
    await across.press('Enter');
    const down = page.getByRole('textbox', { name: 'Sheet, down' });
    await down.fill('200');
    await down.press('Enter');
    await expect.poll(() => stock.textContent()).toContain('is larger than the stock');
    await sold.selectOption('');
    await expect.poll(() => stock.locator('.laid-stock').count()).toBe(0);
  });

  test('a sheet with its stencils comes as SVG, DXF and PDF of its own size; a machine’s cut runs inside what drops out', async () => {
    await page.getByRole('combobox', { name: 'The sheets at hand' }).selectOption('a1');
    await page.locator('.laid-stock').waitFor();
    const save = async (format: string): Promise<{ name: string; bytes: Buffer }> => {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name: new RegExp(`^Sheet \\d as ${format}$`) }).click(),
      ]);
      const chunks: Buffer[] = [];
      for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
      return { name: download.suggestedFilename(), bytes: Buffer.concat(chunks) };
    };
    const svg = await save('SVG');
    expect(svg.name).toMatch(/^tide-pool-polyester-film-\d\.svg$/);
    expect(svg.bytes.toString('utf8')).toMatch(/<svg[^>]* width="594mm" height="841mm"/);
    const read = new Parser().parseSync((await save('DXF')).bytes.toString('utf8'));
    expect(new Set((read?.entities ?? []).map((e) => e.layer))).toEqual(new Set(['CUT', 'MARK']));
    const pdf = (await save('PDF')).bytes;
    const pages = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
    expect(pages.numPages).toBe(1);
    const [, , wide, high] = (await pages.getPage(1)).view;
    expect(wide).toBeCloseTo((594 * 72) / 25.4, 1);
    expect(high).toBeCloseTo((841 * 72) / 25.4, 1);
    const [parts] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: /^Sheet \d in parts to join, on A4$/ }).click(),
    ]);
    expect(parts.suggestedFilename()).toMatch(/^tide-pool-polyester-film-\d-a4\.pdf$/);
    const partBytes: Buffer[] = [];
    for await (const chunk of await parts.createReadStream()) partBytes.push(chunk as Buffer);
    const inParts = await getDocument({ data: new Uint8Array(Buffer.concat(partBytes)), verbosity: 0 }).promise;
    expect(inParts.numPages).toBeGreaterThan(4);
    expect((await inParts.getPage(2)).view[2]).toBeCloseTo((210 * 72) / 25.4, 1);
    const kerf = page.getByRole('textbox', { name: 'A machine’s cut takes' });
    await kerf.fill('0,3');
    await kerf.press('Enter');
    await drawn();
    expect((await save('SVG')).bytes.toString('utf8')).toMatch(/0\.3\smm/);
  });

  test('the studio’s own pace counts: the minutes follow it, why says from what they come, and undo gives the usual back', async () => {
    const knife = page.locator('section:has(> #knife)');
    const minutes = async (): Promise<number> => {
      const [, h, min] = /(?:(\d+)\sh)?\s?(?:(\d+)\smin)?$/.exec((await knife.locator('.outcome').textContent()) ?? '')!;
      return 60 * Number(h ?? 0) + Number(min ?? 0);
    };
    const before = await minutes();
    await knife.locator('summary').first().click();
    await knife.locator('summary').last().click();
    expect(await knife.textContent()).toContain('Reckoned at the usual pace');
    const along = knife.getByRole('textbox', { name: 'Line in a minute' });
    await along.fill('0,05');
    await along.press('Enter');
    await expect.poll(minutes).toBeGreaterThan(before + 3);
    expect(await stepName()).toBe('Undo: how fast the studio cuts');
    const text = (await knife.textContent()) ?? '';
    expect(text).toContain('your studio’s own pace');
    // What is said of lines, corners and pieces adds up to the minutes.
    const parts = [...(/[\d.]+\sm along.*?\. Reckoned/.exec(text)?.[0] ?? '').matchAll(/: ([\d.]+)\smin/g)].map((m) => Number(m[1]));
    expect(parts.length).toBe(3);
    expect(Math.abs(parts.reduce((sum, v) => sum + v, 0) - (await minutes()))).toBeLessThan(0.7);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(minutes).toBe(before);
  });

  test('run by run it is drawn and said which sheet of a cut goes in, and whether it is spent, washed or kept', async () => {
    await stencil('water');
    const uses = page.locator('.cut-uses li');
    // Coated paper lasts twenty pulls: two sheets for each side, spent with their run.
    expect(await uses.allTextContents()).toEqual([
      expect.stringMatching(/1 Sky.*the piece of sheets 1 and 2.*then it is spent/),
      expect.stringMatching(/2 Water.*the window of sheets 3 and 4.*then it is spent/),
    ]);
    expect(await uses.first().locator('.use-sheet').count()).toBe(2);
    const box = await uses.first().locator('.use-sheet').first().boundingBox();
    expect(box!.width).toBeGreaterThan(30);
    await page.getByRole('combobox', { name: /is cut from/ }).selectOption('film');
    await expect.poll(() => uses.last().textContent()).toContain('wash it; no later run needs it');
  });
});
