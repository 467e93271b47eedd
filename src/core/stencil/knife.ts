import { regionPerimeter, simplify } from '../form/index.ts';
import type { Region } from '../form/index.ts';
import type { KnifeRates, KnifeWork, PointMm } from './types.ts';

/** Common practice for a fresh blade on a mat; a studio puts in its own. */
export const defaultRates: KnifeRates = { metresPerMinute: 0.5, secondsPerCorner: 2, secondsPerPiece: 5 };

const cornerDeg = 40;

export interface Corner {
  readonly atMm: PointMm;
  /** Turn of the knife in degrees; 180 would be straight back. */
  readonly turnDeg: number;
}

/** Places where the knife must be lifted and set anew: the outline turns by more than 40° within half a millimetre. */
export function cornersOf(lines: Region): Corner[] {
  const corners: Corner[] = [];
  for (const ring of simplify(lines, 0.05).rings) {
    const n = ring.length / 2;
    const along = (i: number): [number, number] => {
      const j = (i + 1) % n;
      return [ring[2 * j] - ring[2 * i], ring[2 * j + 1] - ring[2 * i + 1]];
    };
    for (let i = 0; i < n; i++) {
      const [ax, ay] = along((i + n - 1) % n), [bx, by] = along(i);
      const turn = Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) * (180 / Math.PI);
      if (turn > cornerDeg) corners.push({ atMm: [ring[2 * i], ring[2 * i + 1]], turnDeg: turn });
    }
  }
  return corners;
}

/** What cutting costs. `pieces`: cut-outs to lift and loose pieces to keep. */
export function knifeWork(cutLines: Region, pieces: number, rates: KnifeRates = defaultRates): KnifeWork {
  const metres = regionPerimeter(cutLines) / 1000;
  const corners = cornersOf(cutLines).length;
  const minutes = metres / rates.metresPerMinute + (corners * rates.secondsPerCorner + pieces * rates.secondsPerPiece) / 60;
  // Common practice: how long a hand stays sure.
  const difficulty = minutes < 10 ? 'easy' : minutes < 25 ? 'steady' : minutes < 60 ? 'fine' : minutes < 180 ? 'trying' : 'hopeless';
  return { metres, corners, pieces, minutes, difficulty };
}
