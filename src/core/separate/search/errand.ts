import { makeStencil, type Stencil, type StencilRequest } from '../../stencil/index.ts';
import { quietTask, type Task } from '../../task.ts';
import { baselineFor, flatPlan, type BaselineAsk, type FlatAsk, type FlatPlan } from './baseline.ts';
import { tradeOff, type TradeOffAsk, type TradeOffPoint } from '../prepare/budget.ts';
import type { Targets } from './fit-score.ts';
import { quickly, type SearchSetup } from './moves.ts';
import { judgedAndRefitted, type Chosen, type JudgeAsk } from './judge.ts';
import type { LayerRecipe } from './recipe.ts';
import { bestOfPool, inkPool, type Found } from './search.ts';
import type { Baseline } from '../types.ts';

export type SearchErrand =
  | {
      readonly kind: 'pool';
      readonly setup: SearchSetup;
      readonly targets: Targets;
      readonly seed: number;
      readonly starts: number;
      readonly kicks: number;
    }
  /** Known plans kicked under `fewer` (edges counted, perhaps), the best settled on `targets`. */
  | {
      readonly kind: 'plan';
      readonly setup: SearchSetup;
      readonly fewer: Targets;
      readonly targets: Targets;
      readonly pool: readonly (readonly LayerRecipe[])[];
      readonly seed: number;
      readonly kicks: number;
    };

export interface StencilErrand {
  readonly kind: 'stencil';
  readonly request: StencilRequest;
}

export interface TradeOffErrand extends TradeOffAsk {
  readonly kind: 'trade-off';
}

export interface FlatErrand extends FlatAsk {
  readonly kind: 'flat';
}

export interface BaselineErrand extends BaselineAsk {
  readonly kind: 'baseline';
}

/** One plan's inks judged with real masks, and refitted to them. */
export interface JudgeErrand extends JudgeAsk {
  readonly kind: 'judge';
}

/** A piece of a separation that stands by itself: plain data in, plain data out, so that another thread can do it. */
export type Errand = SearchErrand | JudgeErrand | StencilErrand | TradeOffErrand | FlatErrand | BaselineErrand;

export interface SearchDone {
  readonly pool: readonly (readonly LayerRecipe[])[];
  readonly found?: Found;
}

export interface Answers {
  readonly pool: SearchDone;
  readonly plan: SearchDone;
  readonly judge: Chosen;
  readonly stencil: Stencil;
  readonly 'trade-off': readonly TradeOffPoint[];
  readonly flat: FlatPlan;
  readonly baseline: Baseline;
}

/** What comes back from an errand. */
export type ErrandDone<E extends Errand = Errand> = Answers[E['kind']];

/**
 * Whoever does errands: other threads, started by the caller (core starts none). What comes back is the same whoever does them.
 * Both throw `Cancelled` soon after the task is stopped.
 */
export interface Hands {
  ask<E extends Errand>(errand: E, task: Task): Promise<ErrandDone<E>>;
  /** Told by whoever has nothing else to do until `answer` is there: takes part in what waits to be done. */
  help?(answer: Promise<unknown>, task: Task): Promise<void>;
}

export async function doErrand<E extends Errand>(errand: E, task: Task = quietTask): Promise<ErrandDone<E>> {
  return (await done(errand, task)) as ErrandDone<E>;
}

function done(errand: Errand, task: Task): ErrandDone | Promise<ErrandDone> {
  switch (errand.kind) {
    case 'judge':
      return judgedAndRefitted(errand, task);
    case 'stencil':
      return makeStencil(errand.request);
    case 'trade-off':
      return tradeOff(errand);
    case 'flat':
      return flatPlan(errand);
    case 'baseline':
      return baselineFor(errand, task);
    default:
      return searched(errand, task);
  }
}

async function searched(errand: SearchErrand, task: Task): Promise<SearchDone> {
  const { setup } = errand,
    quick = quickly(setup);
  if (errand.kind === 'pool') return { pool: await inkPool(quick, errand.targets, errand.seed, errand.starts, errand.kicks, task) };
  const pool =
    errand.kicks > 0 ? await inkPool(quick, errand.fewer, errand.seed, 0, errand.kicks, task, errand.pool.slice(0, 5)) : errand.pool;
  return { pool, found: await bestOfPool(setup, errand.targets, pool.slice(0, 4), task) };
}

/** An answer, waited for only when it is wanted. */
export interface Asked<D> {
  (): Promise<D>;
  /** Where there are hands: the answer on its way. */
  readonly begun?: Promise<D>;
}

function underWay<D>(begun: Promise<D>, task: Task, { help }: Hands): Asked<D> {
  // Stopped while an earlier answer is waited for, the later ones are nobody's to catch.
  begun.catch(() => undefined);
  const wait = async (): Promise<D> => {
    await help?.(begun, task);
    return begun;
  };
  return Object.assign(wait, { begun });
}

/** Waits for what is under way, taking part in it where there are hands. */
export async function together<D>(work: Promise<D>, task: Task, hands?: Hands): Promise<D> {
  return hands ? underWay(work, task, hands)() : work;
}

/** Asks for all of them at once where there are hands, and gives their answers in turn; without hands each is done when its turn comes. */
export function askedFor<E extends Errand>(errands: readonly E[], task: Task, hands?: Hands): Asked<ErrandDone<E>>[] {
  if (!hands) return errands.map((errand) => () => doErrand(errand, task));
  return errands.map((errand) => underWay(hands.ask(errand, task), task, hands));
}

/** One errand: begun at once where there are hands, else when its answer is asked for. */
export function askedOf<E extends Errand>(errand: E, task: Task, hands?: Hands): Asked<ErrandDone<E>> {
  return askedFor([errand], task, hands)[0];
}

/** Another errand after each of these, as its answer says: asked for as soon as that is there where there are hands, else when its turn comes. */
export function askedAfter<D, E extends Errand>(
  first: readonly Asked<D>[],
  next: (answer: D) => E,
  task: Task,
  hands?: Hands,
): Asked<ErrandDone<E>>[] {
  return first.map((one) => {
    if (!hands) return async () => doErrand(next(await one()), task);
    const both = async (): Promise<ErrandDone<E>> => hands.ask(next(await (one.begun ?? one())), task);
    return underWay(both(), task, hands);
  });
}
