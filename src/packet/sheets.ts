import type { Plan } from '../core/plan.ts';

export interface SheetGroup {
  /** A, B, C …: pencilled on the back of each sheet with its number. */
  readonly letter: string;
  readonly paperId: string;
  readonly name: string;
  /** Names of its sheets, in the order they go through. */
  readonly sheets: readonly string[];
}

/** Every sheet that is started, by paper, in the Job's order. */
export function sheetGroups(plan: Plan): SheetGroup[] {
  return plan.job.papers.map((paper, i) => ({
    letter: String.fromCharCode(65 + (i % 26)), paperId: paper.id, name: paper.name,
    sheets: plan.edition.sheetNames.filter((s) => s.paper === paper.id).map((s) => s.id),
  }));
}

export function sheetNames(groups: readonly SheetGroup[]): { readonly name: string; readonly group: SheetGroup }[] {
  return groups.flatMap((group) => group.sheets.map((name) => ({ name, group })));
}
