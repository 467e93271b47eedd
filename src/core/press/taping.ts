import { length, say, type Saying } from '../../words/say.ts';
import { problem } from '../problem.ts';
import type { Problem } from '../problem.ts';
import { studioDefaults } from './defaults.ts';
import { checkSize } from './fit.ts';
import type { SizeMm } from './fit.ts';

export interface Rect {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

export interface TapingPlan {
  /** All in mm from the inside top left corner of the frame, seen from above through the mesh: not mirrored. */
  readonly frame: Rect;
  /** What stays open. */
  readonly aperture: Rect;
  readonly image: Rect;
  /** The stencil's sheet: slightly smaller than the inside of the frame. */
  readonly stencil: Rect;
  /** Strips of tape in the order to lay them, each overlapping the one before. */
  readonly strips: readonly Rect[];
  readonly tapeMetres: number;
  /** Two crosses on the drawing's middle axes, to lay the screen over by eye. */
  readonly centreMm: readonly [number, number];
  readonly steps: readonly Saying[];
  readonly problems: readonly Problem[];
}

/**
 * The drawing to lay under the screen at true size: frame, aperture, stencil sheet, strips of tape over every gap between
 * stencil and frame and from the stencil onto the aperture's edge. Throws ProblemError for sizes that are no sizes.
 */
export function tapingPlan(input: {
  readonly frameInsideMm: SizeMm;
  readonly imageMm: SizeMm;
  readonly imageAtMm?: SizeMm;
  /** Open edge left around the image; left out: the tape stops 5 mm off it (common practice). */
  readonly edgeMm?: number;
  readonly tapeWidthMm?: number;
}): TapingPlan {
  const { frameInsideMm: inside, imageMm, edgeMm = 5, tapeWidthMm = studioDefaults.tapeWidthMm } = input;
  checkSize(inside, 'frame');
  checkSize(imageMm, 'image');
  const [x, y] = input.imageAtMm ?? [(inside[0] - imageMm[0]) / 2, (inside[1] - imageMm[1]) / 2];
  const frame: Rect = { xMm: 0, yMm: 0, widthMm: inside[0], heightMm: inside[1] };
  const image: Rect = { xMm: x, yMm: y, widthMm: imageMm[0], heightMm: imageMm[1] };
  const aperture = common(frame, { xMm: x - edgeMm, yMm: y - edgeMm, widthMm: imageMm[0] + 2 * edgeMm, heightMm: imageMm[1] + 2 * edgeMm });
  const inset = studioDefaults.stencilInsideFrameMm;
  const stencil: Rect = {
    xMm: inset,
    yMm: inset,
    widthMm: Math.max(0, inside[0] - 2 * inset),
    heightMm: Math.max(0, inside[1] - 2 * inset),
  };
  const problems: Problem[] = [];
  const right = aperture.xMm + aperture.widthMm;
  const bottom = aperture.yMm + aperture.heightMm;
  if (x < inset || y < inset || x + imageMm[0] > inside[0] - inset || y + imageMm[1] > inside[1] - inset) {
    problems.push(
      problem('error', 'taping-room', 'screen', say('press.noRoomForStencil', { within: length(inset) }), say('press.largerFrame')),
    );
  }
  const bands: readonly (readonly [Rect, boolean])[] = [
    [{ xMm: 0, yMm: 0, widthMm: inside[0], heightMm: aperture.yMm }, true],
    [{ xMm: 0, yMm: bottom, widthMm: inside[0], heightMm: inside[1] - bottom }, true],
    [{ xMm: 0, yMm: aperture.yMm, widthMm: aperture.xMm, heightMm: aperture.heightMm }, false],
    [{ xMm: right, yMm: aperture.yMm, widthMm: inside[0] - right, heightMm: aperture.heightMm }, false],
  ];
  const strips = bands.flatMap(([band, lying]) => layStrips(band, lying, tapeWidthMm));
  const tapeMetres = strips.reduce((sum, strip) => sum + Math.max(strip.widthMm, strip.heightMm), 0) / 1000;
  return {
    frame,
    aperture,
    image,
    stencil,
    strips,
    tapeMetres,
    centreMm: [x + imageMm[0] / 2, y + imageMm[1] / 2],
    problems,
    steps: [
      say('press.layDrawing'),
      say('press.layStencil'),
      say('press.tapeStrips', { n: strips.length, tape: length(Math.round(tapeMetres * 10) * 100) }),
      say('press.holdToLight'),
    ],
  };
}

/** Fills a band with strips of tape; `lying`: they run from left to right. Each overlaps the one before by at least 10 mm. */
function layStrips(band: Rect, lying: boolean, tapeWidthMm: number): Rect[] {
  const depth = lying ? band.heightMm : band.widthMm;
  if (depth <= 0 || band.widthMm <= 0 || band.heightMm <= 0) return [];
  const count = depth <= tapeWidthMm ? 1 : 1 + Math.ceil((depth - tapeWidthMm) / (tapeWidthMm - studioDefaults.tapeOverlapMm));
  const width = Math.min(tapeWidthMm, depth);
  const step = count === 1 ? 0 : (depth - width) / (count - 1);
  return Array.from(
    { length: count },
    (_, i): Rect =>
      lying
        ? { xMm: band.xMm, yMm: band.yMm + i * step, widthMm: band.widthMm, heightMm: width }
        : { xMm: band.xMm + i * step, yMm: band.yMm, widthMm: width, heightMm: band.heightMm },
  );
}

function common(one: Rect, other: Rect): Rect {
  const xMm = Math.max(one.xMm, other.xMm);
  const yMm = Math.max(one.yMm, other.yMm);
  return {
    xMm,
    yMm,
    widthMm: Math.max(0, Math.min(one.xMm + one.widthMm, other.xMm + other.widthMm) - xMm),
    heightMm: Math.max(0, Math.min(one.yMm + one.heightMm, other.yMm + other.heightMm) - yMm),
  };
}
