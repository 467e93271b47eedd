import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { violations } from './axe.ts';
import { atRest, openBrowser, plainPool, serveBench, type BenchServer } from './bench-page.ts';

/** A busy machine plans more slowly; it must come all the same. */
const eventually = <T>(look: () => T) => expect.poll(look, { timeout: 20_000 });

let browser: Browser;
let server: BenchServer;
let page: Page;
const complaints: string[] = [];

beforeAll(async () => {
  browser = await openBrowser();
  server = await serveBench(plainPool());
  page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  page.on('pageerror', (e) => complaints.push(e.message));
  page.on('console', (m) => {
    if (m.type() === 'error') complaints.push(m.text());
  });
  await page.goto(`${server.url}?job=open#press`);
  await page.locator('.press').waitFor({ timeout: 30_000 });
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

const lay = async (part: string): Promise<void> => {
  await page.locator(`[data-part=${part}]`).click();
  await page.locator('main[aria-busy=false]').waitFor();
};
const field = (label: string) => page.getByLabel(label, { exact: true });
async function write(label: string, text: string): Promise<void> {
  await field(label).fill(text);
  await field(label).press('Enter');
  await page.locator('main[aria-busy=false]').waitFor();
}
const undo = (name: string) => page.getByRole('button', { name: `Undo: ${name}` });

describe('the press station', () => {
  test('tide-pool’s screen is drawn to scale: a hand’s breadth of mesh shows as such', async () => {
    await lay('screen');
    const frame = (await page.locator('.frame-mesh').boundingBox())!;
    const image = (await page.locator('.fit-image').boundingBox())!;
    expect(image.width / frame.width).toBeCloseTo(180 / 440, 2);
    expect((image.y - frame.y) / frame.height).toBeCloseTo(160 / 560, 2);
    expect(await page.locator('.measured').allTextContents()).toEqual(['160\u00a0mm', '160\u00a0mm', '130\u00a0mm', '130\u00a0mm']);
  });

  test('a frame that is too small is told with what is missing and what would do; undo brings the old one back', async () => {
    await lay('screen');
    await write('Inside of the frame, across', '20,5 cm');
    await eventually(() => page.locator('.verdict h2').textContent()).toBe('It does not fit.');
    expect(await page.locator('.measured-short').count()).toBeGreaterThan(0);
    expect(await page.locator('.says-do').first().textContent()).toMatch(/fits|hinge|frame/i);
    await undo('the inside of the frame').click();
    await eventually(() => page.locator('.verdict h2').textContent()).toBe('It fits.');
    expect(await field('Inside of the frame, across').inputValue()).toBe('440');
  });

  test('a coarser mesh lays down more: film, grams and station line follow', async () => {
    await lay('screen');
    await page.getByRole('radio', { name: /^43 threads a cm/ }).check();
    await eventually(() => page.locator('.mesh-head').textContent()).toContain('42\u00a0µm');
    expect(await page.locator('.stations a[aria-current] small').textContent()).toContain('43/cm');
    await undo('the mesh').click();
    await eventually(() => page.locator('.mesh-head').textContent()).toContain('21\u00a0µm');
  });

  test('risers come out in boards of the thickness at hand', async () => {
    await lay('gap');
    await write('One layer of board is', '1');
    await eventually(() => page.locator('.facts').first().textContent()).toContain('5 × 1\u00a0mm = 5\u00a0mm');
    await write('Gap', '');
    await eventually(() => page.locator('.part-words h2').textContent()).toBe('1.75\u00a0mm between mesh and paper');
    await undo('the gap').click();
    await undo('the board for risers').click();
    await eventually(() => page.locator('.part-words h2').textContent()).toBe('3\u00a0mm between mesh and paper');
  });

  test('grams of every run: what screen and pot keep is most of a small edition', async () => {
    await lay('ink');
    expect(await page.locator('.ink-run').count()).toBe(6);
    const widths = await page
      .locator('.ink-run')
      .last()
      .locator('.ink-bar span')
      .evaluateAll((all) => all.map((e) => e.getBoundingClientRect().width));
    expect(widths[1]).toBeGreaterThan(widths[0]);
  });

  test('the proof as a sheet falls: worst is farther off than typical, and bare paper shows where water should meet sky', async () => {
    await lay('register');
    const white = async (): Promise<number> =>
      page.locator('.sheet-proof .proof-canvas').evaluate((c) => {
        const canvas = c as HTMLCanvasElement;
        const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
        let n = 0;
        for (let i = 0; i < data.length; i += 4) if (Math.min(data[i], data[i + 1], data[i + 2]) > 225) n++;
        return n / (data.length / 4);
      });
    const offOf = async (): Promise<number> =>
      Number(/([\d.]+)\u00a0mm/.exec(await page.locator('.sheet-proof figcaption p').innerText())?.[1]);
    await page.getByRole('radio', { name: 'In register' }).check();
    await page.locator('.sheet-proof[data-sheet=none]').waitFor();
    await atRest(page);
    const inRegister = await white();
    await page.getByRole('radio', { name: 'Typical' }).check();
    await page.locator('.sheet-proof[data-sheet]:not([data-sheet=none])').waitFor();
    const typical = await offOf();
    await page.getByRole('radio', { name: 'Worst 5 %' }).check();
    await page.locator('.sheet-proof[data-sheet]:not([data-sheet=none])').waitFor();
    await atRest(page);
    expect(await offOf()).toBeGreaterThan(typical);
    await expect.poll(white).toBeGreaterThan(inRegister);
  });

  test('spread by: one touch spreads the lighter of two runs that only meet, and the budget holds; one step of undo', async () => {
    await lay('register');
    const pair = page.locator('[data-pair="sky water"]');
    expect(await pair.locator('.pair-verdict').textContent()).toBe('Bare paper can show');
    await pair.getByRole('button', { name: /^Spread Sky by/ }).click();
    await eventually(() => pair.locator('.pair-verdict').textContent()).toBe('Holds nineteen times in twenty');
    await undo('Sky spread').click();
    await eventually(() => pair.locator('.pair-verdict').textContent()).toBe('Bare paper can show');
  });

  test('pins hold better than stops: the picture of what is missing shrinks', async () => {
    await lay('register');
    const bar = () => page.locator('[data-pair="sky water"] .pair-bars').getAttribute('aria-label');
    const before = await bar();
    await page.getByRole('radio', { name: /Punched pins/ }).check();
    await eventually(bar).not.toBe(before);
    expect(Number(/([\d.]+)/.exec((await bar())!)![1])).toBeLessThan(1);
    await undo('how sheets are placed').click();
    await eventually(bar).toBe(before);
  });

  test('test sheets are typed in line by line; σ, drift and how sure come out, and become this studio’s register in one step', async () => {
    await lay('register');
    // Most of tide-pool's sheets are cut; the middle of what is common for stops on a cut edge.
    await eventually(() => page.locator('.within h2').textContent()).toContain('0.75');
    const before = await page.locator('.within h2').textContent();
    for (let sheet = 1; sheet <= 4; sheet++) {
      await page
        .locator('.test-choice')
        .getByRole('radio', { name: new RegExp(`^Sheet ${sheet}(,|$)`) })
        .check();
      for (const [place, line] of [
        ['top left', '2'],
        ['bottom right', '0,5'],
      ]) {
        const fields = page.locator(`[data-place="${place}"] .line-field`);
        await fields
          .nth(0)
          .locator('input')
          .fill(sheet % 2 ? line : '−1');
        await fields.nth(0).locator('input').press('Enter');
        // Enter goes on to the field below.
        await page.keyboard.type(sheet % 2 ? '0.4 mm' : '-1');
        await page.keyboard.press('Enter');
      }
    }
    await eventually(() => page.locator('.test-result .facts').textContent()).toContain('likely');
    expect(await page.locator('.target-sheet').count()).toBe(4);
    await page.keyboard.press('Enter');
    await eventually(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('Sheet 5, top left, across');
    await page
      .locator('.test-choice')
      .getByRole('radio', { name: /^Sheet 4/ })
      .check();
    expect(await page.locator('[data-place="bottom right"] .line-field input').nth(1).inputValue()).toBe('-1');
    await page
      .locator('[data-place="bottom right"]')
      .getByRole('button', { name: /down: one line more/ })
      .click();
    await eventually(() => page.locator('[data-place="bottom right"] .line-field input').nth(1).inputValue()).toBe('0');
    await undo('readings of test sheets').click();
    await eventually(() => page.locator('[data-place="bottom right"] .line-field input').nth(1).inputValue()).toBe('-1');
    await page.getByRole('button', { name: 'Use as this studio’s register' }).click();
    await eventually(() => page.locator('.within h2').textContent()).not.toBe(before);
    await eventually(() => page.locator('.test-result').textContent()).toContain('The plan reckons with these figures.');
    await undo('this studio’s register').click();
    await eventually(() => page.locator('.within h2').textContent()).toBe(before);
    for (let i = 0; i < 16; i++) await undo('readings of test sheets').click();
    await eventually(() => page.locator('.target-sheet').count()).toBe(0);
  });

  test('a run with a gap of its own prints another size: its bar is longer, what it costs is said, and the pair’s budget grows', async () => {
    await lay('register');
    const falls = (): Promise<string> => page.locator('[data-pair="pebbles kelp"] > p').innerText();
    const before = await falls();
    await lay('gap');
    await write('Kelp', '14');
    const kelp = page.locator('[data-gap=kelp]');
    await eventually(() => kelp.textContent()).toMatch(/Edges \d\.\d+\smm off the others/);
    expect(await kelp.locator('.says-do').textContent()).toMatch(/take \d+\.\d\smm here/);
    const widths = await page.locator('.run-grows-bar span').evaluateAll((all) => all.map((e) => e.getBoundingClientRect().width));
    expect(Math.max(...widths.filter((_, i) => i !== 3))).toBeLessThan(widths[3] / 4);
    await lay('register');
    await eventually(falls).not.toBe(before);
    await undo('the gap of a run').click();
    await eventually(falls).toBe(before);
  });

  test('a run with a mesh of its own has a screen of its own on that day', async () => {
    await lay('gap');
    await page.getByLabel('Mesh of Kelp').selectOption('43-80');
    await lay('day');
    await page.locator('.day-list summary').click();
    await eventually(() => page.locator('.day-list').innerText()).toContain('screen 43-80');
    await undo('the mesh of a run').click();
    await eventually(() => page.locator('.day-list').innerText()).not.toContain('screen 43-80');
    await page.locator('.day-list summary').click();
  });

  test('two at the press: a lane each, nobody in two places, and the day is shorter', async () => {
    await lay('day');
    const ends = (): Promise<string> => page.locator('.day-head p').innerText();
    const before = await ends();
    await write('People', '2');
    await eventually(ends).not.toBe(before);
    expect(await page.locator('.day-racking').count()).toBeGreaterThan(0);
    await page.locator('.day-list summary').click();
    expect(await page.locator('.day-list tbody').innerText()).toContain('1, pulls');
    const lanes = await page
      .locator('.day-picture')
      .first()
      .locator('.day-step:not(.day-drying)')
      .evaluateAll((all) =>
        all.map((e) => {
          const { left, right } = e.getBoundingClientRect();
          return { lane: (e as HTMLElement).style.getPropertyValue('--lane'), left, right };
        }),
      );
    for (const lane of ['0', '1']) {
      const own = lanes.filter((one) => one.lane === lane).sort((a, b) => a.left - b.left);
      own.slice(1).forEach((one, i) => expect(one.left).toBeGreaterThanOrEqual(own[i].right - 3.5));
    }
    await undo('the rates of the day').click();
    await eventually(ends).toBe(before);
  });

  test('sheets, grain and stops of every paper; another lot of a paper is one step', async () => {
    await lay('papers');
    expect(await page.locator('[data-paper=smooth-white] .stop').count()).toBe(3);
    await page.locator('[data-paper=smooth-white]').getByRole('button', { name: 'Another paper like this' }).click();
    await eventually(() => page.locator('.paper-card').count()).toBe(4);
    await undo('a paper added').click();
    await eventually(() => page.locator('.paper-card').count()).toBe(3);
  });

  test('another paper gets a name and a colour of its own, and its proof is darker; the laydown leads there', async () => {
    await page.evaluate(() => {
      location.hash = 'laydown';
    });
    await page.getByRole('link', { name: 'Change or add papers' }).click();
    const last = page.locator('.paper-card').last();
    await last.getByRole('button', { name: 'Another paper like this' }).click();
    await last.getByLabel('Name', { exact: true }).fill('Grey kraft');
    await last.getByLabel('Name', { exact: true }).press('Enter');
    await last.getByLabel('The bare sheet', { exact: true }).fill('66 3 14');
    await last.getByLabel('The bare sheet', { exact: true }).press('Enter');
    await eventually(() => last.locator('.paper-picture rect').first().getAttribute('fill')).toBe('#ad9e87');
    expect(await last.locator('h2').textContent()).toContain('Grey kraft');
    await last.getByLabel('The bare sheet', { exact: true }).fill('brown');
    await last.getByLabel('The bare sheet', { exact: true }).press('Enter');
    await eventually(() => last.getByRole('alert').textContent()).toMatch(/can’t be read as a colour/);
    await last.getByLabel('The bare sheet', { exact: true }).press('Escape');
    await last.getByRole('button', { name: 'Take this paper away' }).click();
  });

  test('a rack that is too small is said; slower pulling makes the day longer', async () => {
    await lay('day');
    const head = () => page.locator('.day-head h2').textContent();
    const before = await head();
    const days = await page.locator('.day-picture').count();
    expect(days).toBeGreaterThan(1);
    await write('Pulls an hour', '15');
    await eventually(head).not.toBe(before);
    await write('Places on the rack', '10');
    await eventually(() => page.locator('.day-part .says-do').allTextContents()).toContainEqual(expect.stringContaining('rack'));
    await write('Places on the rack', '0');
    await eventually(() => page.locator('.part-empty').textContent()).toContain('No day can be planned yet');
    for (let i = 0; i < 3; i++) await undo('the rates of the day').click();
    await eventually(head).toBe(before);
    expect(await page.locator('.day-picture').count()).toBe(days);
  });

  test('inches throughout, once the job speaks inches; fractions are read', async () => {
    const job = plainPool();
    const inches = await serveBench({ ...job, job: { ...job.job, units: 'in' } });
    const own = await browser.newPage({ viewport: { width: 820, height: 1180 } });
    await own.goto(`${inches.url}?job=open#press`);
    await own.locator('.press').waitFor({ timeout: 30_000 });
    await own.locator('[data-part=gap]').click();
    await own.getByLabel('Gap', { exact: true }).fill('3/32');
    await own.getByLabel('Gap', { exact: true }).press('Enter');
    await eventually(() => own.locator('.part-words h2').textContent()).toBe('0.094\u00a0in between mesh and paper');
    expect((await own.locator('.part-open').innerText()).replace(/ten times/, '')).not.toMatch(/\d\s?mm\b/);
    await own.close();
    await inches.close();
  });

  for (const [width, height] of [
    [1440, 900],
    [820, 1180],
    [390, 844],
  ]) {
    test(`axe finds nothing in any part at ${width} px, and nothing reaches past the page`, async () => {
      await page.setViewportSize({ width, height });
      for (const part of ['screen', 'gap', 'ink', 'register', 'papers', 'day']) {
        await lay(part);
        expect(await violations(page), part).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth), part).toBeLessThanOrEqual(width);
      }
      await page.setViewportSize({ width: 1440, height: 900 });
    });
  }

  test('every target is at least 44 px, and the page complained of nothing', async () => {
    for (const part of ['screen', 'gap', 'ink', 'register', 'papers', 'day']) {
      await lay(part);
      const small = await page
        .locator('.press')
        .locator('button:visible, select:visible, summary:visible, input[type=text]:visible, label:has(input[type=radio]):visible')
        .evaluateAll((all) =>
          all
            .filter((e) => {
              const b = e.getBoundingClientRect();
              return b.width > 0 && (b.height < 43.5 || b.width < 43.5);
            })
            .map((e) => e.textContent || e.outerHTML.slice(0, 80)),
        );
      expect(small, part).toEqual([]);
    }
    expect(complaints).toEqual([]);
  });
});
