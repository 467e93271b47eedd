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
  readonly problems: readonly Problem[];
}

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
  const all = [gapMm, paperMm, stencilMm, hingeLiftMm];
  if (!all.every((value) => value >= 0 && value <= 300))
    fail(
      'riser-heights',
      'screen',
      'Gap, paper, stencil and hinge must be heights in mm, nought or more.',
      'Measure how high the clamps hold the mesh above the board.',
    );
  if (!(frameLengthMm > 0 && back >= 0 && front > back && front <= frameLengthMm)) {
    fail(
      'riser-lengths',
      'screen',
      'The image must lie between the hinge and the front of the frame.',
      'Give the frame’s length and where the image begins and ends, from the hinge.',
    );
  }
  if (boardsMm.some((board) => !(board > 0)))
    fail('riser-board', 'screen.riserStepMm', 'A board or coin needs a thickness.', 'Measure ten of them together and divide by ten.');
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
        `With risers at the front alone the gap runs from ${frontOnly.gapMm[0].toFixed(1)} to ${frontOnly.gapMm[1].toFixed(1)} mm over the image.`,
        underHingeMm > 0
          ? `Pack ${underHingeMm.toFixed(1)} mm under the hinge clamps too.`
          : `Lay ${underPaperMm.toFixed(1)} mm of board under the paper too.`,
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
    frontOnly,
    problems,
  };
}

/** How many boards or coins of one thickness come nearest to a height. */
export function layersOf(heightMm: number, thicknessMm: number): Layers {
  const count = Math.round(heightMm / thicknessMm);
  return { thicknessMm, count, heightMm: count * thicknessMm, offMm: count * thicknessMm - heightMm };
}
