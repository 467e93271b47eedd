import { overlapRamp } from '../../../core/asks/index.ts';
import type { PlannedOverlap } from '../../../core/plan/index.ts';
import type { ShownPaper, ShownPlan } from '../../engine/protocol.ts';
import { words } from '../../store/words.ts';

interface Shown {
  readonly background: string;
  /** What the ramp runs through; null: one flat colour. */
  readonly ramp: string | null;
}

/** An overlap's swatch: a ramp where a run of tone lies in it. */
export function swatchOf(plan: Pick<ShownPlan, 'layers'>, paper: Pick<ShownPaper, 'tones'>, overlap: PlannedOverlap): Shown {
  const ramp = overlapRamp(paper, overlap);
  if (!ramp) return { background: overlap.srgb, ramp: null };
  const name = plan.layers.find((l) => l.id === ramp.layerId)?.name ?? ramp.layerId;
  return { background: `linear-gradient(to right, ${ramp.steps.join(', ')})`, ramp: words().overlaps.ramp(name) };
}
