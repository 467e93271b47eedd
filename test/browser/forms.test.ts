import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { decode } from 'fast-png';
import { encode } from 'jpeg-js';
import { beforeEach, describe, expect, test } from 'vitest';
import { violations } from './axe.ts';
import { serveBench, tidePool, type BenchServer } from './bench-page.ts';
import { onPage } from './on-page.ts';

let browser: Browser;
let server: BenchServer;
let page: Page;
let complaints: string[] = [];
onPage(
  (opened) => {
    ({ browser, server, page } = opened);
  },
  (text) => complaints.push(text),
  // Forms are tried here; the urchin's stencil, the longest to make, is not looked at.
  () => {
    const { job, ...rest } = tidePool();
    return { ...rest, job: { ...job, layers: job.layers.filter((layer) => layer.cut !== 'urchin') } };
  },
);

const atRest = async (): Promise<void> => {
  await page.waitForSelector('main[aria-busy=false] .zoom-drawing');
  await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))));
};
/** What was done in the test before is undone, step by step. */
async function fresh(): Promise<void> {
  complaints = [];
  // Nothing stays pressed from a test that ended early.
  await page.keyboard.up('Alt');
  await page.mouse.up();
  if (!page.url().includes('job=open')) await page.goto(`${server.url}?job=open#forms`);
  await page.evaluate(() => {
    location.hash = 'forms';
  });
  await atRest();
  const undo = page.getByRole('button', { name: /^Undo/ });
  for (let i = 0; i < 40 && (await undo.isEnabled()); i++) await undo.click();
  await page.setViewportSize({ width: 1440, height: 900 });
  await atRest();
}
const cut = (name: string): Promise<void> => page.getByRole('button', { name: new RegExp(`^Cut ${name}:`) }).click();
const number = (label: string): Promise<number> => page.getByRole('textbox', { name: label, exact: true }).inputValue().then(Number);
const stepName = async (): Promise<string> => (await page.getByRole('button', { name: /^Undo/ }).getAttribute('aria-label')) ?? '';
/** Pixels on the screen for a millimetre of the sheet. */
const scale = (): Promise<number> =>
  page.evaluate(() => {
    const svg = document.querySelector<SVGSVGElement>('.zoom-drawing')!;
    return svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
  });
const middle = async (selector: string): Promise<readonly [number, number]> => {
  const box = (await page.locator(selector).boundingBox())!;
  return [box.x + box.width / 2, box.y + box.height / 2];
};

describe('forms on the true-size sheet', () => {
  beforeEach(fresh);

  test('sheet, image and stops lie as the register plans them, and the cut in hand has its forms', async () => {
    await cut('Kelp');
    expect(await page.locator('.ground-stop').count()).toBe(3);
    const [sheet, image] = await Promise.all(
      ['.ground-edge', '.image-edge'].map(async (s) => (await page.locator(s).first().boundingBox())!),
    );
    expect(sheet.width / image.width).toBeCloseTo(260 / 180, 1);
    expect(await page.locator('[data-placed]').count()).toBe(2);
  });

  test('the print lies under the forms, in its inks, and can be taken away', async () => {
    const image = (await page.locator('.image-edge').boundingBox())!;
    // Near the lower left corner of the image: water and nothing else.
    const colour = async (): Promise<number[]> => {
      const shot = decode(
        await page.screenshot({
          clip: { x: Math.round(image.x + image.width * 0.03), y: Math.round(image.y + image.height * 0.9), width: 1, height: 1 },
        }),
      );
      return [...shot.data.slice(0, 3)];
    };
    await cut('Urchin');
    await page.getByRole('checkbox', { name: 'Show the print' }).check();
    await atRest();
    const [r, g, b] = await colour();
    expect(Math.max(r, g, b) - Math.min(r, g, b)).toBeGreaterThan(60);
    await page.getByRole('checkbox', { name: 'Show the print' }).uncheck();
    await atRest();
    const [r2, g2, b2] = await colour();
    expect(Math.max(r2, g2, b2) - Math.min(r2, g2, b2)).toBeLessThan(12);
    await page.getByRole('checkbox', { name: 'Show the print' }).check();
  });

  test('a form follows the pointer while the Plan waits, and its cut follows when it is let go', async () => {
    await cut('Pebbles');
    await page.locator('[data-placed="0"]').focus();
    const before = [await number('From the left'), await number('From the top')];
    const outline = (): Promise<string | null> => page.locator('.cut-held .cut-line').getAttribute('d');
    const cutBefore = await outline();
    const px = await scale();
    const [x, y] = await middle('[data-placed="0"]');
    // A pebble's own middle may be a gap: take hold where there is something to hold.
    const hold = await page.evaluate(
      ([cx, cy]) => {
        for (let r = 0; r < 200; r += 3)
          for (let a = 0; a < 6.3; a += 0.3) {
            const at = [cx + r * Math.cos(a), cy + r * Math.sin(a)] as const;
            if (document.elementFromPoint(at[0], at[1])?.closest('[data-placed]')) return at;
          }
        return null;
      },
      [x, y] as const,
    );
    await page.mouse.move(hold![0], hold![1]);
    await page.mouse.down();
    await page.keyboard.down('Alt');
    await page.mouse.move(hold![0] - 10 * px, hold![1] - 20 * px, { steps: 5 });
    await expect.poll(() => number('From the top')).toBeCloseTo(before[1] - 20, 0);
    expect(await outline()).toBe(cutBefore);
    await page.mouse.up();
    await page.keyboard.up('Alt');
    await expect.poll(outline).not.toBe(cutBefore);
    await atRest();
    await expect.poll(() => number('From the left')).toBeCloseTo(before[0] - 10, 0);
    expect(await stepName()).toBe('Undo: Pebbles moved');
    await page.keyboard.press('Control+z');
    await expect.poll(outline).toBe(cutBefore);
  });

  test('near the middle of the sheet a form catches on it, and the line is shown while it does', async () => {
    await cut('Urchin');
    await page.locator('[data-placed="0"]').focus();
    // Not turned, so that its box on the screen is its box on the sheet.
    await page.getByRole('textbox', { name: 'Turned' }).fill('0');
    await page.getByRole('textbox', { name: 'Turned' }).press('Enter');
    await atRest();
    const px = await scale();
    const hold = await page.evaluate(() => {
      const box = document.querySelector('[data-placed="0"]')!.getBoundingClientRect();
      for (let x = box.left; x < box.right; x += 2)
        if (document.elementFromPoint(x, box.top + box.height / 2)?.closest('[data-placed]'))
          return [x + 2, box.top + box.height / 2] as const;
      return null;
    });
    await page.mouse.move(...hold!);
    await page.mouse.down();
    // From 108 mm to 1 mm off the middle of the 180 mm image.
    await page.mouse.move(hold![0] - 17 * px, hold![1], { steps: 6 });
    const lines = await page.locator('.snap-line').evaluateAll((all) =>
      all
        .map((l) => l.getBoundingClientRect())
        .filter((r) => r.height > r.width)
        .map((r) => (r.left + r.right) / 2),
    );
    expect(lines.length).toBeGreaterThan(0);
    await page.mouse.up();
    await atRest();
    expect(await page.locator('.snap-line').count()).toBe(0);
    // Its middle or an edge has met the line exactly.
    const box = await page.locator('[data-placed="0"]').evaluate((g) => {
      const b = g.getBoundingClientRect();
      return [b.left, (b.left + b.right) / 2, b.right];
    });
    expect(Math.min(...box.flatMap((x) => lines.map((line) => Math.abs(x - line))))).toBeLessThan(0.6 * px);
  });

  test('with keys alone: arrows 1 mm, Shift 10, Alt 0.1; Page down turns; plus sizes; M mirrors; it is said', async () => {
    await cut('Urchin');
    await page.locator('[data-placed="0"]').focus();
    for (const key of ['ArrowRight', 'Shift+ArrowRight', 'Alt+ArrowRight', 'ArrowUp']) await page.keyboard.press(key);
    await expect.poll(async () => [await number('From the left'), await number('From the top')]).toEqual([119.1, 91]);
    expect(await page.locator('[role=status]').first().textContent()).toContain('Urchin at 119.1');
    await page.keyboard.press('PageDown');
    expect(await number('Turned')).toBe(13);
    for (const key of ['+', 'm']) await page.keyboard.press(key);
    expect(await number('Size')).toBe(105);
    expect(await page.getByRole('checkbox', { name: 'Mirrored' }).isChecked()).toBe(true);
    await page.keyboard.press('Delete');
    await atRest();
    // Its only form: the cut goes, and the layer that it served.
    expect(await page.getByRole('button', { name: /^Cut Urchin/ }).count()).toBe(0);
    await page.keyboard.press('Control+z');
    await page.getByRole('button', { name: /^Cut Urchin/ }).waitFor();
  });

  test('numbers are exact, a decimal comma and inches are understood, and what makes no sense changes nothing', async () => {
    await cut('Urchin');
    await page.locator('[data-placed="0"]').focus();
    const left = page.getByRole('textbox', { name: 'From the left', exact: true });
    await left.fill('77,25');
    await left.press('Enter');
    expect(await number('From the left')).toBe(77.25);
    await left.fill('3 in');
    await left.press('Enter');
    expect(await number('From the left')).toBe(76.2);
    await left.fill('left a bit');
    await left.press('Enter');
    expect(await left.getAttribute('aria-invalid')).toBe('true');
    await left.press('Escape');
    expect(await number('From the left')).toBe(76.2);
    const width = page.getByRole('textbox', { name: 'Width', exact: true });
    await width.fill('52');
    await width.press('Enter');
    expect(await number('Size')).toBe(50);
  });

  test('a protractor lies on the form in hand: the needle’s end turns it, caught at right angles; the knob beside sizes it', async () => {
    await cut('Urchin');
    await page.locator('[data-placed="0"]').focus();
    await page.getByRole('textbox', { name: 'Turned' }).fill('0');
    await page.getByRole('textbox', { name: 'Turned' }).press('Enter');
    await atRest();
    const centre = await middle('.part-ring circle.ring-line');
    await page.mouse.move(...(await middle('[data-grip=turn] .grip-mark')));
    await page.mouse.down();
    await page.mouse.move(centre[0] + 150, centre[1] + 3, { steps: 6 });
    await page.mouse.up();
    expect(await number('Turned')).toBe(90);
    await atRest();
    await page.getByRole('checkbox', { name: 'Catch on lines' }).uncheck();
    await page.mouse.move(...(await middle('[data-grip=turn] .grip-mark')));
    await page.mouse.down();
    await page.mouse.move(centre[0] + 150, centre[1] + 4, { steps: 6 });
    await page.mouse.up();
    expect(await number('Turned')).toBeCloseTo(91.5, 0);
    await page.getByRole('checkbox', { name: 'Catch on lines' }).check();
    await atRest();
    const knob = await middle('[data-grip=size] .grip-mark');
    await page.mouse.move(...knob);
    await page.mouse.down();
    await page.mouse.move(centre[0] + (knob[0] - centre[0]) * 0.5, centre[1] + (knob[1] - centre[1]) * 0.5, { steps: 6 });
    await page.mouse.up();
    expect(await number('Size')).toBeGreaterThan(45);
    expect(await number('Size')).toBeLessThan(55);
  });

  test('repeats: six around a point, moved by its own cross; rows; another throw of the scattered', async () => {
    await cut('Urchin');
    await page.locator('[data-placed="0"]').focus();
    await page.getByRole('radio', { name: 'Around a point' }).check();
    await atRest();
    expect(await page.locator('[data-placed="0"] use').count()).toBe(6);
    await page.locator('.marker').focus();
    await page.keyboard.press('Shift+ArrowDown');
    expect(await number('Point, from the top')).toBe(130);
    await page.getByRole('radio', { name: 'In rows' }).check();
    await page.getByRole('textbox', { name: 'Down', exact: true }).fill('3');
    await page.getByRole('textbox', { name: 'Down', exact: true }).press('Enter');
    await atRest();
    expect(await page.locator('[data-placed="0"] use').count()).toBe(6);
    await cut('Foam');
    await page.locator('[data-placed="0"]').focus();
    const places = (): Promise<string | null> => page.locator('[data-placed="0"] use').first().getAttribute('transform');
    const before = await places();
    await page.getByRole('button', { name: 'Throw again' }).click();
    expect(await places()).not.toBe(before);
  });

  test('a form taken away from its cut leaves a hole; kept in common, only the overlap stays', async () => {
    await cut('Tide');
    await page.locator('[data-placed="1"]').focus();
    const length = (): Promise<number> =>
      page
        .locator('.cut-held .cut-line')
        .getAttribute('d')
        .then((d) => d!.length);
    const before = await length();
    await page.getByRole('radio', { name: 'added', exact: true }).check();
    await expect.poll(length).toBeLessThan(before);
    await page.getByRole('radio', { name: 'kept only where both lie' }).check();
    await expect.poll(length).toBeLessThan(before / 2);
  });

  test('a drawing dropped on the sheet lands there; one that can’t be cut is refused in plain words and changes nothing', async () => {
    await cut('Urchin');
    const drop = (name: string, text: string): Promise<void> =>
      page.evaluate(
        ([file, content]) => {
          const data = new DataTransfer();
          data.items.add(new File([content], file, { type: 'image/svg+xml' }));
          const sheet = document.querySelector('.ground-edge')!.getBoundingClientRect();
          document.querySelector('.zoom-drawing')!.dispatchEvent(
            new DragEvent('drop', {
              dataTransfer: data,
              bubbles: true,
              cancelable: true,
              clientX: sheet.left + sheet.width / 2,
              clientY: sheet.top + sheet.height / 2,
            }),
          );
        },
        [name, text] as const,
      );
    await drop(
      'sea-star_2.svg',
      '<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="20mm" viewBox="0 0 30 20"><rect width="30" height="20"/></svg>',
    );
    await page.getByRole('button', { name: /^Sea star 2 30 × 20/ }).waitFor();
    await atRest();
    expect(await page.locator('[data-placed]').count()).toBe(2);
    // The image need not lie in the middle of the sheet: all papers share one corner.
    const middle = await page.evaluate(() => {
      const [sheet, image] = ['.ground-edge', '.image-edge'].map((one) => document.querySelector(one)!.getBoundingClientRect());
      return (180 * (sheet.left + sheet.width / 2 - image.left)) / image.width;
    });
    expect(await number('From the left')).toBeCloseTo(middle, 0);
    expect(await number('Width')).toBe(30);
    await drop('letters.svg', '<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="20mm"><text y="10">abc</text></svg>');
    const alert = page.locator('.brought');
    await alert.waitFor();
    expect(await alert.textContent()).toContain('letters.svg');
    expect(await page.locator('[data-placed]').count()).toBe(2);
    await alert.getByRole('button', { name: 'Close' }).click();
  });

  test('true size is true once a bank card has been laid on the screen, also after the page is opened anew', async () => {
    await page.getByText('Is true size true?').click();
    const slider = page.getByRole('slider', { name: 'Slide until it fits' });
    await slider.fill('5');
    const card = (await page.locator('.calibrate-card').boundingBox())!;
    expect(card.width).toBeCloseTo(85.6 * 5, 0);
    await page.getByRole('button', { name: 'True size' }).click();
    await atRest();
    expect(await scale()).toBeCloseTo(5, 2);
    await page.reload();
    await atRest();
    await page.getByRole('button', { name: 'True size' }).click();
    await atRest();
    expect(await scale()).toBeCloseTo(5, 2);
    await page.getByText('This screen is measured').waitFor();
    await page.getByRole('button', { name: 'All of it' }).click();
  });

  test('two ends measure a distance, by pointer and by keys', async () => {
    await page.getByRole('checkbox', { name: 'Measure' }).check();
    expect(await page.locator('.measured').textContent()).toMatch(/90\smm/);
    await page.getByRole('button', { name: /^End 2 of the measure/ }).focus();
    await page.keyboard.press('Shift+ArrowRight');
    await expect.poll(() => page.locator('.measured').textContent()).toMatch(/100\smm/);
    await page.getByRole('checkbox', { name: 'Measure' }).uncheck();
  });

  test('a photograph of a thing on a sheet becomes a form at true size', async () => {
    await page.locator('[data-bring=photo]').setInputFiles({ name: 'disc.jpg', mimeType: 'image/jpeg', buffer: discOnSheet() });
    await page.getByRole('button', { name: 'Make it a form' }).and(page.locator(':enabled')).waitFor();
    expect(await page.locator('.trace .marker').count()).toBe(4);
    await page.getByRole('button', { name: 'Make it a form' }).click();
    const tile = page.getByRole('button', { name: /^Disc \d/ });
    await tile.waitFor();
    await expect.poll(async () => Number(/Disc ([\d.]+) ×/.exec((await tile.getAttribute('aria-label')) ?? '')?.[1])).toBeGreaterThan(59);
    expect(Number(/Disc ([\d.]+) ×/.exec((await tile.getAttribute('aria-label'))!)?.[1])).toBeLessThan(61);
  });

  test('a camera’s lens is kept from a photograph of a board, and forgotten at a touch', async () => {
    const board = fileURLToPath(new URL('../outside/data/checked-board/left14.jpg', import.meta.url));
    const keep = page.getByRole('button', { name: 'Keep this camera’s lens' });
    await page.locator('[data-bring=photo]').setInputFiles(board);
    await page.getByRole('radio', { name: 'a photo of a checked board' }).check();
    await page.getByText('as this photograph shows it').waitFor();
    // The next one is taken for a board from the first: no sheet was looked for on it when it is asked for one.
    await page.locator('[data-bring=photo]').setInputFiles(board);
    await page.getByText('as this photograph shows it').waitFor();
    await keep.click();
    await page.locator('.trace').getByText('Kept, from 1 photograph.').waitFor();
    expect(await keep.isDisabled()).toBe(true);
    const kept = () => page.evaluate(() => localStorage.getItem('laydown-cameras'));
    expect(JSON.parse((await kept())!)).toMatchObject([{ boards: 1, aspect: 640 / 480 }]);
    const printed = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Board for A4' }).click();
    expect((await printed).suggestedFilename()).toBe('board-a4.pdf');
    await page.getByRole('radio', { name: 'a photo on A4' }).check();
    const note = page.getByText('The kept lens is taken out');
    await note.waitFor();
    await page.getByRole('button', { name: 'Forget this lens' }).click();
    await note.waitFor({ state: 'detached' });
    expect(await kept()).toBeNull();
    await page.getByRole('button', { name: 'Leave it' }).click();
  });

  test('axe finds nothing, wide or narrow, and nothing runs over the edge', async () => {
    await cut('Tide');
    await page.locator('[data-placed="1"]').focus();
    for (const [width, height] of [
      [1440, 900],
      [820, 1180],
      [390, 844],
    ]) {
      await page.setViewportSize({ width, height });
      await atRest();
      expect(await violations(page), `forms at ${width} px`).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth), `${width}`).toBeLessThanOrEqual(width);
      const small = await page
        .locator('.forms button:visible, .forms summary:visible')
        .evaluateAll((all) => all.map((b) => b.getBoundingClientRect()).filter((b) => b.height < 43.5).length);
      expect(small).toBe(0);
    }
    expect(complaints).toEqual([]);
  });
});

test('an empty bench becomes a job: image and sheet, a first drawing, its cut, and a layer of it at a touch', async () => {
  const bare = await serveBench(null);
  const empty = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await empty.goto(bare.url);
  await empty.getByRole('textbox', { name: 'Image width' }).fill('10 cm');
  await empty.getByRole('textbox', { name: 'Image width' }).press('Enter');
  await empty.getByRole('button', { name: 'Start', exact: true }).click();
  await empty.waitForSelector('main[aria-busy=false] .zoom-drawing');
  const kelp = readFileSync(new URL('../../examples/tide-pool/kelp.svg', import.meta.url));
  await empty.locator('[data-bring=drawing]').setInputFiles({ name: 'kelp.svg', mimeType: 'image/svg+xml', buffer: kelp });
  await empty.waitForSelector('[data-placed="0"]');
  await empty.getByRole('button', { name: 'Print its window' }).click();
  await empty.getByText('run 1 Kelp, window').waitFor();
  await empty.waitForSelector('main[aria-busy=false]');
  await empty.getByRole('link', { name: /^Stencils/ }).click();
  await empty.waitForSelector('[data-stencil=kelp]');
  expect(await violations(empty)).toEqual([]);
  await empty.close();
  await bare.close();
});

/** A dark disc of 60 mm on an A4 sheet, seen straight on at 6 pixels a millimetre, on a grey table. */
function discOnSheet(): Buffer {
  const px = 6,
    margin = 90;
  const width = 210 * px + 2 * margin,
    height = 297 * px + 2 * margin;
  const data = Buffer.alloc(width * height * 4, 255);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const onSheet = x >= margin && y >= margin && x < width - margin && y < height - margin;
      const inDisc = Math.hypot((x - width / 2) / px, (y - height / 2) / px) < 30;
      data.fill(inDisc ? 30 : onSheet ? 240 : 90, (y * width + x) * 4, (y * width + x) * 4 + 3);
    }
  }
  return Buffer.from(encode({ width, height, data }, 92).data);
}
