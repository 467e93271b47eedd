import { exp } from '../../numeric/index.ts';
import { seeded } from '../../random.ts';

/** Side of the tile. */
export const tileSide = 64;
const sigma = 1.9,
  reach = 9;

let made: Float32Array | null = null;

/**
 * Thresholds of a tile without low frequencies: void and cluster (Ulichney 1993), seeded, repeating on all sides. 64 × 64 ranks, evenly over 0..1.
 */
export function blueNoise(): Float32Array {
  if (made) return made;
  const n = tileSide * tileSide;
  const random = seeded(1993);
  const kernel = new Float64Array((2 * reach + 1) ** 2);
  for (let y = -reach; y <= reach; y++)
    for (let x = -reach; x <= reach; x++) kernel[(y + reach) * (2 * reach + 1) + x + reach] = exp(-(x * x + y * y) / (2 * sigma * sigma));
  const energy = new Float64Array(n);
  const on = new Uint8Array(n);
  const put = (at: number, sign: 1 | -1): void => {
    on[at] = sign === 1 ? 1 : 0;
    const x0 = at % tileSide,
      y0 = (at - x0) / tileSide;
    for (let y = -reach, k = 0; y <= reach; y++) {
      const row = ((y0 + y + tileSide) % tileSide) * tileSide;
      for (let x = -reach; x <= reach; x++, k++) energy[row + ((x0 + x + tileSide) % tileSide)] += sign * kernel[k];
    }
  };
  const find = (state: 0 | 1): number => {
    let best = -1;
    for (let i = 0; i < n; i++)
      if (on[i] === state && (best < 0 || (state === 1 ? energy[i] > energy[best] : energy[i] < energy[best]))) best = i;
    return best;
  };
  const first = n >> 3;
  for (let i = 0; i < first; ) {
    const at = random.below(n);
    if (on[at] === 0) {
      put(at, 1);
      i++;
    }
  }
  // Move the tightest into the widest void until it comes back to where it was.
  for (;;) {
    const tight = find(1);
    put(tight, -1);
    const wide = find(0);
    put(wide, 1);
    if (wide === tight) break;
  }
  const rank = new Float32Array(n);
  const start = Uint8Array.from(on);
  const startEnergy = Float64Array.from(energy);
  for (let r = first - 1; r >= 0; r--) {
    const tight = find(1);
    put(tight, -1);
    rank[tight] = r;
  }
  on.set(start);
  energy.set(startEnergy);
  for (let r = first; r < n; r++) {
    const wide = find(0);
    put(wide, 1);
    rank[wide] = r;
  }
  made = rank.map((r) => (r + 0.5) / n);
  return made;
}
