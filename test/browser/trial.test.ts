import { createCanvas } from '@napi-rs/canvas';
import { writeFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { onPage } from './on-page.ts';
import type { BenchServer } from './bench-page.ts';

let page: Page;
let server: BenchServer;
const complaints: string[] = [];
onPage(
  (opened) => {
    ({ page, server } = opened);
  },
  (text) => complaints.push(text),
);

/** A harbour in four colours, as a drawing program writes it. */
const drawing =
  '<svg xmlns="http://www.w3.org/2000/svg" width="150mm" height="200mm" viewBox="0 0 150 200"><rect width="150" height="90" fill="#7fb8d8"/>' +
  '<rect y="90" width="150" height="110" fill="#1d4f8b"/><path d="M30 95h90l-20 35h-50z" fill="#c0392b"/><circle cx="110" cy="40" r="22" fill="#f2c14e"/></svg>';

/** A found letter on a sheet of A4, photographed at a slant on a wooden table. */
function foundLetter(): Buffer {
  const canvas = createCanvas(1200, 1600);
  const on = canvas.getContext('2d');
  on.fillStyle = '#5c4a3c';
  on.fillRect(0, 0, 1200, 1600);
  on.fillStyle = '#f4f2ec';
  on.beginPath();
  for (const [x, y] of [
    [150, 140],
    [1060, 170],
    [1030, 1470],
    [130, 1440],
  ])
    on.lineTo(x, y);
  on.fill();
  on.fillStyle = '#161616';
  on.fillRect(420, 500, 130, 600);
  on.fillRect(420, 990, 360, 120);
  return canvas.toBuffer('image/png');
}

// Written down in docs/trial.md. With LAYDOWN_TRIAL naming a file, the steps and their times of this run go there.
test('a print of one’s own, from the empty bench to the packet: five runs, two papers, a found letter, in 25 actions', async () => {
  const steps: string[] = [];
  const begun = Date.now();
  const act = async (what: string, act: () => Promise<unknown>): Promise<void> => {
    await act();
    steps.push(`${steps.length + 1}. ${what} (${((Date.now() - begun) / 1000).toFixed(1)} s)`);
  };
  const button = (name: string | RegExp) => page.getByRole('button', { name });
  const bring = (kind: string, name: string, mimeType: string, buffer: Buffer): Promise<void> =>
    page.locator(`[data-bring=${kind}]`).setInputFiles({ name, mimeType, buffer });

  await page.goto(server.url);
  await act('Write the title', () => page.getByLabel('Title').fill('Harbour'));
  await act('Start, with inks to begin with', () => button('Start').last().click());
  await act('Bring a drawing of four colours', () => bring('drawing', 'harbour.svg', 'image/svg+xml', Buffer.from(drawing)));
  await act('Make 4 layers of it, one a colour', () => button(/^Make 4 layers of it/).click());
  await button(/^Cut Harbour #f2c14e/).waitFor();
  await act('Photograph of a found letter on a sheet', () => bring('photo', 'letter.png', 'image/png', foundLetter()));
  await act('Make it a form', () => button('Make it a form').and(page.locator(':enabled')).click());
  await act('A new cut of it', () => button('A new cut of it').click());
  await act('Print its window: the fifth run', () => button('Print its window').click());
  await act('Follow “Next” to the laydown', () =>
    page
      .getByRole('link', { name: /need an ink/ })
      .first()
      .click(),
  );
  for (const [run, ink] of [
    [/#7fb8d8/, 'Process cyan'],
    [/#1d4f8b/, 'Blue'],
    [/#c0392b/, 'Red'],
    [/#f2c14e/, 'Process yellow'],
    [/Letter/, 'Process black'],
  ] as const)
    await act(`Try ${ink}`, () =>
      page.getByRole('group', { name: run }).getByRole('radio', { name: ink, exact: true }).check({ force: true }),
    );
  await act('Follow “Next”: keep the pots that are tried', () =>
    page
      .locator('.header')
      .getByText(/^Keep the 5 pots/)
      .click(),
  );
  await act('Change or add papers', () => page.locator('main').getByText('Change or add papers').click());
  await act('Another paper like this', () => button('Another paper like this').click());
  await act('To the screen', () => button(/^Screen/).click());
  await act('Take a screen that holds this image', () => button('Take a screen that holds this image').click());
  const go = page.locator('.header').getByText('Nothing is missing. Print the packet.');
  await go.waitFor();
  await act('Follow “Next”: print the packet', () => go.click());
  await act('Print packet', () => page.locator('.drawer').getByRole('button', { name: 'Print packet' }).click());
  await page.locator('.print-page').first().waitFor({ timeout: 120_000 });
  steps.push(`The packet is there: ${await page.locator('.print-page').count()} pages (${((Date.now() - begun) / 1000).toFixed(1)} s)`);
  if (process.env['LAYDOWN_TRIAL']) writeFileSync(process.env['LAYDOWN_TRIAL'], `${steps.join('\n')}\n`);
  expect(steps.length - 1).toBeLessThanOrEqual(25);
  expect(Date.now() - begun).toBeLessThan(600_000);
  expect(await page.locator('.print-page').count()).toBeGreaterThan(15);
  expect(complaints).toEqual([]);
}, 240_000);
