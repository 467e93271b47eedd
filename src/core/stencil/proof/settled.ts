import type { Region } from '../../form/index.ts';
import type { Strip } from '../bridges/bridges.ts';
import type { Join } from './retrace.ts';
import type { Certificate, PointMm } from '../types.ts';
import type { Thin } from './windows.ts';

export interface Settled {
  readonly paper: Region;
  readonly strips: readonly Strip[];
  readonly thickened: readonly PointMm[];
  readonly widened: readonly PointMm[];
  /** Hairlines of paper left out, and openings closed because no knife can cut them. */
  readonly dropped: readonly Region[];
  readonly closed: readonly Region[];
  /** Openings that stand in the way of the proof and are too large to be closed unasked. */
  readonly inTheWay: readonly Thin[];
  /** Paper too thin at first sight, hairlines aside. */
  readonly slender: readonly Thin[];
  readonly certificate: Certificate;
  /** As of a stencil. */
  readonly effort: number;
  readonly joins: readonly Join[];
}
