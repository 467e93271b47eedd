import { fail, problem } from '../problem.ts';
import type { Problem } from '../problem.ts';
import { studioDefaults } from './defaults.ts';

/** Width and height in mm as the printmaker sees them, standing at the press. */
export type SizeMm = readonly [number, number];
export type Side = 'top' | 'bottom' | 'left' | 'right';

export interface FitInput {
  /** Inside of the frame. */
  readonly frameInsideMm: SizeMm;
  readonly imageMm: SizeMm;
  readonly sheetMm?: SizeMm;
  readonly squeegeeMm?: number;
  /** Side of the image where the frame is hinged: the hand stands opposite and strokes towards itself. */
  readonly hingeSide: Side;
  /** Where the image's top left corner lies inside the frame; left out: in the middle. */
  readonly imageAtMm?: SizeMm;
}

export interface Margin {
  readonly side: Side;
  readonly role: 'blade end' | 'ink well';
  readonly mm: number;
  readonly wantedMm: number;
  readonly leastMm: number;
  /** What is short of the wanted room; 0 when nothing is. */
  readonly missingMm: number;
}

export interface Remedy {
  readonly what: 'larger frame' | 'smaller image' | 'turn image' | 'hinge elsewhere' | 'move image';
  readonly text: string;
}

export interface ScreenFit {
  /** holds: all the room one wants; tight: can be printed with care; no: cannot. */
  readonly verdict: 'holds' | 'tight' | 'no';
  readonly imageAtMm: SizeMm;
  /** Stroke runs along this axis, the blade lies across it. */
  readonly strokeAxis: 'x' | 'y';
  readonly margins: readonly Margin[];
  readonly squeegee: {
    readonly leastMm: number;
    readonly bestMm: number;
    readonly mostMm: number;
    readonly ownMm: number | null;
    readonly travelMm: number;
  };
  readonly wouldFit: { readonly frameInsideMm: SizeMm; readonly imageMm: SizeMm };
  readonly remedies: readonly Remedy[];
  readonly problems: readonly Problem[];
}

/**
 * Does the screen fit? Wanted room: 2.5 in at the blade's ends, 4 in at the ink wells (published: supplier's note); least
 * room by a careful hand: common practice, in `studioDefaults`. Throws ProblemError for sizes that are no sizes.
 */
export function fitScreen(input: FitInput): ScreenFit {
  const { frameInsideMm: frame, imageMm: image, hingeSide } = input;
  checkSize(frame, 'screen', 'inside of the frame');
  checkSize(image, 'image', 'image');
  if (input.sheetMm) checkSize(input.sheetMm, 'paper', 'sheet');
  const imageAtMm = input.imageAtMm ?? ([(frame[0] - image[0]) / 2, (frame[1] - image[1]) / 2] as const);
  const strokeAxis = strokeOf(hingeSide);
  const margins = marginsOf(frame, image, imageAtMm, strokeAxis);
  const tooSmall = margins.some((margin) => margin.mm < margin.leastMm);
  const short = margins.some((margin) => margin.missingMm > 0);
  const problems: Problem[] = [];
  const squeegee = squeegeeOf(input, strokeAxis, problems);
  if (input.sheetMm && (image[0] > input.sheetMm[0] || image[1] > input.sheetMm[1])) {
    problems.push(
      problem(
        'error',
        'image-over-sheet',
        'paper',
        `The image (${size(image)}) is larger than the sheet (${size(input.sheetMm)}).`,
        'Make the image smaller or take a larger sheet.',
      ),
    );
  }
  const wouldFit = {
    frameInsideMm: grow(image, strokeAxis, studioDefaults.bladeEndMm, studioDefaults.wellMm),
    imageMm: grow(frame, strokeAxis, -studioDefaults.leastBladeEndMm, -studioDefaults.leastWellMm),
  };
  const remedies = tooSmall || short ? remediesFor(input, imageAtMm, margins, wouldFit.frameInsideMm, tooSmall) : [];
  problems.push(...marginProblems(margins, remedies[0]?.text ?? ''));
  const verdict = problems.some((one) => one.severity === 'error') ? 'no' : problems.length > 0 ? 'tight' : 'holds';
  return { verdict, imageAtMm, strokeAxis, margins, squeegee, wouldFit, remedies, problems };
}

/** The stroke runs from the hinge towards the hand. */
export function strokeOf(hingeSide: Side): 'x' | 'y' {
  return hingeSide === 'top' || hingeSide === 'bottom' ? 'y' : 'x';
}

function marginsOf(frame: SizeMm, image: SizeMm, at: SizeMm, stroke: 'x' | 'y'): Margin[] {
  const gaps: readonly (readonly [Side, number, 'x' | 'y'])[] = [
    ['top', at[1], 'y'],
    ['bottom', frame[1] - at[1] - image[1], 'y'],
    ['left', at[0], 'x'],
    ['right', frame[0] - at[0] - image[0], 'x'],
  ];
  return gaps.map(([side, gap, axis]) => {
    const well = axis === stroke;
    const wantedMm = well ? studioDefaults.wellMm : studioDefaults.bladeEndMm;
    return {
      side,
      role: well ? 'ink well' : 'blade end',
      mm: gap,
      wantedMm,
      leastMm: well ? studioDefaults.leastWellMm : studioDefaults.leastBladeEndMm,
      missingMm: Math.max(0, wantedMm - gap),
    };
  });
}

/** One message for each amount that is missing: opposite margins of a centred image miss the same. */
function marginProblems(margins: readonly Margin[], advice: string): Problem[] {
  const short = margins.filter((margin) => margin.missingMm > 0);
  const same = (one: Margin, other: Margin): boolean => one.role === other.role && Math.abs(one.mm - other.mm) < 0.05;
  return short
    .filter((margin, i) => short.findIndex((one) => same(one, margin)) === i)
    .map((margin) => {
      const sides = short
        .filter((one) => same(one, margin))
        .map((one) => one.side)
        .join(' and ');
      const bad = margin.mm < margin.leastMm;
      return problem(
        bad ? 'error' : 'warning',
        bad ? 'screen-too-small' : 'screen-tight',
        `screen ${sides}`,
        margin.mm < 0
          ? `The image reaches ${mm(-margin.mm)} past the inside of the frame (${sides}).`
          : `Between image and frame there are ${mm(margin.mm)} (${sides}, ${margin.role}); ${mm(bad ? margin.leastMm - margin.mm : margin.missingMm)} are missing${bad ? ' at least' : ' to print at ease'}.`,
        advice,
      );
    });
}

function squeegeeOf(input: FitInput, stroke: 'x' | 'y', problems: Problem[]): ScreenFit['squeegee'] {
  const across = stroke === 'y' ? 0 : 1;
  const image = input.imageMm[across];
  const [least, best] = studioDefaults.bladePastImageMm;
  const leastMm = image + 2 * least;
  const mostMm = input.frameInsideMm[across] - 2 * studioDefaults.bladeToFrameMm;
  const ownMm = input.squeegeeMm ?? null;
  if (ownMm !== null && ownMm < leastMm) {
    problems.push(
      problem(
        ownMm < image ? 'error' : 'warning',
        'squeegee-short',
        'screen.squeegeeMm',
        `The squeegee is ${mm(ownMm)}, the image ${mm(image)} across the stroke; ${mm(leastMm - ownMm)} are missing.`,
        `Take one of ${mm(leastMm)} to ${mm(Math.max(leastMm, Math.min(mostMm, image + 2 * best)))}, or hinge the frame on another side.`,
      ),
    );
  }
  if (ownMm !== null && ownMm > mostMm) {
    problems.push(
      problem(
        ownMm > input.frameInsideMm[across] ? 'error' : 'warning',
        'squeegee-long',
        'screen.squeegeeMm',
        `The squeegee (${mm(ownMm)}) leaves less than ${mm(studioDefaults.bladeToFrameMm)} to the frame at each end; the mesh cannot give.`,
        `Take one of at most ${mm(Math.max(0, mostMm))}.`,
      ),
    );
  }
  // From behind the image at the hinge, over it, to just past its near edge.
  const travelMm = input.imageMm[1 - across] + 2 * best;
  return {
    leastMm,
    bestMm: Math.min(Math.max(leastMm, Math.min(image + 2 * best, mostMm)), Math.max(leastMm, mostMm)),
    mostMm,
    ownMm,
    travelMm,
  };
}

function remediesFor(input: FitInput, at: SizeMm, margins: readonly Margin[], wanted: SizeMm, tooSmall: boolean): Remedy[] {
  const { frameInsideMm: frame, imageMm: image, hingeSide } = input;
  const worst = (list: readonly Margin[]): number =>
    Math.max(...list.map((margin) => (tooSmall ? margin.leastMm - margin.mm : margin.missingMm)));
  const now = worst(margins);
  const remedies: Remedy[] = [];
  const centred = (one: SizeMm): SizeMm => [(frame[0] - one[0]) / 2, (frame[1] - one[1]) / 2];
  const stroke = strokeOf(hingeSide);
  const tries: readonly (readonly [Remedy['what'], SizeMm, 'x' | 'y', string])[] = [
    ['move image', image, stroke, 'Put the image in the middle of the frame.'],
    ['turn image', [image[1], image[0]], stroke, 'Turn the image by a quarter on the screen.'],
    [
      'hinge elsewhere',
      image,
      stroke === 'y' ? 'x' : 'y',
      `Hinge the frame on the ${stroke === 'y' ? 'left or right' : 'top or bottom'} side.`,
    ],
  ];
  for (const [what, turned, axis, text] of tries) {
    if (what === 'move image' && Math.hypot(at[0] - centred(image)[0], at[1] - centred(image)[1]) < 1) continue;
    const then = worst(marginsOf(frame, turned, centred(turned), axis));
    if (then <= 0) remedies.push({ what, text: `${text} Then it fits.` });
    else if (then < now - 5) remedies.push({ what, text: `${text} Then ${mm(then)} are missing instead of ${mm(now)}.` });
  }
  remedies.sort((one, other) => Number(other.text.endsWith('fits.')) - Number(one.text.endsWith('fits.')));
  remedies.push({ what: 'larger frame', text: `A frame of ${size(wanted)} inside holds this image at ease.` });
  const scale = Math.min(
    1,
    ...[0, 1].map((axis) => {
      const well = (axis === 1) === (stroke === 'y');
      const room =
        frame[axis] -
        2 *
          (tooSmall
            ? well
              ? studioDefaults.leastWellMm
              : studioDefaults.leastBladeEndMm
            : well
              ? studioDefaults.wellMm
              : studioDefaults.bladeEndMm);
      return room / image[axis];
    }),
  );
  if (scale > 0.2 && scale < 1)
    remedies.push({
      what: 'smaller image',
      text: `An image of ${size([Math.floor(image[0] * scale), Math.floor(image[1] * scale)])} fits this frame${tooSmall ? ' with care' : ''}.`,
    });
  return remedies;
}

function grow(one: SizeMm, stroke: 'x' | 'y', bladeEnd: number, well: number): SizeMm {
  const [x, y] = stroke === 'y' ? [bladeEnd, well] : [well, bladeEnd];
  return [Math.max(0, Math.round(one[0] + 2 * x)), Math.max(0, Math.round(one[1] + 2 * y))];
}

export function checkSize([width, height]: SizeMm, place: string, what: string): void {
  if (!(width > 0 && height > 0 && width <= 5000 && height <= 5000)) {
    fail('size', place, `The ${what} cannot be ${width} × ${height} mm.`, 'Give width and height in mm, both above nought.');
  }
}

const mm = (value: number): string => `${Math.round(value * 10) / 10} mm`;
const size = ([width, height]: SizeMm): string => `${Math.round(width)} × ${Math.round(height)} mm`;
