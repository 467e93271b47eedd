import { fillCover, startCover } from './cover.ts';
import { beforePages } from './before.ts';
import { cutPages } from './cut.ts';
import { dayPages } from './day.ts';
import { documentationPage } from './documentation.ts';
import { handoutPages } from './handout.ts';
import { labelPages } from './labels.ts';
import { laydownPage } from './laydown.ts';
import { mixingPages } from './mixing.ts';
import { overlapPages } from './overlaps.ts';
import { pressPages } from './press.ts';
import { recordPages } from './record.ts';
import { beginStep, writeFeet, type Setting } from './setting.ts';
import { registerPage } from './register.ts';
import { setUpPages } from './set-up.ts';
import { sheetLabelPages } from './sheet-labels.ts';
import { pencilPages } from './pencil.ts';
import { stockPages } from './stock.ts';
import { stopsPages } from './stops.ts';
import { testSheetPages } from './test-sheet.ts';
import type { Task } from '../../core/task.ts';

/** All pages, in the order of the work. One line a kind of page. */
export async function makePages(setting: Setting, task: Task): Promise<void> {
  const cover = startCover(setting);
  const printing = setting.plan.layers.length > 0;
  const parts: readonly (readonly [number | null, string, string, () => void | Iterable<unknown>])[] = [
    [null, '', '', () => beforePages(setting)],
    [
      null,
      '',
      '',
      () => {
        if (printing) laydownPage(setting);
      },
    ],
    [
      1,
      'Mix',
      'a card and a label for each pot',
      function* () {
        if (!printing) return;
        yield* mixingPages(setting);
        labelPages(setting);
      },
    ],
    [
      2,
      'Cut',
      'stencils at true size, which side faces the mesh',
      function* () {
        yield* cutPages(setting);
        yield* stockPages(setting);
      },
    ],
    [
      3,
      'Set up',
      'gap, risers, tape, stops, register',
      function* () {
        yield* setUpPages(setting);
        yield* stopsPages(setting);
        registerPage(setting);
        yield* testSheetPages(setting);
      },
    ],
    [
      4,
      'Print',
      'the day, and a card for each run',
      function* () {
        yield* dayPages(setting);
        yield* pressPages(setting);
      },
    ],
    [
      5,
      'Number',
      'each sheet’s life, its number, where it went',
      function* () {
        yield* recordPages(setting);
        yield* pencilPages(setting);
        yield* sheetLabelPages(setting);
      },
    ],
    [6, 'Keep', 'what this print is, for whoever owns it later', () => documentationPage(setting)],
    [7, 'Look up', 'every overlap on every paper', () => overlapPages(setting)],
    [8, 'Teach', 'hand-out with this print’s steps, and a blank one', () => handoutPages(setting)],
  ];
  for (let i = 0; i < parts.length; i++) {
    const [step, title, what, make] = parts[i],
      before = setting.book.pages.length;
    if (step !== null) beginStep(setting, step, title, what);
    // A stop is heeded after every page, not only after every kind of page.
    const pages = make()?.[Symbol.iterator]();
    while (pages && pages.next().done !== true) await task.pause();
    // A step without a page is not named on the cover.
    if (step !== null && setting.book.pages.length === before) setting.steps.pop();
    task.report((i + 1) / (parts.length + 1), title);
    await task.pause();
  }
  fillCover(setting, cover);
  writeFeet(setting);
}
