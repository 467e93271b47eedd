import type { Job } from '../../../job/index.ts';

/** A reading of layers that all lay solid: what films are learned from. The others are steps of wedges and fields of several tones. */
export function isSolid({ coverages }: Pick<Job['proofReadings'][number], 'coverages'>): boolean {
  return coverages === undefined || coverages.every((c) => c === 1);
}
