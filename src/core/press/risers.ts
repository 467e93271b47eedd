import { length, lengths, say } from '../../words/say.ts';
import { fail, problem } from '../problem.ts';
import type { Problem } from '../problem.ts';

export interface Layers {
  readonly thicknessMm: number;
  readonly count: number;
  readonly heightMm: number;
  /** Height reached less height wanted. */
  readonly offMm: number;
}

export interface Risers {
  /** Height of mesh above the board that gives the wanted gap: gap + paper + stencil. */
  readonly heightMm: number;
  /** Packing to add under the hinge clamp (0: it is high enough). */
  readonly underHingeMm: number;
  /** Board to lay under the paper when the hinge is too high. */
  readonly underPaperMm: number;
  /** Height of the risers under the front corners, above the board the frame stands on. */
  readonly frontMm: number;
  readonly layers: readonly Layers[];
  /** Gap at the image's hinge end and hand end, if everything is done; and if only the front is lifted for an even middle. */
  readonly gapMm: readonly [number, number];
  readonly frontOnly: { readonly frontMm: number; readonly gapMm: readonly [number, number] };
  /** The same with card and board as it is sold, and the gap that comes of it. */
  readonly built: { readonly underHingeMm: number; readonly underPaperMm: number; readonly frontMm: number; readonly gapMm: number };
  readonly problems: readonly Problem[];
}

/** Card and board come in steps of half a millimetre. common practice */
const boardStepMm = 0.5;
const asSold = (mm: number): number => Math.round(mm / boardStepMm) * boardStepMm;

/**
 * Packing for a frame in hinge clamps: gap(y) = gap at hinge + (gap at front − gap at hinge) y / L is even only when hinge
 * and front stand equally high above paper and stencil. Geometry. Throws ProblemError.
 */
export function risersFor(input: {
  readonly gapMm: number;
  readonly paperMm: number;
  readonly stencilMm: number;
  /** How high the clamp holds the mesh above the board at the hinge. */
  readonly hingeLiftMm: number;
  /** From the hinge to the front risers. */
  readonly frameLengthMm: number;
  /** From the hinge to the image's hinge end and hand end. */
  readonly imageFromHingeMm: readonly [number, number];
  /** Boards or coins at hand, mm each. */
  readonly boardsMm?: readonly number[];
}): Risers {
  const {
    gapMm,
    paperMm,
    stencilMm,
    hingeLiftMm,
    frameLengthMm,
    imageFromHingeMm: [back, front],
    boardsMm = [],
  } = input;
  const heights = [
    ['screen.offContactMm', gapMm],
    ['papers', paperMm],
    ['materials', stencilMm],
    ['screen.hingeLiftMm', hingeLiftMm],
  ] as const;
  const wrong = heights.find(([, value]) => !(value >= 0 && value <= 300));
  if (wrong) fail('riser-heights', wrong[0], say('press.heights', { range: lengths([0, 300], 'to') }), say('press.measureClamps'));
  if (!(frameLengthMm > 0 && back >= 0 && front > back && front <= frameLengthMm)) {
    fail('riser-lengths', 'screen', say('press.imageNotInFrame'), say('press.giveFrameLength'));
  }
  if (boardsMm.some((board) => !(board > 0)))
    fail('riser-board', 'screen.riserStepMm', say('press.boardThickness'), say('press.measureTen'));
  const stack = paperMm + stencilMm;
  const heightMm = gapMm + stack;
  const underHingeMm = Math.max(0, heightMm - hingeLiftMm);
  const underPaperMm = Math.max(0, hingeLiftMm - heightMm);
  const frontMm = heightMm + underPaperMm;
  const gapAt = (hinge: number, end: number, y: number): number => hinge + ((end - hinge) * y) / frameLengthMm - stack;
  // Only the front: tilt so that the middle of the image has the wanted gap.
  const middle = (back + front) / 2;
  const only = Math.max(0, hingeLiftMm + ((heightMm - hingeLiftMm) * frameLengthMm) / middle);
  const frontOnly = { frontMm: only, gapMm: [gapAt(hingeLiftMm, only, back), gapAt(hingeLiftMm, only, front)] as const };
  const problems: Problem[] = [];
  if (Math.abs(frontOnly.gapMm[0] - frontOnly.gapMm[1]) > 0.5 && underHingeMm + underPaperMm > 0) {
    problems.push(
      problem(
        'note',
        'gap-uneven',
        'screen.hingeLiftMm',
        say('press.gapUneven', { gaps: lengths(frontOnly.gapMm, 'to', 1) }),
        underHingeMm > 0
          ? say('press.packUnderHinge', { by: length(underHingeMm, 1) })
          : say('press.boardUnderPaper', { by: length(underPaperMm, 1) }),
      ),
    );
  }
  return {
    heightMm,
    underHingeMm,
    underPaperMm,
    frontMm,
    layers: boardsMm.map((board) => layersOf(frontMm, board)),
    gapMm: [gapMm, gapMm],
    built: builtOf(hingeLiftMm, stack, asSold(underHingeMm), asSold(underPaperMm)),
    frontOnly,
    problems,
  };
}

/** Front as high as the hinge: then the gap is even whatever the boards come to. */
function builtOf(hingeLiftMm: number, stackMm: number, underHingeMm: number, underPaperMm: number): Risers['built'] {
  const frontMm = hingeLiftMm + underHingeMm;
  return { underHingeMm, underPaperMm, frontMm, gapMm: frontMm - underPaperMm - stackMm };
}

/** How many boards or coins of one thickness come nearest to a height. */
export function layersOf(heightMm: number, thicknessMm: number): Layers {
  const count = Math.round(heightMm / thicknessMm);
  return { thicknessMm, count, heightMm: count * thicknessMm, offMm: count * thicknessMm - heightMm };
}
