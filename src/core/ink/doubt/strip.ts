import type { Foresight } from '../foresight.ts';
import type { Lab } from '../../colour/index.ts';

/** How many colours a strip shows. */
export const stripColours = 5;

/**
 * Colours that an overlap may come out as: prints out of the foreseen ones, from one end of the direction in which they differ most to
 * the other, with the colour that is shown in the middle. Nine prints in ten lie between the ends.
 */
export function stripOf(foresight: Foresight, row: number): Lab[] {
  const { samples, overlaps, clouds, lab } = foresight;
  const shown: Lab = [lab[row * 3], lab[row * 3 + 1], lab[row * 3 + 2]];
  const at = (s: number): Lab => {
    const k = (s * overlaps + row) * 3;
    return [Math.max(0, clouds[k]), clouds[k + 1], clouds[k + 2]];
  };
  const axis = mainAxis(samples, at, shown);
  const along = Array.from({ length: samples }, (_, s) => {
    const c = at(s);
    // Settled, so that engines that differ in a last bit choose the same prints.
    return { s, by: Math.round(1e6 * [0, 1, 2].reduce((sum, k) => sum + (c[k] - shown[k]) * axis[k], 0)) };
  }).sort((a, b) => a.by - b.by || a.s - b.s);
  return Array.from({ length: stripColours }, (_, i) => {
    if (i * 2 === stripColours - 1) return shown;
    const share = 0.05 + (0.9 * i) / (stripColours - 1);
    return at(along[Math.min(samples - 1, Math.round(share * (samples - 1)))].s);
  });
}

/** Direction of the widest spread, lighter end last: the power method on 3 × 3. */
function mainAxis(samples: number, at: (s: number) => Lab, shown: Lab): Lab {
  const M = new Float64Array(9);
  for (let s = 0; s < samples; s++) {
    const c = at(s);
    for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) M[i * 3 + j] += (c[i] - shown[i]) * (c[j] - shown[j]);
  }
  let axis = [1, 0.5, 0.25];
  for (let round = 0; round < 30; round++) {
    const next = [0, 1, 2].map((i) => M[i * 3] * axis[0] + M[i * 3 + 1] * axis[1] + M[i * 3 + 2] * axis[2]);
    const long = Math.hypot(...next) || 1;
    axis = next.map((v) => Math.round((1e9 * v) / long) / 1e9);
  }
  return (axis[0] < 0 ? axis.map((v) => -v) : axis) as unknown as Lab;
}
