import type { KnifeRates } from './types.ts';

/** Common practice for a fresh blade on a mat; a studio puts in its own. */
export const defaultRates: KnifeRates = { metresPerMinute: 0.5, secondsPerCorner: 2, secondsPerPiece: 5 };

/** Where a stencil's minutes go: along the lines, at the corners, at what is lifted out. Their sum is `KnifeWork.minutes`. */
export function knifeMinutes(
  work: { readonly metres: number; readonly corners: number; readonly pieces: number },
  rates: KnifeRates,
): { readonly lines: number; readonly corners: number; readonly pieces: number } {
  return {
    lines: work.metres / rates.metresPerMinute,
    corners: (work.corners * rates.secondsPerCorner) / 60,
    pieces: (work.pieces * rates.secondsPerPiece) / 60,
  };
}

/** How fast a studio cuts; what it doesn't say is common practice. */
export function knifeRates(own: Partial<KnifeRates> | undefined): KnifeRates {
  return {
    metresPerMinute: own?.metresPerMinute ?? defaultRates.metresPerMinute,
    secondsPerCorner: own?.secondsPerCorner ?? defaultRates.secondsPerCorner,
    secondsPerPiece: own?.secondsPerPiece ?? defaultRates.secondsPerPiece,
    ...(own?.punchesMm ? { punchesMm: own.punchesMm } : {}),
  };
}
