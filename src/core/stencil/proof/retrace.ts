import type { Region } from '../../form/index.ts';
import type { Strip } from '../bridges/bridges.ts';
import type { Stencil, StencilRequest } from '../types.ts';
import type { Widths } from './widths.ts';

/** Where paper was joined while a stencil settled, and with what. Only here does it matter how much a bridge is seen. */
export interface Join {
  readonly paper: Region;
  readonly widths: Widths;
  readonly strips: readonly Strip[];
}

/** How a stencil came about. */
export interface Trace {
  readonly joins: readonly Join[];
  readonly stencil: Stencil;
}

/** Undo and a slider that swings come back to one of the last few. */
const mostTraces = 3;

/** By the drawing, then by all that is asked but what shows. Nothing but a shorter way to the same stencil: who made none before makes it anew. */
const known = new WeakMap<Region, Map<string, readonly Trace[]>>();

/** The last stencils of this very request, whatever a bridge was to cost; the newest first. */
export function tracesOf(request: StencilRequest): readonly Trace[] {
  return known.get(request.shape)?.get(keyOf(request)) ?? [];
}

export function keepTrace(request: StencilRequest, trace: Trace): void {
  let ofShape = known.get(request.shape);
  if (!ofShape) known.set(request.shape, (ofShape = new Map()));
  const key = keyOf(request);
  const kept = [trace, ...(ofShape.get(key) ?? []).filter((t) => t.stencil !== trace.stencil)].slice(0, mostTraces);
  // A studio turns to another material and back, hardly to a third.
  ofShape.delete(key);
  ofShape.set(key, kept);
  if (ofShape.size > mostTraces) ofShape.delete(ofShape.keys().next().value as string);
}

const keyOf = (request: StencilRequest): string =>
  JSON.stringify({ ...request, shape: undefined, cost: request.cost === undefined ? 'the same everywhere' : 'as it shows' });

/**
 * Follows a trace with other costs. `strips`: those of this request so far, made by `joined` where one is missing and put
 * there; they hold whether or not the trace is followed to its end.
 */
export function follows(trace: Trace, strips: (readonly Strip[])[], joined: (join: Join) => readonly Strip[]): boolean {
  return trace.joins.every((join, k) => {
    if (k === strips.length) strips.push(joined(join));
    return sameStrips(strips[k], join.strips);
  });
}

const sameStrips = (a: readonly Strip[], b: readonly Strip[]): boolean =>
  a.length === b.length && a.every((s, i) => s.widthMm === b[i].widthMm && s.crosses === b[i].crosses && sameLine(s.line, b[i].line));

const sameLine = (a: readonly number[], b: readonly number[]): boolean => a.length === b.length && a.every((v, i) => v === b[i]);
