import { chosen } from '../chosen.ts';
import type { ReadingKind } from '../types.ts';

/** What is known of how the films were laid: each dry before the next (by hand), one onto another still wet (on a machine), or nothing. */
export type FilmsLie = keyof typeof chosen.trapping;

export interface TrappingKnown {
  /** A film on ink lies so many times as thick as on paper. */
  readonly trapping: number;
  /** Its doubt. */
  readonly sigma: number;
  /** Doubt of how one film lies on a certain other one, besides. */
  readonly pairs: number;
}

/** Trapping before anything is read, with its doubt. */
export function trappingKnown(films: FilmsLie, kind: ReadingKind): TrappingKnown {
  return chosen.trapping[films][kind === 'spectrum' ? 'spectra' : 'colours'];
}
