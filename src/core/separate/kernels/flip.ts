import { diagonalWeight, straightWeight } from './length.ts';
import type { Desk } from './register-room.ts';

/** What eight neighbours say: bit k of the number is neighbour k's ink, straight ones first; added up in this order. */
export const votesOf = Float64Array.from({ length: 256 }, (_, ink) => {
  let votes = 0;
  for (let k = 0; k < 8; k++) {
    const weight = k < 4 ? straightWeight : diagonalWeight;
    votes += (ink >> k) & 1 ? -weight : weight;
  }
  return votes;
});

/**
 * Single pixels of one layer in turn, some times over, as long as any moves: switched wherever that lowers the desk's gain + price × length.
 * @returns how many changed
 */
export function flipTurns({ awake, flips }: Desk, layer: number, price: number, turns: number): number {
  const most = price * 4 * (straightWeight + diagonalWeight);
  let changed = 0;
  awake.fill(1);
  for (let turn = 0; turn < turns; turn++) {
    const moved = flips(layer, price, most, straightWeight, diagonalWeight);
    changed += moved;
    if (moved === 0) break;
  }
  return changed;
}
