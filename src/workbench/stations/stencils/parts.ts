import type { JobLayer } from '../../../core/job/index.ts';
import type { PlannedLayer } from '../../../core/plan/index.ts';
import { words } from '../../store/words.ts';
import { sayArea, sayNumber, type LengthUnits } from '../../ui/fields/units.ts';
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

/** A place of a few millimetres is said in mm²; sayArea begins at square centimetres. */
export function sayPatch(areaMm2: number, units: LengthUnits): string {
  return units === 'mm' && areaMm2 < 100 ? `${sayNumber(areaMm2, areaMm2 < 10 ? 1 : 0, true)}\u00a0mm²` : sayArea(areaMm2, units);
}
