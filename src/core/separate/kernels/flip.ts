import { diagonalWeight, straightWeight } from './length.ts';
import type { Field } from './relax.ts';

/** Single pixels of one layer in turn, some times over, as long as any moves. @param gain what ink at each pixel costs. @returns how many changed */
export function flipped(field: Field, codes: Uint8Array, layer: number, gain: Float32Array, price: number, turns: number): number {
  const awake = new Uint8Array(codes.length).fill(1);
  let changed = 0;
  for (let turn = 0; turn < turns; turn++) {
    const moved = flipPixels(field, codes, layer, gain, price, awake);
    changed += moved;
    if (moved === 0) break;
  }
  return changed;
}

/** What eight neighbours say: bit k of the number is neighbour k's ink, straight ones first; added up in this order. */
const votesOf = Float64Array.from({ length: 256 }, (_, ink) => {
  let votes = 0;
  for (let k = 0; k < 8; k++) {
    const weight = k < 4 ? straightWeight : diagonalWeight;
    votes += (ink >> k) & 1 ? -weight : weight;
  }
  return votes;
});

/**
 * Single pixels of one layer switched wherever that lowers gain + price × length.
 * @param awake pixels to look at; changed: next time only those beside a change, for nowhere else could anything differ
 */
function flipPixels(field: Field, codes: Uint8Array, layer: number, gain: Float32Array, price: number, awake: Uint8Array): number {
  const { width, height } = field;
  const bit = 1 << layer,
    most = price * 4 * (straightWeight + diagonalWeight);
  let changed = 0;
  for (let y = 0; y < height; y++) {
    const next = awake.indexOf(1, y * width);
    if (next < 0) break;
    y = Math.floor(next / width);
    for (let x = next - y * width; x < width; x++) {
      const i = y * width + x;
      if (awake[i] === 0) continue;
      awake[i] = 0;
      const on = (codes[i] & bit) !== 0;
      // Whatever the neighbours say.
      if (on ? gain[i] < -most : gain[i] > most) continue;
      const up = y > 0,
        down = y + 1 < height,
        left = x > 0,
        right = x + 1 < width,
        inside = up && down && left && right;
      let votes: number;
      if (inside) {
        const above = i - width,
          below = i + width;
        votes =
          votesOf[
            ((codes[above] >> layer) & 1) |
              (((codes[below] >> layer) & 1) << 1) |
              (((codes[i - 1] >> layer) & 1) << 2) |
              (((codes[i + 1] >> layer) & 1) << 3) |
              (((codes[above - 1] >> layer) & 1) << 4) |
              (((codes[above + 1] >> layer) & 1) << 5) |
              (((codes[below - 1] >> layer) & 1) << 6) |
              (((codes[below + 1] >> layer) & 1) << 7)
          ];
      } else {
        const vote = (at: number, weight: number): number => (codes[at] & bit ? -weight : weight);
        votes = 0;
        if (up) votes += vote(i - width, straightWeight);
        if (down) votes += vote(i + width, straightWeight);
        if (left) votes += vote(i - 1, straightWeight);
        if (right) votes += vote(i + 1, straightWeight);
        if (up && left) votes += vote(i - width - 1, diagonalWeight);
        if (up && right) votes += vote(i - width + 1, diagonalWeight);
        if (down && left) votes += vote(i + width - 1, diagonalWeight);
        if (down && right) votes += vote(i + width + 1, diagonalWeight);
      }
      const cost = gain[i] + price * votes;
      if (on ? cost <= 1e-6 : cost >= -1e-6) continue;
      codes[i] ^= bit;
      changed++;
      for (let dy = up ? -width : 0; dy <= (down ? width : 0); dy += width)
        for (let dx = left ? -1 : 0; dx <= (right ? 1 : 0); dx++) awake[i + dy + dx] = 1;
    }
  }
  return changed;
}
