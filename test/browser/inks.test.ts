import type { Download, Locator, Page } from 'playwright-core';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Job } from '../../src/core/job/index.ts';
import { readJobFile } from '../../src/core/job/index.ts';
import { drawdownSheet, emptyShelf, readShelf, usualLadder } from '../../src/core/ink/index.ts';
import { photographOfSheet } from '../outside/drawdown-photo.ts';
import { violations } from './axe.ts';
import { plainPool, serveBench, startOver, type BenchServer } from './bench-page.ts';
import { onPage } from './on-page.ts';

let server: BenchServer;
let page: Page;
const complaints: string[] = [];
onPage(
  (opened) => {
    ({ page, server } = opened);
  },
  (text) => complaints.push(text),
  plainPool,
);
beforeEach(async () => {
  if (!page.url().startsWith(server.url)) await page.goto(`${server.url}?job=open#laydown`);
  await startOver(page, 'laydown', plainPool());
  await page.evaluate(() => {
    location.hash = 'inks';
  });
  await page.waitForSelector('.inks');
  await part('shelf');
});

const part = (id: string): Promise<void> => page.locator(`[data-part=${id}]`).click();
const button = (name: string | RegExp): Locator => page.getByRole('button', { name, exact: true });
const text = async (selector = 'main'): Promise<string> => (await page.locator(selector).first().textContent()) ?? '';

async function bytesOf(file: Download): Promise<Buffer> {
  const chunks: Buffer[] = [];
  for await (const chunk of await file.createReadStream()) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks);
}
/** The job as it lies on the bench: saved as a file, and read. */
async function job(): Promise<Job> {
  const [file] = await Promise.all([page.waitForEvent('download'), button('Save').click()]);
  return readJobFile(new Uint8Array(await bytesOf(file)), 'saved').job;
}
async function type(label: string, value: string): Promise<void> {
  const field = page.getByLabel(label, { exact: true }).first();
  await field.fill(value);
  await field.press('Enter');
}
async function undo(): Promise<void> {
  await page.keyboard.press('Control+Z');
}

describe('the ink shelf', () => {
  test('a new ink is typed in, decimal commas and all, kept as a pot, and undone by its name', async () => {
    await button('A new ink').click();
    await page.getByLabel('Name', { exact: true }).fill('Brick red');
    await page.getByLabel('Name', { exact: true }).blur();
    await type('ink on white', '52,5 38 20,25');
    await type('bare black', '12 0 0');
    expect(await button('Keep these readings').isDisabled()).toBe(true);
    await type('ink on black', '18 8 4');
    await button('Keep these readings').click();
    await expect.poll(() => page.locator('.ink-pot').allTextContents()).toContain('Brick redwell known');
    const ink = (await job()).inks.find((k) => k.name === 'Brick red');
    expect(ink).toMatchObject({
      from: 'two-grounds',
      overWhite: { kind: 'lab', lab: [52.5, 38, 20.25] },
      white: { lab: [95.6, 0.1, -1.4] },
    });
    await button('Undo: a new ink, Brick red').click();
    expect((await job()).inks.some((k) => k.name === 'Brick red')).toBe(false);
    expect(complaints).toEqual([]);
  });

  test('a colour that can not be is refused beside its field, and changes nothing', async () => {
    await button('Read it anew').click();
    await type('ink on white', '152 a lot');
    await expect.poll(() => page.locator('.reading-field [role=alert]').count()).toBe(1);
    await button('Leave it as it was').click();
    expect((await job()).inks).toEqual(plainPool().job.inks);
  });

  test('a table of readings is opened, and its patches are laid into a ladder', async () => {
    await button('A new ink').click();
    await page.getByText('In several strengths').click();
    const csv = 'name,L,a,b\npaper,95,0,1\nfull,50,-40,20\nhalf,64,-30,17\nquarter,76,-20,13\n';
    await page.getByLabel('From a file of readings').setInputFiles({ name: 'green.csv', mimeType: 'text/csv', buffer: Buffer.from(csv) });
    for (const [slot, patch] of [
      ['bare paper', '0'],
      ['ink at 100 %', '1'],
      ['ink at 50 %', '2'],
      ['ink at 25 %', '3'],
    ])
      await page.getByLabel(`Patch for ${slot}`).selectOption(patch);
    await button('Keep these readings').click();
    const ink = (await job()).inks.at(-1)!;
    expect(ink.from === 'ladder' && ink.steps.map((s) => [s.share, s.over.kind === 'lab' && s.over.lab[0]])).toEqual([
      [1, 50],
      [0.5, 64],
      [0.25, 76],
    ]);
    await expect.poll(() => page.locator('.plot').count()).toBe(3);
  });

  test('drawdown sheets are printed: one page an ink, true to size, boxes for every strength', async () => {
    const [file] = await Promise.all([page.waitForEvent('download'), button('Drawdown sheets to print').click()]);
    const pdf = await getDocument({ data: new Uint8Array(await bytesOf(file)), verbosity: 0 }).promise;
    const titles = plainPool()
      .job.inks.filter((k) => k.role === 'ink' && k.from !== 'mix')
      .map((k) => k.name);
    expect(pdf.numPages).toBe(titles.length);
    for (const [i, title] of titles.entries()) {
      const { items } = await (await pdf.getPage(i + 1)).getTextContent();
      expect(items.map((item) => ('str' in item ? item.str : '')).join(' ')).toContain(title);
    }
    const sheet = drawdownSheet(titles[0], usualLadder);
    const [, , wide, high] = (await pdf.getPage(1)).view;
    expect([wide, high].map((v) => Math.round((v * 25.4) / 72))).toEqual([sheet.widthMm, sheet.heightMm].map(Math.round));
  });

  test('a photograph of a drawdown sheet reads itself', async () => {
    const photo = await photographOfSheet('Brick red', usualLadder, [95, 0.5, 2], (share, over) =>
      over === 'white' ? [95 - 43 * share ** 0.8, 38 * share ** 0.8, 20 * share ** 0.8] : [12 + 8 * share, 9 * share, 5 * share],
    );
    await button('A new ink').click();
    await page
      .getByLabel('A photograph of a drawdown sheet')
      .setInputFiles({ name: 'sheet.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(photo.jpeg) });
    await expect.poll(() => text('.announcer'), { timeout: 20_000 }).toContain('The sheet was found, and 6 drawdowns read.');
    await button('Keep these readings').click();
    const ink = (await job()).inks.at(-1)!;
    if (ink.from !== 'ladder' || ink.steps[0].over.kind !== 'photo') throw new Error(`read as ${ink.from}`);
    expect(Math.hypot(...ink.steps[0].over.lab.map((v, i) => v - [52, 38, 20][i]))).toBeLessThan(6);
    expect(ink.steps[0].over.sigma).toBeGreaterThan(4);
  });

  test('any photograph is read where the marks lie, and marks are moved by keys', async () => {
    const photo = await photographOfSheet('Brick red', [1], [95, 0, 1], () => [52, 38, 20]);
    await button('A new ink').click();
    await page.getByText('Drawn down on one paper', { exact: true }).click();
    await page.getByLabel('Any photograph').setInputFiles({ name: 'table.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(photo.jpeg) });
    await page.waitForFunction(() => (document.querySelector<HTMLImageElement>('.marked img')?.naturalWidth ?? 0) > 0);
    const place = async (name: string, x: number, y: number): Promise<void> => {
      const mark = button(name);
      const at = await mark.evaluate((m) => [parseFloat((m as HTMLElement).style.left), parseFloat((m as HTMLElement).style.top)]);
      await mark.focus();
      const press = async (key: string, by: number): Promise<void> => {
        for (let i = 0; i < Math.floor(Math.abs(by) / 5); i++) await page.keyboard.press(`Shift+${key}`);
        for (let i = 0; i < Math.round((Math.abs(by) % 5) / 0.5); i++) await page.keyboard.press(key);
      };
      await press(x > at[0] ? 'ArrowRight' : 'ArrowLeft', x - at[0]);
      await press(y > at[1] ? 'ArrowDown' : 'ArrowUp', y - at[1]);
    };
    // Bare paper around the strip, then the strip itself.
    await place('Paper 1', 25, 35);
    await place('Paper 2', 80, 30);
    await place('Paper 3', 75, 70);
    await place('Paper 4', 22, 70);
    const strip = photo.sheet.strips[0];
    await place('ink on it', ((strip.xMm + 25) * 5 + 760 - 525) / 15, ((strip.yMm + strip.heightMm / 2) * 5 + 950 - 742) / 19);
    await button('Read the photograph').click();
    await expect.poll(() => text('.announcer'), { timeout: 20_000 }).toContain('The photograph was read.');
    await button('Keep these readings').click();
    const ink = (await job()).inks.at(-1)!;
    if (ink.from !== 'one-ground' || ink.over.kind !== 'photo') throw new Error(`read as ${ink.from}`);
    expect(ink.over.lab[1]).toBeGreaterThan(25);
  });

  test('the studio’s shelf outlives the page, goes out as a file, and gives its inks to a job', async () => {
    await button('Put this job’s inks on it').click();
    await expect.poll(() => page.locator('.studio-shelf:not(.starter-shelf) .ink-pot').count()).toBe(9);
    await page.reload();
    await page.waitForSelector('.studio-shelf .ink-pot');
    const [file] = await Promise.all([page.waitForEvent('download'), button('Save the shelf as a file').click()]);
    const shelf = readShelf((await bytesOf(file)).toString('utf8'));
    expect(shelf.inks.map((k) => k.id)).toContain('rockpool');
    await page.locator('.ink-pot', { hasText: 'Slate' }).first().click();
    await page
      .getByRole('radio')
      .and(page.locator('.ink-pot', { hasText: 'Moss' }).locator('input'))
      .check({ force: true });
    await button('Take it away').click();
    await page.locator('.ink-pot', { hasText: 'Slate' }).first().locator('input').check({ force: true });
    await button('Take it away').click();
    expect((await job()).inks.some((k) => k.id === 'slate')).toBe(false);
    await button('Take Slate into this job').click();
    await expect.poll(() => text('.ink-shelves')).toContain('Slate');
    expect((await job()).inks.find((k) => k.id === 'slate')).toMatchObject({ from: 'two-grounds' });
  });
});

describe('a wanted colour', () => {
  test('comes out of a jar of the studio’s shelf, whose ink joins the job with the recipe', async () => {
    const reading = (l: number, a: number, b: number): { kind: 'lab'; lab: [number, number, number] } => ({ kind: 'lab', lab: [l, a, b] });
    const shelf = {
      ...emptyShelf('Attic'),
      inks: [
        {
          id: 'attic-violet',
          name: 'Attic violet',
          role: 'ink',
          densityGPerMl: 1.1,
          lots: [
            { lot: 'last year', gramsLeft: 90, source: { from: 'one-ground', ground: reading(95, 0, 2), over: reading(40, 25, -32) } },
          ],
        },
      ],
    };
    await page
      .getByLabel('Add a shelf from a file')
      .setInputFiles({ name: 'attic.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(shelf)) });
    await page.getByRole('button', { name: /Attic violet/ }).waitFor();
    await part('wanted');
    const leftovers = page.getByRole('region', { name: 'From what is left in jars' });
    await type('Lab of the colour', '50 20 -26');
    await expect.poll(() => leftovers.textContent()).toMatch(/Attic violet/);
    await leftovers.getByRole('button').last().click();
    const taken = await job();
    expect(taken.inks.some((k) => k.name === 'Attic violet')).toBe(true);
    expect(complaints).toEqual([]);
  });

  test('is answered with recipes; one touch prints a layer in it, and the pinned colour comes as near as promised', async () => {
    await part('wanted');
    const best = page.locator('.recipe-best');
    await best.waitFor();
    const promised = Number(/off by ([\d.]+)/.exec((await best.textContent())!)![1]);
    await best.getByRole('button', { name: 'Use it for Urchin' }).click();
    await expect
      .poll(async () => Number(/now off by ([\d.]+)/.exec(await text('.pinned'))?.[1]), { timeout: 15_000 })
      .toBeCloseTo(promised, 1);
    const now = await job();
    const ink = now.inks.find((k) => k.id === now.layers.find((l) => l.id === 'urchin')!.ink)!;
    expect(ink).toMatchObject({ from: 'mix', name: 'Mix for Urchin' });
    await undo();
    expect((await job()).layers.find((l) => l.id === 'urchin')).toMatchObject({ ink: 'dusk', strength: 0.7 });
  });

  test('is taken from the proof with a press, and pinned to its overlap', async () => {
    await part('wanted');
    await page.locator('.wanted-part .proof-canvas').click({ position: { x: 20, y: 20 } });
    await page.getByRole('button', { name: 'Pin it to this overlap: Sky' }).click();
    await expect.poll(() => text('.pinned')).toContain('Sky');
    expect((await job()).wanted.map((w) => w.layers)).toEqual([['water', 'urchin'], ['sky']]);
    await page.getByRole('button', { name: 'Let go of the colour pinned to Sky' }).click();
    expect((await job()).wanted).toHaveLength(1);
  });

  test('an open layer shows its whole reach, and a touch decides it', async () => {
    await part('reach');
    await page.waitForSelector('.reach-field i');
    await page.getByRole('button', { name: /^Dusk violet at 35 %/ }).click();
    await expect.poll(() => page.getByRole('button', { name: /^Dusk violet at 35 %/ }).getAttribute('aria-pressed')).toBe('true');
    expect((await job()).layers.find((l) => l.id === 'foam')).toMatchObject({ ink: 'dusk', strength: 0.35 });
  });
});

describe('order and mixing', () => {
  test('every order is tried; one is taken in one touch, and an open layer keeps its place', async () => {
    await part('order');
    await page.locator('.ink-wish', { hasText: 'From light to dark' }).getByText('counts double').click();
    await button('Try every order').click();
    await expect.poll(() => text('.announcer'), { timeout: 20_000 }).toContain('120 orders tried');
    const cards = page.locator('.order-card');
    const other = cards.filter({ has: page.getByRole('button', { name: /^Print in order/ }) }).first();
    const stack = await other.locator('.order-stack li').allTextContents();
    await other.getByRole('button', { name: /^Print in order/ }).click();
    const { layers } = await job();
    expect(layers.map((l) => l.name)).toEqual([...stack.reverse(), 'Foam']);
    await undo();
    expect((await job()).layers.map((l) => l.id)).toEqual(plainPool().job.layers.map((l) => l.id));
  });

  test('a pot is weighed to what the scale shows, and the rounding’s error is told', async () => {
    await part('mix');
    await page.locator('[data-choice=urchin] input').check({ force: true });
    await expect.poll(() => text('.mix-part h2')).toContain('Urchin');
    await page.getByLabel('Grams in all').fill('20');
    await page.getByLabel('Grams in all').press('Enter');
    await page.getByLabel('Scale shows').selectOption('5');
    await expect.poll(() => page.locator('.big-grams').allTextContents()).toEqual(['15\u00a0g', '5\u00a0g']);
    expect(await text('.mix-part')).toMatch(/Rounding to the scale moves the colour by \d\.\d\d ΔE00/);
  });

  test('two bases share what is no ink, and undo names them', async () => {
    await part('mix');
    await page.locator('[data-choice=urchin] input').check({ force: true });
    await expect.poll(() => page.locator('.big-grams').count()).toBe(2);
    await page.getByLabel('Extender base, of the base').fill('40');
    await page.getByLabel('Extender base, of the base').press('Enter');
    await expect.poll(() => page.locator('.big-grams').count()).toBe(3);
    expect((await job()).layers.find((l) => l.id === 'urchin')!.bases).toEqual([
      { ink: 'clear-base', share: 0.6 },
      { ink: 'extender', share: 0.4 },
    ]);
    await undo();
    await expect.poll(() => page.locator('.big-grams').count()).toBe(2);
  });
});

describe('saving a pot', () => {
  test('a complaint is answered by pictures, the addition by grams; rounds are kept with the job and undone one by one', async () => {
    await part('pot');
    await page.locator('[data-choice=water] input').check({ force: true });
    await button('Begin its log').click();
    await page.getByText('too weak', { exact: true }).click();
    await page.getByRole('button', { name: /clearly too weak/ }).click();
    await expect.poll(() => text('.pot-advice')).toMatch(/Add [\d.]+ g Rockpool turquoise/);
    const advised = Number(/Add ([\d.]+) g/.exec(await text('.pot-advice'))![1]);
    await button('I added this: next drawdown').click();
    await type('It reads', '69 -30 -16');
    await expect.poll(() => page.locator('.pot-log > li').count()).toBe(3);
    const log = (await job()).potLogs[0];
    expect(log).toMatchObject({
      layer: 'water',
      rounds: [{ looks: { how: 'too weak', size: 'clearly' }, added: [] }, { reading: { lab: [69, -30, -16] } }],
    });
    expect(log.rounds[1].added).toEqual([{ ink: 'rockpool', grams: expect.closeTo(advised, 1) }]);
    await undo();
    expect((await job()).potLogs[0].rounds).toHaveLength(1);
  });

  test('three rounds, one of them with something else stirred in; what waits for its drawdown outlives the page', async () => {
    await part('pot');
    await page.locator('[data-choice=water] input').check({ force: true });
    await button('Begin its log').click();
    // Far too weak: no addition mends it, and that is what is said first.
    await type('It reads', '84 -10 -6');
    await expect.poll(() => text('.pot-advice .big-say'), { timeout: 15_000 }).toMatch(/mix a fresh one|fresh/);
    expect(await button('Mix a fresh pot').count()).toBe(1);
    await button('Take the last one back').click();
    await type('It reads', '74 -25 -14');
    await expect.poll(() => page.locator('.pot-advice').count(), { timeout: 15_000 }).toBe(1);
    await page.getByRole('combobox', { name: 'I added something else' }).selectOption({ label: 'Rockpool turquoise' });
    await type('Grams of Rockpool turquoise', '12,5');
    await page.getByRole('combobox', { name: 'And also' }).selectOption({ label: 'Slate' });
    await type('Grams of Slate', '0.5');
    expect((await job()).potLogs[0].adding).toEqual([
      { ink: 'rockpool', grams: 12.5 },
      { ink: 'slate', grams: 0.5 },
    ]);
    // The drawdown dries overnight.
    await expect.poll(() => text('.header')).toContain('Kept');
    await page.goto(`${server.url}#inks`);
    await page.reload();
    await page.waitForSelector('.inks');
    await part('pot');
    await page.locator('[data-choice=water] input').check({ force: true });
    await page.getByText('Added since: 12.5 g Rockpool turquoise, 0.5 g Slate').waitFor();
    await type('It reads', '71 -29 -16');
    await expect.poll(() => page.locator('.pot-log > li').count()).toBe(3);
    await page.getByRole('combobox', { name: 'I added something else' }).selectOption({ label: 'Transparent base' });
    await type('Grams of Transparent base', '3');
    await type('It reads', '72 -28 -16');
    await expect.poll(() => page.locator('.pot-log > li').count()).toBe(4);
    const [log] = (await job()).potLogs;
    expect(log.rounds.map((r) => r.added.map((p) => p.grams))).toEqual([[], [12.5, 0.5], [3]]);
    expect(log.adding).toBeUndefined();
    await undo();
    await page.getByText('Added since: 3.0 g Transparent base').waitFor();
    // Slate is in this pot: it can't leave the job.
    await part('shelf');
    await page.locator('.ink-pot', { hasText: 'Slate' }).first().locator('input').check({ force: true });
    expect(await page.locator('.ink-detail').textContent()).toMatch(/Used by .*Water/);
  });
});

describe('learning, and matching again', () => {
  test('readings of printed overlaps show as measured, and tell the errors before and after', async () => {
    await part('learn');
    for (const [overlap, lab] of [
      // Films heavier than foreseen, so far off that learning pays.
      ['Sky', '80 28 6'],
      ['Water', '69 -32 -19'],
      ['Sky + Urchin', '38 33 -30'],
    ]) {
      await page.getByRole('combobox', { name: 'Overlap', exact: true }).selectOption({ label: overlap });
      await type(`Reading: ${overlap}`, lab);
      await expect.poll(() => page.locator('.proof-readings li', { hasText: overlap }).count()).toBeGreaterThan(0);
    }
    // The first two readings tell their own errors while the third is being learned from.
    await expect.poll(() => page.locator('.proof-readings small', { hasText: 'measured on a proof' }).count()).toBe(3);
    await page.waitForSelector('main[aria-busy=false]');
    const smaller = async (): Promise<number> => {
      const [, before, after] = /Foreseen colours were off by (\d+\.\d) ΔE00; now by (\d+\.\d)/.exec(await text('.learn-part')) ?? [];
      return Number(before) - Number(after);
    };
    await expect.poll(smaller).toBeGreaterThan(0);
    expect((await job()).proofReadings).toHaveLength(3);
    expect(complaints).toEqual([]);
  });

  test('a printed overlap is read from a photograph of the print, marked by hand', async () => {
    const photo = await photographOfSheet('Sky', [1], [95, 0, 1], () => [80, 22, 6]);
    await part('learn');
    await page.getByRole('combobox', { name: 'Overlap', exact: true }).selectOption({ label: 'Sky' });
    await page
      .locator('.learn-part input[type=file]')
      .last()
      .setInputFiles({ name: 'print.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(photo.jpeg) });
    await page.waitForFunction(() => (document.querySelector<HTMLImageElement>('.marked img')?.naturalWidth ?? 0) > 0);
    const box = (await page.locator('.marked img').boundingBox())!;
    const drag = async (name: string | RegExp, u: number, v: number): Promise<void> => {
      const [mark, now] = [(await button(name).boundingBox())!, (await page.locator('.marked img').boundingBox())!];
      await page.mouse.move(mark.x + mark.width / 2, mark.y + mark.height / 2);
      await page.mouse.down();
      await page.mouse.move(now.x + u * now.width, now.y + v * now.height, { steps: 4 });
      await page.mouse.up();
    };
    // All of it is in sight at once, so that a mark can be carried anywhere.
    expect(box.width).toBeGreaterThan(300);
    expect(box.height).toBeLessThan(page.viewportSize()!.height * 0.75);
    await page.locator('.marked').evaluate((m) => m.scrollIntoView({ block: 'center' }));
    const strip = photo.sheet.strips[0];
    await drag('Reading: Sky', ((strip.xMm + 25) * 5 + 760 - 525) / 1500, ((strip.yMm + strip.heightMm / 2) * 5 + 950 - 742) / 1900);
    // Paper marks left on the dark table: nothing printed can be so light beside them.
    await button('Read the photograph').click();
    await expect.poll(() => text('.mark-photo'), { timeout: 15_000 }).toContain('lighter than any paper can be');
    expect(await page.locator('.proof-readings li').count()).toBe(0);
    for (const [name, u, v] of [
      ['Paper 1', 0.25, 0.35],
      ['Paper 2', 0.8, 0.3],
      ['Paper 3', 0.75, 0.7],
      ['Paper 4', 0.22, 0.7],
    ] as const)
      await drag(name, u, v);
    await button('Read the photograph').click();
    await expect.poll(() => page.locator('.proof-readings li').count(), { timeout: 20_000 }).toBe(1);
    const [reading] = (await job()).proofReadings;
    if (reading.reading.kind !== 'photo') throw new Error(reading.reading.kind);
    expect(Math.hypot(...reading.reading.lab.map((x, i) => x - [80, 22, 6][i]))).toBeLessThan(6);
    await expect.poll(() => text('.learn-part'), { timeout: 15_000 }).toMatch(/Foreseen colours were off by/);
  });

  test('a new lot is read, the recipe corrected, and both taken in one step', async () => {
    await part('again');
    await page.locator('[data-choice=water] input').check({ force: true });
    await type('New lot of Rockpool turquoise', '66 -33 -17');
    await expect.poll(() => text('.again-part')).toContain('corrected');
    await button('Take the new lots and the corrected recipe').click();
    const now = await job();
    expect(now.layers.find((l) => l.id === 'water')!.strength).toBeGreaterThan(0.65);
    expect(now.inks.find((k) => k.id === 'rockpool')).toMatchObject({ over: { lab: [66, -33, -17] } });
    await undo();
    expect(await job()).toEqual(plainPool().job);
  });
});

test('from an empty bench to a first foreseen print, without a number typed: starter inks, and one told by eye', async () => {
  const bare = await serveBench(null);
  const fresh = await page
    .context()
    .browser()!
    .newPage({ viewport: { width: 1440, height: 900 } });
  fresh.on('pageerror', (e) => complaints.push(e.message));
  await fresh.goto(bare.url);
  const press = (name: string | RegExp): Promise<void> => fresh.getByRole('button', { name, exact: true }).first().click();
  await press('Start');
  await fresh.waitForSelector('main[aria-busy=false] .zoom-drawing');
  await fresh.getByText('Make a shape', { exact: true }).click();
  await fresh.getByRole('button', { name: 'Circle' }).first().click();
  await press('Print its window');
  await fresh.waitForSelector('main[aria-busy=false]');
  await fresh.evaluate(() => {
    location.hash = 'inks';
  });
  await fresh.waitForSelector('.ink-pots');
  expect(await fresh.locator('.ink-shelves').textContent()).toContain('not yours');
  await press('An ink by eye');
  await fresh.getByRole('button', { name: 'Orange, lightness 65' }).click();
  expect(await fresh.locator('.by-eye').textContent()).toContain('± 9.0 ΔE00');
  await press('Compare it with the drawdown');
  // Someone whose drawdown is a little darker, who then finds the middle patch the nearest.
  await press('darker');
  for (let i = 0; i < 13 && (await fresh.locator('.eye-patch').count()) > 0; i++) await press('as guessed');
  expect(await fresh.locator('.by-eye').textContent()).toContain('as near as eyes');
  expect(await violations(fresh)).toEqual([]);
  await press('Keep this ink');
  await fresh.locator('.ink-pots', { hasText: 'by eye' }).waitFor();
  await fresh.locator('[data-part=reach]').click();
  await fresh.getByRole('button', { name: /^New ink at 100 %/ }).click();
  await fresh.evaluate(() => {
    location.hash = 'overlaps';
  });
  await fresh.waitForSelector('main[aria-busy=false] .overlap');
  await fresh
    .getByRole('button', { name: /Circle/ })
    .last()
    .click();
  await expect.poll(() => fresh.locator('.swatch-grid').textContent()).toMatch(/Circle.*± [4-9]\.\d/);
  await fresh.close();
  await bare.close();
});
