import type { Spectrum } from '../colour/index.ts';
import { filmOf } from './film.ts';
import { overlapColours, overlapSpectra, type OverlapColours } from './overlaps.ts';
import type { Film, Ink, Surface } from './types.ts';

export interface ReachAsk {
  readonly paper: Spectrum;
  readonly surface: Surface;
  /** Films of all layers, first down first; null where the open layer lies. */
  readonly films: readonly (Film | null)[];
  readonly inks: readonly { readonly id: string; readonly ink: Ink }[];
  readonly strengths?: readonly number[];
  readonly deposit?: number;
}

export interface ReachStep extends OverlapColours {
  readonly ink: string;
  readonly strength: number;
}

/** What an open layer can do: every overlap that follows for each ink and strength tried in it. */
export function layerReach(ask: ReachAsk): ReachStep[] {
  const strengths = ask.strengths ?? [1, 0.5, 0.25, 0.125, 0.0625];
  return ask.inks.flatMap(({ id, ink }) => strengths.map((strength): ReachStep => {
    const open = filmOf(ink, strength, ask.deposit ?? 1);
    return { ink: id, strength, ...overlapColours(overlapSpectra(ask.paper, ask.films.map((f) => f ?? open), ask.surface)) };
  }));
}
