import { mapPoint, solveDamped } from '../../numeric/index.ts';
import { fitAll, fitBoard, type BoardCorner } from './board.ts';
import { bent, lensInShares, lensOfShares, type KeptLens } from './lens.ts';

/** The corners of a checked board in one photograph: all that a lens needs to know of it. */
export interface BoardSeen {
  readonly width: number;
  readonly height: number;
  readonly corners: readonly BoardCorner[];
}

export interface Calibrated {
  readonly lens: KeptLens;
  /** Root of the mean square by which all corners lie off, pixels. */
  readonly offPx: number;
}

const mostRounds = 12;
/** Steps by which a change of the lens is felt out: bend, more, and its middle in shares of the half diagonal. */
const feel = 1e-4;

/**
 * One lens from several photographs of a checked board: the four figures of the lens (bend, its second term, its middle) with
 * which all boards lie straight best, each board in its own place (variable projection, Golub and Pereyra 1973, by Levenberg
 * and Marquardt). One photograph tells a lens only as far as the board reaches in it; some at all corners tell all of it.
 */
export function calibrated(seen: readonly BoardSeen[]): Calibrated | undefined {
  const alone = seen.flatMap((one) => {
    const fit = fitBoard(one, one.corners);
    // Corners that lay off for one photograph alone lie off for all.
    return fit ? [{ fit, one: { ...one, corners: fit.corners } }] : [];
  });
  if (alone.length === 0) return undefined;
  const boards = alone.map(({ one }) => one);
  // The photograph with most corners is the beginning.
  const first = alone.reduce((a, b) => (b.fit.corners.length > a.fit.corners.length ? b : a));
  const begin = lensInShares(first.fit.lens, first.one);
  if (alone.length === 1) return { lens: begin, offPx: first.fit.offPx };
  const lensFor = (v: Float64Array): KeptLens => ({
    radius: 0.5,
    middle: [0.5 + v[2], 0.5 + v[3]],
    bend: v[0],
    more: v[1],
  });
  let values = Float64Array.of(begin.bend, begin.more, begin.middle[0] - 0.5, begin.middle[1] - 0.5);
  let now = offsOf(boards, lensFor(values));
  if (!now) return undefined;
  let damping = 1e-3;
  for (let round = 0; round < mostRounds; round++) {
    const J = Array.from({ length: 4 }, (_, k) => {
      const moved = values.slice();
      moved[k] += feel;
      return offsOf(boards, lensFor(moved))?.map((v, i) => (v - now![i]) / feel);
    });
    if (J.some((column) => !column)) break;
    const A = new Float64Array(16),
      b = new Float64Array(4);
    for (let i = 0; i < 4; i++)
      for (let n = 0; n < now.length; n++) {
        b[i] -= J[i]![n] * now[n];
        for (let j = 0; j < 4; j++) A[4 * i + j] += J[i]![n] * J[j]![n];
      }
    const step = solveDamped(A, b, damping);
    const next = values.map((v, i) => v + step[i]);
    const after = offsOf(boards, lensFor(next));
    if (after && squares(after) < squares(now)) {
      const settled = squares(now) - squares(after) < 1e-6 * squares(now);
      values = next;
      now = after;
      damping = Math.max(1e-9, damping / 5);
      if (settled) break;
    } else {
      damping *= 10;
      if (damping > 1e4) break;
    }
  }
  return { lens: lensFor(values), offPx: Math.sqrt(squares(now) / now.length) };
}

const squares = (values: Float64Array): number => values.reduce((sum, v) => sum + v * v, 0);

/** By how much every corner of every board lies off with this lens, each board laid as well as it can be. */
function offsOf(boards: readonly BoardSeen[], kept: KeptLens): Float64Array | undefined {
  const out: number[] = [];
  for (const board of boards) {
    const lens = lensOfShares(kept, board);
    const fit = lens && fitAll(board, board.corners, lens);
    if (!fit) return undefined;
    for (const { column, row, at } of board.corners) {
      const [x, y] = bent(lens, mapPoint(fit.toPhoto, column, row));
      out.push(x - at[0], y - at[1]);
    }
  }
  return Float64Array.from(out);
}
