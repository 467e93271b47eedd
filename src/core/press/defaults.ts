/**
 * What a studio may replace by its own figures. Nothing here is a law: where a source exists it is named (TRADE's kinds of
 * source), all the rest is common practice.
 */
export const studioDefaults = {
  /** Share of the theoretical volume that a hand pull lays down. common practice */
  transferShare: [0.6, 1] as readonly [number, number],
  /** Volume solids of water-based ink; published: trade article on choosing inks. */
  volumeSolids: [0.3, 0.4] as readonly [number, number],
  /** common practice */
  densityGPerMl: 1.1,
  /** Ink that stays in screen, pot and knife after a run. common practice */
  stayingGrams: [50, 150] as readonly [number, number],
  /** The bead of ink that stays along the blade and in the mesh, for each cm of blade. common practice: about 1.5 g */
  residueGramsPerCm: [1, 2] as readonly [number, number],
  /** How far in from a stencil's edge the film stands higher. common practice */
  ridgeMm: [1, 2] as readonly [number, number],
  /** Room beside the blade's ends and at the ink wells. Published: supplier's note on off-contact, 2.5 in and 4 in. */
  bladeEndMm: 2.5 * 25.4,
  wellMm: 4 * 25.4,
  /** Least that a careful hand can print with. common practice */
  leastBladeEndMm: 25,
  leastWellMm: 40,
  /** The blade past the image on each side. common practice */
  bladePastImageMm: [10, 20] as readonly [number, number],
  /** From a blade's end to the frame. common practice */
  bladeToFrameMm: 20,
  /** Tape. common practice */
  tapeWidthMm: 48,
  tapeOverlapMm: 10,
  /** Stencil sheet against the inside of the frame, on each side: slightly smaller. Amount: common practice. */
  stencilInsideFrameMm: 10,
  /** Mesh slacker than this counts as slack. common practice */
  slackNPerCm: 10,
  /** At and above this, at most 1/16 in of gap. Published: supplier's note on off-contact. */
  tightNPerCm: 16,
  /** Stretch of the mesh beyond what holds it in the frame, over the whole span: doubtful from, dangerous from. common practice */
  strainDoubtful: 0.004,
  strainTears: 0.02,
  /** Change of paper for the humidity span given beside it, along and across the grain. Published, span assumed: common practice. */
  paperGrowth: { alongPercent: [0.1, 0.2], acrossPercent: [0.2, 0.4], overPoints: 33 } as PaperGrowth,
  /** Overlap (trap) that hand printing asks for. common practice */
  overlapMm: [0.8, 1.5] as readonly [number, number],
  /** Stops on the board. common practice */
  stopLengthMm: 25,
  stopWidthMm: 12,
  stopAboveSheetMm: 0.1,
} as const;

/** Percent of length for `overPoints` points of relative humidity. */
export interface PaperGrowth {
  readonly alongPercent: readonly [number, number];
  readonly acrossPercent: readonly [number, number];
  readonly overPoints: number;
}
