import type { Plan } from '../core/plan.ts';

export interface SheetGroup {
  /** A, B, C …: pencilled on the back of each sheet with its number. */
  readonly letter: string;
  readonly paperId: string;
  readonly name: string;
  readonly count: number;
  /** Good sheets wanted of these, with proofs. */
  readonly wanted: number | null;
}

/** Every sheet that is started, by paper, in the Job's order. */
export function sheetGroups(plan: Plan): SheetGroup[] {
  return plan.job.papers.map((paper, i) => {
    const planned = plan.edition.sheets?.papers.find((p) => p.paperId === paper.id);
    return { letter: String.fromCharCode(65 + (i % 26)), paperId: paper.id, name: paper.name, count: planned?.start ?? paper.count, wanted: planned?.wanted ?? null };
  });
}

export function sheetNames(groups: readonly SheetGroup[]): { readonly name: string; readonly group: SheetGroup }[] {
  return groups.flatMap((group) => Array.from({ length: group.count }, (_, i) => ({ name: `${group.letter}${i + 1}`, group })));
}
