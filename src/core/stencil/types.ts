import type { Box, Grid, Region } from '../form/index.ts';
import type { Problem } from '../problem.ts';
import type { Saying } from '../../words/say.ts';
import type { Material } from './materials.ts';

export type PointMm = readonly [number, number];

/** How much worse the finished print looks, in ΔE, where this layer's ink is missing. Row by row. */
export interface CostRaster {
  readonly grid: Grid;
  readonly deltaE: Float32Array;
}

export interface BridgePin {
  readonly fromMm: PointMm;
  readonly toMm: PointMm;
  /** Where it bends on the way; straight if left out. */
  readonly viaMm?: readonly PointMm[];
  readonly widthMm?: number;
}

export interface NoBridge {
  readonly atMm: PointMm;
  readonly radiusMm: number;
}

/** A point in or beside what is meant; or all that is too fine for a knife within a circle about it. */
export interface Spot {
  readonly atMm: PointMm;
  readonly withinMm?: number;
}

/** How fast this studio cuts. */
export interface KnifeRates {
  readonly metresPerMinute: number;
  readonly secondsPerCorner: number;
  /** Lifting out one cut-out, or setting one loose piece aside. */
  readonly secondsPerPiece: number;
  /** Diameters of the punches at hand. */
  readonly punchesMm?: readonly number[];
}

export interface StencilRequest {
  /** The cut, in the place where it prints: mm from the image's top left corner. */
  readonly shape: Region;
  readonly side: 'window' | 'piece';
  /** Where ink may pass at all. */
  readonly aperture: Region | Box;
  /** The sheet of material; larger than the aperture all round. */
  readonly sheet: Box;
  readonly material: Material;
  readonly islands: 'bridge' | 'loose' | 'drop';
  readonly pins?: readonly BridgePin[];
  readonly forbidden?: readonly NoBridge[];
  /** Openings that may close because no knife can cut them. */
  readonly closings?: readonly Spot[];
  /** Details of paper that may go, so that ink prints there. */
  readonly drops?: readonly Spot[];
  /** Left out: the shortest bridges. */
  readonly cost?: CostRaster;
  readonly rates?: KnifeRates;
  /** What is too fine about faults that are left does not go unasked. */
  readonly asAsked?: boolean;
  /** Mending ends after so much work; what does not hold by then does not. Counted as `effort` is. */
  readonly mostEffort?: number;
  /** The layer's path in the Job, or where it is otherwise: the place of its problems. */
  readonly place?: string | Saying;
}

export interface Island {
  readonly region: Region;
  readonly areaMm2: number;
  readonly handled: 'bridged' | 'loose' | 'dropped';
  /** What dropping it costs (has cost, if dropped): mean ΔE over its area when ink prints there. Put in by the Plan. */
  readonly costDeltaE?: number;
}

export interface Bridge {
  /** b1, b2, … from top to bottom, then left to right. */
  readonly id: string;
  /** Where it leaves the paper on either side. */
  readonly from: PointMm;
  readonly to: PointMm;
  /** Its middle from paper to paper, x and y in turn, mm. */
  readonly line: readonly number[];
  readonly widthMm: number;
  /** The ink it keeps away: its part of the opening. */
  readonly region: Region;
  readonly areaMm2: number;
  /** Mean ΔE over that part, if costs were given. */
  readonly costDeltaE?: number;
  readonly pinned: boolean;
}

/** A place that prints other than drawn, so that the stencil holds (paper made broader) or can be cut (an opening made wider). */
export interface Mend {
  readonly kind: 'broader' | 'wider';
  /** Where ink is kept away, or prints too much. */
  readonly region: Region;
  /** Middle of its box. */
  readonly at: PointMm;
  readonly areaMm2: number;
  /** Mean ΔE over its area; left out while the layer has no ink. */
  readonly costDeltaE?: number;
}

/** An opening that no knife can cut as it is, and too large to be closed unasked; or a detail of paper beside it. */
export interface InTheWay {
  readonly atMm: PointMm;
  readonly region: Region;
}

/** Circles in which all that is too fine could go, so that the stencil holds; where more would print then, and less. */
export interface LocalLoss {
  readonly spots: readonly Spot[];
  readonly more: Region;
  readonly less: Region;
}

interface OfferShared {
  /** Where ink would be missing, or print in addition; empty where nothing in the print goes. */
  readonly region: Region;
  /** null: everywhere. */
  readonly atMm: PointMm | null;
  /** Ink lost, or printed in addition. */
  readonly areaMm2: number;
  /** Mean ΔE over the region, where the layer has an ink. */
  readonly costDeltaE?: number;
}

/** A way out for a stencil that does not hold, and the change to the Job that takes it. */
export type Offer =
  | (OfferShared & { readonly kind: 'close'; readonly change: { readonly closings: readonly Spot[] } })
  /** Its region is where ink would print in addition; `less`, where it would be missing because that is too fine beside it. */
  | (OfferShared & {
      readonly kind: 'drop';
      readonly less?: Region;
      readonly change: { readonly drops: readonly Spot[]; readonly closings?: readonly Spot[] };
    })
  | (OfferShared & {
      readonly kind: 'firmer';
      readonly change: { readonly materialId: string; readonly leastBridgeMm: number; readonly leastOpeningMm: number };
    })
  /** `fits`: still inside the image. */
  | (OfferShared & { readonly kind: 'larger'; readonly change: { readonly scale: number; readonly fits: boolean } });

export interface LoosePiece {
  readonly number: number;
  readonly region: Region;
  /** A point well inside, for its number. */
  readonly at: PointMm;
  readonly areaMm2: number;
  /** What leaving it out costs: mean ΔE over its area when ink prints there. Put in by the Plan. */
  readonly costDeltaE?: number;
}

export interface Fault {
  /**
   * neck: paper narrower than the least bridge between two broader parts; thin-piece: paper narrower than that all over;
   * tongue: a long thin point of paper; opening: a cut-out narrower than the knife can cut; apart: paper nothing holds.
   */
  readonly kind: 'neck' | 'thin-piece' | 'tongue' | 'opening' | 'apart';
  readonly atMm: PointMm;
  readonly widthMm: number;
}

export interface Certificate {
  /** One piece (loose pieces aside) with no neck and no opening under the least width. */
  readonly holds: boolean;
  /** Separate parts of paper, loose pieces left out: 1 when it holds. */
  readonly pieces: number;
  /** Necks and openings are at least this wide, ± one pixel; the narrowest fault where it does not hold. */
  readonly leastNeckMm: number;
  readonly leastOpeningMm: number;
  readonly faults: readonly Fault[];
  readonly mmPerPx: number;
  /** How it was shown. */
  readonly method: Saying;
}

/** Circles for one punch. */
export interface Punched {
  readonly acrossMm: number;
  readonly atMm: readonly PointMm[];
}

export interface KnifeWork {
  readonly metres: number;
  readonly corners: number;
  /** Cut-outs to lift and loose pieces to keep. */
  readonly pieces: number;
  /** Circles that a punch at hand takes out: no knife goes round them. */
  readonly punched: readonly Punched[];
  readonly minutes: number;
  readonly difficulty: 'easy' | 'steady' | 'fine' | 'trying' | 'hopeless';
}

export interface Stencil {
  readonly side: 'window' | 'piece';
  readonly sheet: Box;
  /** What stays on the screen: the sheet with its bridges, and loose pieces. */
  readonly paper: Region;
  /** Where ink passes: aperture − paper. */
  readonly prints: Region;
  readonly islands: readonly Island[];
  readonly bridges: readonly Bridge[];
  readonly loosePieces: readonly LoosePiece[];
  /** Dearest first, or largest while the layer has no ink. Put in by the Plan where something was mended. */
  readonly mends?: readonly Mend[];
  /** Closed knife paths; the sheet's own border is not among them. */
  readonly cutLines: Region;
  readonly certificate: Certificate;
  readonly knife: KnifeWork;
  /** Work until it held or gave up, the same on every machine: points of outlines looked at, and pixels, so many as take as long. */
  readonly effort: number;
  readonly problems: readonly Problem[];
  /** Where it does not hold: openings that could be closed. */
  readonly inTheWay?: readonly InTheWay[];
  /** Where it does not hold: islands and slender paper beside those openings, which could be left out. */
  readonly mayGo?: readonly InTheWay[];
  /** Where it does not hold, and would if what is too fine went about its faults alone. */
  readonly localLoss?: LocalLoss;
  /** Where it does not hold: ways out, least loss first. Put in by the Plan. */
  readonly offers?: readonly Offer[];
}
