import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { violations } from '../axe.ts';
import { atRest, settled, tidePool } from '../bench-page.ts';
import { oneBench } from './one-bench.ts';

let page: Page;
let complaints: string[];

const colourAt = (place: string, u: number, v: number): Promise<number[]> =>
  page.evaluate(
    ([where, x, y]) => {
      const canvas = document.querySelector<HTMLCanvasElement>(`${where as string} .proof-canvas`)!;
      return [
        ...canvas
          .getContext('2d')!
          .getImageData(Math.floor((x as number) * canvas.width), Math.floor((y as number) * canvas.height), 1, 1)
          .data.slice(0, 3),
      ];
    },
    [place, u, v] as const,
  );

export function compared(): void {
  beforeAll(async () => {
    ({ page, complaints } = await oneBench());
    await page.getByRole('button', { name: 'Versions' }).click();
    await page.getByLabel('Name of this version').fill('as it was');
    await page.getByRole('button', { name: 'Keep a version' }).click();
    await page.locator('[data-layer=water] input[type=range]').fill('20');
    for (let i = 0; i < 2; i++) await page.locator('[data-layer=sky] .handle').press('ArrowUp');
    await settled(page);
    await page.getByRole('link', { name: 'Compare with “as it was”' }).click();
    await page.waitForSelector('[data-side=left] .proof-canvas', { timeout: 60_000 });
  });

  describe('two versions compared', () => {
    test('both prints in their own colours, and what was decided differently in words', async () => {
      const differs = page.getByRole('region', { name: 'What differs, from left to right' });
      await differs.waitFor();
      expect(await differs.locator('li').allTextContents()).toEqual(['Sky: place 1 → 3', 'Water: strength 60\u00a0% → 20\u00a0%']);
      expect(await colourAt('[data-side=left]', 0.1, 0.1)).toEqual(await colourAt('[data-side=right]', 0.1, 0.1));
      const [dark, pale] = [await colourAt('[data-side=left]', 0.03, 0.97), await colourAt('[data-side=right]', 0.03, 0.97)];
      expect(pale[0] - dark[0]).toBeGreaterThan(40);
      // The overlap that is seen most comes first.
      expect(await page.locator('.versus-overlaps li').first().textContent()).toMatch(/^Water ΔE00 \d+/);
    });

    test('a wipe, moved by keys, shows more of the one or the other', async () => {
      await page.getByRole('radio', { name: 'With a wipe' }).check();
      const wipe = page.getByRole('slider', { name: /^Wipe/ });
      const clip = (): Promise<string> => page.locator('.versus-over').evaluate((e) => (e as HTMLElement).style.clipPath);
      const before = await clip();
      await wipe.focus();
      for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowRight');
      expect(await clip()).not.toBe(before);
      expect(await wipe.getAttribute('aria-valuetext')).toBe('55 % left');
      const box = (await page.locator('.versus-stack').boundingBox())!;
      await page.mouse.click(box.x + box.width * 0.2, box.y + 20);
      expect(await wipe.getAttribute('aria-valuetext')).toBe('20 % left');
    });

    test('one version on all its papers, the printed one too, each in another colour', async () => {
      await page.getByRole('radio', { name: 'All papers' }).check();
      await expect.poll(() => page.locator('.versus-papers figure').count()).toBe(tidePool().job.papers.length);
      await expect
        .poll(
          async () =>
            new Set(
              await Promise.all([1, 2, 3].map(async (n) => (await colourAt(`.versus-papers figure:nth-child(${n})`, 0.1, 0.1)).join())),
            ),
        )
        .toHaveProperty('size', 3);
    });

    test('a photograph of the printed sheet: found, beside the proof, its readings taken as one step, all by keys', async () => {
      await page.getByRole('radio', { name: 'Side by side' }).check();
      await page.waitForSelector('[data-side=right] .proof-canvas');
      // The print as it is foreseen, on its sheet of 260 × 330 mm, on a dark table.
      const png = await page.evaluate(() => {
        const canvas = Object.assign(document.createElement('canvas'), { width: 900, height: 1100 });
        const context = canvas.getContext('2d')!;
        context.fillStyle = '#443a33';
        context.fillRect(0, 0, 900, 1100);
        context.fillStyle = '#f1f2f5';
        context.fillRect(60, 55, 780, 990);
        context.drawImage(document.querySelector<HTMLCanvasElement>('[data-side=right] .proof-canvas')!, 180, 190, 540, 720);
        return canvas.toDataURL('image/png').split(',')[1];
      });
      await page.goto(`${page.url().split('#')[0]}#overlaps`);
      const photo = { name: 'print.png', mimeType: 'image/png', buffer: Buffer.from(png, 'base64') };
      await page.locator('.overlaps .file-button input').setInputFiles(photo);
      await page.getByRole('heading', { name: /overlaps read/ }).waitFor({ timeout: 60_000 });
      expect(await page.locator('.print-photo .big-say').textContent()).toMatch(/^Every overlap lies within/);
      const take = page.getByRole('button', { name: /^Take all \d+ readings$/ });
      const n = Number(/\d+/.exec((await take.textContent())!)![0]);
      await take.press('Enter');
      await expect.poll(() => page.getByText('Taken', { exact: true }).count(), { timeout: 30_000 }).toBe(n);
      await page.keyboard.press('Control+z');
      await expect.poll(() => page.getByText('Taken', { exact: true }).count(), { timeout: 30_000 }).toBe(0);
      const corner = page.getByRole('button', { name: /^Corner 1 of 4/ });
      const before = await corner.getAttribute('transform');
      await corner.press('Shift+ArrowRight');
      expect(await corner.getAttribute('transform')).not.toBe(before);
      expect(await violations(page)).toEqual([]);
      await corner.press('Escape');
      await expect.poll(() => page.locator('.print-photo').count()).toBe(0);
      await page.goto(`${page.url().split('#')[0]}#compare`);
      await page.waitForSelector('.versus');
    }, 60_000);

    test('axe finds nothing and nothing runs over the edge at three widths', async () => {
      for (const way of ['Side by side', 'With a wipe', 'All papers']) {
        await page.getByRole('radio', { name: way }).check();
        for (const [width, height] of [
          [1440, 900],
          [820, 1180],
          [390, 844],
        ]) {
          await page.setViewportSize({ width, height });
          await atRest(page);
          expect(await violations(page), `${way} at ${width}`).toEqual([]);
          expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
        }
      }
      expect(complaints).toEqual([]);
    }, 120_000);
  });
}
