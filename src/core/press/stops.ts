import { lengths, say, type Saying } from '../../words/say.ts';
import { problem } from '../problem.ts';
import type { Problem } from '../problem.ts';
import { studioDefaults } from './defaults.ts';
import { checkSize } from './fit.ts';
import type { SizeMm } from './fit.ts';
import type { Rect } from './taping.ts';

export interface Stop extends Rect {
  readonly number: number;
  readonly side: 'left' | 'top' | 'bottom' | 'right';
}

export interface StopsTemplate {
  /** All in mm from the sheet's top left corner. Stops lie outside the sheet, touching it. */
  readonly sheet: Rect;
  readonly image: Rect;
  readonly stops: readonly Stop[];
  /** Box around sheet and stops: what the drawing must hold. */
  readonly drawing: Rect;
  /** Crosses on the image's middle axes, outside it, to lay over the stencil's own. */
  readonly marks: readonly (readonly [number, number])[];
  /** The stops' corner, and how far the image's far edges lie from it: what paper growth works over. */
  readonly cornerMm: readonly [number, number];
  readonly fromStopsMm: SizeMm;
  /** Thickness of the stops: a little over the sheet's (published: printmaker's article), under the gap. */
  readonly thicknessMm: readonly [number, number];
  readonly steps: readonly Saying[];
  readonly problems: readonly Problem[];
}

/**
 * The drawing with the three stops at true size: two on the long side, one on the short side near their corner (published:
 * printmaker's article on registration). `corner`: where the sheets are pushed to.
 */
export function stopsTemplate(input: {
  readonly sheetMm: SizeMm;
  readonly imageMm: SizeMm;
  /** Left out: in the middle. */
  readonly imageAtMm?: SizeMm;
  readonly sheetThicknessMm: number;
  readonly gapMm?: number;
  readonly corner?: 'top-left' | 'top-right' | 'bottom-left' | 'bottom-right';
  readonly edge?: 'cut' | 'torn';
  /** The box at the corner that the stops are spread over: the part that all sheets of a setting cover. Left out: the sheet. */
  readonly stopsOnMm?: SizeMm;
  /** The paper's path in the Job. */
  readonly paper?: string;
}): StopsTemplate {
  const {
    sheetMm: [width, height],
    imageMm,
    sheetThicknessMm,
    corner = 'bottom-left',
    edge = 'cut',
    paper = 'papers',
  } = input;
  checkSize(input.sheetMm, 'sheet', paper);
  checkSize(imageMm, 'image');
  const at = input.imageAtMm ?? ([(width - imageMm[0]) / 2, (height - imageMm[1]) / 2] as const);
  const problems: Problem[] = [];
  if (at[0] < 0 || at[1] < 0 || at[0] + imageMm[0] > width || at[1] + imageMm[1] > height) {
    problems.push(problem('error', 'image-over-sheet', paper, say('register.imageOffSheet'), say('register.moveImage')));
  }
  const [onWide, onHigh] = input.stopsOnMm ?? input.sheetMm;
  const length = Math.min(studioDefaults.stopLengthMm, Math.min(onWide, onHigh) / 4);
  const wide = studioDefaults.stopWidthMm;
  const onLeft = corner.endsWith('left');
  const onTop = corner.startsWith('top');
  const longIsX = onWide >= onHigh;
  const sideX = onLeft ? 'left' : 'right';
  const sideY = onTop ? 'top' : 'bottom';
  const stopOnY = (number: number, share: number): Stop => {
    const middle = onLeft ? onWide * share : width - onWide * share;
    return { number, side: sideY, xMm: middle - length / 2, yMm: onTop ? -wide : height, widthMm: length, heightMm: wide };
  };
  const stopOnX = (number: number, share: number): Stop => {
    const middle = onTop ? onHigh * share : height - onHigh * share;
    return { number, side: sideX, xMm: onLeft ? -wide : width, yMm: middle - length / 2, widthMm: wide, heightMm: length };
  };
  const stops = longIsX ? [stopOnY(1, 0.2), stopOnY(2, 0.8), stopOnX(3, 0.25)] : [stopOnX(1, 0.2), stopOnX(2, 0.8), stopOnY(3, 0.25)];
  const cornerMm = [onLeft ? 0 : width, onTop ? 0 : height] as const;
  const fromStopsMm = [onLeft ? at[0] + imageMm[0] : width - at[0], onTop ? at[1] + imageMm[1] : height - at[1]] as const;
  const most = input.gapMm === undefined ? sheetThicknessMm + 0.5 : Math.min(sheetThicknessMm + 0.5, sheetThicknessMm + input.gapMm / 2);
  const thicknessMm = [Math.min(sheetThicknessMm + studioDefaults.stopAboveSheetMm, most), most] as const;
  if (edge === 'torn') problems.push(problem('note', 'torn-edge', `${paper}.edge`, say('register.tornEdge'), say('register.cardStrip')));
  const marks = [
    [at[0] + imageMm[0] / 2, at[1] - 6],
    [at[0] + imageMm[0] / 2, at[1] + imageMm[1] + 6],
    [at[0] - 6, at[1] + imageMm[1] / 2],
    [at[0] + imageMm[0] + 6, at[1] + imageMm[1] / 2],
  ] as const;
  return {
    sheet: { xMm: 0, yMm: 0, widthMm: width, heightMm: height },
    image: { xMm: at[0], yMm: at[1], widthMm: imageMm[0], heightMm: imageMm[1] },
    stops,
    drawing: { xMm: -wide, yMm: -wide, widthMm: width + 2 * wide, heightMm: height + 2 * wide },
    marks,
    cornerMm,
    fromStopsMm,
    thicknessMm,
    problems,
    steps: [
      say('register.tapeDrawing'),
      say('register.glueStops', { thickness: lengths(thicknessMm, 'to', 2) }),
      say('register.pushSheets'),
      say('register.leaveStops'),
    ],
  };
}
