import type { SheetPlan } from './sheets.ts';

export interface NamedSheet {
  /** Written in pencil on the back: `A7` is the seventh sheet of the first paper. */
  readonly id: string;
  readonly paper: string;
}

/** A name for every sheet that starts: a letter for the paper (A…Z, then AA…), a number for the sheet. */
export function nameSheets(plan: Pick<SheetPlan, 'papers'>): readonly NamedSheet[] {
  return plan.papers.flatMap((paper, i) =>
    Array.from({ length: paper.start }, (_, n): NamedSheet => ({ id: `${letters(i)}${n + 1}`, paper: paper.paperId })),
  );
}

/**
 * The order of the sheets in one run (from 0): paper by paper, the plainest first, sheets that carry an older print last
 * (they can't be replaced); papers that skip the run left out. The same order in every run, so that each dries as long.
 */
export function orderInRun(plan: Pick<SheetPlan, 'papers'>, run: number): readonly NamedSheet[] {
  const goes = new Set(plan.papers.filter((paper) => paper.runs.some((one) => one.run === run)).map((paper) => paper.paperId));
  const apart = new Set(plan.papers.filter((paper) => paper.apart).map((paper) => paper.paperId));
  const named = nameSheets(plan).filter((sheet) => goes.has(sheet.paper));
  return [...named.filter((sheet) => !apart.has(sheet.paper)), ...named.filter((sheet) => apart.has(sheet.paper))];
}

function letters(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : letters(Math.floor(index / 26) - 1) + letter;
}
