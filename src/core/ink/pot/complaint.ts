import { srgbFromXyz, xyzFromLab, type Lab } from '../../colour/index.ts';
import type { Reading } from '../types.ts';

/** What a printmaker says of a drawdown held beside the one wanted. */
export type Complaint = 'too weak' | 'too strong' | 'too warm' | 'too cool' | 'too dull' | 'too clean';

const steps = [2, 4, 7] as const;

/**
 * What the drawdown probably looks like, in three sizes, to be held beside the real one: the printmaker picks the
 * picture that looks like it, and that colour is then the reading, with its doubt.
 */
export function picturesOfComplaint(
  wanted: Lab,
  ground: Lab,
  complaint: Complaint,
): { readonly size: 'a little' | 'clearly' | 'very'; readonly srgb: string; readonly reading: Reading }[] {
  const sizes = ['a little', 'clearly', 'very'] as const;
  return steps.map((step, i) => {
    const lab = moved(wanted, ground, complaint, step);
    return { size: sizes[i], srgb: srgbFromXyz(xyzFromLab(lab)).hex, reading: { kind: 'photo', lab, sigma: 2 } };
  });
}

function moved(wanted: Lab, ground: Lab, complaint: Complaint, step: number): Lab {
  const [l, a, b] = wanted;
  const c = Math.hypot(a, b) || 1;
  // Weaker means towards the bare ground, stronger away from it, by about so many steps.
  const toGround = [0, 1, 2].map((i) => ground[i] - wanted[i]);
  const length = Math.hypot(...toGround) || 1;
  const along = (sign: number): Lab => [
    l + (sign * step * 1.5 * toGround[0]) / length,
    a + (sign * step * 1.5 * toGround[1]) / length,
    b + (sign * step * 1.5 * toGround[2]) / length,
  ];
  switch (complaint) {
    case 'too weak':
      return along(1);
    case 'too strong':
      return along(-1);
    // Warm and cool as painters mean them: towards orange (hue 60°) or towards blue (hue 240°).
    case 'too warm':
      return [l, a + step * 0.5 * (1 + 0.02 * c), b + step * 0.87 * (1 + 0.02 * c)];
    case 'too cool':
      return [l, a - step * 0.5 * (1 + 0.02 * c), b - step * 0.87 * (1 + 0.02 * c)];
    case 'too dull':
      return [l, a - (step * a * 1.5) / c, b - (step * b * 1.5) / c];
    case 'too clean':
      return [l, a + (step * a * 1.5) / c, b + (step * b * 1.5) / c];
  }
}
