import { labFromXyz, xyzFromLab, type Lab, type Xyz } from '../../colour/index.ts';

/** How light openings in a stencil come out, in one ink on one paper. */
export interface OpenTones {
  /** Share that is to be open for a place of the picture: `light` is its L* against white, 0..1, drawn into what ink and paper span. */
  readonly share: (light: number) => number;
  /** Share that prints just that L*, as far as it can. */
  readonly shareAt: (lightness: number) => number;
  /** L* of what is printed where so much is open. */
  readonly lightness: (share: number) => number;
  /** The same as a colour. */
  readonly lab: (share: number) => Lab;
}

/**
 * Tone → what must be open. Openings a knife can cut are so wide that hardly any light spreads from one to the next under the paper, so what is
 * seen is the mean of the ink's light and the paper's, by area (Murray and Davies 1936; Yule–Nielsen's n = 1), and a half tone in lightness asks
 * for far more than half the area. The picture's lightness is drawn into what ink and paper span, so that its darkest place is as dark as
 * openings can print; an ink that is lighter than the paper prints the lights.
 * @param most largest share that can be open
 */
export function openTones(paper: Xyz, solid: Xyz, most: number): OpenTones {
  const [yp, ys] = [paper[1], solid[1]];
  const lightOf = (y: number): number => labFromXyz([0, y, 0])[0];
  const lightness = (share: number): number => lightOf(yp + (ys - yp) * share);
  const [bare, full] = [lightOf(yp), lightness(most)];
  const shareAt = (wanted: number): number => Math.min(most, Math.max(0, (yp - xyzFromLab([wanted, 0, 0])[1]) / (yp - ys)));
  return {
    share: (light) => shareAt(bare + (full - bare) * Math.min(1, Math.max(0, ys < yp ? 1 - light : light))),
    shareAt,
    lab: (share) => labFromXyz([0, 1, 2].map((c) => paper[c] + (solid[c] - paper[c]) * share) as unknown as Xyz),
    lightness,
  };
}

/** Inks whose solid is no farther from the paper than this in L* draw no picture. */
export const leastSpanL = 6;
