import type { PlannedOverlap } from '../../../core/plan/index.ts';
import { words } from '../../store/words.ts';
import type { ShownPlan } from '../../engine/protocol.ts';

export function nameOverlap(plan: ShownPlan, overlap: PlannedOverlap): string {
  const names = overlap.layers.map((id) => plan.layers.find((l) => l.id === id)?.name ?? id);
  return names.length > 0 ? words().overlaps.films(names) : words().overlaps.barePaper;
}

/** Share of the image that the overlap covers. */
export function shareOf(plan: ShownPlan, overlap: PlannedOverlap): number {
  return overlap.areaMm2 / (plan.job.image.widthMm * plan.job.image.heightMm);
}
