import { expect } from 'vitest';
import type { Driver } from './driver.ts';

/** In the page: an expression that holds before long. */
const comes = (condition: string): string =>
  `new Promise((resolve, reject) => { const until = Date.now() + 20000; const look = () => { let is; try { is = ${condition}; } catch { is = null; } if (is) resolve(is); else if (Date.now() > until) reject(new Error(${JSON.stringify(condition)})); else setTimeout(look, 30); }; look(); })`;
const go = async (driver: Driver, station: string): Promise<void> => {
  await driver.look(`location.hash = ${JSON.stringify(station)}`);
  await driver.look(comes(`document.querySelector('main[aria-busy=false] .${station}')`));
};
const undo = `document.querySelector('.undo-back').getAttribute('aria-label')`;

interface Seen {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly pageScale: number;
  /** The middle of the view. */
  readonly middle: readonly [number, number];
}
const sheet = `(() => { const d = document.querySelector('.zoom-drawing').getBoundingClientRect(); const v = document.querySelector('.zoom-view').getBoundingClientRect(); return { left: d.left, top: d.top, width: d.width, pageScale: visualViewport.scale, middle: [v.left + v.width / 2, v.top + v.height / 2] }; })()`;
/** What a touchpad tells of two fingers in the engine that sends no turns of a wheel for them. */
const gesture = ([x, y]: readonly [number, number]): string =>
  `(() => { const view = document.querySelector('.zoom-view'); for (const [type, scale] of [['gesturestart', 1], ['gesturechange', 1.5], ['gesturechange', 2.2], ['gestureend', 2.2]]) view.dispatchEvent(Object.assign(new Event(type, { bubbles: true, cancelable: true }), { scale, clientX: ${x}, clientY: ${y} })); })()`;

/** At the size of a tablet held upright: it looks as in Chromium, two fingers bring the sheet nearer, one carries a form, and keys on the screen leave the field in sight. */
export async function byHand(driver: Driver, otherwise: (station: string) => Promise<number>, most: number): Promise<void> {
  const size = await driver.look<{ width: number; height: number }>(`({ width: innerWidth, height: innerHeight })`);
  await driver.resize(820, 1180);
  await driver.look(comes(`innerWidth === 820`));
  for (const station of ['inks', 'laydown', 'forms']) {
    await go(driver, station);
    expect(await driver.look(`document.documentElement.scrollWidth`), station).toBeLessThanOrEqual(820);
    expect(await otherwise(station), `${station} at 820 px`).toBeLessThan(most);
  }

  const before = await driver.look<Seen>(sheet);
  const undone = await driver.look(undo);
  const [x, y] = before.middle;
  const way = (side: number): (readonly [number, number])[] => [40, 60, 80, 100].map((by) => [x + side * by, y] as const);
  if (driver.fingers) await driver.touch([way(-1), way(1)]);
  else await driver.look(gesture([x, y]));
  await driver.look(comes(`document.querySelector('.zoom-drawing').getBoundingClientRect().width > ${1.8 * before.width}`));
  const after = await driver.look<Seen>(sheet);
  expect(after.pageScale).toBe(1);
  expect(Math.abs((x - after.left) / after.width - (x - before.left) / before.width)).toBeLessThan(0.03);
  expect(await driver.look(undo), 'two fingers carry nothing').toBe(undone);

  await driver.look(`document.querySelector('.zoom-bar [aria-pressed]').click()`);
  await driver.look(comes(`document.querySelector('.zoom-fit') && ${sheet}.width < ${1.1 * before.width}`));
  const from = await driver.look<[number, number]>(
    `(() => { const thing = document.querySelector('[data-placed="0"]'); const box = thing.getBoundingClientRect(); for (let y = box.top + 4; y < box.bottom; y += 3) for (let x = box.left + 4; x < box.right; x += 3) if ([[0, 0], [5, 0], [-5, 0], [0, 5], [0, -5]].every(([a, b]) => thing.contains(document.elementFromPoint(x + a, y + b)))) return [x, y]; return null; })()`,
  );
  const scrolled = await driver.look(`scrollY`);
  await driver.touch([[0, 1, 2, 3, 4].map((i) => [from[0] + 8 * i, from[1] + 6 * i] as const)]);
  await driver.look(comes(`/moved/.test(${undo})`));
  expect(await driver.look(`scrollY`)).toBe(scrolled);
  await driver.look(`document.querySelector('.undo-back').click()`);

  await go(driver, 'laydown');
  await driver.look(`[...document.querySelectorAll('.strength .number-field input')].at(-1).focus()`);
  await driver.resize(820, 540);
  // It is in sight, and nothing lies over it.
  await driver.look(
    comes(
      `document.documentElement.classList.contains('screen-keys') && (() => { const box = document.activeElement.getBoundingClientRect(); return document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2) === document.activeElement; })()`,
    ),
  );
  await driver.look(`document.activeElement.blur()`);
  await driver.resize(820, 1180);
  await driver.look(comes(`!document.documentElement.classList.contains('screen-keys')`));
  await driver.resize(size.width, size.height);
}
