import { regionPerimeter, ringArea, simplify } from '../form/index.ts';
import type { Region } from '../form/index.ts';
import { ringsAround } from './cut-order.ts';
import { defaultRates, knifeMinutes } from './rates.ts';
import type { KnifeRates, KnifeWork, PointMm } from './types.ts';

const cornerDeg = 40;

export interface Corner {
  readonly atMm: PointMm;
  /** Turn of the knife in degrees; 180 would be straight back. */
  readonly turnDeg: number;
  /** Points into the paper, which tears on from there if the knife goes too far. */
  readonly inner: boolean;
}

/** Corners into the paper that turn by more than this are marked on the cut sheet. */
export const sharpDeg = 90;

/** Places where the knife must be lifted and set anew: the outline turns by more than 40°. `lines`: knife paths of a stencil, without the sheet's own edge. */
export function cornersOf(lines: Region): Corner[] {
  const corners: Corner[] = [];
  const plain = simplify(lines, 0.05);
  const around = ringsAround(plain);
  for (const [index, ring] of plain.rings.entries()) {
    const n = ring.length / 2;
    // Outermost paths bound what drops out, those inside them paper, and so on.
    const paperWithin = around[index].length % 2 === 1,
      winds = Math.sign(ringArea(ring));
    const along = (i: number): [number, number] => {
      const j = (i + 1) % n;
      return [ring[2 * j] - ring[2 * i], ring[2 * j + 1] - ring[2 * i + 1]];
    };
    for (let i = 0; i < n; i++) {
      const [ax, ay] = along((i + n - 1) % n),
        [bx, by] = along(i);
      const signed = Math.atan2(ax * by - ay * bx, ax * bx + ay * by) * (180 / Math.PI),
        turn = Math.abs(signed);
      if (turn > cornerDeg)
        corners.push({ atMm: [ring[2 * i], ring[2 * i + 1]], turnDeg: turn, inner: signed * winds > 0 !== paperWithin });
    }
  }
  return corners;
}

/** What cutting costs. `pieces`: cut-outs to lift and loose pieces to keep. */
export function knifeWork(cutLines: Region, pieces: number, rates: KnifeRates = defaultRates): KnifeWork {
  const metres = regionPerimeter(cutLines) / 1000;
  const corners = cornersOf(cutLines).length;
  const parts = knifeMinutes({ metres, corners, pieces }, rates);
  const minutes = parts.lines + parts.corners + parts.pieces;
  // Common practice: how long a hand stays sure.
  const difficulty = minutes < 10 ? 'easy' : minutes < 25 ? 'steady' : minutes < 60 ? 'fine' : minutes < 180 ? 'trying' : 'hopeless';
  return { metres, corners, pieces, minutes, difficulty };
}
