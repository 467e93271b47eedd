import type { NumberedEdition } from '../core/edition/index.ts';
import type { Plan } from '../core/plan/index.ts';

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
    letter: String.fromCharCode(65 + (i % 26)),
    paperId: paper.id,
    name: paper.name,
    sheets: plan.edition.sheetNames.filter((s) => s.paper === paper.id).map((s) => s.id),
  }));
}

export function sheetNames(groups: readonly SheetGroup[]): { readonly name: string; readonly group: SheetGroup }[] {
  return groups.flatMap((group) => group.sheets.map((name) => ({ name, group })));
}

/** The numbers, once every run has been counted at the press; before that sheets still on their way would look rejected. */
export function finalNumbers(plan: Plan): NumberedEdition | null {
  const { counted, numbered } = plan.edition;
  return numbered && counted && plan.layers.length > 0 && plan.layers.every((l) => counted.runs.some((r) => r.run === l.id))
    ? numbered
    : null;
}
