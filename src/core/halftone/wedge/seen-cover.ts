import { pow } from '../../numeric/index.ts';
import { BANDS, xyzAt, type Spectrum } from '../../colour/index.ts';

/** How far a step lies from bare paper (0) to the solid (1) in one kind of light, as an instrument or a camera saw it. */
export interface SeenShare {
  /** What it makes of a spectrum: it goes with the light. */
  readonly of: (spectrum: Spectrum) => number;
  readonly share: number;
  readonly weight: number;
}

/**
 * What a step covers, from the light it gives back between paper and solid (Murray and Davies 1936) with n for the light that spreads between
 * dots (Yule and Nielsen 1951): the cover whose spectrum lies as far from the paper as was seen, in each kind of light by its weight.
 */
export function coverSeen(paper: Spectrum, solid: Spectrum, n: number, seen: readonly SeenShare[]): number {
  const bare = paper.map((r) => pow(Math.max(r, 1e-5), 1 / n)),
    full = solid.map((r) => pow(Math.max(r, 1e-5), 1 / n));
  const ends = seen.map(({ of }) => [of(paper), of(solid)] as const);
  const wanted = seen.reduce((sum, { share, weight }) => sum + share * weight, 0);
  const R = new Float64Array(BANDS);
  const reached = (cover: number): number => {
    for (let b = 0; b < BANDS; b++) R[b] = pow(bare[b] + cover * (full[b] - bare[b]), n);
    return seen.reduce((sum, { of, weight }, i) => sum + (weight * (of(R) - ends[i][0])) / (ends[i][1] - ends[i][0]), 0);
  };
  let low = 0,
    high = 1;
  for (let i = 0; i < 24; i++) {
    const middle = (low + high) / 2;
    if (reached(middle) < wanted) low = middle;
    else high = middle;
  }
  return Math.round(((low + high) / 2) * 1e5) / 1e5;
}

/** What such a step looks like. */
export function spectrumAtCover(paper: Spectrum, solid: Spectrum, n: number, cover: number): Float64Array {
  return Float64Array.from({ length: BANDS }, (_, b) => {
    const [p, s] = [pow(Math.max(paper[b], 1e-5), 1 / n), pow(Math.max(solid[b], 1e-5), 1 / n)];
    return pow(p + cover * (s - p), n);
  });
}

/** A densitometer's filter for an ink: the four bands side by side where it takes most light away (as narrow-band filters, ISO 5-3). */
export function filterOf(paper: Spectrum, solid: Spectrum): (spectrum: Spectrum) => number {
  const mean = (of: Spectrum, from: number): number => (of[from] + of[from + 1] + of[from + 2] + of[from + 3]) / 4;
  let best = 0;
  // The ends of the spectrum carry too little light for any filter.
  for (let from = 2; from <= BANDS - 8; from++)
    if (mean(solid, from) / mean(paper, from) < mean(solid, best) / mean(paper, best)) best = from;
  return (spectrum) => mean(spectrum, best);
}

/** Camera's light as X, Y and Z: each by how much of it the ink takes away. */
export function lightShares(xyz: readonly number[], paper: readonly number[], solid: readonly number[]): SeenShare[] {
  return [0, 1, 2].map((c) => {
    const contrast = (paper[c] - solid[c]) / Math.max(1e-6, paper[c]);
    return {
      of: (spectrum) => xyzAt(spectrum, 0)[c],
      share: (paper[c] - xyz[c]) / (paper[c] - solid[c] || 1e-9),
      weight: contrast * contrast,
    };
  });
}
