import { length, list, longLength, say, sentences, type Saying } from '../../words/say.ts';
import { problem } from '../problem.ts';
import type { Problem } from '../problem.ts';
import { studioDefaults } from './defaults.ts';
import { checkSize, strokeOf } from './fit.ts';
import type { Side, SizeMm } from './fit.ts';

export interface Rect {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

export interface TapingPlan {
  /** All in mm from the inside top left corner of the frame, seen from above through the mesh: not mirrored. */
  readonly frame: Rect;
  /** What the tape leaves open: the stencil's own margin closes the rest of the mesh around the image. */
  readonly aperture: Rect;
  readonly image: Rect;
  readonly stencil: Rect;
  /** Which face of the mesh the tape is on. On the paper side the blade never rides on it. */
  readonly side: 'paper';
  /** Strips of tape in the order to lay them, each overlapping the one before. `once`: they stay on until the last run; else anew with each stencil. */
  readonly strips: readonly (Rect & { readonly once: boolean })[];
  readonly tapeWidthMm: number;
  /** All strips together, for the first stencil. */
  readonly tapeMetres: number;
  /** Of these: what stays on for all runs, and what each further stencil takes anew. */
  readonly onceMetres: number;
  readonly eachMetres: number;
  /** Round a piece that has no border of its own, on the image's edge. */
  readonly onEdgeMetres: number;
  /** Sides where blade and ink go past the stencil's edge: only the tape keeps ink from leaking there. */
  readonly leaks: readonly Side[];
  /** Two crosses on the drawing's middle axes, to lay the screen over by eye. */
  readonly centreMm: readonly [number, number];
  readonly steps: readonly Saying[];
  readonly problems: readonly Problem[];
}

/**
 * The drawing to lay under the screen at true size: frame, stencil sheet, and tape on the paper side that holds the stencil by
 * its edge and closes the mesh from there to the frame. What the stencil's margin masks is not taped. Throws ProblemError for
 * sizes that are no sizes.
 */
export function tapingPlan(input: {
  readonly frameInsideMm: SizeMm;
  readonly imageMm: SizeMm;
  readonly imageAtMm?: SizeMm;
  /** Border of the stencil's sheet around the image; left out: as far as the frame allows. */
  readonly stencilMarginMm?: number;
  readonly tapeWidthMm?: number;
  readonly hingeSide?: Side;
  /** The blade, and how far it travels along the stroke, both over the middle of the image. */
  readonly bladeMm?: number;
  readonly travelMm?: number;
}): TapingPlan {
  const { frameInsideMm: inside, imageMm, tapeWidthMm = studioDefaults.tapeWidthMm } = input;
  checkSize(inside, 'frame');
  checkSize(imageMm, 'image');
  const [x, y] = input.imageAtMm ?? [(inside[0] - imageMm[0]) / 2, (inside[1] - imageMm[1]) / 2];
  const frame: Rect = { xMm: 0, yMm: 0, widthMm: inside[0], heightMm: inside[1] };
  const image: Rect = { xMm: x, yMm: y, widthMm: imageMm[0], heightMm: imageMm[1] };
  const inset = studioDefaults.stencilInsideFrameMm;
  const problems: Problem[] = [];
  if (x < inset || y < inset || x + imageMm[0] > inside[0] - inset || y + imageMm[1] > inside[1] - inset) {
    problems.push(
      problem('error', 'taping-room', 'screen', say('press.noRoomForStencil', { within: length(inset) }), say('press.largerFrame')),
    );
  }
  const within: Rect = { xMm: inset, yMm: inset, widthMm: inside[0] - 2 * inset, heightMm: inside[1] - 2 * inset };
  const stencil = common(within, grown(image, input.stencilMarginMm ?? Math.max(...inside)));
  // The tape takes hold of the stencil by its edge, and never comes nearer to the image than half the border.
  const borderMm = Math.max(0, Math.min(x - stencil.xMm, y - stencil.yMm, right(stencil) - right(image), bottom(stencil) - bottom(image)));
  const holdsMm = Math.min(studioDefaults.tapeOverlapMm, borderMm / 2);
  const aperture = common(frame, grown(stencil, -holdsMm));
  const strips = layRound(aperture, frame, tapeWidthMm);
  const metres = (kept: readonly Rect[]): number => kept.reduce((sum, s) => sum + Math.max(s.widthMm, s.heightMm), 0) / 1000;
  const onceMetres = metres(strips.filter((s) => s.once));
  const eachMetres = metres(strips.filter((s) => !s.once));
  const leaks = leaksOf(stencil, image, input);
  return {
    frame,
    aperture,
    image,
    stencil,
    side: 'paper',
    strips,
    tapeWidthMm,
    tapeMetres: onceMetres + eachMetres,
    onceMetres,
    eachMetres,
    onEdgeMetres: (2 * (imageMm[0] + imageMm[1] + 2 * tapeWidthMm)) / 1000,
    leaks,
    centreMm: [x + imageMm[0] / 2, y + imageMm[1] / 2],
    problems,
    steps: [
      say('press.layDrawing'),
      sentences(
        say('press.tapeRest', { n: strips.filter((s) => s.once).length, tape: roundMetres(onceMetres) }),
        say('press.bladeSideFree'),
      ),
      say('press.layStencil'),
      say('press.tapeStencil', { n: strips.filter((s) => !s.once).length, tape: roundMetres(eachMetres), on: length(holdsMm, 0) }),
      leaks.length > 0 ? say('press.mayLeak', { sides: list(leaks.map((side) => say(sideKey[side]))) }) : say('press.marginHoldsInk'),
      say('press.holdToLight'),
    ],
  };
}

const sideKey = { top: 'press.atTop', bottom: 'press.atBottom', left: 'press.atLeft', right: 'press.atRight' } as const;
const roundMetres = (metres: number): ReturnType<typeof longLength> => longLength(Math.round(metres * 10) * 100, 1);
const right = (r: Rect): number => r.xMm + r.widthMm;
const bottom = (r: Rect): number => r.yMm + r.heightMm;

function grown({ xMm, yMm, widthMm, heightMm }: Rect, by: number): Rect {
  return { xMm: xMm - by, yMm: yMm - by, widthMm: Math.max(0, widthMm + 2 * by), heightMm: Math.max(0, heightMm + 2 * by) };
}

/** Where the blade or its ink passes the edge of the stencil's sheet. */
function leaksOf(
  stencil: Rect,
  image: Rect,
  { hingeSide = 'top', bladeMm = 0, travelMm = 0 }: { readonly hingeSide?: Side; readonly bladeMm?: number; readonly travelMm?: number },
): Side[] {
  const [overX, overY] = strokeOf(hingeSide) === 'y' ? [bladeMm, travelMm] : [travelMm, bladeMm];
  const [middleX, middleY] = [image.xMm + image.widthMm / 2, image.yMm + image.heightMm / 2];
  const past: readonly (readonly [Side, boolean])[] = [
    ['top', middleY - overY / 2 < stencil.yMm],
    ['bottom', middleY + overY / 2 > bottom(stencil)],
    ['left', middleX - overX / 2 < stencil.xMm],
    ['right', middleX + overX / 2 > right(stencil)],
  ];
  return past.filter(([, leaks]) => leaks).map(([side]) => side);
}

/** Strips from the aperture outwards to the frame: the inmost hold the stencil, the rest close the mesh once for all runs. */
function layRound(aperture: Rect, frame: Rect, tapeWidthMm: number): TapingPlan['strips'] {
  const bands: readonly (readonly [Rect, 'top' | 'bottom' | 'left' | 'right'])[] = [
    [{ xMm: 0, yMm: 0, widthMm: frame.widthMm, heightMm: aperture.yMm }, 'top'],
    [{ xMm: 0, yMm: bottom(aperture), widthMm: frame.widthMm, heightMm: frame.heightMm - bottom(aperture) }, 'bottom'],
    [{ xMm: 0, yMm: aperture.yMm, widthMm: aperture.xMm, heightMm: aperture.heightMm }, 'left'],
    [{ xMm: right(aperture), yMm: aperture.yMm, widthMm: frame.widthMm - right(aperture), heightMm: aperture.heightMm }, 'right'],
  ];
  const laid = bands.flatMap(([band, side]) => layStrips(band, side, tapeWidthMm));
  // What stays on is laid first: the stencil's own strips come off over it.
  return [...laid.filter((s) => s.once), ...laid.filter((s) => !s.once)];
}

/** Fills a band with strips of tape. Each overlaps the one before by at least 10 mm; the one at the aperture holds the stencil. */
function layStrips(band: Rect, side: Side, tapeWidthMm: number): (Rect & { once: boolean })[] {
  const lying = side === 'top' || side === 'bottom';
  const depth = lying ? band.heightMm : band.widthMm;
  if (depth <= 0 || band.widthMm <= 0 || band.heightMm <= 0) return [];
  const overlap = Math.min(studioDefaults.tapeOverlapMm, tapeWidthMm / 2);
  const count = depth <= tapeWidthMm ? 1 : 1 + Math.ceil((depth - tapeWidthMm) / (tapeWidthMm - overlap));
  const width = Math.min(tapeWidthMm, depth);
  const step = count === 1 ? 0 : (depth - width) / (count - 1);
  const inmost = side === 'top' || side === 'left' ? count - 1 : 0;
  return Array.from({ length: count }, (_, i) => ({
    ...(lying
      ? { xMm: band.xMm, yMm: band.yMm + i * step, widthMm: band.widthMm, heightMm: width }
      : { xMm: band.xMm + i * step, yMm: band.yMm, widthMm: width, heightMm: band.heightMm }),
    once: i !== inmost,
  }));
}

function common(one: Rect, other: Rect): Rect {
  const xMm = Math.max(one.xMm, other.xMm);
  const yMm = Math.max(one.yMm, other.yMm);
  return {
    xMm,
    yMm,
    widthMm: Math.max(0, Math.min(right(one), right(other)) - xMm),
    heightMm: Math.max(0, Math.min(bottom(one), bottom(other)) - yMm),
  };
}
