import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { seeded } from '../../src/core/random.ts';
import { smallJob } from '../../src/packet/packet-jobs.ts';
import { openProfile, serveBench } from '../../test/browser/bench-page.ts';
import type { Wish } from './inputs.ts';
import { Tally } from './tally.ts';

const slider = '[data-layer=ring] input[type=range]';
const sharesTried = 80;

/**
 * Kills the page (its process, as a lack of memory does) while a pot is let down at the bench and while sheets are counted at the press, at moments drawn
 * by lot. What the page had said it keeps, and every tap that it had shown, must be there when it opens again; with full and with denied storage it must have said
 * that it keeps nothing.
 */
export async function attackBrowser({ seed, times, until }: Wish): Promise<Tally[]> {
  const random = seeded(seed);
  const edits = new Tally('browser: editing'),
    counts = new Tally('browser: counting'),
    refused = new Tally('browser: no storage');
  const base = smallJob().job;
  const server = await serveBench(smallJob({ forms: base.forms, inks: base.inks, papers: [{ ...base.papers[0], count: 400 }] }));
  const profile = mkdtempSync(join(tmpdir(), 'laydown-browser-'));
  const browser = await openProfile(profile);
  let taps = 0;
  try {
    for (let i = 0; i < times && Date.now() < until; i++) {
      const page = await browser.newPage();
      try {
        if (i % 10 === 9) await withoutStorage(page, server.url, i % 20 === 9 ? 'denied' : 'full', refused);
        else if (i % 2 === 0) await editing(page, server.url, random, edits);
        else taps = await counting(page, server.url, random, counts, taps);
      } catch (error) {
        const tally = i % 2 === 0 ? edits : counts;
        tally.dead++;
        tally.tell(`${i}: ${error instanceof Error ? error.message.split('\n')[0] : String(error)}`);
      }
      await page.close().catch(() => undefined);
    }
  } finally {
    await browser.close().catch(() => undefined);
    await server.close();
    rmSync(profile, { recursive: true, force: true });
  }
  return [edits, counts, refused];
}

async function crash(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await Promise.race([session.send('Page.crash'), page.waitForEvent('crash')]).catch(() => undefined);
}

async function editing(page: Page, url: string, random: { below(n: number): number; next(): number }, tally: Tally): Promise<void> {
  await page.goto(`${url}?job=open#laydown`);
  await page.locator(slider).waitFor({ timeout: 60_000 });
  const kept = page.getByText('Kept on this machine');
  const first = 10 + random.below(sharesTried);
  await page.locator(slider).fill(String(first));
  await page
    .waitForFunction(() => document.querySelector('.kept')?.textContent?.startsWith('Keeping') ?? true, undefined, { timeout: 300 })
    .catch(() => undefined);
  await kept.waitFor({ timeout: 20_000 });
  // And one more, which may or may not be down when the page goes.
  const second = 10 + random.below(sharesTried);
  await page.locator(slider).fill(String(second));
  await page.waitForTimeout(random.next() * 300);
  await crash(page);
  tally.tried++;
  const again = await page.context().newPage();
  await again.goto(`${url}#laydown`);
  await again.locator(slider).waitFor({ timeout: 60_000 });
  const found = Number(await again.locator(slider).inputValue());
  if (found === first || found === second) tally.survived++;
  else {
    tally.lost++;
    tally.tell(`${first} was kept and ${second} set; ${found} came back`);
  }
  await again.close();
}

/** Every tap that was shown before the kill; at most the one being written more. */
async function counting(
  page: Page,
  url: string,
  random: { below(n: number): number; next(): number },
  tally: Tally,
  before: number,
): Promise<number> {
  const counted = async (): Promise<number> => Number((await page.locator('[data-count]').getAttribute('data-count'))?.split(' ')[0] ?? -1);
  await page.goto(`${url}?job=open#pulling`);
  await page.locator('.tap-pulled').waitFor({ timeout: 60_000 });
  await page.waitForFunction(
    (n) => Number(document.querySelector('[data-count]')?.getAttribute('data-count')?.split(' ')[0]) >= n,
    before,
    { timeout: 20_000 },
  );
  let shown = await counted();
  for (let n = 1 + random.below(4); n > 0; n--) {
    await page.locator('.tap-pulled').click();
    await page.waitForFunction(
      (n) => Number(document.querySelector('[data-count]')?.getAttribute('data-count')?.split(' ')[0]) > n,
      shown,
      { timeout: 20_000 },
    );
    shown = await counted();
  }
  void page
    .locator('.tap-pulled')
    .click()
    .catch(() => undefined);
  await page.waitForTimeout(random.next() * 60);
  await crash(page);
  tally.tried++;
  const again = await page.context().newPage();
  await again.goto(`${url}?job=open#pulling`);
  await again.locator('.tap-pulled').waitFor({ timeout: 60_000 });
  await again.waitForTimeout(300);
  const found = Number((await again.locator('[data-count]').getAttribute('data-count'))?.split(' ')[0] ?? -1);
  if (found === shown || found === shown + 1) tally.survived++;
  else {
    tally.lost++;
    tally.tell(`${shown} were shown; ${found} came back`);
  }
  await again.close();
  return found;
}

async function withoutStorage(page: Page, url: string, how: 'denied' | 'full', tally: Tally): Promise<void> {
  await page.addInitScript((kind) => {
    if (kind === 'denied')
      indexedDB.open = () => {
        throw new DOMException('no', 'SecurityError');
      };
    else
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('full', 'QuotaExceededError');
      };
  }, how);
  await page.goto(`${url}?job=open#laydown`);
  await page.locator(slider).waitFor({ timeout: 60_000 });
  await page.locator(slider).fill('33');
  tally.tried++;
  const offered = page.locator('.notice', { hasText: 'Not kept' }).getByRole('button', { name: 'Save as a file' });
  const told = await offered.waitFor({ timeout: 20_000 }).then(
    () => true,
    () => false,
  );
  const [download] = told ? await Promise.all([page.waitForEvent('download'), offered.click()]) : [null];
  if (download) tally.survived++;
  else {
    tally.lost++;
    tally.tell(`${how}: nothing was said`);
  }
}
