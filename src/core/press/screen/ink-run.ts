import { mass, say, share, type Saying } from '../../../words/say.ts';
import { fail } from '../../problem.ts';
import { studioDefaults } from '../defaults.ts';

export interface InkForRun {
  readonly printedGrams: number;
  readonly printedMl: number;
  readonly perPullGrams: number;
  /** What to mix: printed + what stays, for the middle and for both ends of the doubt. */
  readonly totalGrams: number;
  readonly totalRangeGrams: readonly [number, number];
  readonly totalMl: number;
  /** Share of the pot that never reaches paper. */
  readonly stayingShare: number;
  readonly stayingDominates: boolean;
  readonly note: Saying;
}

export interface InkForRunInput {
  /** Area that prints on one sheet. */
  readonly areaMm2: number;
  readonly wetMicrons: number;
  /** Doubt of the film; left out: none. */
  readonly wetRange?: readonly [number, number];
  readonly densityGPerMl?: number;
  /** Sheets through the run, set-up sheets counted. */
  readonly pulls: number;
  readonly stayingGrams?: readonly [number, number];
}

/** Grams = area × wet film × density × pulls + what stays in screen and pot (50..150 g, common practice). Throws ProblemError. */
export function inkForRun(input: InkForRunInput, place = 'layers'): InkForRun {
  const {
    areaMm2,
    wetMicrons,
    pulls,
    wetRange = [wetMicrons, wetMicrons],
    densityGPerMl = studioDefaults.densityGPerMl,
    stayingGrams = studioDefaults.stayingGrams,
  } = input;
  if (
    ![areaMm2, wetMicrons, pulls, ...wetRange, ...stayingGrams].every((value) => Number.isFinite(value) && value >= 0) ||
    !(densityGPerMl > 0)
  ) {
    fail('ink-amount', place, say('press.inkAmounts'), say('press.checkInkFigures'));
  }
  if (stayingGrams[0] > stayingGrams[1] || wetRange[0] > wetRange[1])
    fail('ink-range', place, say('press.rangeReversed'), say('press.smallerFirst'));
  // One mm² under one µm of film is 10⁻³ mm³, and a mL is 1000 mm³.
  const perPullMl = areaMm2 * wetMicrons * 1e-6;
  const perPullGrams = perPullMl * densityGPerMl;
  const printedGrams = perPullGrams * pulls;
  const staying = pulls === 0 ? 0 : (stayingGrams[0] + stayingGrams[1]) / 2;
  const totalGrams = printedGrams + staying;
  const end = (side: 0 | 1): number => areaMm2 * wetRange[side] * 1e-6 * densityGPerMl * pulls + (pulls === 0 ? 0 : stayingGrams[side]);
  const stayingShare = totalGrams === 0 ? 0 : staying / totalGrams;
  const stayingDominates = stayingShare > 0.5;
  return {
    printedGrams,
    printedMl: perPullMl * pulls,
    perPullGrams,
    totalGrams,
    totalRangeGrams: [end(0), end(1)],
    totalMl: totalGrams / densityGPerMl,
    stayingShare,
    stayingDominates,
    note:
      pulls === 0
        ? say('press.noSheetThrough')
        : stayingDominates
          ? say('press.mostStays', { printed: aboutMass(printedGrams), share: share(stayingShare, 0) })
          : say('press.someStays', { printed: aboutMass(printedGrams), staying: aboutMass(staying) }),
  };
}

/** From ten grams on, no finer than a gram. */
const aboutMass = (grams: number): ReturnType<typeof mass> => mass(grams < 10 ? grams : Math.round(grams));
