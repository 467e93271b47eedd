import type { JobLayer } from '../../../core/job/index.ts';
import type { PlannedLayer } from '../../../core/plan.ts';
import { words } from '../../words/index.ts';
import type { Bench } from '../../store/bench.ts';

/** What every part beside the stencil gets. */
export interface PartProps {
  readonly bench: Bench;
  readonly layer: JobLayer;
  readonly planned: PlannedLayer;
}

/** Below 2, colours side by side are hard to tell apart; from 5 a glance does (common practice). */
export function costInWords(delta: number): string {
  const w = words().stencils;
  return delta < 2 ? w.costNone : delta < 5 ? w.costSome : w.costMuch;
}
