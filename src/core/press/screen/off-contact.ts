import { fail, problem } from '../../problem.ts';
import type { Problem } from '../../problem.ts';
import { figure, length, lengths, name as asName, say, share, type Saying } from '../../../words/say.ts';
import { studioDefaults } from '../defaults.ts';
import { checkSize, strokeOf } from '../fit.ts';
import type { Side, SizeMm } from '../fit.ts';

/** Gap by the size of the print, in mm: up to this long a side, from, to. common practice */
const bySize: readonly (readonly [string, number, number, number])[] = [
  ['A4', 297, 1.5, 2],
  ['A3', 420, 2, 3],
  ['A2', 594, 3, 4],
  ['A1', Infinity, 4, 6],
];

export interface GapAdvice {
  readonly gapMm: number;
  readonly rangeMm: readonly [number, number];
  readonly why: Saying;
}

/**
 * Gap for a print of this size by hand (common practice), at most 1/16 in on a mesh of 16 N/cm and more (published:
 * supplier's note). Unknown tension: the middle; slack mesh: half as much again, within 1/4 in (published: overall range).
 */
export function adviseGap(imageMm: SizeMm, tensionNPerCm?: number): GapAdvice {
  checkSize(imageMm, 'image');
  const [name, , low, high] = bySize.find(([, side]) => Math.max(...imageMm) <= side)!;
  if (tensionNPerCm !== undefined && !(tensionNPerCm > 0))
    fail(
      'tension',
      'screen.tensionNPerCm',
      say('press.tensionImpossible', { tension: figure(tensionNPerCm, 2, false) }),
      say('press.leaveTensionOut'),
    );
  if (tensionNPerCm !== undefined && tensionNPerCm >= studioDefaults.tightNPerCm) {
    const most = 25.4 / 16;
    return {
      gapMm: Math.min(most, low),
      rangeMm: [1, most],
      why: say('press.tightMeshGap', { tension: figure(tensionNPerCm, 1, false), most: length(most, 1) }),
    };
  }
  if (tensionNPerCm !== undefined && tensionNPerCm < studioDefaults.slackNPerCm) {
    const range = [Math.min(low * 1.5, 6.35), Math.min(high * 1.5, 6.35)] as const;
    return {
      gapMm: (range[0] + range[1]) / 2,
      rangeMm: range,
      why: say('press.slackMeshGap', { size: asName(name), tension: figure(tensionNPerCm, 1, false) }),
    };
  }
  return {
    gapMm: (low + high) / 2,
    rangeMm: [low, high],
    why: say(tensionNPerCm === undefined ? 'press.gapTensionUnknown' : 'press.gapByHand', { size: asName(name) }),
  };
}

/** Strain of a mesh of free span W pressed down by h at distance x from one side, sliding freely under the blade. Geometry, exact. */
export function strainAt(spanMm: number, gapMm: number, xMm: number): number {
  return (Math.hypot(xMm, gapMm) + Math.hypot(spanMm - xMm, gapMm)) / spanMm - 1;
}

/** Same, for small gaps: h² / (2 x (W − x)). */
export function strainApproximate(spanMm: number, gapMm: number, xMm: number): number {
  return gapMm ** 2 / (2 * xMm * (spanMm - xMm));
}

/** Which point of the slack mesh touches the paper at x. */
function meshPoint(spanMm: number, gapMm: number, xMm: number): number {
  return Math.hypot(xMm, gapMm) / (1 + strainAt(spanMm, gapMm, xMm));
}

/** Growth along the stroke of an image with margins a and b at its ends, gap h there: printed length less mesh length. Exact. */
export function growthAlong(spanMm: number, marginsMm: readonly [number, number], gapsMm: readonly [number, number]): number {
  const from = marginsMm[0];
  const to = spanMm - marginsMm[1];
  return to - from - (meshPoint(spanMm, gapsMm[1], to) - meshPoint(spanMm, gapsMm[0], from));
}

/** Same for equal margins, small gaps: h² (W − 2a) / (a (W − a)). */
export function growthApproximate(spanMm: number, gapMm: number, marginMm: number): number {
  return (gapMm ** 2 * (spanMm - 2 * marginMm)) / (marginMm * (spanMm - marginMm));
}

/** Strain under the blade, across the stroke: the mesh comes down in both gaps between blade and frame. Geometry, exact. */
export function strainAcross(spanMm: number, bladeMm: number, gapMm: number): number {
  return (bladeMm + 2 * Math.hypot((spanMm - bladeMm) / 2, gapMm)) / spanMm - 1;
}

export interface OffContact {
  readonly alongMm: number;
  readonly alongApproximateMm: number;
  /** At the end of the image by the hinge, and by the hand: they differ when the gap does. */
  readonly acrossMm: readonly [number, number];
  /** Most strain while the blade crosses the image, along and across together. */
  readonly mostStrain: number;
  readonly problems: readonly Problem[];
}

/**
 * Stretch of the mesh and growth of the image for the gap at both ends of the image (hinge end first). Assumes mesh that
 * slides under the blade and stretches evenly; a sticky ink makes the growth less even. Throws ProblemError.
 */
export function offContact(input: {
  readonly frameInsideMm: SizeMm;
  readonly imageMm: SizeMm;
  readonly imageAtMm?: SizeMm;
  readonly hingeSide: Side;
  /** One gap, or hinge end and hand end of the image. */
  readonly gapMm: number | readonly [number, number];
  readonly squeegeeMm?: number;
}): OffContact {
  const { frameInsideMm: frame, imageMm: image, hingeSide } = input;
  checkSize(frame, 'frame');
  checkSize(image, 'image');
  const gaps: readonly [number, number] = typeof input.gapMm === 'number' ? [input.gapMm, input.gapMm] : input.gapMm;
  if (!gaps.every((gap) => gap >= 0 && gap <= 100))
    fail(
      'gap',
      'screen.offContactMm',
      say('press.gapImpossible', { gap: lengths(gaps, 'to') }),
      say('press.giveGap', { usual: lengths([1.5, 6], 'to') }),
    );
  const along = strokeOf(hingeSide) === 'y' ? 1 : 0;
  const across = 1 - along;
  const at = input.imageAtMm ?? ([(frame[0] - image[0]) / 2, (frame[1] - image[1]) / 2] as const);
  const near: readonly [number, number] = [at[along], frame[along] - at[along] - image[along]];
  // Margins in the order hinge, hand.
  const margins: readonly [number, number] = hingeSide === 'top' || hingeSide === 'left' ? near : [near[1], near[0]];
  if (!(Math.min(...margins) > 0 && image[across] < frame[across])) {
    fail(
      'frame-under-image',
      'screen',
      say('press.noMeshAround', { frame: lengths(frame), image: lengths(image) }),
      say('press.largerFrame'),
    );
  }
  const blade = Math.min(input.squeegeeMm ?? image[across] + 2 * studioDefaults.bladePastImageMm[0], frame[across] - 1);
  const alongMm = growthAlong(frame[along], margins, gaps);
  const acrossMm = [
    image[across] * strainAcross(frame[across], blade, gaps[0]),
    image[across] * strainAcross(frame[across], blade, gaps[1]),
  ] as const;
  const strainOf = (times: number): number =>
    Math.max(
      ...([0, 1] as const).map((end) =>
        Math.max(strainAt(frame[along], times * gaps[end], margins[end]), strainAcross(frame[across], blade, times * gaps[end])),
      ),
    );
  const mostStrain = strainOf(1);
  const meanGap = (gaps[0] + gaps[1]) / 2;
  return {
    alongMm,
    alongApproximateMm: growthApproximate(frame[along], meanGap, (margins[0] + margins[1]) / 2),
    acrossMm,
    mostStrain,
    problems: strainProblems(mostStrain, meanGap, strainOf),
  };
}

function strainProblems(strain: number, gapMm: number, strainOf: (times: number) => number): Problem[] {
  let [most, over] = [0, 1];
  for (let step = 0; step < 40 && strain >= studioDefaults.strainDoubtful; step++) {
    const middle = (most + over) / 2;
    if (strainOf(middle) < studioDefaults.strainDoubtful) most = middle;
    else over = middle;
  }
  const values = { gap: length(gapMm, 1), strain: share(strain, 2) };
  const lower = say('press.lowerGap', { safe: length(Math.floor(most * gapMm * 10) / 10, 1) });
  if (strain >= studioDefaults.strainTears) {
    return [problem('error', 'gap-tears-mesh', 'screen.offContactMm', say('press.gapTears', values), lower)];
  }
  if (strain >= studioDefaults.strainDoubtful) {
    return [problem('warning', 'gap-stretches-mesh', 'screen.offContactMm', say('press.gapStretches', values), lower)];
  }
  return [];
}

/** Layers whose image grows differently do not fit one another. Growth in mm (across at the wider end); difference over the whole image. */
export function growthBetween(one: OffContact, other: OffContact): { readonly alongMm: number; readonly acrossMm: number } {
  return {
    alongMm: Math.abs(one.alongMm - other.alongMm),
    acrossMm: Math.max(Math.abs(one.acrossMm[0] - other.acrossMm[0]), Math.abs(one.acrossMm[1] - other.acrossMm[1])),
  };
}
