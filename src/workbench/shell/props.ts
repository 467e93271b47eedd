import type { Offline } from '../engine/offline/install.ts';
import type { Bench } from '../store/bench.ts';
import type { Keeper } from '../store/keep/keep.ts';
import type { Keeping } from '../store/keep/keeping.ts';

/** What the shell and its drawers are given. */
export interface ShellProps {
  readonly bench: Bench;
  readonly keeping: Keeping;
  readonly keeper: Keeper;
  readonly offline: Offline;
}
