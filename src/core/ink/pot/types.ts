import type { Lab, Spectrum } from '../../colour/index.ts';
import type { Ink, Place, Surface } from '../types.ts';

export interface ShelfPot {
  readonly id: string;
  readonly name: string;
  readonly ink: Ink;
  readonly densityGPerMl: number;
  /** Grams at hand; left out: as much as is wanted. */
  readonly grams?: number;
}

/** What was weighed into the pot: ids of the shelf. */
export interface PotContent {
  readonly id: string;
  readonly grams: number;
}

/** One drawdown of the pot, and what had been added to it since the one before. */
export interface PotRound {
  readonly added: readonly PotContent[];
  /** Measured reflectance of the drawdown over the ground. */
  readonly reading: Spectrum;
}

export interface PotAsk {
  readonly wanted: Lab;
  readonly ground: Spectrum;
  readonly surface: Surface;
  /** As first mixed. */
  readonly contents: readonly PotContent[];
  /** First to last; the first has nothing added. The last one says what is in the pot now. */
  readonly rounds: readonly PotRound[];
  readonly shelf: readonly ShelfPot[];
  /** ΔE00 to be reached. */
  readonly within: number;
  /** Grams that the run still needs; more than that in the pot is waste. */
  readonly needGrams?: number;
  /** Kinds of addition at most; 3 when left out and at most; a third only where two don't do. */
  readonly mostAdditions?: number;
  /** The pot, for problems: `layers[#sky].ink`. */
  readonly place?: Place;
}
