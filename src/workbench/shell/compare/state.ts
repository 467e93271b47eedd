import { signal } from '@preact/signals';

/** A version by its number, or the job as it is on the bench. */
export type Which = 'now' | number;
export type Lie = 'beside' | 'wipe' | 'papers';
export interface Chosen {
  readonly which: Which;
  /** null: the paper in sight. */
  readonly paperId: string | null;
}

/** What is compared: kept while the page is open, so that going to a station and back changes nothing. */
export const left = signal<Chosen>({ which: 'now', paperId: null });
export const right = signal<Chosen>({ which: 'now', paperId: null });
export const lie = signal<Lie>('beside');
export const wipeShare = signal(0.5);
