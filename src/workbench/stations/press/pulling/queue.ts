import { orderInRun, type CountState } from '../../../../core/edition/index.ts';
import type { PlannedLayer } from '../../../../core/plan/index.ts';
import type { ShownPlan } from '../../../engine/protocol.ts';

export type SheetState = 'waiting' | 'done' | 'lost' | 'lostBefore';

export interface QueuedSheet {
  readonly id: string;
  readonly paper: string;
  readonly state: SheetState;
}

/** The sheets of one run in their order, and where each stands. */
export function queueOf(plan: ShownPlan, layer: PlannedLayer, count: CountState): readonly QueuedSheet[] {
  const { sheets } = plan.edition;
  if (!sheets) return [];
  return queueOfRun(orderInRun(sheets, layer.run - 1), layer.id, count);
}

export function queueOfRun(
  sheets: readonly { readonly id: string; readonly paper: string }[],
  run: string,
  count: CountState,
): readonly QueuedSheet[] {
  const spoiled = new Map(count.sheets.map((sheet) => [sheet.sheet, sheet.faults.map((fault) => fault.run)]));
  const pulled = new Set(count.runs.find((one) => one.run === run)?.sheets ?? []);
  return sheets.map(({ id, paper }): QueuedSheet => {
    const lost = spoiled.get(id) ?? [];
    return { id, paper, state: lost.includes(run) ? 'lost' : lost.length > 0 ? 'lostBefore' : pulled.has(id) ? 'done' : 'waiting' };
  });
}

/** The run to stand at: the first with a sheet to pull, else the last. */
export function runToPull(plan: ShownPlan, count: CountState): PlannedLayer | undefined {
  return plan.layers.find((layer) => hasToPull(plan, layer, count)) ?? plan.layers.at(-1);
}

/** Whether every run was counted to its last sheet. */
export function allPulled(plan: ShownPlan, count: CountState): boolean {
  return count.runs.some((run) => run.sheets.length > 0) && !plan.layers.some((layer) => hasToPull(plan, layer, count));
}

function hasToPull(plan: ShownPlan, layer: PlannedLayer, count: CountState): boolean {
  return queueOf(plan, layer, count).some((sheet) => sheet.state === 'waiting');
}
