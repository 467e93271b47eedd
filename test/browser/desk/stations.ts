import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { violations } from '../axe.ts';
import { atRest } from '../bench-page.ts';
import { oneBench } from './one-bench.ts';

let page: Page;
let complaints: string[];

async function goTo(station: string): Promise<void> {
  await page.evaluate((id) => {
    document.documentElement.style.fontSize = '';
    location.hash = id;
  }, station);
  await page.waitForSelector(`main[aria-busy=false] .${station}`);
}

/** Texts that are squeezed into a column a letter wide. */
const squeezed = (): Promise<string[]> =>
  page.locator('main :is(span, small, b, p, label, legend):visible').evaluateAll((all) =>
    all
      .filter((e) => {
        const own = [...e.childNodes].some((n) => n.nodeType === 3 && (n.textContent ?? '').trim().length > 5);
        const { width, height } = e.getBoundingClientRect();
        return own && width > 2 && width < 24 && height > 60;
      })
      .map((e) => e.textContent ?? ''),
  );

// Every part of the stations that have no browser test of their own, at desk, tablet and phone width.
const parts: Record<string, readonly string[]> = {
  stencils: [],
  inks: ['Shelf', 'An ink by eye', 'A wanted colour', 'Try inks', 'Order', 'Mixing', 'Saving a pot', 'Learning', 'Matching again'],
};

export function stationsInParts(): void {
  beforeAll(async () => {
    ({ page, complaints } = await oneBench());
  });

  describe.each(Object.entries(parts))('station %s', (station, names) => {
    test.each([
      [1440, 900],
      [820, 1180],
      [390, 844],
    ])(
      'at %i px: axe finds nothing, nothing runs over the edge, nothing complains',
      async (width, height) => {
        await page.setViewportSize({ width, height });
        await goTo(station);
        for (const name of names.length > 0 ? names : [null]) {
          if (name)
            await page
              .getByRole('link', { name: new RegExp(`^${name}`) })
              .or(page.getByRole('radio', { name: new RegExp(`^${name}`) }))
              .or(page.getByRole('tab', { name: new RegExp(`^${name}`) }))
              .or(page.getByRole('button', { name: new RegExp(`^${name}`) }))
              .first()
              .click({ force: true });
          await atRest(page);
          expect(await violations(page), `${station} ${name ?? ''} at ${width}`).toEqual([]);
          expect(
            await page.evaluate(() => document.documentElement.scrollWidth),
            `${station} ${name ?? ''} at ${width}`,
          ).toBeLessThanOrEqual(width);
          expect(await squeezed(), `one letter a line: ${station} ${name ?? ''} at ${width}`).toEqual([]);
        }
        expect(complaints).toEqual([]);
      },
      180_000,
    );
  });

  describe('inks', () => {
    test('a wanted colour is answered with recipes, fewest pots first', async () => {
      await goTo('inks');
      const text = async (): Promise<string> => (await page.locator('main').textContent()) ?? '';
      await page.getByText('A wanted colour', { exact: true }).first().click();
      await expect.poll(text).toMatch(/Dusk violet|ΔE/);
      await page.getByText('Mixing', { exact: true }).first().click();
      await expect.poll(text).toMatch(/\d\sg/);
    }, 120_000);
  });

  describe('with letters twice as large', () => {
    test.each([
      ['forms', 390],
      ['stencils', 390],
      ['inks', 390],
      ['forms', 820],
      ['stencils', 820],
      ['inks', 820],
    ] as const)(
      '%s at %i px: everything wraps, nothing runs over the edge',
      async (station, width) => {
        await page.setViewportSize({ width, height: 900 });
        await goTo(station);
        await page.evaluate(() => {
          document.documentElement.style.fontSize = '200%';
        });
        if (station === 'forms') await page.locator('[data-placed="0"]').focus();
        if (station === 'stencils') await page.locator('[data-stencil=kelp]').click();
        for (const part of station === 'inks' ? ['shelf', 'wanted', 'reach', 'order', 'mix', 'pot', 'learn', 'again'] : [null]) {
          if (part) await page.locator(`[data-part=${part}]`).click();
          await atRest(page);
          expect(
            await page.evaluate(() => Math.max(document.documentElement.scrollWidth, document.querySelector('main')!.scrollWidth)),
            part ?? station,
          ).toBeLessThanOrEqual(width);
        }
      },
      120_000,
    );
  });
}
