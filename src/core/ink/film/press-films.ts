import type { ReadingKind } from '../types.ts';

/** What is known of how the films were laid: each dry before the next (by hand), one onto another still wet (on a machine), or nothing. */
export type FilmsLie = 'dried-between' | 'wet-on-wet' | 'unknown';

export interface TrappingKnown {
  /** A film on ink lies so many times as thick as on paper. */
  readonly trapping: number;
  /** Its doubt. */
  readonly sigma: number;
}

/**
 * Trapping before anything is read, with its doubt. Chosen on measured overprints (docs/optics.md 5): dried films lie nearly as thick
 * on ink as on paper, wet ones three quarters. A smoothest spectrum absorbs a little beside its ink's true band, which trapping makes
 * good too: where spectra were read, films lie thicker.
 */
export function trappingKnown(films: FilmsLie, kind: ReadingKind): TrappingKnown {
  const spectra = kind === 'spectrum';
  switch (films) {
    case 'dried-between':
      return spectra ? { trapping: 0.95, sigma: 0.04 } : { trapping: 0.85, sigma: 0.12 };
    case 'wet-on-wet':
      return spectra ? { trapping: 0.84, sigma: 0.06 } : { trapping: 0.76, sigma: 0.05 };
    case 'unknown':
      return spectra ? { trapping: 0.9, sigma: 0.07 } : { trapping: 0.8, sigma: 0.06 };
  }
}
