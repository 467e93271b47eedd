import { diagonalWeight, straightWeight } from './length.ts';
import type { Desk } from './register-room.ts';

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
