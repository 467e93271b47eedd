import { length, lengths, say } from '../../../words/say.ts';
import { fail, problem } from '../../problem.ts';
import type { Problem } from '../../problem.ts';

export interface Layers {
  readonly thicknessMm: number;
  readonly count: number;
  /** Card laid on the boards, in what is sold; 0: none. */
  readonly cardMm: number;
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
  /** The same with card and board as it is sold, and the gap that comes of it in the middle of the image. */
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
  const built = builtOf({ hingeLiftMm, stackMm: stack, middleShare: middle / frameLengthMm }, asSold(underHingeMm), asSold(underPaperMm));
  const problems: Problem[] = [];
  if (Math.abs(frontOnly.gapMm[0] - frontOnly.gapMm[1]) > 0.5 && underHingeMm + underPaperMm > 0) {
    problems.push(
      problem(
        'note',
        'gap-uneven',
        'screen.hingeLiftMm',
        say('press.gapUneven', { gaps: lengths(frontOnly.gapMm, 'to', 1) }),
        underHingeMm > 0
          ? say('press.packUnderHinge', { by: length(built.underHingeMm, 1) })
          : say('press.boardUnderPaper', { by: length(built.underPaperMm, 1) }),
      ),
    );
  }
  return {
    heightMm,
    underHingeMm,
    underPaperMm,
    frontMm,
    layers: boardsMm.map((board) => layersOf(built.frontMm, board)),
    gapMm: [gapMm, gapMm],
    built,
    frontOnly,
    problems,
  };
}

/** Front as near to the hinge's height as boards come; the gap is that in the middle of the image. */
function builtOf(
  { hingeLiftMm, stackMm, middleShare }: { readonly hingeLiftMm: number; readonly stackMm: number; readonly middleShare: number },
  underHingeMm: number,
  underPaperMm: number,
): Risers['built'] {
  const hingeMm = hingeLiftMm + underHingeMm;
  const frontMm = asSold(hingeMm);
  return { underHingeMm, underPaperMm, frontMm, gapMm: hingeMm + (frontMm - hingeMm) * middleShare - underPaperMm - stackMm };
}

/** Boards or coins of one thickness, as many as go under, and card on top of them. */
export function layersOf(heightMm: number, thicknessMm: number): Layers {
  const count = Math.floor(heightMm / thicknessMm + 1e-9);
  const cardMm = asSold(heightMm - count * thicknessMm);
  const whole = count * thicknessMm + cardMm,
    oneMore = (count + 1) * thicknessMm;
  // A card as thick as a board is a board; boards thinner than any card come nearer by themselves.
  if (cardMm >= thicknessMm - 1e-9 || oneMore - heightMm < Math.abs(whole - heightMm) - 1e-9)
    return { thicknessMm, count: count + 1, cardMm: 0, heightMm: oneMore, offMm: oneMore - heightMm };
  return { thicknessMm, count, cardMm, heightMm: whole, offMm: whole - heightMm };
}
