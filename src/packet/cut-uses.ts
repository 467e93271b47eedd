import type { CutUse, Plan } from '../core/plan/index.ts';
import { say, sentences, type Saying } from '../words/index.ts';
import { sideOf } from './pages/words.ts';

type PlannedCut = Plan['cuts'][number];

/** Run by run what a cut's sheets are for and what becomes of them. Empty where one sheet serves one run only. */
export function sayUses(cut: PlannedCut): Saying[] {
  if (cut.timesToCut === 1 && cut.uses.length < 2) return [];
  return cut.uses.map((use) => sentences(sayUse(use), keep(use), use.border === 'tape-on-edge' && say('cutPages.noBorder')));
}

function sayUse({ run, side, sheets: list, after, againInRun }: CutUse): Saying {
  const values = { run, side: sideOf(side), sheets: sheets(list) };
  if (after === 'spent') return say('cutPages.useSpent', values);
  return after === 'wash' && againInRun !== undefined
    ? say('cutPages.useWashed', { ...values, again: againInRun })
    : say('cutPages.use', values);
}

function sheets(list: readonly number[]): Saying {
  const [first, last] = [list[0], list[list.length - 1]];
  if (list.length === 1) return say('cutPages.oneSheet', { n: first });
  return say(list.length === 2 ? 'cutPages.twoSheets' : 'cutPages.manySheets', { first, last });
}

function keep({ side, keepForRun }: CutUse): Saying | undefined {
  if (keepForRun === undefined) return undefined;
  return say(side === 'window' ? 'cutPages.keepPiece' : 'cutPages.keepSurround', { run: keepForRun });
}
