import { buyingPages } from './ink/buying.ts';
import { fillCover, startCover } from './cover.ts';
import { beforePages } from './before.ts';
import { cutPages } from './cut/cut.ts';
import { dayPages } from './press/day.ts';
import { documentationPage } from './press/documentation.ts';
import { filmPages } from './cut/films.ts';
import { handoutPages } from './press/handout.ts';
import { lightPages } from './ink/light.ts';
import { laydownPage } from './ink/laydown.ts';
import { mixingPages } from './ink/mixing.ts';
import { groundPages, overlapPages } from './ink/overlaps.ts';
import { pressPages } from './press/press.ts';
import { proofStripPages } from './ink/proof-strip.ts';
import { recordPages } from './press/record.ts';
import { beginStep, writeFeet, type Setting } from './ink/setting.ts';
import { registerPage } from './press/register.ts';
import { setUpPages } from './press/set-up.ts';
import { sheetLabelPages } from './cut/sheet-labels.ts';
import { pencilPages } from './cut/pencil.ts';
import { stockPages } from './cut/stock.ts';
import { stopsPages } from './cut/stops.ts';
import { wedgePages } from './cut/wedge-page.ts';
import { testSheetPages } from './press/test-sheet.ts';
import type { Task } from '../../core/task.ts';
import { say, type Saying } from '../../words/index.ts';
import type { PacketPart } from '../parts.ts';

/** A part of the packet: the step of the work that begins with it, and what makes its pages. */
interface Part {
  readonly part: PacketPart;
  /** None: it is not a step of its own. */
  readonly step?: number;
  readonly title: Saying;
  readonly what: Saying;
  make(): void | Iterable<unknown>;
}

/** All parts, in the order of the work. One entry a part, one line a kind of page. */
function partsOf(setting: Setting): readonly Part[] {
  const printing = setting.plan.layers.length > 0;
  return [
    { part: 'buy', title: say('packet.buy'), what: say('packet.buyIs'), make: () => buyingPages(setting) },
    {
      part: 'mix',
      step: 1,
      title: say('packet.mix'),
      what: say('packet.mixIs'),
      *make() {
        if (printing) yield* mixingPages(setting);
      },
    },
    {
      part: 'cut',
      step: 2,
      title: say('packet.cut'),
      what: say('packet.cutIs'),
      *make() {
        yield* cutPages(setting);
        yield* stockPages(setting);
        yield* wedgePages(setting);
        yield* filmPages(setting);
      },
    },
    {
      part: 'set-up',
      step: 3,
      title: say('packet.setUp'),
      what: say('packet.setUpIs'),
      *make() {
        yield* setUpPages(setting);
        yield* stopsPages(setting);
        registerPage(setting);
      },
    },
    {
      part: 'print',
      step: 4,
      title: say('packet.print'),
      what: say('packet.printIs'),
      *make() {
        yield* dayPages(setting);
        yield* pressPages(setting);
      },
    },
    {
      part: 'number',
      step: 5,
      title: say('packet.number'),
      what: say('packet.numberIs'),
      *make() {
        yield* recordPages(setting);
        yield* pencilPages(setting);
        yield* sheetLabelPages(setting);
      },
    },
    { part: 'keep', step: 6, title: say('packet.keep'), what: say('packet.keepIs'), make: () => documentationPage(setting) },
    { part: 'look-up', step: 7, title: say('packet.lookUp'), what: say('packet.lookUpIs'), make: () => overlapPages(setting) },
    { part: 'hand-out', step: 8, title: say('packet.teach'), what: say('packet.teachIs'), make: () => handoutPages(setting) },
    { part: 'register-test', step: 3, title: say('packet.setUp'), what: say('packet.setUpIs'), make: () => testSheetPages(setting) },
    {
      part: 'light-and-grounds',
      step: 7,
      title: say('packet.lookUp'),
      what: say('packet.lookUpIs'),
      *make() {
        yield* groundPages(setting);
        if (printing) yield* lightPages(setting);
      },
    },
    { part: 'proof-strip', step: 3, title: say('packet.setUp'), what: say('packet.setUpIs'), make: () => proofStripPages(setting) },
  ];
}

export interface PagesWishes {
  readonly parts: ReadonlySet<PacketPart>;
  /** A cover, and what to weigh up before the start. */
  readonly cover: boolean;
  /** The laydown at a glance. */
  readonly laydown: boolean;
}

/** The pages of one file. */
export async function makePages(setting: Setting, task: Task, { parts, cover, laydown }: PagesWishes): Promise<void> {
  const first = cover ? startCover(setting) : null;
  if (cover) beforePages(setting);
  if (laydown && setting.plan.layers.length > 0) laydownPage(setting);
  const wanted = partsOf(setting).filter(({ part }) => parts.has(part));
  for (const [i, { part, step, title, what, make }] of wanted.entries()) {
    const before = setting.book.pages.length;
    beginStep(setting, step ?? 0, setting.tell(title), setting.tell(what));
    const under = setting.under;
    // A stop is heeded after every page, not only after every kind of page.
    const pages = make()?.[Symbol.iterator]();
    while (pages && pages.next().done !== true) await task.pause();
    // A step without a page is not named on the cover.
    if (setting.book.pages.length === before) {
      const last = setting.steps.pop();
      // What is to be bought may stand under what is to be weighed up.
      if (last && part === 'buy' && under) setting.steps.push({ ...last, firstPage: setting.book.pages.indexOf(under.frame.page) + 1 });
    }
    setting.under = null;
    task.report((i + 1) / (wanted.length + 1), title);
    await task.pause();
  }
  if (first) fillCover(setting, first);
  writeFeet(setting);
}
