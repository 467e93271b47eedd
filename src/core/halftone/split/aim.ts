import { labFromXyz, type Lab, type RgbSpace, type Xyz } from '../../colour/index.ts';
import type { ToneReach } from './invert.ts';

export interface Aim {
  /** What the picture's numbers mean, and its white. */
  readonly space: RgbSpace;
  readonly white: Xyz;
  /** White of the picture becomes the paper: its XYZ, D50, 0..1. */
  readonly paper: Xyz;
  /** L* of the darkest the inks reach. */
  readonly darkest: number;
  readonly reach: ToneReach;
}

/** How far below the darkest the soft end begins, in L*. */
const knee = 12;

/** What a colour of the picture should look like on the paper: relative to its white; with `contrast` its whole lightness drawn into what the inks span. */
export function aimOf(r: number, g: number, b: number, { space, white, paper, darkest, reach }: Aim): Lab {
  const xyz = space.toXyz([r, g, b]);
  const [l, ca, cb] = labFromXyz([(xyz[0] * paper[0]) / white[0], (xyz[1] * paper[1]) / white[1], (xyz[2] * paper[2]) / white[2]]);
  const top = labFromXyz(paper)[0];
  if (reach === 'contrast') {
    const lightness = darkest + (Math.max(0, l) / top) * (top - darkest);
    // Chroma goes along, or darks would come out more coloured than they were.
    const keep = l > 1 ? Math.min(1, lightness > 0 ? (l / lightness) ** 0.3 : 1) : 0;
    return [lightness, ca * keep, cb * keep];
  }
  // Below the knee lightness runs out softly, so that shadows out of reach keep some drawing.
  const start = darkest + knee;
  if (l >= start || darkest <= 0) return [l, ca, cb];
  const lightness = darkest + knee / (1 + (start - l) / knee);
  return [lightness, ca, cb];
}
