import { equal, match, ok } from 'node:assert/strict';
import type { Page } from 'playwright-core';
import { settled } from './bench-page.ts';

/** Whoever watches: what is begun, and every key once it has been pressed. */
export interface Watching {
  readonly onChapter?: (name: string) => Promise<void> | void;
  readonly onKey?: (key: string) => Promise<void> | void;
}

/** From the empty bench to the packet with keys alone. Throws where they don't lead on. */
export async function byKeys(page: Page, url: string, watching: Watching = {}): Promise<void> {
  const { onChapter = () => undefined, onKey = () => undefined } = watching;
  /** What has the keys, as it is read out. */
  const focused = (): Promise<string> =>
    page.evaluate(() => {
      const here = document.activeElement as HTMLElement & { labels?: NodeListOf<HTMLElement> };
      return (here.ariaLabel ?? here.labels?.[0]?.textContent ?? here.textContent ?? '').replace(/\s+/g, ' ').trim();
    });

  /** Presses Tab until what is named has the keys, and is in sight. */
  async function tabTo(name: RegExp, most = 120): Promise<void> {
    const passed: string[] = [];
    for (let i = 0; i < most; i++) {
      await press('Tab');
      const now = await focused();
      passed.push(now.slice(0, 30));
      if (!name.test(now)) continue;
      ok(await page.evaluate(() => document.activeElement!.checkVisibility()), `${now} has the keys and can't be seen`);
      return;
    }
    throw new Error(`${String(name)} can't be reached with Tab: ${passed.join(' | ')}`);
  }
  const press = async (key: string): Promise<void> => {
    await page.keyboard.press(key);
    await onKey(key);
  };

  await onChapter('The empty bench');
  await page.goto(url);
  await page.locator('.empty-bench').waitFor();
  await tabTo(/^Title$/);
  await press('Control+A');
  await page.keyboard.type('By keys');
  await onKey('By keys');
  await tabTo(/^Start$/);
  await press('Enter');
  await page.locator('.forms').waitFor();
  await onChapter('A shape, and its window as a run');
  await tabTo(/^Make a shape$/);
  await press('Enter');
  await tabTo(/^Circle$/);
  await press('Enter');
  // What a pointer drags is moved by arrows.
  await tabTo(/^Circle, added/);
  await press('ArrowRight');
  await press('Shift+ArrowUp');
  match(await focused(), new RegExp('middle at 91 mm, 110 mm'));
  await tabTo(/^Print its window$/);
  await press('Enter');

  await onChapter('The laydown: an ink and its strength');
  await tabTo(/^Laydown/);
  await press('Enter');
  await page.locator('.rack [data-layer]').waitFor();
  match(await focused(), /^Laydown/);
  await tabTo(/^Go to the station$/);
  await press('Enter');
  await tabTo(/ink/i);
  await press('ArrowDown');
  await tabTo(/^Strength/);
  const strength = page.locator('.rack input[type=range]');
  const was = Number(await strength.inputValue());
  await press('ArrowLeft');
  ok(Number(await strength.inputValue()) < was);
  await settled(page);

  await onChapter('What opens takes the keys and gives them back');
  // What opens takes the keys, Escape closes it and gives them back.
  for (const name of ['Versions', 'Words', 'Open']) {
    await tabTo(new RegExp(`^${name}$`));
    await press('Enter');
    await page.locator('#drawer:focus').waitFor();
    await press('Escape');
    await page.locator('#drawer[hidden]').waitFor({ state: 'attached' });
    equal(await focused(), name);
  }

  await onChapter('A stencil that is cut stays as it is');
  // A stencil that is cut stays: a change that would touch it asks first, and Escape leaves it.
  await tabTo(/^Stencils/);
  await press('Enter');
  await tabTo(/^stencil cut$/i);
  await press('Space');
  await tabTo(/^Forms/);
  await press('Enter');
  await tabTo(/^Circle, added/);
  await press('ArrowRight');
  await page.locator('[role=alertdialog]:focus').waitFor();
  await press('Escape');
  match(await focused(), new RegExp('middle at 91 mm'));

  await onChapter('The packet');
  await tabTo(/^Print packet$/);
  await press('Enter');
  await page.locator('#drawer:focus').waitFor();
  await tabTo(/^Print packet$/);
  await press('Enter');
  await page.getByRole('button', { name: 'Packet as PDF' }).waitFor({ timeout: 60_000 });
  await tabTo(/^Packet as PDF$/);
  await onChapter('Back at the bench');
  await press('Escape');
  equal(await focused(), 'Print packet');
}
