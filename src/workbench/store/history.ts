import type { Step } from './words.ts';

/** One state of the bench and the edit that led to it. */
export interface Moment<T> {
  readonly state: T;
  /** What was done to get here from the moment before; null for the first. */
  readonly step: Step | null;
  /** Edits with the same mark in a row are one step (a slider being dragged). */
  readonly mark: string | null;
}

/** What was done, and what was undone and can be done again. Plain data: states share all parts that did not change. */
export interface History<T> {
  readonly past: readonly Moment<T>[];
  readonly now: Moment<T>;
  /** Nearest first. */
  readonly future: readonly Moment<T>[];
}

/** Farther back than anyone goes in an afternoon. */
const mostSteps = 500;

export function begin<T>(state: T): History<T> {
  return { past: [], now: { state, step: null, mark: null }, future: [] };
}

export function record<T>(history: History<T>, state: T, step: Step, mark: string | null = null): History<T> {
  const now = { state, step, mark };
  if (mark !== null && history.now.mark === mark) return { past: history.past, now, future: [] };
  return { past: [...history.past, history.now].slice(-mostSteps), now, future: [] };
}

/** Ends a gesture: the next edit with the same mark is a step of its own. */
export function settle<T>(history: History<T>): History<T> {
  return history.now.mark === null ? history : { ...history, now: { ...history.now, mark: null } };
}

export function undo<T>(history: History<T>): History<T> {
  const before = history.past.at(-1);
  return before ? { past: history.past.slice(0, -1), now: { ...before, mark: null }, future: [history.now, ...history.future] } : history;
}

export function redo<T>(history: History<T>): History<T> {
  const [after, ...rest] = history.future;
  return after ? { past: [...history.past, history.now], now: { ...after, mark: null }, future: rest } : history;
}

/** Changes every moment alike, without a step: for facts that no undo may take away (the count at the press). */
export function everywhere<T>(history: History<T>, change: (state: T) => T): History<T> {
  const carry = (moment: Moment<T>): Moment<T> => ({ ...moment, state: change(moment.state) });
  return { past: history.past.map(carry), now: carry(history.now), future: history.future.map(carry) };
}
