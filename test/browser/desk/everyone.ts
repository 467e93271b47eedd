import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { violations } from '../axe.ts';
import { atRest } from '../bench-page.ts';
import { oneBench } from './one-bench.ts';
import { stations } from '../stations-list.ts';

let page: Page;
let complaints: string[];

const everything = [...stations, 'compare', 'prints'];
const sizes = [
  [1440, 900],
  [820, 1180],
  [390, 844],
] as const;

async function go(station: string, width: number, height: number): Promise<void> {
  await page.setViewportSize({ width, height });
  await page.evaluate((id) => {
    location.hash = id;
  }, station);
  await page.waitForSelector('main[aria-busy=false]');
  await atRest(page);
}
const overflow = (): Promise<number> => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** What can be pressed and is smaller than 44 × 44 px: all of its label counts, and words in a line of text may be as low as the line. */
const tooSmall = (): Promise<string[]> =>
  page.evaluate(() => {
    const found: string[] = [];
    for (const element of document.querySelectorAll<HTMLElement>(
      '#bench :is(a[href], button, select, summary, textarea, input:not([type=file], [type=range]))',
    )) {
      if (element.closest('.unseen, .skip') || !element.checkVisibility()) continue;
      const label = element.closest('label');
      const inText = element.matches('p a[href], .term, p button');
      const box = (label ?? element).getBoundingClientRect();
      const own = element.getBoundingClientRect();
      const [width, height] = [Math.max(box.width, own.width), Math.max(box.height, own.height)];
      if (width === 0 || (inText && height >= 20)) continue;
      if (width < 43.5 || height < 43.5) found.push(`${Math.round(width)} × ${Math.round(height)} ${element.outerHTML.slice(0, 90)}`);
    }
    return found;
  });

export function forEveryone(): void {
  beforeAll(async () => {
    ({ page, complaints } = await oneBench());
  });

  describe.each(everything)('at %s', (station) => {
    test.each(sizes)(
      'at %i px: axe finds nothing, nothing runs over the edge, every target is a thumb wide',
      async (width, height) => {
        await go(station, width, height);
        expect(await violations(page)).toEqual([]);
        expect(await page.locator('h1').count()).toBe(1);
        // On a phone the header leaves seven eighths of the screen to the work.
        const header = await page.evaluate(() => document.querySelector('.header')!.getBoundingClientRect().height);
        if (width === 390) expect(header).toBeLessThanOrEqual(height / 8);
        expect(await overflow()).toBeLessThanOrEqual(0);
        expect(await tooSmall()).toEqual([]);
        expect(complaints).toEqual([]);
      },
      60_000,
    );

    test.each(sizes)(
      'at %i px with text at 200 %: nothing runs over the edge, nothing to press is lost',
      async (width, height) => {
        await go(station, width, height);
        const count = (): Promise<number> =>
          page.evaluate(
            () =>
              [...document.querySelectorAll<HTMLElement>('main :is(a[href], button, select, input, summary)')].filter(
                (e) => e.offsetParent !== null && e.getBoundingClientRect().width > 0,
              ).length,
          );
        const before = await count();
        await page.evaluate(() => {
          document.documentElement.style.fontSize = '200%';
        });
        await atRest(page);
        const [wide, after] = [await overflow(), await count()];
        await page.evaluate(() => {
          document.documentElement.style.fontSize = '';
        });
        expect(wide).toBeLessThanOrEqual(0);
        expect(after).toBeGreaterThanOrEqual(before - 2);
      },
      60_000,
    );
  });

  test.each(sizes)(
    'in German at %i px with text at 200 %: every station’s words, and the next step’s, stay on the page',
    async (width, height) => {
      const choose = (id: string): Promise<void> =>
        page.evaluate((wanted) => document.querySelector<HTMLInputElement>(`.language-switch input[value=${wanted}]`)!.click(), id);
      await go('laydown', width, height);
      await choose('de');
      await page.evaluate(() => {
        document.documentElement.style.fontSize = '200%';
      });
      const wide: string[] = [];
      for (const station of stations) {
        await go(station, width, height);
        const over = await overflow();
        if (over > 0) wide.push(`${station}: ${over} px`);
      }
      await page.evaluate(() => {
        document.documentElement.style.fontSize = '';
      });
      await choose('en');
      expect(wide).toEqual([]);
    },
    60_000,
  );

  describe('whoever looks', () => {
    test('with reduced motion nothing moves by itself, at any station', async () => {
      await page.emulateMedia({ reducedMotion: 'reduce' });
      for (const station of everything) {
        await go(station, 1440, 900);
        const moving = await page.evaluate(() =>
          [...document.querySelectorAll('*')]
            .filter((e) => {
              const style = getComputedStyle(e);
              return (
                style.animationName !== 'none' ||
                style.transitionDuration.split(',').some((d) => parseFloat(d) > 0 && style.transitionProperty !== 'none')
              );
            })
            .map((e) => e.className.toString()),
        );
        expect(moving, station).toEqual([]);
      }
      await page.emulateMedia({ reducedMotion: null });
    }, 60_000);

    test('with the machine’s own colours (forced) the words are there, the inks keep theirs, and the station in use is marked', async () => {
      await page.emulateMedia({ forcedColors: 'active' });
      for (const station of everything) {
        await go(station, 1440, 900);
        expect(await violations(page), station).toEqual([]);
        if (station === 'compare' || station === 'prints') continue;
        const marked = await page.evaluate(() => {
          const [now, other] = ['.stations a[aria-current]', '.stations a:not([aria-current])'].map((s) =>
            getComputedStyle(document.querySelector(s)!),
          );
          return (
            now.backgroundColor !== other.backgroundColor ||
            now.outlineStyle !== other.outlineStyle ||
            now.borderBottomWidth !== other.borderBottomWidth
          );
        });
        expect(marked, station).toBe(true);
      }
      await go('overlaps', 1440, 900);
      const swatches = await page
        .locator('.overlap-colour')
        .evaluateAll((all) => new Set(all.map((e) => getComputedStyle(e).backgroundColor)).size);
      expect(swatches).toBeGreaterThan(10);
      await page.emulateMedia({ forcedColors: null });
    }, 90_000);
  });
}
