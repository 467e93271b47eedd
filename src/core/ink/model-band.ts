import { say, sentences, type Saying } from '../../words/say.ts';
import type { ReadingKind } from './types.ts';

export interface ModelBand {
  /** Standard deviations of what the model itself is off by, in steps of ΔE00: along lightness, and along chroma and hue each. */
  readonly light: number;
  readonly colour: number;
  readonly note: Saying;
}

/** Chosen so that nine overlaps in ten of measured sets lie within their band (OPTICS section 6). */
const own: Record<ReadingKind, readonly [light: number, colour: number]> = {
  spectrum: [0.9, 1.1],
  xyz: [1.6, 1.9],
  lab: [1.6, 1.9],
  photo: [1.6, 1.9],
};

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
export function modelBand(kind: ReadingKind, layers: number): ModelBand {
  const [light, colour] = layers > 1 ? own[kind] : [0, 0];
  return { light, colour, note: sentences(say(from[kind]), say('ink.bandFromTrials')) };
}
