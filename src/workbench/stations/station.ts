import type { BenchStation, Lead } from '../../core/problem.ts';
import type { Bench } from '../store/bench.ts';
import { words } from '../store/words.ts';
import type { Later } from '../ui/later.tsx';

export interface StationProps {
  readonly bench: Bench;
}

/** What a station says while the first Plan of a job is made, if all it says comes of the Plan. */
export const unplanned = (bench: Bench): { readonly needs: null; readonly knows: string } => ({
  needs: null,
  knows: bench.working.value ? words().shell.working : '',
});

/** One station of the bench: a folder in stations/, a line in stations/index.ts. */
export interface Station {
  /** Used in the address: #laydown. */
  readonly id: BenchStation;
  /** The station that it belongs to, and is reached from. */
  readonly within?: BenchStation;
  title(): string;
  /** What it still needs (null: nothing) and what it already knows; shown under its name. Read from signals, so it keeps itself current. */
  state(bench: Bench): { readonly needs: string | null; readonly knows: string };
  /** Lays open the part and takes in hand the thing that a problem leads to. */
  lookAt?(lead: Lead): void;
  /** What it shows, fetched when it is first asked for: what stands in this file is on the page from the start. */
  readonly view: Later<StationProps>;
}
