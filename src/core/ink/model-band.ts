import { say, sentences, type Saying } from '../../words/say.ts';
import type { ReadingKind } from './types.ts';

export interface ModelBand {
  /** Standard deviations of what the model itself is off by, in steps of ΔE00: along lightness, and along chroma and hue each. */
  readonly light: number;
  readonly colour: number;
  readonly note: Saying;
}

/** Chosen so that nine overlaps in ten of measured sets lie within their band, each set left out in turn (docs/optics.md 6). */
const own: Record<ReadingKind, { readonly colours: Spread; readonly withBlack: Spread }> = {
  spectrum: { colours: [0.5, 0.6], withBlack: [0.8, 1] },
  xyz: { colours: [1, 1.2], withBlack: [1.5, 1.8] },
  lab: { colours: [1, 1.2], withBlack: [1.5, 1.8] },
  photo: { colours: [3, 3.6], withBlack: [2.4, 2.9] },
};
type Spread = readonly [light: number, colour: number];

const from = {
  spectrum: 'ink.bandOfSpectra',
  xyz: 'ink.bandOfColours',
  lab: 'ink.bandOfColours',
  photo: 'ink.bandOfPhotographs',
} as const;

/**
 * How far the model itself may be off at an overlap, by the worst kind of reading used, beside what is sampled (readings, films,
 * gloss, trapping, spectra). Bare paper and a single ink are as read.
 */
export function modelBand(kind: ReadingKind, layers: number, black = false): ModelBand {
  const [light, colour] = layers > 1 ? own[kind][black ? 'withBlack' : 'colours'] : [0, 0];
  return { light, colour, note: sentences(say(from[kind]), say('ink.bandFromTrials')) };
}
