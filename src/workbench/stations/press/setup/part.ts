import type { Bench } from '../../../store/bench.ts';
import type { ShownPlan } from '../../../engine/protocol.ts';

export interface PartProps {
  readonly bench: Bench;
  readonly plan: ShownPlan;
}
