import type { ComponentType } from 'preact';
import type { Bench } from '../store/bench.ts';

export interface StationProps {
  readonly bench: Bench;
}

/** One station of the bench: a folder in stations/, a line in stations/index.ts. */
export interface Station {
  /** Used in the address: #laydown. */
  readonly id: string;
  title(): string;
  /** What it still needs (null: nothing) and what it already knows; shown under its name. Read from signals, so it keeps itself current. */
  state(bench: Bench): { readonly needs: string | null; readonly knows: string };
  readonly View: ComponentType<StationProps>;
}
