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
import { proofStripPages } from './proof-strip.ts';
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
import { say, type Saying } from '../../words/index.ts';

/** A kind of page: the step of the work that begins with it (none of its own: null), and what makes it. */
type Part = readonly [
  step: { readonly step: number; readonly title: Saying; readonly what: Saying } | null,
  make: () => void | Iterable<unknown>,
];

/** All pages, in the order of the work. One line a kind of page. */
export async function makePages(setting: Setting, task: Task): Promise<void> {
  const cover = startCover(setting);
  const printing = setting.plan.layers.length > 0;
  const parts: readonly Part[] = [
    [null, () => beforePages(setting)],
    [
      null,
      () => {
        if (printing) laydownPage(setting);
      },
    ],
    [
      { step: 1, title: say('packet.mix'), what: say('packet.mixIs') },
      function* () {
        if (!printing) return;
        yield* mixingPages(setting);
        labelPages(setting);
      },
    ],
    [
      { step: 2, title: say('packet.cut'), what: say('packet.cutIs') },
      function* () {
        yield* cutPages(setting);
        yield* stockPages(setting);
      },
    ],
    [
      { step: 3, title: say('packet.setUp'), what: say('packet.setUpIs') },
      function* () {
        yield* setUpPages(setting);
        yield* stopsPages(setting);
        registerPage(setting);
        yield* proofStripPages(setting);
        yield* testSheetPages(setting);
      },
    ],
    [
      { step: 4, title: say('packet.print'), what: say('packet.printIs') },
      function* () {
        yield* dayPages(setting);
        yield* pressPages(setting);
      },
    ],
    [
      { step: 5, title: say('packet.number'), what: say('packet.numberIs') },
      function* () {
        yield* recordPages(setting);
        yield* pencilPages(setting);
        yield* sheetLabelPages(setting);
      },
    ],
    [{ step: 6, title: say('packet.keep'), what: say('packet.keepIs') }, () => documentationPage(setting)],
    [{ step: 7, title: say('packet.lookUp'), what: say('packet.lookUpIs') }, () => overlapPages(setting)],
    [{ step: 8, title: say('packet.teach'), what: say('packet.teachIs') }, () => handoutPages(setting)],
  ];
  for (let i = 0; i < parts.length; i++) {
    const [begins, make] = parts[i],
      before = setting.book.pages.length;
    if (begins) beginStep(setting, begins.step, setting.tell(begins.title), setting.tell(begins.what));
    // A stop is heeded after every page, not only after every kind of page.
    const pages = make()?.[Symbol.iterator]();
    while (pages && pages.next().done !== true) await task.pause();
    // A step without a page is not named on the cover.
    if (begins && setting.book.pages.length === before) setting.steps.pop();
    task.report((i + 1) / (parts.length + 1), begins?.title);
    await task.pause();
  }
  fillCover(setting, cover);
  writeFeet(setting);
}
