import { quietTask, type Task } from '../task.ts';
import type { Targets } from './fit-score.ts';
import { quickly, type SearchSetup } from './moves.ts';
import type { LayerRecipe } from './recipe.ts';
import { bestOfPool, inkPool, type Found } from './search.ts';

/** A piece of the search that stands by itself: plain data in, plain data out, so that another thread can do it. */
export type Errand =
  | { readonly kind: 'pool'; readonly setup: SearchSetup; readonly targets: Targets; readonly seed: number; readonly starts: number; readonly kicks: number }
  /** Known plans kicked under `fewer` (edges counted, perhaps), the best settled on `targets`. */
  | { readonly kind: 'plan'; readonly setup: SearchSetup; readonly fewer: Targets; readonly targets: Targets; readonly pool: readonly (readonly LayerRecipe[])[]; readonly seed: number; readonly kicks: number };

export interface ErrandDone {
  readonly pool: readonly (readonly LayerRecipe[])[];
  readonly found?: Found;
}

/**
 * Whoever does errands: other threads, started by the caller (core starts none). What comes back is the same whoever does them.
 * `ask` throws `Cancelled` soon after the task is stopped.
 */
export interface Hands {
  ask(errand: Errand, task: Task): Promise<ErrandDone>;
}

export async function doErrand(errand: Errand, task: Task = quietTask): Promise<ErrandDone> {
  const { setup } = errand, quick = quickly(setup);
  if (errand.kind === 'pool') return { pool: await inkPool(quick, errand.targets, errand.seed, errand.starts, errand.kicks, task) };
  const pool = errand.kicks > 0 ? await inkPool(quick, errand.fewer, errand.seed, 0, errand.kicks, task, errand.pool.slice(0, 5)) : errand.pool;
  return { pool, found: await bestOfPool(setup, errand.targets, pool.slice(0, 4), task) };
}

/** Asks for all of them at once where there are hands, and gives their answers in turn; without hands each is done when its turn comes. */
export function askedFor(errands: readonly Errand[], task: Task, hands?: Hands): (() => Promise<ErrandDone>)[] {
  if (!hands) return errands.map((errand) => () => doErrand(errand, task));
  const asked = errands.map((errand) => hands.ask(errand, task));
  // Stopped while an earlier answer is waited for, the later ones are nobody's to catch.
  for (const answer of asked) answer.catch(() => undefined);
  return asked.map((answer) => () => answer);
}
