import type { CutUse, Plan } from '../core/plan/index.ts';

type PlannedCut = Plan['cuts'][number];

/** Run by run what a cut's sheets are for and what becomes of them. Empty where one sheet serves one run only. */
export function sayUses(cut: PlannedCut): string[] {
  if (cut.timesToCut === 1 && cut.uses.length < 2) return [];
  return cut.uses.map((use) => `Run ${use.run}: ${use.side} of ${sheets(use)}${fate(use)}.`);
}

function sheets({ sheets: list }: CutUse): string {
  const first = list[0],
    last = list[list.length - 1];
  if (list.length === 1) return `sheet ${first}`;
  return list.length === 2 ? `sheets ${first} and ${last}` : `sheets ${first} to ${last}, one after the other`;
}

function fate(use: CutUse): string {
  const keep =
    use.keepForRun === undefined
      ? ''
      : `; keep the ${use.side === 'window' ? 'piece that drops out' : 'sheet around it'} flat for run ${use.keepForRun}`;
  if (use.after === 'spent') return `, then spent${keep}`;
  return use.after === 'wash' ? `, then wash it and keep it for run ${use.againInRun}${keep}` : keep;
}
