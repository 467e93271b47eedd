import { deltaE00 } from '../../colour/index.ts';
import type { Job } from '../../job/index.ts';
import type { PlannedOverlap } from '../../plan/index.ts';

/** A colour that somebody wants of an overlap, beside what the print makes of it now. */
export interface WantedHere {
  readonly wanted: Job['wanted'][number];
  /** null: no such overlap, as long as one of its runs is open or left out. */
  readonly now: PlannedOverlap | null;
  readonly deltaE: number | null;
}

/** The wish for one overlap against the overlaps of a paper as planned. Overlaps are told apart by their set of runs. */
export function wantedHere(wanted: Job['wanted'][number], overlaps: readonly PlannedOverlap[]): WantedHere {
  const ids = new Set(wanted.layers);
  const now = overlaps.find((o) => o.layers.length === ids.size && o.layers.every((id) => ids.has(id))) ?? null;
  return { wanted, now, deltaE: now && deltaE00(now.lab, wanted.lab) };
}
