import { say, sentences, type Saying } from '../../words/say.ts';
import type { ReadingKind } from './types.ts';

export interface ModelBand {
  /** ΔE00 within which about two thirds of overlaps fall. */
  readonly usual: number;
  /** ΔE00 that an overlap seldom exceeds. */
  readonly worst: number;
  readonly note: Saying;
}

/**
 * How far the model itself may be off, by the worst kind of reading used and the number of inks on top of each other:
 * OPTICS section 5's promises (trial on the public overprint data), taken to grow with the layers and to fall to the
 * reading's own doubt for a single ink, which is shown as read.
 */
export function modelBand(kind: ReadingKind, layers: number): ModelBand {
  const [usualAtThree, worstAtThree, from] =
    kind === 'spectrum'
      ? ([2, 4, 'ink.bandOfSpectra'] as const)
      : kind === 'photo'
        ? ([6, 12, 'ink.bandOfPhotographs'] as const)
        : ([4, 9, 'ink.bandOfColours'] as const);
  const own = kind === 'photo' ? 3 : 0.5;
  const share = layers <= 1 ? 0 : Math.min(1.4, 0.75 + 0.125 * (layers - 1));
  return {
    usual: Math.max(own, usualAtThree * share),
    worst: Math.max(2 * own, worstAtThree * share),
    note: sentences(say(from), say('ink.bandFromTrials')),
  };
}
