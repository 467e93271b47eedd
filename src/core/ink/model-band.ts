import { say, sentences, type Saying } from '../../words/say.ts';
import { chosen } from './chosen.ts';
import type { ReadingKind } from './types.ts';

export interface ModelBand {
  /** Standard deviations of what the model itself is off by, in steps of ΔE00: along lightness, and along chroma and hue each. */
  readonly light: number;
  readonly colour: number;
  readonly note: Saying;
}

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
  const of = chosen.model[kind === 'lab' || kind === 'xyz' ? 'colours' : kind];
  const { light, colour } = layers > 1 ? of[black ? 'withBlack' : 'colours'] : { light: 0, colour: 0 };
  return { light, colour, note: sentences(say(from[kind]), say('ink.bandFromTrials')) };
}
