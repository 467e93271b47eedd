import type { JobLayer } from '../../../core/job/index.ts';
import type { PlannedLayer } from '../../../core/plan.ts';
import type { Bench } from '../../store/bench.ts';

/** What every part beside the stencil gets. */
export interface PartProps {
  readonly bench: Bench;
  readonly layer: JobLayer;
  readonly planned: PlannedLayer;
}
